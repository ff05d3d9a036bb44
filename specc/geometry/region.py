"""Owns what a closed outline encloses: areas, inside and outside, self-crossing; knows nothing of pieces."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.geometry.point import Point
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from specc.geometry.path import Path


def signed_area(outline: Path) -> float:
    """The area in mm2 that a closed path encloses, exact for curves; negative when clockwise."""
    return 0.5 * (
        sum(segment.twice_area() for segment in outline.segments) + outline.end.cross(outline.start)
    )


def polygon_area(points: Sequence[Point]) -> float:
    """The signed area of a polygon, positive when counter-clockwise."""
    return 0.5 * sum(a.cross(b) for a, b in zip(points, [*points[1:], points[0]], strict=True))


def centroid(points: Sequence[Point]) -> Point:
    """The centre of gravity of a polygon; of its corners where it has no area."""
    x = y = twice = 0.0
    origin = points[0]
    for a, b in zip(points, [*points[1:], points[0]], strict=True):
        u, v = a - origin, b - origin
        cross = u.cross(v)
        twice += cross
        x += (u.x + v.x) * cross
        y += (u.y + v.y) * cross
    if abs(twice) <= SAME:
        return Point(sum(p.x for p in points) / len(points), sum(p.y for p in points) / len(points))
    return Point(origin.x + x / (3.0 * twice), origin.y + y / (3.0 * twice))


def contains(points: Sequence[Point], point: Point) -> bool:
    """Whether the polygon winds round the point; on the outline itself either answer may come."""
    winding = 0
    x, y = point.x, point.y
    for a, b in zip(points, [*points[1:], points[0]], strict=True):
        if (a.y <= y) == (b.y <= y):
            continue
        side = (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)
        if a.y <= y:
            winding += side > 0.0
        else:
            winding -= side < 0.0
    return winding != 0


def bounds(points: Iterable[Point]) -> tuple[Point, Point]:
    """The lower left and the upper right corner of the upright box round the points."""
    kept = tuple(points)
    return (
        Point(min(p.x for p in kept), min(p.y for p in kept)),
        Point(max(p.x for p in kept), max(p.y for p in kept)),
    )


@dataclass(frozen=True, slots=True)
class SelfCrossing:
    """Where a closed polygon crosses itself; `runs` are the numbers of the points where both runs begin."""

    runs: tuple[int, int]
    at: Point


def crosses_itself(points: Sequence[Point]) -> bool:
    """Whether two runs of the closed polygon have a point in common, other than neighbours their corner."""
    return self_crossing(points) is not None


def self_crossing(points: Sequence[Point]) -> SelfCrossing | None:
    """A point that two runs of the closed polygon have in common, other than neighbours their corner."""
    following = [*points[1:], points[0]]
    kept = [i for i, (p, q) in enumerate(zip(points, following, strict=True)) if p.distance(q) > SAME]
    corners = [points[i] for i in kept]
    count = len(corners)
    runs = [(corners[i], corners[(i + 1) % count], i) for i in range(count)]
    runs.sort(key=lambda run: min(run[0].x, run[1].x))
    open_runs: list[tuple[Point, Point, int]] = []
    for a, b, i in runs:
        left = min(a.x, b.x)
        open_runs = [run for run in open_runs if max(run[0].x, run[1].x) >= left]
        low, high = min(a.y, b.y), max(a.y, b.y)
        for c, d, j in open_runs:
            if min(c.y, d.y) > high or max(c.y, d.y) < low:
                continue
            beside = (i - j) % count in {1, count - 1}
            if _folds_back(a, b, c, d) if beside else _touch(a, b, c, d):
                first, second = sorted((kept[i], kept[j]))
                return SelfCrossing((first, second), _meeting(a, b, c, d))
        open_runs.append((a, b, i))
    return None


def _meeting(a: Point, b: Point, c: Point, d: Point) -> Point:
    """Where two runs that touch meet; where they run along each other, an end of one on the other."""
    ab, cd = b - a, d - c
    cross = ab.cross(cd)
    if cross == 0.0:
        return c if 0.0 <= ab.dot(c - a) <= ab.dot(ab) else d
    return a + ab * ((c - a).cross(cd) / cross)


def _folds_back(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two runs that share a corner lie on each other."""
    u, v = b - a, d - c
    return u.cross(v) == 0.0 and u.dot(v) < 0.0


def _touch(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two runs have a point in common."""
    ab, cd = b - a, d - c
    s1, s2 = ab.cross(c - a), ab.cross(d - a)
    s3, s4 = cd.cross(a - c), cd.cross(b - c)
    if s1 == s2 == 0.0:
        lows, highs = sorted((ab.dot(a), ab.dot(b))), sorted((ab.dot(c), ab.dot(d)))
        return lows[0] <= highs[1] and highs[0] <= lows[1]
    return (s1 <= 0.0 <= s2 or s2 <= 0.0 <= s1) and (s3 <= 0.0 <= s4 or s4 <= 0.0 <= s3)
