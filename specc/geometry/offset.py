"""Owns parallel copies of paths; knows nothing of seam allowances."""

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
    copied: list[Segment] = []
    for segment in path.segments:
        copies = (
            [_line(segment, distance)] if isinstance(segment, Line) else _cubic(segment, distance, DEEPEST)
        )
        if copied:
            gap = copied[-1].end.distance(copies[0].start)
            if gap > CLOSE:
                copied.append(Line(copied[-1].end, copies[0].start))
            else:
                copies[0] = copies[0].between(copied[-1].end, copies[0].end)
        copied += copies
    return Path(tuple(copied))


def _line(line: Line, distance: float) -> Segment:
    away = line.start_direction().left() * distance
    return Line(line.start + away, line.end + away)


def _cubic(cubic: Cubic, distance: float, depth: int) -> list[Segment]:
    """The copy with the true ends, end directions and end speeds, halved until its middles are right."""
    start = cubic.start + cubic.start_direction().left() * distance
    end = cubic.end + cubic.end_direction().left() * distance
    copy = Cubic(
        start,
        start + (cubic.leaving - cubic.start) * (1.0 - _curvature(cubic, 0.0) * distance),
        end - (cubic.end - cubic.arriving) * (1.0 - _curvature(cubic, 1.0) * distance),
        end,
    )
    if depth == 0 or max(_miss(cubic, copy, distance, t) for t in (0.25, 0.5, 0.75)) <= CLOSE:
        return [copy]
    first, second = cubic.split(0.5)
    before, after = _cubic(first, distance, depth - 1), _cubic(second, distance, depth - 1)
    return [*before, after[0].between(before[-1].end, after[0].end), *after[1:]]


def _miss(cubic: Cubic, copy: Cubic, distance: float, t: float) -> float:
    true: Point = cubic.point_at(t) + cubic.direction_at(t).left() * distance
    # Along the curve the parameter may run ahead; only the part across it is a fault.
    return abs((copy.point_at(t) - true).cross(cubic.direction_at(t)))


def _curvature(cubic: Cubic, t: float) -> float:
    """The curvature at an end, positive to the left; zero where a handle has no length."""
    first, second = cubic.derivative_at(t), cubic.second_derivative_at(t)
    speed = first.norm()
    return first.cross(second) / speed**3 if speed > 0.0 else 0.0
