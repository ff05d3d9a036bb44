"""Owns parallel and tapering copies of paths; knows nothing of seam allowances."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.geometry.segment import Segment

CLOSE: Final = 1e-3  # mm by which a parallel copy may leave the true one
DEEPEST: Final = 8  # halvings of one cubic


def parallel(path: Path, distance: float) -> Path:
    """The path at a constant distance, to the left when positive, curves to a thousandth of a millimetre.

    At a corner the copies are joined by a straight run. Where the distance exceeds the radius of a curve that
    bends the same way, the copy turns back on itself as the true parallel curve does.
    """
    return tapering(path, distance, distance)


def tapering(path: Path, first: float, last: float) -> Path:
    """The path at a distance that goes over evenly along it, from `first` at its start to `last` at its end.

    Otherwise as `parallel`, which has one distance throughout.
    """
    slope = (last - first) / path.length() if last != first else 0.0
    copied: list[Segment] = []
    here = first
    for segment in path.segments:
        there = here + slope * segment.length() if slope != 0.0 else here
        copies = (
            [_line(segment, here, there)]
            if isinstance(segment, Line)
            else _cubic(segment, here, slope, depth=DEEPEST)
        )
        if copied:
            gap = copied[-1].end.distance(copies[0].start)
            if gap > CLOSE:
                copied.append(Line(copied[-1].end, copies[0].start))
            else:
                copies[0] = copies[0].between(copied[-1].end, copies[0].end)
        copied += copies
        here = there
    return Path(tuple(copied))


def _line(line: Line, here: float, there: float) -> Segment:
    away = line.start_direction().left()
    return Line(line.start + away * here, line.end + away * there)


def _cubic(cubic: Cubic, distance: float, slope: float, *, depth: int) -> list[Segment]:
    """The copy with the true ends, end directions and end speeds, halved until its middles are right.

    The distance is that at the start; it grows by `slope` with every millimetre along the curve.
    """
    there = _distance(cubic, distance, slope, 1.0)
    away, beyond = cubic.start_direction().left(), cubic.end_direction().left()
    first, last = cubic.leaving - cubic.start, cubic.end - cubic.arriving
    start, end = cubic.start + away * distance, cubic.end + beyond * there
    copy = Cubic(
        start,
        start + first * (1.0 - _curvature(cubic, 0.0) * distance) + away * (slope * first.norm()),
        end - last * (1.0 - _curvature(cubic, 1.0) * there) - beyond * (slope * last.norm()),
        end,
    )
    if depth == 0 or max(_miss(cubic, copy, distance, slope, t=t) for t in (0.25, 0.5, 0.75)) <= CLOSE:
        return [copy]
    one, two = cubic.split(0.5)
    before = _cubic(one, distance, slope, depth=depth - 1)
    after = _cubic(two, _distance(one, distance, slope, 1.0), slope, depth=depth - 1)
    return [*before, after[0].between(before[-1].end, after[0].end), *after[1:]]


def _distance(cubic: Cubic, distance: float, slope: float, t: float) -> float:
    return distance + slope * cubic.length_to(t) if slope != 0.0 else distance


def _miss(cubic: Cubic, copy: Cubic, distance: float, slope: float, *, t: float) -> float:
    along = cubic.direction_at(t)
    true: Point = cubic.point_at(t) + along.left() * _distance(cubic, distance, slope, t)
    # Along the curve the parameter may run ahead; only the part across it is a fault.
    return abs((copy.point_at(t) - true).cross((along + along.left() * slope).unit()))


def _curvature(cubic: Cubic, t: float) -> float:
    """The curvature at an end, positive to the left; zero where a handle has no length."""
    first, second = cubic.derivative_at(t), cubic.second_derivative_at(t)
    speed = first.norm()
    return first.cross(second) / speed**3 if speed > 0.0 else 0.0
