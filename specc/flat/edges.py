"""Owns which edges of the pieces lie at the middle of a garment, and what each edge is in a drawing of it.

Knows nothing of where a piece lies.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from specc.flat.laid import Role

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.flat.laid import LaidEdge, LaidPiece
    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

Sides = tuple[tuple["PartRef", ...], tuple["PartRef", ...]]


@dataclass(frozen=True, slots=True)
class Middle:
    """The edges of a piece that lie at the middle of the garment, in the order of its outline.

    `fold` says that it is the fold of the cloth; `closure` is what closes there, where no seam does.
    """

    edges: tuple[str, ...]
    fold: bool = False
    closure: str | None = None


def middle_of(piece: Piece, garment: Garment) -> Middle | None:
    """Where a piece meets its mirror image: at its fold, in a seam, in a closure; None where it does not."""
    if piece.fold:
        return Middle((piece.fold,), fold=True)
    sewn = {
        ref.name
        for seam in garment.seams
        if _names(seam.first) == _names(seam.second)
        for ref in seam.first
        if ref.piece == piece.name
    }
    closing = {ref.name: name for ref, name in _closing(garment) if ref.piece == piece.name}
    names = tuple(edge.name for edge in piece.edges if edge.name in sewn or edge.name in closing)
    if not names:
        return None
    return Middle(names, closure=None if sewn else closing[names[0]])


def both_ways(seam: Seam) -> Iterator[Sides]:
    """The first two sides of a seam, either of them first."""
    yield seam.first, seam.second
    yield seam.second, seam.first


def with_roles(
    piece: LaidPiece, middle: Middle | None, garment: Garment, laid: Mapping[str, LaidPiece]
) -> LaidPiece:
    """The piece with what each of its own edges is, beside what else is laid."""
    fold = middle.edges if middle is not None and middle.fold else ()
    return replace(
        piece,
        edges=tuple(
            edge
            if edge.role is not Role.OPEN
            else replace(edge, role=Role.NOTHING)
            if edge.name in fold
            else replace(edge, role=_role(piece.name, edge, garment, laid))
            for edge in piece.edges
        ),
    )


def _role(piece: str, edge: LaidEdge, garment: Garment, laid: Mapping[str, LaidPiece]) -> Role:
    if any((ref.piece, ref.name) == (piece, edge.name) for ref, _ in _closing(garment)):
        return Role.CLOSED
    for seam in garment.seams:
        for own, onto in both_ways(seam):
            if not any((ref.piece, ref.name) == (piece, edge.name) for ref in own):
                continue
            if _names(own) == _names(onto):
                return Role.MIDDLE
            beside = [there.edge(ref.name) for ref in onto if (there := laid.get(ref.piece or ""))]
            return Role.SEAM if any(beside) else Role.TURN
    return Role.OPEN


def _closing(garment: Garment) -> Iterator[tuple[PartRef, str]]:
    """The edges that close on themselves, each with its closure."""
    for finish in garment.finishes:
        if finish.closing is not None and finish.closing.on_itself:
            yield from ((ref, finish.name) for ref in finish.closing.first)


def _names(refs: tuple[PartRef, ...]) -> tuple[tuple[str | None, str], ...]:
    return tuple((ref.piece, ref.name) for ref in refs)
