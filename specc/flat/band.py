"""Owns how a band lies along an edge: as deep as it is on the average; knows nothing of seams."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.flat.chains import distinct, moved_off
from specc.flat.laid import LaidEdge, LaidPiece, Role
from specc.geometry.crossing import line_crossings
from specc.geometry.point import Point
from specc.geometry.region import centroid
from specc.pattern.lookup import edge_named
from specc.pattern.measure import place_on_edge, stitched_length
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from specc.flat.laid import Chain
    from specc.pattern.piece import Piece


_MIDDLE: Final = 0.5  # mm; what ends so near the middle of the garment goes on beyond it


@dataclass(frozen=True, slots=True)
class Band:
    """A band by its piece, its long edges, and how deep it is as seen, in millimetres."""

    piece: str
    inner: str
    outer: str
    deep: float


def band_along(band: Band, onto: Chain, *, beside: LaidPiece) -> LaidPiece:
    """The band beyond a laid chain, on the other side of it than the piece `beside`.

    At the middle of the garment it ends upright.
    """
    onto = distinct(onto)
    away = centroid(beside.outline) - onto[len(onto) // 2]
    way = onto[min(len(onto) // 2 + 1, len(onto) - 1)] - onto[max(len(onto) // 2 - 1, 0)]
    outside = moved_off(onto, band.deep, left=way.cross(away) < 0.0)
    outside = tuple(
        Point(0.0, point.y) if abs(seam.x) <= _MIDDLE else point
        for point, seam in zip(outside, onto, strict=True)
    )
    return LaidPiece(
        band.piece,
        (
            LaidEdge(band.inner, onto, Role.SEAM),
            LaidEdge(f"{band.inner}-end", (onto[-1], outside[-1]), _end(onto[-1])),
            LaidEdge(band.outer, outside[::-1], Role.OPEN),
            LaidEdge(f"{band.inner}-start", (outside[0], onto[0]), _end(onto[0])),
        ),
    )


def _end(point: Point) -> Role:
    return Role.NOTHING if abs(point.x) <= _MIDDLE else Role.TURN


def depth_of(piece: Piece, name: str) -> float:
    """How deep a piece is, in millimetres, square to the middle of one of its edges; 0 without the edge."""
    edge = edge_named(piece, name)
    if edge is None:
        return 0.0
    place = place_on_edge(edge, 0.5 * stitched_length(edge))
    met = line_crossings(drawn_outline(piece), place.at, place.direction.left())
    return max((abs(crossing.across) for crossing in met), default=0.0)
