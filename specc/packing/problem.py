"""Owns what is placed on what: shapes, a strip, a layout. Frozen values in millimetres and degrees.

Knows nothing of how a layout is found.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.region import bounds, polygon_area

if TYPE_CHECKING:
    from collections.abc import Iterable

_WORTH: Final = 1.0  # mm of cloth


@dataclass(frozen=True, slots=True)
class Shape:
    """A simple polygon to be placed `count` times, turned by one of `angles` (degrees, counter-clockwise).

    The first point is not repeated. The angles turn about the origin of the outline. A `pinned` shape lies
    with its lowest side on the lower edge of the strip, without a gap: a fold.
    """

    name: str
    outline: tuple[Point, ...]
    count: int
    angles: tuple[float, ...]
    pinned: bool = False


@dataclass(frozen=True, slots=True)
class Strip:
    """Shapes to be placed on a strip: x runs along it from 0, y across it from 0 to `width`.

    `gap` is kept free between shapes, and between a shape and each side and end of the strip.
    """

    width: float
    gap: float
    shapes: tuple[Shape, ...]

    @property
    def area(self) -> float:
        """Of all shapes, each as often as it is placed."""
        return sum(abs(polygon_area(shape.outline)) * shape.count for shape in self.shapes)

    def is_shortest(self, length: float) -> bool:
        """Whether no layout can be shorter than this length by as much as would be worth a search."""
        return length <= self._least + _WORTH

    @property
    def _least(self) -> float:
        """A length below which no layout can be: that of its longest shape, or that of its area."""
        longest = max(
            (min(_along(shape, angle) for angle in shape.angles) for shape in self.shapes), default=0.0
        )
        return max(longest + 2.0 * self.gap, self.area / self.width)


@dataclass(frozen=True, slots=True)
class Placed:
    """One copy of a shape: turned by `angle`, then moved by `at`."""

    shape: str
    angle: float
    at: Point


@dataclass(frozen=True, slots=True)
class Layout:
    """Copies on a strip of `length`."""

    length: float
    placed: tuple[Placed, ...]

    def share(self, strip: Strip) -> float:
        """How much of the strip the shapes cover, 0 to 1."""
        return strip.area / (strip.width * self.length) if self.length else 0.0


def _along(shape: Shape, angle: float) -> float:
    low, high = bounds(turned(shape.outline, angle))
    return high.x - low.x


def turned(outline: Iterable[Point], angle: float) -> tuple[Point, ...]:
    """The outline turned about the origin; right angles are exact."""
    quarter, rest = divmod(angle, 90.0)
    if rest == 0.0:
        c, s = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(quarter) % 4]
    else:
        c, s = cos(radians(angle)), sin(radians(angle))
    return tuple(Point(p.x * c - p.y * s, p.x * s + p.y * c) for p in outline)


def outline_of(strip: Strip, placed: Placed) -> tuple[Point, ...]:
    """The outline as it lies on the strip. Raises KeyError for a shape that the strip does not have."""
    outline = next((shape.outline for shape in strip.shapes if shape.name == placed.shape), None)
    if outline is None:
        raise KeyError(placed.shape)
    return tuple(p + placed.at for p in turned(outline, placed.angle))


def lain(point: Point, placed: Placed) -> Point:
    """Where a point of a shape lies on the strip."""
    return turned((point,), placed.angle)[0] + placed.at
