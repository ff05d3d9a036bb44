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
    from specc.model.construction import Making
    from specc.model.expression import Expression, PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece
    from specc.source import Span

USED_TWICE = declare(
    "SPC513", "edge-used-twice", Severity.ERROR, "`{edge}` is both in {first} and in {second}"
)


def uses(
    garment: Garment, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]
) -> tuple[tuple[EdgeUse, ...], tuple[Diagnostic, ...]]:
    """One use for every edge, in the order of the pieces; an edge used twice is reported."""
    said: list[Diagnostic] = []
    found: dict[tuple[str, str], tuple[str, str, Making, Span]] = {}
    for kind, name, making, ref in _used(garment):
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
            found[key] = (kind, name, making, ref.origin)
    return tuple(_use(piece, edge.name, found, evaluate) for piece in pieces for edge in piece.edges), tuple(
        said
    )


def _use(
    piece: Piece,
    edge: str,
    found: dict[tuple[str, str], tuple[str, str, Making, Span]],
    evaluate: Callable[[Expression], float],
) -> EdgeUse:
    if piece.fold == edge:
        return EdgeUse(piece.name, edge, "fold", None, 0.0)
    if (piece.name, edge) not in found:
        return EdgeUse(piece.name, edge, "none", None, 0.0)
    kind, name, making, _ = found[piece.name, edge]
    turned = tuple(evaluate(depth) for depth in making.turned)
    return EdgeUse(piece.name, edge, kind, name, evaluate(making.allowance), turned)


def _used(garment: Garment) -> Iterator[tuple[str, str, Making, PartRef]]:
    for seam in garment.seams:
        for side in seam.sides:
            for ref in side:
                yield "seam", seam.name, seam.making, ref
    for finish in sorted(garment.finishes, key=lambda finish: finish.closing is not None):
        for ref in finish.along:
            yield finish.kind, finish.name, finish.making, ref
