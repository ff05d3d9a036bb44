"""Owns how tightly a path bends: its tightest stretches, left and right, its corners; knows no outlines."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, inf, radians
from typing import TYPE_CHECKING, Final

from specc.geometry.segment import Line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.geometry.path import Path
    from specc.geometry.segment import Segment

CORNER: Final = radians(15.0)
"""A path that turns by so much at one point has a corner there; by less it is taken for a curve."""

_A_WINDOW, _LEAST, _MOST = 4, 12, 256  # samples of a curve


@dataclass(frozen=True, slots=True)
class Bend:
    """A stretch of a path, `start` millimetres on and `length` long, over which it turns by `turning`.

    Angles are radians, to the left positive.
    """

    start: float
    length: float
    turning: float

    @property
    def radius(self) -> float:
        """The radius of the circle that turns by as much over that length; endless where nothing turns."""
        return self.length / abs(self.turning) if self.turning else inf


@dataclass(frozen=True, slots=True)
class Corner:
    """A point of a path, `along` millimetres on, at which it turns by `turning` at once."""

    along: float
    turning: float


def corners(path: Path) -> tuple[Corner, ...]:
    """The corners of the path, in its order, both ends left out."""
    found, along = [], 0.0
    for before, after in pairwise(path.segments):
        along += before.length()
        turning = before.end_direction().angle_to(after.start_direction())
        if abs(turning) >= CORNER:
            found.append(Corner(along, turning))
    return tuple(found)


def tightest(path: Path, over: float) -> tuple[Bend, Bend]:
    """Of all stretches `over` millimetres long the one that turns furthest left and the one furthest right.

    Corners are left out of the account. A path that is shorter counts as one stretch. The angle turned is
    exact at samples a quarter of a stretch apart, and in proportion between them.
    """
    along, angle = _samples(path, over)
    whole = along[-1]
    length = min(over, whole)
    bends = [
        Bend(start, length, _behind(start + length, along, angle) - _before(start, along, angle))
        for start in (*(one for one in along if one < whole - length), whole - length)
    ]
    return max(bends, key=lambda bend: bend.turning), min(bends, key=lambda bend: bend.turning)


def _samples(path: Path, over: float) -> tuple[list[float], list[float]]:
    """Lengths from the start, rising, and how far the path has turned until there.

    Where it turns at a point that is no corner, that length stands twice.
    """
    along, angle = [0.0], [0.0]
    for index, segment in enumerate(path.segments):
        if index:
            turning = path.segments[index - 1].end_direction().angle_to(segment.start_direction())
            if abs(turning) < CORNER:
                along.append(along[-1])
                angle.append(angle[-1] + turning)
        reached, turned = along[-1], angle[-1]
        for share, more in _along(segment, over):
            along.append(reached + share * segment.length())
            turned += more
            angle.append(turned)
    return along, angle


def _along(segment: Segment, over: float) -> Iterator[tuple[float, float]]:
    """The share of its length at each sample of a segment, and what it has turned since the one before."""
    if isinstance(segment, Line):
        yield 1.0, 0.0
        return
    steps = min(_MOST, max(_LEAST, ceil(_A_WINDOW * segment.length() / over)))
    points = [segment.point_at(step / steps) for step in range(steps + 1)]
    ways = [segment.direction_at(step / steps) for step in range(steps + 1)]
    chords = [before.distance(after) for before, after in pairwise(points)]
    whole, run = sum(chords), 0.0
    for chord, (before, after) in zip(chords, pairwise(ways), strict=True):
        run += chord
        yield (run / whole if whole > 0.0 else 1.0), before.angle_to(after)


def _before(at: float, along: list[float], angle: list[float]) -> float:
    """How far the path has turned on the way to a place."""
    index = bisect_left(along, at)
    return angle[index] if along[index] == at else _between(at, index, along, angle)


def _behind(at: float, along: list[float], angle: list[float]) -> float:
    """How far it has turned there and on the way."""
    index = bisect_right(along, at)
    return angle[-1] if index == len(along) else _between(at, index, along, angle)


def _between(at: float, index: int, along: list[float], angle: list[float]) -> float:
    share = (at - along[index - 1]) / (along[index] - along[index - 1])
    return angle[index - 1] + share * (angle[index] - angle[index - 1])
