"""Owns stretches of a drawn path: from place to place, and carried to other ends; knows no garments."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.point import Point
    from specc.geometry.segment import Segment

SMOOTH: Final = 0.01  # radians, half a degree: a smaller turn between two runs is no corner


def stretch(path: Path, start: Point, end: Point, others: Iterable[Point]) -> Path:
    """The stretch of the path between two points on it, with its ends exactly there.

    On a closed path there are two: the one that none of the `others` lies within, and where that is no answer
    the one in the direction in which it was drawn. From a point to itself it is all of it.
    """
    low, high = path.length_at(start), path.length_at(end)
    if not path.closed:
        found = path.between(low, high) if low < high else path.between(high, low).reversed()
        return found.between_points(start, end)
    whole = path.length()
    turned = _beginning_at(path, low, whole)
    ahead = (high - low) % whole
    if not SAME < ahead < whole - SAME:
        return turned.between_points(start, end)
    places = [(path.length_at(other) - low) % whole for other in others]
    within = any(SAME < place < ahead - SAME for place in places)
    beyond = any(ahead + SAME < place < whole - SAME for place in places)
    if within and not beyond:
        return turned.between(ahead, whole).reversed().between_points(start, end)
    return turned.between(0.0, ahead).between_points(start, end)


def _beginning_at(path: Path, at: float, whole: float) -> Path:
    """A closed path from another place on it round to that place."""
    if not SAME < at < whole - SAME:
        return path
    before, after = path.split_at(at)
    return Path((*after.segments, *before.between_points(after.end, before.end).segments))


def carried(path: Path, start: Point, end: Point) -> Path:
    """The path with its ends carried to two points, and all between along with them.

    Each joint of two runs moves as the ends do, more like the nearer one by the length along the path. Lines
    stay lines; a curve keeps its directions at both ends, with handles as much longer as its chord is, but
    goes on smoothly into a line where it did.
    """
    first, last = start - path.start, end - path.end
    if max(first.norm(), last.norm()) <= SAME:
        return path.between_points(start, end)
    whole = path.length()
    joints = [start]
    passed = 0.0
    for segment in path.segments[:-1]:
        passed += segment.length()
        joints.append(segment.end + first.toward(last, passed / whole))
    joints.append(end)
    moved = [
        _between(segment, joints[index], joints[index + 1]) for index, segment in enumerate(path.segments)
    ]
    for index in range(1, len(moved)):
        moved[index - 1], moved[index] = _smoothed(
            (path.segments[index - 1], path.segments[index]), moved[index - 1], moved[index]
        )
    return Path(tuple(moved))


def _between(segment: Segment, start: Point, end: Point) -> Segment:
    """The segment from one point to another, with handles in their old directions."""
    if isinstance(segment, Line):
        return Line(start, end)
    chord = segment.start.distance(segment.end)
    longer = start.distance(end) / chord if chord > SAME else 1.0
    leaving, arriving = segment.leaving - segment.start, segment.arriving - segment.end
    return Cubic(start, start + leaving * longer, end + arriving * longer, end)


def _smoothed(old: tuple[Segment, Segment], before: Segment, after: Segment) -> tuple[Segment, Segment]:
    """Two segments that follow each other, a curve in the direction of a line that it went on into."""
    turn = old[0].end_direction().angle_to(old[1].start_direction())
    if abs(turn) > SMOOTH:
        return before, after
    if isinstance(before, Line) and isinstance(after, Cubic) and before.length() > SAME:
        handle = after.start.distance(after.leaving)
        after = Cubic(after.start, after.start + before.end_direction() * handle, after.arriving, after.end)
    elif isinstance(before, Cubic) and isinstance(after, Line) and after.length() > SAME:
        handle = before.end.distance(before.arriving)
        before = Cubic(
            before.start, before.leaving, before.end - after.start_direction() * handle, before.end
        )
    return before, after
