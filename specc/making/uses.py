"""Owns what every edge of every piece is for, and how much is cut on beyond it.

Knows nothing of lengths along edges.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.making.assembly import EdgeUse

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Finish, Seam
    from specc.model.expression import Expression, PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece
    from specc.source import Span

# An allowance, and the depths by which it is turned back.
_Allowed = tuple["Expression", tuple["Expression", ...]]

USED_TWICE = declare(
    "SPC513", "edge-used-twice", Severity.ERROR, "`{edge}` is both in {first} and in {second}"
)


def uses(
    garment: Garment, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]
) -> tuple[tuple[EdgeUse, ...], tuple[Diagnostic, ...]]:
    """One use for every edge, in the order of the pieces; an edge used twice is reported."""
    said: list[Diagnostic] = []
    found: dict[tuple[str, str], tuple[str, str, _Allowed, Span]] = {}
    for kind, name, allowed, ref in _used(garment):
        key = (ref.piece or "", ref.name)
        if key in found and kind == "closure":
            continue  # what is faced, banded or hemmed may be closed besides
        if key in found and found[key][:2] != (kind, name):
            first = f"{found[key][0]} `{found[key][1]}`"
            told = USED_TWICE.at(
                ref.origin, edge=f"{ref.piece}.{ref.name}", first=first, second=f"{kind} `{name}`"
            )
            said.append(told.see(found[key][3], "first here").help("take it out of one of them"))
        else:
            found[key] = (kind, name, allowed, ref.origin)
    return tuple(_use(piece, edge.name, found, evaluate) for piece in pieces for edge in piece.edges), tuple(
        said
    )


def _use(
    piece: Piece,
    edge: str,
    found: dict[tuple[str, str], tuple[str, str, _Allowed, Span]],
    evaluate: Callable[[Expression], float],
) -> EdgeUse:
    if piece.fold == edge:
        return EdgeUse(piece.name, edge, "fold", None, 0.0)
    if (piece.name, edge) not in found:
        return EdgeUse(piece.name, edge, "none", None, 0.0)
    kind, name, (width, depths), _ = found[piece.name, edge]
    allowance, turned = evaluate(width), tuple(evaluate(depth) for depth in depths)
    return EdgeUse(piece.name, edge, kind, name, allowance, _folded(allowance, turned))


def _folded(allowance: float, turned: tuple[float, ...]) -> tuple[float, ...]:
    """The depths by which an allowance is turned.

    Where an edge has one of its own it is the outermost fold that gives or takes; one too narrow to be turned
    twice is turned once.
    """
    if not turned or allowance <= 0.0:
        return ()
    deep = allowance - sum(turned[1:])
    return (deep, *turned[1:]) if deep > 0.0 else (allowance,)


def _used(garment: Garment) -> Iterator[tuple[str, str, _Allowed, PartRef]]:
    for seam in garment.seams:
        for index, side in enumerate(seam.sides):
            width = seam.making.second if index and seam.making.second is not None else seam.making.allowance
            for ref in side:
                yield "seam", seam.name, (_own(seam, ref) or width, ()), ref
    for finish in sorted(garment.finishes, key=lambda finish: finish.closing is not None):
        for ref in finish.along:
            allowed = _own(finish, ref) or finish.making.allowance, finish.making.turned
            yield finish.kind, finish.name, allowed, ref


def _own(made: Seam | Finish, ref: PartRef) -> Expression | None:
    """The allowance that is stated for the edge."""
    named = (one.width for one in made.allowances if (one.edge.piece, one.edge.name) == (ref.piece, ref.name))
    return next(named, None)
