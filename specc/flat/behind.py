"""Owns what is seen of the other side of a garment through its openings: of the back, above a low front neck.

Knows nothing of paper.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.flat.laid import Beyond, Role
from specc.geometry.point import Point
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.flat.laid import Chain, LaidPiece, Side
    from specc.model.construction import Seam

_MIDDLE: Final = 2.0  # mm; an edge that ends so near to the middle goes on in its mirror image


def with_beyond(side: Side, other: Side, seams: tuple[Seam, ...]) -> Side:
    """The side with what is seen of the other one through its openings."""
    return replace(side, beyond=tuple(_beyond(side, other, seams)))


def _beyond(side: Side, other: Side, seams: tuple[Seam, ...]) -> Iterator[Beyond]:
    levels = [point.y for piece in side.pieces for point in piece.outline]
    centre = 0.5 * (min(levels) + max(levels))
    for piece in side.pieces:
        for name, chain in _to_the_middle(piece):
            for far in _across(piece, name, chain, other, seams):
                laid = _fitted(far, chain)
                if (laid[0].y - chain[0].y) * (chain[0].y - centre) > SAME:
                    yield Beyond((*chain, *laid[::-1]), laid)


def _to_the_middle(piece: LaidPiece) -> Iterator[tuple[str, Chain]]:
    """The open edges that run from the middle of the garment to where it turns, from the middle."""
    for edge in piece.edges:
        if edge.role is Role.OPEN and not piece.under and not piece.whole:
            chain = edge.points if abs(edge.points[0].x) <= abs(edge.points[-1].x) else edge.points[::-1]
            if abs(chain[0].x) <= _MIDDLE < abs(chain[-1].x):
                yield edge.name, chain


def _across(
    piece: LaidPiece, name: str, chain: Chain, other: Side, seams: tuple[Seam, ...]
) -> Iterator[Chain]:
    """The edge that goes on from the outer end of this one on the other side of the garment."""
    same = other.piece(piece.name)
    if same is not None:
        yield from (far for found, far in _to_the_middle(same) if found == name)
        return
    beside = [
        edge.name for edge in piece.edges if edge.role is Role.TURN and _touches(edge.points, chain[-1])
    ]
    for seam in seams:
        for own, onto in ((seam.first, seam.second), (seam.second, seam.first)):
            if any(ref.piece == piece.name and ref.name in beside for ref in own):
                for ref in onto:
                    there = other.piece(ref.piece or "")
                    turned = there.edge(ref.name) if there else None
                    if there is not None and turned is not None:
                        yield from (
                            far for _, far in _to_the_middle(there) if _touches(turned.points, far[-1])
                        )


def _touches(chain: Chain, point: Point) -> bool:
    return min(chain[0].distance(point), chain[-1].distance(point)) <= SAME


def _fitted(far: Chain, near: Chain) -> Chain:
    """The far edge with its ends at the middle and at the outer end of the near one."""
    wide = far[-1].x - far[0].x
    scale = near[-1].x / wide if abs(wide) > SAME else 1.0
    return tuple(Point((point.x - far[0].x) * scale, point.y - far[-1].y + near[-1].y) for point in far)
