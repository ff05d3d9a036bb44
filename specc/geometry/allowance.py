"""Owns the cut line round a closed outline whose runs have each their allowance; knows no seams."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.region import polygon_area
from specc.geometry.tolerance import GRID, SAME

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.path import Path

MITRE_LIMIT: Final = 2.5
"""A mitre reaches this many times the wider allowance from its corner; a longer one is squared off there."""


GRID_DIGITS: Final = 4  # decimals of GRID


@dataclass(frozen=True, slots=True)
class Allowed:
    """A run of an outline and the allowance outside it, in millimetres; 0 for none."""

    run: Path
    width: float


def cut_line(outline: tuple[Allowed, ...]) -> tuple[Point, ...]:
    """The corners of a simple polygon that holds the outline and its allowances, in the outline's direction.

    The runs follow each other and the last ends where the first starts. Corners are mitred. Where the
    allowance is wider than a hollow of the outline, the hollow is filled. Coordinates are multiples of GRID.
    """
    from shapely import Polygon, difference, union_all  # noqa: PLC0415 - slow to import, rarely needed

    runs = [(list(allowed.run.flattened()), allowed.width) for allowed in outline]
    net = [p for points, _ in runs for p in points[:-1]]
    turn = 1.0 if polygon_area(net) > 0.0 else -1.0
    whole = Polygon([(p.x, p.y) for p in net])
    shapes = [whole]
    sides = [_sides(points, width) for points, width in runs]
    ends = [_Corner.between(a[-1], b[0], turn) for a, b in zip(sides, sides[1:] + sides[:1], strict=True)]
    for index, run in enumerate(sides):
        strips = [Polygon(_pairs(side.strip(turn))) for side in run if side.width > 0.0]
        inner = [_Corner.between(a, b, turn) for a, b in itertools.pairwise(run)]
        strips += [Polygon(_pairs(fill)) for fill in (corner.fill() for corner in inner) if fill]
        if not strips:
            continue
        strip = union_all(strips)
        for surplus in (ends[index - 1].surplus_after(), ends[index].surplus_before()):
            if surplus:
                strip = difference(strip, Polygon(_pairs(surplus)))
        shapes.append(strip)
    shapes += [Polygon(_pairs(fill)) for fill in (corner.fill() for corner in ends) if fill]
    joined = union_all(shapes, grid_size=GRID)
    held = max(getattr(joined, "geoms", [joined]), key=lambda shape: shape.area)
    points = [Point(round(x, GRID_DIGITS), round(y, GRID_DIGITS)) for x, y in held.exterior.coords[:-1]]
    return _from_first(_cornered(points), net[0], turn)


@dataclass(frozen=True, slots=True)
class _Side:
    """A straight run of the flattened outline."""

    start: Point
    end: Point
    width: float

    @property
    def direction(self) -> Point:
        return (self.end - self.start).unit()

    def outward(self, turn: float) -> Point:
        return self.direction.left() * (-turn * self.width)

    def strip(self, turn: float) -> tuple[Point, ...]:
        away = self.outward(turn)
        return self.start, self.end, self.end + away, self.start + away


@dataclass(frozen=True, slots=True)
class _Corner:
    """A corner and what the mitre adds to, and takes from, the strips that meet there."""

    at: Point
    before: _Side
    after: _Side
    turn: float
    tip: Point | None

    @staticmethod
    def between(before: _Side, after: _Side, turn: float) -> _Corner:
        u, v = before.direction, after.direction
        bend = u.cross(v) * turn
        tip = None
        if bend > SAME:
            a, b = before.outward(turn), after.outward(turn)
            # Where the two outer lines meet: at + a + u * reach.
            reach = (b - a).cross(v) / u.cross(v)
            tip = before.end + a + u * reach
        return _Corner(before.end, before, after, turn, tip)

    def fill(self) -> tuple[Point, ...]:
        """The area between the strips, out to the mitre's tip or where it is squared off; maybe empty."""
        if self.tip is None or max(self.before.width, self.after.width) <= 0.0:
            return ()
        a, b = self.at + self.before.outward(self.turn), self.at + self.after.outward(self.turn)
        u, v = self.before.direction, self.after.direction
        far = self.tip - self.at
        if (self.tip - a).dot(u) < 0.0 or (b - self.tip).dot(v) < 0.0:
            # One strip is so much narrower that its outer line ends inside the other strip.
            if far.norm() <= self.limit and self.before.width > self.after.width:
                a = self._met(self.before, v)
            elif far.norm() <= self.limit:
                b = self._met(self.after, u)
            return _with_area(self.at, a, b)
        if far.norm() <= self.limit:
            return _with_area(self.at, a, self.tip, b)
        out = far.unit()
        stop = [p + d * ((self.limit - (p - self.at).dot(out)) / d.dot(out)) for p, d in ((a, u), (b, -v))]
        return _with_area(self.at, a, stop[0], stop[1], b)

    @property
    def limit(self) -> float:
        """How far a mitre may reach from the corner."""
        return MITRE_LIMIT * max(self.before.width, self.after.width)

    def surplus_before(self) -> tuple[Point, ...]:
        """What the strip before the corner has beyond the outer line of the strip after it."""
        return self._surplus(self.before, self.before.direction, self.after.direction)

    def surplus_after(self) -> tuple[Point, ...]:
        """What the strip after the corner has beyond the outer line of the strip before it."""
        return self._surplus(self.after, -self.after.direction, self.before.direction)

    def _surplus(self, side: _Side, toward: Point, other: Point) -> tuple[Point, ...]:
        if self.tip is None or side.width <= 0.0:
            return ()
        end = self.at + side.outward(self.turn)
        if (self.tip - end).dot(toward) >= -SAME or self.tip.distance(self.at) > self.limit:
            return ()
        met = self._met(side, other)
        # A quarter larger than the triangle, since a curved strip does not end in straight lines.
        return _with_area(met, met + (self.tip - met) * 1.25, met + (end - met) * 1.25)

    def _met(self, side: _Side, other: Point) -> Point:
        """Where the other strip's outer line, of direction `other`, cuts the end of this side's strip."""
        assert self.tip is not None
        rise = side.outward(self.turn).unit()
        return self.at + rise * max(0.0, (self.tip - self.at).cross(other) / rise.cross(other))


def _with_area(*points: Point) -> tuple[Point, ...]:
    """The polygon, or nothing where it is too thin to matter."""
    return points if abs(polygon_area(points)) > GRID * GRID else ()


def _sides(points: Iterable[Point], width: float) -> list[_Side]:
    kept = list(points)
    return [_Side(a, b, width) for a, b in itertools.pairwise(kept) if a.distance(b) > SAME]


def _pairs(points: Iterable[Point]) -> list[tuple[float, float]]:
    return [(p.x, p.y) for p in points]


def _cornered(points: list[Point]) -> list[Point]:
    """The polygon without corners that lie exactly on a straight run."""
    triples = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    return [b for a, b, c in triples if (b - a).cross(c - b) != 0.0]


def _from_first(points: list[Point], first: Point, turn: float) -> tuple[Point, ...]:
    """The polygon in the outline's direction, from the corner nearest to the outline's first point."""
    if polygon_area(points) * turn < 0.0:
        points.reverse()
    nearest = min(range(len(points)), key=lambda i: (points[i].distance(first), points[i].x, points[i].y))
    return tuple(points[nearest:] + points[:nearest])
