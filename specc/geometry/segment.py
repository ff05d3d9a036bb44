"""Owns the two kinds of curve, straight line and cubic Bezier, and their measures; knows no paths."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import ceil, hypot, sqrt
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.roots import quadratic_roots, unit_roots
from specc.geometry.tolerance import ARC, SAME

if TYPE_CHECKING:
    from specc.geometry.point import Rigid

# Abscissae (positive half) and weights of the Gauss-Legendre rule with 12 points on [-1, 1].
GAUSS: Final = (
    (0.1252334085114689, 0.2491470458134027),
    (0.3678314989981802, 0.2334925365383546),
    (0.5873179542866175, 0.20316742672306573),
    (0.7699026741943047, 0.16007832854334642),
    (0.9041172563704748, 0.10693932599531907),
    (0.9815606342467192, 0.04717533638651141),
)
DEEPEST: Final = 40  # halvings of a parameter interval after which nothing is left to halve


@dataclass(frozen=True, slots=True)
class Line:
    """A straight run from start to end."""

    start: Point
    end: Point

    def point_at(self, t: float) -> Point:
        """The point at parameter t, 0 to 1."""
        return self.start.toward(self.end, t)

    def derivative_at(self, _t: float) -> Point:
        """The derivative by the parameter."""
        return self.end - self.start

    def start_direction(self) -> Point:
        """The unit direction of travel at the start."""
        return (self.end - self.start).unit()

    def end_direction(self) -> Point:
        """The unit direction of travel at the end."""
        return (self.end - self.start).unit()

    def direction_at(self, _t: float) -> Point:
        """The unit direction of travel."""
        return (self.end - self.start).unit()

    def length(self) -> float:
        """The length in millimetres."""
        return self.start.distance(self.end)

    def length_to(self, t: float) -> float:
        """The length from the start to parameter t."""
        return t * self.start.distance(self.end)

    def parameter_at(self, length: float) -> float:
        """The parameter at a length from the start."""
        whole = self.start.distance(self.end)
        return min(1.0, max(0.0, length / whole)) if whole > 0.0 else 0.0

    def split(self, t: float) -> tuple[Line, Line]:
        """The two runs before and after parameter t."""
        middle = self.point_at(t)
        return Line(self.start, middle), Line(middle, self.end)

    def reversed(self) -> Line:
        """The same run travelled the other way."""
        return Line(self.end, self.start)

    def transformed(self, motion: Rigid) -> Line:
        """The run where the motion takes it."""
        return Line(motion(self.start), motion(self.end))

    def between(self, start: Point, end: Point) -> Line:
        """The same kind of run with its ends put exactly on two points that are very near them."""
        return Line(start, end)

    def crossings_of_line(self, on: Point, along: Point) -> tuple[float, ...]:
        """Parameters where it meets the endless line through `on`, none if it lies in it."""
        here, there = along.cross(self.start - on), along.cross(self.end - on)
        return unit_roots(0.0, 0.0, there - here, here, zero=SAME)

    def steps(self, _tolerance: float) -> int:
        """How many straight runs stand for this one."""
        return 1

    def twice_area(self) -> float:
        """Twice the signed area between the run and the origin."""
        return self.start.cross(self.end)

    def turning(self) -> float:
        """The signed angle by which the direction turns on the way."""
        return 0.0

    def extremes(self) -> tuple[Point, ...]:
        """The points among which the leftmost, rightmost, lowest and highest are found."""
        return self.start, self.end

    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of an upright box that holds the run."""
        a, b = self.start, self.end
        return min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)


