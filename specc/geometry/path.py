"""Owns paths: lines and cubics end to end, measured and cut at lengths; knows no outlines."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from math import hypot, inf
from typing import TYPE_CHECKING

from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import FLATTEN, SAME

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point, Rigid
    from specc.geometry.segment import Segment

COARSE = 1.0  # mm; samples this close to a curve single out the stretch where it is nearest
PARALLEL = 1e-9  # sine of the angle below which two runs that meet are one straight run


@dataclass(frozen=True, slots=True)
class Path:
    """One or more segments; each begins where the one before it ends."""

    segments: tuple[Segment, ...]

    def __post_init__(self) -> None:
        """A path has segments and they hang together; anything else is a fault of the program."""
        assert self.segments, "a path without segments"
        for before, after in zip(self.segments, self.segments[1:], strict=False):
            assert before.end.distance(after.start) <= SAME, f"a gap in a path at {before.end}"

    @staticmethod
    def through(*points: Point) -> Path:
        """Straight runs from point to point; a run without length is left out."""
        pairs = itertools.pairwise(points)
        runs = tuple(Line(a, b) for a, b in pairs if a.distance(b) > SAME)
        return Path(runs or (Line(points[0], points[-1]),))

    @property
    def start(self) -> Point:
        """The first point."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """The last point."""
        return self.segments[-1].end

    @property
    def closed(self) -> bool:
        """Whether it ends where it starts."""
        return self.start.distance(self.end) <= SAME

    def length(self) -> float:
        """The length in millimetres, each curve to 1e-6."""
        return sum(segment.length() for segment in self.segments)

    def start_direction(self) -> Point:
        """The unit direction of travel at the start."""
        return self.segments[0].start_direction()

    def end_direction(self) -> Point:
        """The unit direction of travel at the end."""
        return self.segments[-1].end_direction()

    def point_at(self, length: float) -> Point:
        """The point at a length from the start; beyond an end, that end."""
        index, t = self._place(length)
        return self.segments[index].point_at(t)

    def direction_at(self, length: float) -> Point:
        """The unit direction of travel at a length from the start; at a corner, the direction after it."""
        index, t = self._place(length)
        if t >= 1.0 and index + 1 < len(self.segments):
            index, t = index + 1, 0.0
        return self.segments[index].direction_at(t)

    def split_at(self, length: float) -> tuple[Path, Path]:
        """The two paths before and after a length from the start.

        Raises ValueError unless the length lies between the ends by more than SAME.
        """
        index, t = self._place(length)
        segment = self.segments[index]
        near_start, near_end = segment.length_to(t) <= SAME, segment.length() - segment.length_to(t) <= SAME
        if near_start or near_end:
            joint = index if near_start else index + 1
            if not 0 < joint < len(self.segments):
                message = f"a path of {self.length()} cannot be split at {length}"
                raise ValueError(message)
            return Path(self.segments[:joint]), Path(self.segments[joint:])
        before, after = segment.split(t)
        return Path((*self.segments[:index], before)), Path((after, *self.segments[index + 1 :]))

    def between(self, low: float, high: float) -> Path:
        """The stretch between two lengths from the start; beyond the ends it stops at them."""
        path, whole = self, self.length()
        if high < whole - SAME:
            path, _ = path.split_at(high)
        if low > SAME:
            _, path = path.split_at(low)
        return path

    def reversed(self) -> Path:
        """The same path travelled the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def transformed(self, motion: Rigid) -> Path:
        """The path where the motion takes it."""
        return Path(tuple(segment.transformed(motion) for segment in self.segments))

    def mapped(self, move: Callable[[Point], Point]) -> Path:
        """The path where an affine map takes it: straight runs stay straight, cubics cubic."""
        return Path(
            tuple(
                Line(move(s.start), move(s.end))
                if isinstance(s, Line)
                else Cubic(move(s.start), move(s.leaving), move(s.arriving), move(s.end))
                for s in self.segments
            )
        )

    def joined(self, other: Path) -> Path:
        """This path and then the other, which must begin where this one ends."""
        last, first = self.segments[-1], other.segments[0]
        first = first.between(last.end, first.end)
        if (
            isinstance(last, Line)
            and isinstance(first, Line)
            and last.length() > SAME
            and first.length() > SAME
            and abs(last.end_direction().cross(first.start_direction())) <= PARALLEL
            and last.end_direction().dot(first.start_direction()) > 0.0
        ):
            return Path((*self.segments[:-1], Line(last.start, first.end), *other.segments[1:]))
        return Path((*self.segments, first, *other.segments[1:]))

    def between_points(self, start: Point, end: Point) -> Path:
        """The same path with its ends put exactly on two points that are very near them."""
        first = self.segments[0]
        segments = (first.between(start, first.end), *self.segments[1:])
        last = segments[-1]
        return Path((*segments[:-1], last.between(last.start, end)))

    def extended(self, before: float, after: float) -> Path:
        """The path made longer by straight runs in the directions of its ends."""
        path = self
        if before > 0.0:
            path = Path((Line(self.start - self.start_direction() * before, self.start),)).joined(path)
        if after > 0.0:
            path = path.joined(Path((Line(self.end, self.end + self.end_direction() * after),)))
        return path

    def turning(self) -> float:
        """The signed angle by which the direction turns, corners included, positive to the left."""
        total = sum(segment.turning() for segment in self.segments)
        for before, after in zip(self.segments, self.segments[1:], strict=False):
            total += before.end_direction().angle_to(after.start_direction())
        return total

    def flattened(self, tolerance: float = FLATTEN) -> tuple[Point, ...]:
        """Points of a chain of straight runs within the tolerance of the path, both ends included."""
        points = [self.start]
        for segment in self.segments:
            steps = segment.steps(tolerance)
            points += (segment.point_at(step / steps) for step in range(1, steps))
            points.append(segment.end)
        return tuple(points)

    def length_at(self, point: Point) -> float:
        """The length from the start at which the path is nearest to the point."""
        index, t, _ = self._nearest(point)
        return sum(segment.length() for segment in self.segments[:index]) + self.segments[index].length_to(t)

    def distance_to(self, point: Point) -> float:
        """The shortest distance from the point to the path."""
        return self._nearest(point)[2]

    def is_near(self, point: Point, distance: float) -> bool:
        """Whether the path comes that near to the point: quicker to tell than how near it comes."""
        return any(
            _off_box(segment, point) <= distance
            and segment.point_at(_nearest_parameter(segment, point)).distance(point) <= distance
            for segment in self.segments
        )

    def _place(self, length: float) -> tuple[int, float]:
        """The segment and the parameter on it at a length from the start."""
        last = len(self.segments) - 1
        for index, segment in enumerate(self.segments):
            whole = segment.length()
            if length <= whole or index == last:
                return index, segment.parameter_at(length)
            length -= whole
        raise AssertionError

    def _nearest(self, point: Point) -> tuple[int, float, float]:
        """The segment that is nearest to the point, the parameter on it, and the distance."""
        best = (0, 0.0, self.start.distance(point))
        for index, segment in enumerate(self.segments):
            if _off_box(segment, point) >= best[2]:
                continue  # its whole box is further away
            t = _nearest_parameter(segment, point)
            distance = segment.point_at(t).distance(point)
            if distance < best[2]:
                best = (index, t, distance)
        return best


