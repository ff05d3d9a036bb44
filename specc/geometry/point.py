"""Owns points of the plane, used as vectors too, and rigid motions; knows nothing of curves."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, hypot, sin


@dataclass(frozen=True, slots=True)
class Point:
    """A point, or the vector from the origin to it, in millimetres: x to the right, y up."""

    x: float
    y: float

    def __add__(self, other: Point) -> Point:
        """The sum of two vectors."""
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        """The vector from the other point to this one."""
        return Point(self.x - other.x, self.y - other.y)

    def __mul__(self, factor: float) -> Point:
        """The vector made longer by the factor."""
        return Point(self.x * factor, self.y * factor)

    def __neg__(self) -> Point:
        """The vector that points the other way."""
        return Point(-self.x, -self.y)

    def dot(self, other: Point) -> float:
        """The inner product."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Point) -> float:
        """The signed area of the parallelogram of two vectors: positive when the other lies to the left."""
        return self.x * other.y - self.y * other.x

    def norm(self) -> float:
        """The length of the vector."""
        return hypot(self.x, self.y)

    def unit(self) -> Point:
        """The vector of length 1 that points the same way; ZeroDivisionError for a zero vector."""
        length = hypot(self.x, self.y)
        return Point(self.x / length, self.y / length)

    def left(self) -> Point:
        """The vector turned a quarter to the left."""
        return Point(-self.y, self.x)

    def angle(self) -> float:
        """The direction in radians, from -pi to pi, 0 along x."""
        return atan2(self.y, self.x)

    def angle_to(self, other: Point) -> float:
        """The turn from this direction to the other, in radians, from -pi to pi, positive to the left."""
        return atan2(self.cross(other), self.dot(other))

    def turned(self, angle: float) -> Point:
        """The vector turned about the origin, positive to the left."""
        c, s = cos(angle), sin(angle)
        return Point(c * self.x - s * self.y, s * self.x + c * self.y)

    def distance(self, other: Point) -> float:
        """The straight distance between two points."""
        return hypot(self.x - other.x, self.y - other.y)

    def toward(self, other: Point, share: float) -> Point:
        """The point that divides the way to the other: this one at 0, the other at 1."""
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)


@dataclass(frozen=True, slots=True)
class Rigid:
    """A motion that keeps all distances: x' = xx*x + xy*y + dx, y' = yx*x + yy*y + dy."""

    xx: float
    xy: float
    yx: float
    yy: float
    dx: float
    dy: float

    @staticmethod
    def turning(about: Point, angle: float) -> Rigid:
        """The turn about a point by an angle in radians, positive to the left."""
        c, s = cos(angle), sin(angle)
        return Rigid(c, -s, s, c, about.x - c * about.x + s * about.y, about.y - s * about.x - c * about.y)

    @staticmethod
    def moving(by: Point) -> Rigid:
        """The shift by a vector."""
        return Rigid(1.0, 0.0, 0.0, 1.0, by.x, by.y)

    @staticmethod
    def mirroring(on: Point, along: Point) -> Rigid:
        """The reflection in the line through a point with a direction; the direction must not be zero."""
        u = along.unit()
        c, s = u.x * u.x - u.y * u.y, 2.0 * u.x * u.y
        return Rigid(c, s, s, -c, on.x - c * on.x - s * on.y, on.y - s * on.x + c * on.y)

    def after(self, first: Rigid) -> Rigid:
        """The motion that takes a point where the other one takes it, and then where this one does."""
        return Rigid(
            self.xx * first.xx + self.xy * first.yx,
            self.xx * first.xy + self.xy * first.yy,
            self.yx * first.xx + self.yy * first.yx,
            self.yx * first.xy + self.yy * first.yy,
            self.xx * first.dx + self.xy * first.dy + self.dx,
            self.yx * first.dx + self.yy * first.dy + self.dy,
        )

    def inverse(self) -> Rigid:
        """The motion that takes everything back."""
        return Rigid(
            self.xx,
            self.yx,
            self.xy,
            self.yy,
            -self.xx * self.dx - self.yx * self.dy,
            -self.xy * self.dx - self.yy * self.dy,
        )

    @property
    def mirrors(self) -> bool:
        """Whether left and right change places."""
        return self.xx * self.yy - self.xy * self.yx < 0.0

    def __call__(self, point: Point) -> Point:
        """Where the motion takes the point."""
        return Point(
            self.xx * point.x + self.xy * point.y + self.dx,
            self.yx * point.x + self.yy * point.y + self.dy,
        )
