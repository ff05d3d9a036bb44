"""Owns where paths meet lines and each other; knows nothing of what is cut there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.geometry.segment import Line
from specc.geometry.tolerance import FLATTEN, SAME

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.geometry.segment import Cubic, Segment

ON_PARAMETER: Final = 1e-9  # how far beyond 0 and 1 a parameter found by Newton's steps may lie


@dataclass(frozen=True, slots=True)
class Crossing:
    """A meeting: `along` is the length on the first path, `across` on the other (on a line: signed)."""

    at: Point
    along: float
    across: float


def line_crossings(path: Path, on: Point, along: Point) -> tuple[Crossing, ...]:
    """Where the path meets the endless line through a point, in order; stretches in it do not count."""
    direction = along.unit()
    found: list[Crossing] = []
    passed = 0.0
    for segment in path.segments:
        for t in segment.crossings_of_line(on, direction):
            at = segment.point_at(t)
            found.append(Crossing(at, passed + segment.length_to(t), (at - on).dot(direction)))
        passed += segment.length()
    return _single(found)


def crossings(path: Path, other: Path) -> tuple[Crossing, ...]:
    """Where two paths meet, in order on the first; shared stretches and mere touches do not count."""
    found: list[Crossing] = []
    passed = 0.0
    for segment in path.segments:
        other_passed = 0.0
        box = segment.box()
        for second in other.segments:
            if _meet(box, second.box()):
                found += (
                    Crossing(
                        segment.point_at(t), passed + segment.length_to(t), other_passed + second.length_to(u)
                    )
                    for t, u in _parameters(segment, second)
                )
            other_passed += second.length()
        passed += segment.length()
    return _single(found)


def _single(found: Iterable[Crossing]) -> tuple[Crossing, ...]:
    """The crossings in order, each once: a joint of two segments is found on both."""
    kept: list[Crossing] = []
    for crossing in sorted(found, key=lambda c: (c.along, c.across)):
        same = any(
            abs(k.along - crossing.along) <= 10 * SAME and abs(k.across - crossing.across) <= 10 * SAME
            for k in kept
        )
        if not same:
            kept.append(crossing)
    return tuple(kept)


def _parameters(first: Segment, second: Segment) -> Iterator[tuple[float, float]]:
    """The parameters on both segments of every place where they meet."""
    if isinstance(second, Line):
        yield from _on_line(first, second)
    elif isinstance(first, Line):
        yield from ((t, u) for u, t in _on_line(second, first))
    else:
        yield from _cubics(first, second)


def _on_line(segment: Segment, line: Line) -> Iterator[tuple[float, float]]:
    length = line.length()
    if length <= SAME:
        return
    direction = line.start_direction()
    for t in segment.crossings_of_line(line.start, direction):
        u = (segment.point_at(t) - line.start).dot(direction)
        if -SAME <= u <= length + SAME:
            yield t, min(1.0, max(0.0, u / length))


def _cubics(first: Cubic, second: Cubic) -> Iterator[tuple[float, float]]:
    """Meetings of the chains of straight runs that stand for both, made exact by Newton's steps."""
    m, n = first.steps(FLATTEN), second.steps(FLATTEN)
    ps = [first.point_at(i / m) for i in range(m + 1)]
    qs = [second.point_at(j / n) for j in range(n + 1)]
    for i in range(m):
        a, b = ps[i], ps[i + 1]
        for j in range(n):
            c, d = qs[j], qs[j + 1]
            ab, cd = b - a, d - c
            cross = ab.cross(cd)
            if cross == 0.0:
                continue
            t, u = (c - a).cross(cd) / cross, (c - a).cross(ab) / cross
            # A little beyond the ends, since the curves may meet just outside their chains.
            if -0.1 <= t <= 1.1 and -0.1 <= u <= 1.1:
                exact = _newton(first, second, t=(i + t) / m, u=(j + u) / n)
                if exact is not None:
                    yield exact


def _newton(first: Cubic, second: Cubic, *, t: float, u: float) -> tuple[float, float] | None:
    for _ in range(30):
        gap = second.point_at(u) - first.point_at(t)
        ft, su = first.derivative_at(t), second.derivative_at(u)
        cross = ft.cross(su)
        if cross == 0.0:
            return None
        step_t, step_u = gap.cross(su) / cross, gap.cross(ft) / cross
        t, u = t + step_t, u + step_u
        if abs(step_t) + abs(step_u) <= 1e-14:
            break
    inside = -ON_PARAMETER <= t <= 1.0 + ON_PARAMETER and -ON_PARAMETER <= u <= 1.0 + ON_PARAMETER
    t, u = min(1.0, max(0.0, t)), min(1.0, max(0.0, u))
    return (t, u) if inside and first.point_at(t).distance(second.point_at(u)) <= SAME else None


def _meet(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    """Whether two boxes have a point in common, or nearly."""
    return a[0] <= b[2] + SAME and b[0] <= a[2] + SAME and a[1] <= b[3] + SAME and b[1] <= a[3] + SAME
