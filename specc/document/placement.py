"""Owns where labels go: each takes the candidate place that disturbs least.

Knows nothing of what they say.

The same drawing gives the same places: candidates are tried by rising cost of their own, the first of the
best wins, and what is placed is never moved again.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from math import cos, hypot, inf, sin
from typing import TYPE_CHECKING

from specc.document.drawing import Bend, Label
from specc.document.lettering import height_of, width_of
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from specc.document.drawing import Trace
    from specc.document.lettering import Lettering

_AIR = 0.5  # kept free round a label, millimetres of paper
_BEND_STEPS = 16
_LABEL_ON_LABEL = 100.0  # what it costs to lie on another label; on a line it costs the line's own weight


@dataclass(frozen=True, slots=True)
class Box:
    """A turned rectangle: middle, half width, half height, angle."""

    middle: Point
    wide: float
    high: float
    angle: float

    @property
    def reach(self) -> float:
        """From the middle to a corner."""
        return hypot(self.wide, self.high)

    def local(self, point: Point) -> Point:
        """The point as seen from the middle, along the box's own sides."""
        return (point - self.middle).turned(-self.angle)

    def corners(self) -> tuple[Point, ...]:
        """The four corners."""
        c, s = cos(self.angle), sin(self.angle)
        along, across = Point(c, s) * self.wide, Point(-s, c) * self.high
        return tuple(self.middle + along * a + across * b for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)))

    def touches(self, other: Box) -> bool:
        """Whether the two rectangles share a point: no side of either parts them."""
        if self.middle.distance(other.middle) > self.reach + other.reach:
            return False
        return not (self._parts(other) or other._parts(self))

    def _parts(self, other: Box) -> bool:
        corners = [self.local(corner) for corner in other.corners()]
        return (
            min(c.x for c in corners) > self.wide
            or max(c.x for c in corners) < -self.wide
            or min(c.y for c in corners) > self.high
            or max(c.y for c in corners) < -self.high
        )

    def may_meet(self, start: Point, end: Point) -> bool:
        """Whether a run comes near the rectangle, which stands upright."""
        x, y = self.middle.x, self.middle.y
        return not (
            (start.x < x - self.wide and end.x < x - self.wide)
            or (start.x > x + self.wide and end.x > x + self.wide)
            or (start.y < y - self.high and end.y < y - self.high)
            or (start.y > y + self.high and end.y > y + self.high)
        )

    def meets(self, start: Point, end: Point) -> bool:
        """Whether a straight run passes through the rectangle (clipping after Liang and Barsky, 1984)."""
        a, b = self.local(start), self.local(end)
        low, high = 0.0, 1.0
        for from_, to, half in ((a.x, b.x, self.wide), (a.y, b.y, self.high)):
            step = to - from_
            if step == 0.0:
                if abs(from_) > half:
                    return False
                continue
            enter, leave = sorted(((-half - from_) / step, (half - from_) / step))
            low, high = max(low, enter), min(high, leave)
            if low > high:
                return False
        return True


def box_of(label: Label) -> Box:
    """The room that a label takes, with a little air."""
    wide = width_of(label.text, label.lettering) / 2 + _AIR
    return Box(label.at, wide, height_of(label.lettering) / 2 + _AIR, label.angle)


@dataclass(frozen=True, slots=True)
class Place:
    """A place that a label may take; `cost` is what it costs by itself, being less good than another."""

    at: Point
    angle: float = 0.0
    cost: float = 0.0


@dataclass(slots=True)
class Placer:
    """The lines and labels so far, on paper of `width` by `height`."""

    width: float
    height: float
    labels: list[Label] = field(default_factory=list)
    _runs: list[tuple[Point, Point, float]] = field(default_factory=list)
    _boxes: list[Box] = field(default_factory=list)

    def avoid(self, traces: Iterable[Trace], weight: float = 1.0) -> None:
        """Labels placed from now on keep off these lines, the more the greater the weight."""
        for trace in traces:
            points = flattened(trace)
            self._runs += ((a, b, weight) for a, b in pairwise(points))

    def put(self, *labels: Label) -> None:
        """The labels stand where they are."""
        self.labels += labels
        self._boxes += map(box_of, labels)

    def place(
        self, text: str, lettering: Lettering, places: Sequence[Place], *, ground: bool = False
    ) -> Label:
        """The label at the best of its places, which must not be empty."""
        tried = (
            ((Label(text, place.at, lettering, place.angle, ground),), place.cost)
            for place in sorted(places, key=_own_cost)
        )
        return self._best(tried)[0]

    def place_stack(
        self, lines: Sequence[tuple[str, Lettering]], places: Sequence[Place], *, leading: float
    ) -> tuple[Label, ...]:
        """Lines one below the other, `leading` apart; `places` are for the middle of the first.

        They stand on white ground, so that what is said stays legible where a line cannot be kept off.
        """
        tried = (
            (
                tuple(
                    Label(text, Point(place.at.x, place.at.y + leading * index), lettering, ground=True)
                    for index, (text, lettering) in enumerate(lines)
                ),
                place.cost,
            )
            for place in sorted(places, key=_own_cost)
        )
        return self._best(tried)

    def _best(self, tried: Iterable[tuple[tuple[Label, ...], float]]) -> tuple[Label, ...]:
        """The labels that cost least, put; what is tried comes by rising cost of its own."""
        best: tuple[Label, ...] = ()
        least = inf
        for labels, own in tried:
            if own >= least:  # no later one can be better
                break
            cost = own + sum(map(self._cost, labels))
            if cost < least:
                best, least = labels, cost
        self.put(*best)
        return best

    def _cost(self, label: Label) -> float:
        box = box_of(label)
        cost = sum(_LABEL_ON_LABEL for other in self._boxes if box.touches(other))
        # Most runs are far away, and an upright box tells so at once.
        near = Box(box.middle, box.reach, box.reach, 0.0)
        cost += sum(w for a, b, w in self._runs if near.may_meet(a, b) and box.meets(a, b))
        outside = [c for c in box.corners() if not (0 <= c.x <= self.width and 0 <= c.y <= self.height)]
        return cost + _LABEL_ON_LABEL * len(outside)


def _own_cost(place: Place) -> float:
    return place.cost


def flattened(trace: Trace) -> tuple[Point, ...]:
    """Points along a trace, its bends in even steps."""
    points = [trace.start]
    for run in trace.runs:
        if isinstance(run, Bend):
            points += _bent(points[-1], run)
        else:
            points.append(run)
    return (*points, trace.start) if trace.closed else tuple(points)


def _bent(start: Point, bend: Bend) -> Iterable[Point]:
    for step in range(1, _BEND_STEPS + 1):
        t = step / _BEND_STEPS
        s = 1.0 - t
        yield (
            start * (s * s * s)
            + bend.first * (3 * s * s * t)
            + bend.second * (3 * s * t * t)
            + bend.to * (t * t * t)
        )
