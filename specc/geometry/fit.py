"""Owns curves made from directions: from point to point, through a point; knows no garments."""

from __future__ import annotations

from math import cos, pi, sin, sqrt, tan
from typing import TYPE_CHECKING, Final

from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from specc.geometry.point import Point

QUARTER: Final = 4.0 / 3.0 * (sqrt(2.0) - 1.0)
"""The fullness of a quarter ellipse: handles are this share of the way to where the end tangents meet."""

WIDEST_ARC: Final = pi / 2.0  # a cubic stands for a longer arc too badly: 0.03 % of the radius at a quarter
OFF_ARC: Final = 1e-3  # mm
PARALLEL: Final = 1e-9


def corner(start: Point, leaving: Point, end: Point, arriving: Point) -> tuple[float, float] | None:
    """How far the tangents run from start and from end to where they meet, if they meet ahead of both ends.

    `leaving` and `arriving` are directions of travel at start and end; both must be unit vectors.
    """
    cross = leaving.cross(arriving)
    if abs(cross) <= PARALLEL:
        return None
    chord = end - start
    ahead, back = chord.cross(arriving) / cross, leaving.cross(chord) / cross
    return (ahead, back) if ahead > SAME and back > SAME else None


def curve(  # noqa: PLR0913 - two ends, two directions, two ways to say how full
    start: Point,
    leaving: Point,
    end: Point,
    arriving: Point,
    *,
    fullness: float = QUARTER,
    handles: tuple[float, float] | None = None,
) -> Cubic:
    """The cubic that leaves start and arrives at end in two given directions of travel.

    Handles are as long as given, in millimetres; otherwise `fullness` times the way to the corner where the
    tangents meet ahead of both ends; otherwise, where they do not meet so, a third of the chord.
    """
    u, v = leaving.unit(), arriving.unit()
    if handles is None:
        meeting = corner(start, u, end, v)
        third = start.distance(end) / 3.0
        handles = (fullness * meeting[0], fullness * meeting[1]) if meeting else (third, third)
    return Cubic(start, start + u * handles[0], end - v * handles[1], end)


def cubic_through(
    start: Point, leaving: Point, end: Point, arriving: Point, *, through: Point
) -> Cubic | None:
    """The cubic with two end directions that passes through a point, if there is one.

    The fullness multiplies the ways to the corner where the tangents meet ahead of both ends, else the chord;
    it lies between 0 and 1, and of several the least is taken.
    """
    u, v = leaving.unit(), arriving.unit()
    reach = corner(start, u, end, v) or (start.distance(end),) * 2
    a, b = u * reach[0], v * -reach[1]

    def parts(t: float) -> tuple[Point, Point]:
        """The curve at t is base + fullness * 3t(1-t) * pull."""
        s = 1.0 - t
        base = start * (s * s * (1.0 + 2.0 * t)) + end * (t * t * (3.0 - 2.0 * t)) - through
        return base, a * s + b * t

    def off(t: float) -> float:
        base, pull = parts(t)
        return base.cross(pull)

    found: list[float] = []
    steps = 64
    for step in range(steps):
        low, high = step / steps, (step + 1) / steps
        f_low, f_high = off(low), off(high)
        if (f_low < 0.0) == (f_high < 0.0):
            continue
        for _ in range(60):
            middle = 0.5 * (low + high)
            if (off(middle) < 0.0) == (f_low < 0.0):
                low = middle
            else:
                high = middle
        t = 0.5 * (low + high)
        base, pull = parts(t)
        weight = 3.0 * t * (1.0 - t) * pull.dot(pull)
        if weight > 0.0:
            found.append(-base.dot(pull) / weight)
    fitting = [k for k in found if 0.0 < k <= 1.0]
    if not fitting:
        return None
    k = min(fitting)
    return Cubic(start, start + a * k, end + b * k, end)


def arc(start: Point, centre: Point, angle: float) -> Path:
    """The arc from a point round a centre by an angle, positive to the left.

    A cubic of a quarter turn leaves the circle by 0.03 % of the radius, one of an eighth by 0.0004 %: arcs of
    more than an eighth of a turn are divided, and so often that none leaves the circle by more than OFF_ARC.
    """
    radius = start.distance(centre)
    count = 1
    while abs(angle) / count > WIDEST_ARC / 2.0 or radius * _off_arc(angle / count) > OFF_ARC:
        count += 1
    step = angle / count
    reach = 4.0 / 3.0 * tan(step / 4.0)
    cubics: list[Cubic] = []
    here = start - centre
    at = start
    for index in range(1, count + 1):
        there = (start - centre).turned(step * index)
        end = centre + there
        cubics.append(Cubic(at, at + here.left() * reach, end - there.left() * reach, end))
        here, at = there, end
    return Path(tuple(cubics))


def _off_arc(angle: float) -> float:
    """How far a cubic leaves an arc of that angle at most, as a share of the radius.

    With handles of 4/3 tan(a/4) the curve meets the circle at its ends and its middle, and between them lies
    outside it: x2 + y2 - 1 has its greatest value 4/27 sin^6(a/4) / cos^2(a/4), and the radius half of that.
    """
    quarter = angle / 4.0
    return 2.0 / 27.0 * sin(quarter) ** 6 / cos(quarter) ** 2


def arc_through(start: Point, middle: Point, end: Point) -> Path | None:
    """The arc of the circle through three points, from the first by way of the second to the third.

    Straight when they lie on a line in this order; None when they lie on a line in another order, or two of
    them on each other.
    """
    first, second = middle - start, end - middle
    if min(first.norm(), second.norm(), start.distance(end)) <= SAME:
        return None
    turn = first.angle_to(second)
    if abs(sin(turn)) <= PARALLEL:
        return Path((Line(start, end),)) if first.dot(second) > 0.0 else None
    # The circumcentre seen from the start: it lies as far from the start as from both other points.
    whole = end - start
    twice = 2.0 * first.cross(whole)
    away = (first.left() * -whole.dot(whole) + whole.left() * first.dot(first)) * (1.0 / twice)
    # The angle between two chords that follow each other is half of the arc that they span together.
    return arc(start, start - away, 2.0 * turn).between_points(start, end)


def blend(start: Point, leaving: Point, end: Point, arriving: Point) -> Path:
    """One smooth run between two points with two directions: straight if it can be, else near an arc."""
    u, v = leaving.unit(), arriving.unit()
    way = (end - start).unit()
    if (
        u.dot(way) > 0.0
        and v.dot(way) > 0.0
        and abs(u.cross(way)) <= PARALLEL
        and abs(v.cross(way)) <= PARALLEL
    ):
        return Path((Line(start, end),))
    # The handle of an arc as a share of its tangent: 4/3 tan(a/4) / tan(a/2), which is 2/3 for a flat arc.
    half = abs(u.angle_to(v)) / 2.0
    fullness = (
        4.0 / 3.0 * tan(half / 2.0) / tan(half) if 0.0 < half < pi / 2.0 and cos(half) > PARALLEL else QUARTER
    )
    return Path((curve(start, u, end, v, fullness=fullness),))
