"""Owns what shapes on a rectangle leave over at 45 degrees: strips between them, the longest first.

Knows nothing of cloth. Sheared so that a strip stands upright, its ends along x, every strip is a rectangle
in a column, and what lies in the column bars an interval of its height.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, sqrt
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

_SLANT: Final = sqrt(2.0)
_A_STRIP, _COLUMNS = 4, 500  # columns that begin in the width of a strip, at most; in all, as far as it goes
_ROUGH = 1.0  # mm by which shapes are taken larger, to have fewer corners
_CLEAR = 1e-6  # mm

_Interval = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Slanting:
    """A strip at 45 degrees with ends along x; `length` is that of either edge."""

    outline: tuple[Point, ...]
    length: float


def slanting_strips(
    shapes: Iterable[Sequence[Point]], size: Point, *, wide: float, gap: float
) -> Iterator[Slanting]:
    """Strips, `wide` across, that lie free on the rectangle from the origin to `size`, `gap` off all shapes.

    One after the other the longest is found, rising or falling, of those that begin at places a quarter of a
    strip apart, on a large rectangle further; none is shorter than it is wide.
    """
    barred = tuple(_kept_clear(shapes, gap))
    ways = tuple(_Columns(barred, size, wide, rise=rise) for rise in (1.0, -1.0))
    while True:
        columns = max(ways, key=lambda each: each.longest)
        if columns.longest * _SLANT < wide:
            return
        strip = Slanting(columns.longest_outline(), columns.longest * _SLANT)
        yield strip
        for each in ways:
            each.bar(strip.outline)


class _Columns:
    """The free intervals of all columns of strips that rise by `rise` for every step along x."""

    def __init__(self, barred: Iterable[Sequence[Point]], size: Point, wide: float, *, rise: float) -> None:
        self._rise = rise
        self._wide = wide * _SLANT
        low, high = (-size.y, size.x) if rise > 0.0 else (0.0, size.x + size.y)
        often = min(_A_STRIP, max(1, floor(_COLUMNS * self._wide / (high - low))))
        self._low, self._step = low, self._wide / often
        count = max(0, floor((high - low - self._wide) / self._step + _CLEAR) + 1)
        self._starts = [low + self._step * number for number in range(count)]
        self._free = [self._inside(start, size) for start in self._starts]
        self._longest = [_longest(free) for free in self._free]
        for shape in barred:
            self._bar(self._sheared(shape))

    @property
    def longest(self) -> float:
        """The height of the longest free interval."""
        return max(self._longest, default=0.0)

    def longest_outline(self) -> tuple[Point, ...]:
        """The strip in the first of the longest free intervals, as it lies on the rectangle."""
        index = self._longest.index(self.longest)
        start = self._starts[index]
        low, high = max(self._free[index], key=lambda each: each[1] - each[0])
        end = start + self._wide
        corners = ((start, low), (end, low), (end, high), (start, high))
        return tuple(Point(across + self._rise * up, up) for across, up in corners)

    def bar(self, outline: Sequence[Point]) -> None:
        """Take a convex outline out of what is free."""
        self._bar(self._sheared(outline))

    def _sheared(self, outline: Iterable[Point]) -> tuple[Point, ...]:
        return tuple(Point(p.x - self._rise * p.y, p.y) for p in outline)

    def _inside(self, start: float, size: Point) -> list[_Interval]:
        """The heights between which a column lies on the rectangle."""
        end = start + self._wide
        low, high = (-start, size.x - end) if self._rise > 0.0 else (end - size.x, start)
        low, high = max(low, 0.0), min(high, size.y)
        return [(low, high)] if high - low > _CLEAR else []

    def _bar(self, sheared: Sequence[Point]) -> None:
        left, right = min(p.x for p in sheared), max(p.x for p in sheared)
        first = max(0, floor((left - self._wide - self._low) / self._step))
        last = min(len(self._starts), ceil((right - self._low) / self._step) + 1)
        for index in range(first, last):
            start = self._starts[index]
            heights = _heights(sheared, start + _CLEAR, start + self._wide - _CLEAR)
            if heights is not None:
                self._free[index] = list(_without(self._free[index], heights))
                self._longest[index] = _longest(self._free[index])


def _longest(free: Iterable[_Interval]) -> float:
    return max((high - low for low, high in free), default=0.0)


def _heights(outline: Sequence[Point], left: float, right: float) -> _Interval | None:
    """Between which heights a convex outline lies in a column; None where it does not."""
    found = [p.y for p in outline if left <= p.x <= right]
    for start, end in pairwise((*outline, outline[0])):
        found += (
            start.y + (end.y - start.y) * (at - start.x) / (end.x - start.x)
            for at in (left, right)
            if min(start.x, end.x) < at < max(start.x, end.x)
        )
    return (min(found), max(found)) if found else None


def _without(free: Iterable[_Interval], barred: _Interval) -> Iterator[_Interval]:
    for low, high in free:
        yield from (
            each
            for each in ((low, min(high, barred[0])), (max(low, barred[1]), high))
            if each[1] - each[0] > _CLEAR
        )


def _kept_clear(shapes: Iterable[Sequence[Point]], gap: float) -> Iterator[tuple[Point, ...]]:
    """Triangles that cover the shapes and the gap round each."""
    from shapely import Polygon, constrained_delaunay_triangles  # noqa: PLC0415 - slow to import

    for shape in shapes:
        whole = Polygon([(p.x, p.y) for p in shape])
        grown = whole.buffer(gap + _ROUGH, join_style="mitre").simplify(_ROUGH)
        for triangle in constrained_delaunay_triangles(grown).geoms:
            yield tuple(Point(x, y) for x, y in triangle.exterior.coords[:-1])
