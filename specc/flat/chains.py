"""Owns what is measured on chains of straight runs; knows nothing of pieces."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.flat.laid import Chain
    from specc.geometry.point import Point


@dataclass(frozen=True, slots=True)
class Measured:
    """A chain, and how far along it each of its points lies."""

    points: Chain
    stops: tuple[float, ...]

    @property
    def length(self) -> float:
        """The length of the chain."""
        return self.stops[-1]

    def at(self, along: float) -> Point:
        """The point so far along; beyond an end, that end."""
        index = min(max(bisect_right(self.stops, along) - 1, 0), len(self.points) - 2)
        span = self.stops[index + 1] - self.stops[index]
        share = (along - self.stops[index]) / span if span > SAME else 0.0
        return self.points[index].toward(self.points[index + 1], min(1.0, max(0.0, share)))

    def nearest(self, point: Point) -> tuple[float, float]:
        """How far along it comes nearest to a point, and how near."""
        found = (0.0, self.points[0].distance(point))
        for index, (start, end) in enumerate(pairwise(self.points)):
            way = end - start
            square = way.dot(way)
            share = min(1.0, max(0.0, (point - start).dot(way) / square)) if square > 0.0 else 0.0
            distance = start.toward(end, share).distance(point)
            if distance < found[1]:
                found = (self.stops[index] + share * (self.stops[index + 1] - self.stops[index]), distance)
        return found


def measured(points: Chain) -> Measured:
    """A chain of at least two points, measured."""
    steps = (before.distance(after) for before, after in pairwise(points))
    return Measured(points, tuple(accumulate(steps, initial=0.0)))


def distinct(points: Chain) -> Chain:
    """The chain without points that lie on the one before them."""
    return (points[0], *(after for before, after in pairwise(points) if after.distance(before) > SAME))


def length_of(points: Chain) -> float:
    """The length of a chain."""
    return sum(before.distance(after) for before, after in pairwise(points))


def joined(chains: Iterable[Chain]) -> Chain:
    """Chains that follow each other as one, each turned round where its other end lies nearer."""
    first, *rest = chains
    if rest and _gap(first[0], rest[0]) < _gap(first[-1], rest[0]):
        first = first[::-1]
    whole = list(first)
    for chain in rest:
        whole += chain if whole[-1].distance(chain[0]) <= whole[-1].distance(chain[-1]) else chain[::-1]
    return tuple(whole)


def _gap(point: Point, chain: Chain) -> float:
    return min(point.distance(chain[0]), point.distance(chain[-1]))


def moved_off(points: Chain, by: float, *, left: bool) -> Chain:
    """A chain of distinct points moved off so far to one side; each corner along the middle of its angle."""
    ways = [(after - before).unit() for before, after in pairwise(points)]
    off = []
    for index, point in enumerate(points):
        before, after = ways[max(index - 1, 0)], ways[min(index, len(ways) - 1)]
        middle = before + after
        if middle.norm() <= SAME:
            middle = after
        normal = middle.unit().left()
        stretch = max(normal.dot(after.left()), 0.5)
        off.append(point + normal * ((by if left else -by) / stretch))
    return tuple(off)
