"""Owns what is placed on what: shapes, a strip, a layout. Frozen values in millimetres and degrees.

Knows nothing of how a layout is found.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

from specc.geometry.point import Point
from specc.geometry.region import polygon_area

if TYPE_CHECKING:
    from collections.abc import Iterable


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
