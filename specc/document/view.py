"""Owns the way from a garment's millimetres to paper: a scale and a place. Knows nothing of what is drawn.

Garment y runs up, paper y runs down.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.drawing import Bend, Trace
from specc.geometry.point import Point
from specc.geometry.segment import Cubic

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.path import Path

# Reduction scales of ISO 5455 (1:2, 1:5, 1:10, 1:20, 1:50; from memory), with the quarters and eighths of
# pattern rulers between them (common practice, no source).
SCALES = tuple(Fraction(1, reduction) for reduction in (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 50, 100))


@dataclass(frozen=True, slots=True)
class View:
    """The garment point `corner` (left, top) lands at `at` on paper."""

    scale: Fraction
    corner: Point
    at: Point

    def point(self, point: Point) -> Point:
        """Where a point lands."""
        factor = float(self.scale)
        return Point(
            self.at.x + (point.x - self.corner.x) * factor, self.at.y + (self.corner.y - point.y) * factor
        )

    def trace(self, path: Path, *, closed: bool = False) -> Trace:
        """Where a path lands; curves stay curves."""
        runs = tuple(
            Bend(self.point(segment.leaving), self.point(segment.arriving), self.point(segment.end))
            if isinstance(segment, Cubic)
            else self.point(segment.end)
            for segment in path.segments
        )
        return Trace(self.point(path.start), runs, closed)

    def polygon(self, corners: Iterable[Point]) -> Trace:
        """Where a closed polygon lands."""
        first, *rest = (self.point(corner) for corner in corners)
        return Trace(first, tuple(rest), closed=True)


def scale_for(width: float, height: float, room: Point) -> Fraction:
    """The largest usual scale at which `width` by `height` of garment fit into `room` of paper."""
    fitting = (scale for scale in SCALES if width * scale <= room.x and height * scale <= room.y)
    return next(fitting, SCALES[-1])


def box(points: Iterable[Point]) -> tuple[Point, Point]:
    """The lower left and upper right corner of the upright box round points."""
    seen = tuple(points)
    xs, ys = [point.x for point in seen], [point.y for point in seen]
    return Point(min(xs), min(ys)), Point(max(xs), max(ys))


def said(scale: Fraction) -> str:
    """A scale as drawings state it: `1:4`."""
    return f"{scale.numerator}:{scale.denominator}"