@dataclass(frozen=True, slots=True)
class Cubic:
    """A cubic Bezier: it leaves `start` toward `leaving` and comes to `end` from `arriving`."""

    start: Point
    leaving: Point
    arriving: Point
    end: Point
    _length: float = field(default=-1.0, init=False, repr=False, compare=False)  # once it was asked for

    def point_at(self, t: float) -> Point:
        """The point at parameter t, 0 to 1."""
        s = 1.0 - t
        a, b, c, d = s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t
        return Point(
            a * self.start.x + b * self.leaving.x + c * self.arriving.x + d * self.end.x,
            a * self.start.y + b * self.leaving.y + c * self.arriving.y + d * self.end.y,
        )

    def derivative_at(self, t: float) -> Point:
        """The derivative by the parameter."""
        s = 1.0 - t
        a, b, c = 3.0 * s * s, 6.0 * s * t, 3.0 * t * t
        return Point(
            a * (self.leaving.x - self.start.x)
            + b * (self.arriving.x - self.leaving.x)
            + c * (self.end.x - self.arriving.x),
            a * (self.leaving.y - self.start.y)
            + b * (self.arriving.y - self.leaving.y)
            + c * (self.end.y - self.arriving.y),
        )

    def second_derivative_at(self, t: float) -> Point:
        """The second derivative by the parameter."""
        s = 6.0 * (1.0 - t)
        first = self.arriving - self.leaving * 2.0 + self.start
        last = self.end - self.arriving * 2.0 + self.leaving
        return first * s + last * (6.0 * t)

    def start_direction(self) -> Point:
        """The unit direction of travel at the start, also where the first handle has no length."""
        for stop in (self.leaving, self.arriving):
            if self.start.distance(stop) > SAME:
                return (stop - self.start).unit()
        return (self.end - self.start).unit()

    def end_direction(self) -> Point:
        """The unit direction of travel at the end, also where the last handle has no length."""
        for stop in (self.arriving, self.leaving):
            if self.end.distance(stop) > SAME:
                return (self.end - stop).unit()
        return (self.end - self.start).unit()

    def direction_at(self, t: float) -> Point:
        """The unit direction of travel at parameter t."""
        if t <= 0.0:
            return self.start_direction()
        if t >= 1.0:
            return self.end_direction()
        derivative = self.derivative_at(t)
        return derivative.unit() if derivative.norm() > SAME else self.second_derivative_at(t).unit()

    def length(self) -> float:
        """The length in millimetres, to 1e-6."""
        if self._length < 0.0:
            object.__setattr__(self, "_length", self._length_between(0.0, 1.0))
        return self._length

    def length_to(self, t: float) -> float:
        """The length from the start to parameter t, to 1e-6."""
        if t <= 0.0:
            return 0.0
        return self._length_between(0.0, t) if t < 1.0 else self.length()

    def _length_between(self, low: float, high: float) -> float:
        # The derivative as a polynomial: (ax*t + bx)*t + cx and the same for y.
        p0, p1, p2, p3 = self.start, self.leaving, self.arriving, self.end
        cx, cy = 3.0 * (p1.x - p0.x), 3.0 * (p1.y - p0.y)
        bx, by = 6.0 * (p2.x - 2.0 * p1.x + p0.x), 6.0 * (p2.y - 2.0 * p1.y + p0.y)
        ax = 3.0 * (p3.x - 3.0 * p2.x + 3.0 * p1.x - p0.x)
        ay = 3.0 * (p3.y - 3.0 * p2.y + 3.0 * p1.y - p0.y)

        def estimate(a: float, b: float) -> float:
            middle, half = 0.5 * (a + b), 0.5 * (b - a)
            total = 0.0
            for node, weight in GAUSS:
                t = middle - half * node
                u = middle + half * node
                total += weight * (
                    hypot((ax * t + bx) * t + cx, (ay * t + by) * t + cy)
                    + hypot((ax * u + bx) * u + cx, (ay * u + by) * u + cy)
                )
            return total * half

        def refined(a: float, b: float, whole: float, *, tolerance: float, depth: int) -> float:
            m = 0.5 * (a + b)
            left, right = estimate(a, m), estimate(m, b)
            if abs(left + right - whole) <= tolerance or depth == 0:
                return left + right
            return refined(a, m, left, tolerance=0.5 * tolerance, depth=depth - 1) + refined(
                m, b, right, tolerance=0.5 * tolerance, depth=depth - 1
            )

        return refined(low, high, estimate(low, high), tolerance=ARC, depth=DEEPEST)

    def parameter_at(self, length: float) -> float:
        """The parameter at a length from the start: Newton's steps, halving where they leave the bracket."""
        whole = self.length()
        if length <= 0.0:
            return 0.0
        if length >= whole:
            return 1.0
        low, high, t = 0.0, 1.0, length / whole
        for _ in range(60):
            short = length - self.length_to(t)
            if abs(short) <= 1e-3 * ARC:
                break
            if short > 0.0:
                low = t
            else:
                high = t
            speed = self.derivative_at(t).norm()
            step = t + short / speed if speed > 0.0 else low
            t = step if low < step < high else 0.5 * (low + high)
        return t

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        """The two curves before and after parameter t (de Casteljau)."""
        a = self.start.toward(self.leaving, t)
        b = self.leaving.toward(self.arriving, t)
        c = self.arriving.toward(self.end, t)
        d, e = a.toward(b, t), b.toward(c, t)
        middle = d.toward(e, t)
        return Cubic(self.start, a, d, middle), Cubic(middle, e, c, self.end)

    def reversed(self) -> Cubic:
        """The same curve travelled the other way."""
        return Cubic(self.end, self.arriving, self.leaving, self.start)

    def transformed(self, motion: Rigid) -> Cubic:
        """The curve where the motion takes it."""
        return Cubic(motion(self.start), motion(self.leaving), motion(self.arriving), motion(self.end))

    def between(self, start: Point, end: Point) -> Cubic:
        """The same curve with its ends put exactly on two points that are very near them."""
        return Cubic(start, self.leaving, self.arriving, end)

    def crossings_of_line(self, on: Point, along: Point) -> tuple[float, ...]:
        """Parameters where the curve meets the endless line through `on`; `along` has length 1."""
        f0, f1 = along.cross(self.start - on), along.cross(self.leaving - on)
        f2, f3 = along.cross(self.arriving - on), along.cross(self.end - on)
        return unit_roots(
            f3 - 3.0 * f2 + 3.0 * f1 - f0, 3.0 * (f2 - 2.0 * f1 + f0), 3.0 * (f1 - f0), f0, zero=SAME
        )

    def steps(self, tolerance: float) -> int:
        """How many straight runs of equal parameter stay within the tolerance.

        Wang's bound: the second differences of the control points bound the second derivative.
        """
        first = (self.start - self.leaving * 2.0 + self.arriving).norm()
        last = (self.leaving - self.arriving * 2.0 + self.end).norm()
        return max(1, ceil(sqrt(0.75 * max(first, last) / tolerance)))

    def twice_area(self) -> float:
        """Twice the signed area between the curve and the origin: the exact integral of x dy - y dx."""
        p0, p1, p2, p3 = self.start, self.leaving, self.arriving, self.end
        return (
            6.0 * p0.cross(p1)
            + 3.0 * p0.cross(p2)
            + p0.cross(p3)
            + 3.0 * p1.cross(p2)
            + 3.0 * p1.cross(p3)
            + 6.0 * p2.cross(p3)
        ) / 10.0

    def turning(self) -> float:
        """The signed angle by which the direction turns on the way, all of it where the curve winds."""
        return _hodograph_turning(
            self.leaving - self.start, self.arriving - self.leaving, self.end - self.arriving, depth=DEEPEST
        )

    def extremes(self) -> tuple[Point, ...]:
        """The points among which the leftmost, rightmost, lowest and highest are found."""
        p0, p1, p2, p3 = self.start, self.leaving, self.arriving, self.end
        inner: list[float] = []
        for f0, f1, f2, f3 in ((p0.x, p1.x, p2.x, p3.x), (p0.y, p1.y, p2.y, p3.y)):
            inner += quadratic_roots(f3 - 3.0 * f2 + 3.0 * f1 - f0, 2.0 * (f2 - 2.0 * f1 + f0), f1 - f0)
        return (p0, *(self.point_at(t) for t in sorted(inner) if 0.0 < t < 1.0), p3)

    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of an upright box that holds the control points, and so the curve."""
        a, b, c, d = self.start, self.leaving, self.arriving, self.end
        return (
            min(a.x, b.x, c.x, d.x),
            min(a.y, b.y, c.y, d.y),
            max(a.x, b.x, c.x, d.x),
            max(a.y, b.y, c.y, d.y),
        )


Segment = Line | Cubic


def _hodograph_turning(a: Point, b: Point, c: Point, *, depth: int) -> float:
    """The angle that the quadratic Bezier a, b, c sweeps as seen from the origin.

    While the origin lies outside the triangle of its control points it sweeps less than a half turn, so that
    the angle between its ends is the whole answer; otherwise it is halved.
    """
    ab, bc, ca = a.cross(b), b.cross(c), c.cross(a)
    outside = not ((ab >= 0.0 and bc >= 0.0 and ca >= 0.0) or (ab <= 0.0 and bc <= 0.0 and ca <= 0.0))
    flat = ab == 0.0 and bc == 0.0 and ca == 0.0 and a.dot(c) > 0.0 and (a.dot(b) >= 0.0)
    if outside or flat or depth == 0:
        ends = [v for v in (a, b, c) if v.norm() > 0.0]
        return ends[0].angle_to(ends[-1]) if ends else 0.0
    ab_, bc_ = a.toward(b, 0.5), b.toward(c, 0.5)
    middle = ab_.toward(bc_, 0.5)
    return _hodograph_turning(a, ab_, middle, depth=depth - 1) + _hodograph_turning(
        middle, bc_, c, depth=depth - 1
    )
