"""Owns how the darts of a piece are closed for a drawing: cloth is moved over to where the legs meet.

Knows nothing of seams. A dart makes cloth round, so no flat drawing keeps all lengths. This one keeps those
of the sewn edges at the mouth and all widths across the dart: what lies on one side of the dart is shifted
over, at each level by what the dart takes in there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.flat.laid import LaidEdge, LaidLine, LaidPiece, Mark
from specc.geometry.tolerance import SAME
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from specc.flat.laid import Chain
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.pattern.piece import Piece, TwoPointedDart

DRAWN: Final = 0.4  # mm of garment: curves are drawn by straight runs this near to them


@dataclass(frozen=True, slots=True)
class _Wedge:
    """What a dart takes in: `width` across at `high` from its tip along the axis.

    Beyond that as much as there where it runs out of an edge; else nothing again at `end`.
    """

    tip: Point
    axis: Point  # unit, from the tip to the mouth
    over: Point  # unit, square to the axis: from the side that is moved to the one that stays
    width: float
    high: float
    end: float | None

    def __call__(self, point: Point) -> Point:
        """Where a point comes to lie."""
        off = point - self.tip
        along = off.dot(self.axis)
        if along <= 0.0 or off.dot(self.over) >= 0.0:
            return point
        return point + self.over * self._taken(along)

    def _taken(self, along: float) -> float:
        if along <= self.high:
            return self.width * along / self.high
        if self.end is None:
            return self.width
        return self.width * max(0.0, self.end - along) / max(self.end - self.high, SAME)


def drawn(path: Path) -> Chain:
    """A path as straight runs."""
    return path.flattened(DRAWN)


def closed(piece: Piece, lines: tuple[LaidLine, ...], *, outward: float) -> LaidPiece:
    """The piece with its darts closed; `lines` lie on it as drafted.

    `outward` is 1 where the side of the garment lies at greater x than its middle, else -1. What lies beside
    a dart is moved toward the middle; what lies above a level one, down.
    """
    laid = LaidPiece(
        piece.name,
        tuple(
            LaidEdge(edge.name, tuple(point for part in edge.parts for point in drawn(part)))
            for edge in piece.edges
        ),
        lines,
    )
    darts: tuple[Dart | TwoPointedDart, ...] = (*piece.darts, *piece.two_pointed)
    corners = {dart.name: _corners(dart) for dart in darts}
    for dart in darts:
        tip, first, second, end = corners[dart.name]
        wedge = _wedge(tip, first, second, end, outward)
        if wedge is None:
            continue
        laid = laid.mapped(wedge)
        corners = {name: tuple(map(wedge, points)) for name, points in corners.items()}
        tip, first, _, end = corners[dart.name]
        seam = (tip, first) if isinstance(dart, Dart) else (tip, first, end)
        laid = LaidPiece(laid.name, laid.edges, (*laid.lines, LaidLine(Mark.DART, dart.name, seam)))
    return laid


def _corners(dart: Dart | TwoPointedDart) -> tuple[Point, ...]:
    """The tip, the two points where it is widest, and its other end (the middle of the mouth)."""
    if isinstance(dart, Dart):
        return dart.pivot, dart.first, dart.second, dart.first.toward(dart.second, 0.5)
    return dart.top, dart.first, dart.second, dart.bottom


def _wedge(tip: Point, first: Point, second: Point, end: Point, outward: float) -> _Wedge | None:
    width, long = first.distance(second), tip.distance(end)
    if width <= SAME or long <= SAME:
        return None
    axis = (end - tip).unit()
    over = axis.left()
    level = abs(axis.x) > abs(axis.y)
    # What stays lies below a level dart, and toward the middle of an upright one.
    if (over.y > 0.0) if level else (over.x * outward > 0.0):
        over = -over
    middle = first.toward(second, 0.5)
    high = (middle - tip).dot(axis)
    return _Wedge(tip, axis, over, width, high, None if end.distance(middle) <= SAME else long)