def _off_box(segment: Segment, point: Point) -> float:
    """How far the point lies from the segment's box; 0 inside it."""
    left, bottom, right, top = segment.box()
    return hypot(max(left - point.x, 0.0, point.x - right), max(bottom - point.y, 0.0, point.y - top))


def _nearest_parameter(segment: Segment, point: Point) -> float:
    """The parameter of the point of the segment that is nearest to the point."""
    if isinstance(segment, Line):
        along = segment.end - segment.start
        square = along.dot(along)
        return min(1.0, max(0.0, (point - segment.start).dot(along) / square)) if square > 0.0 else 0.0
    # Even samples; from each that is nearer than its neighbours the curve may come nearest.
    steps = max(8, segment.steps(COARSE))
    far = [segment.point_at(step / steps).distance(point) for step in range(steps + 1)]
    dips = [
        step for step, here in enumerate(far) if here <= min(far[max(step - 1, 0)], far[min(step + 1, steps)])
    ]
    found = (_refined(segment, point, step / steps, 1.0 / steps) for step in dips)
    return min(found, key=lambda t: segment.point_at(t).distance(point))


def _refined(segment: Cubic, point: Point, t: float, around: float) -> float:
    """The parameter within `around` of `t` at which a curve is nearest to the point.

    Newton's steps on the derivative of the squared distance, within bounds.
    """
    low, high = max(0.0, t - around), min(1.0, t + around)
    for _ in range(60):
        away, first = segment.point_at(t) - point, segment.derivative_at(t)
        slope = away.dot(first)
        if slope > 0.0:
            high = t
        else:
            low = t
        curving = first.dot(first) + away.dot(segment.second_derivative_at(t))
        # Where the squared distance is not bent upward, Newton's step leads away: the bounds are halved.
        step = t - slope / curving if curving > 0.0 else inf
        following = step if low <= step <= high else 0.5 * (low + high)
        if abs(following - t) <= 1e-14:
            break
        t = following
    return t
