"""Owns the corners of a cut line: what joins the allowances of two straight sides; knows no whole outlines.

A side's allowance is a strip. A joint says what a corner adds to the two strips and takes from each, so that
the cut line is the border of all of it together and cannot cross itself.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.geometry.region import polygon_area
from specc.geometry.tolerance import GRID, SAME

if TYPE_CHECKING:
    from specc.geometry.point import Point

MITRE_LIMIT: Final = 2.5
"""A mitre reaches this many times the wider allowance from its corner; a longer one is cut off square there.

Common practice, no source: a spike longer than that is trimmed before it is turned, and only catches in the
lay. Corners sharper than 47 degrees are cut off.
"""

Ring = tuple["Point", ...]  # the corners of a polygon, the first not repeated


@dataclass(frozen=True, slots=True)
class Side:
    """A straight side of an outline with its allowance: `out` is the unit direction out of the piece."""

    start: Point
    end: Point
    width: float
    out: Point

    @property
    def direction(self) -> Point:
        """The unit direction of travel."""
        return (self.end - self.start).unit()

    @property
    def away(self) -> Point:
        """From the side to its cut edge."""
        return self.out * self.width

    @property
    def strip(self) -> Ring:
        """The allowance between the side and its cut edge."""
        return self.start, self.end, self.end + self.away, self.start + self.away

    def reversed(self) -> Side:
        """The same side travelled the other way."""
        return Side(self.end, self.start, self.width, self.out)


@dataclass(frozen=True, slots=True)
class Joint:
    """What a corner does to the two strips that meet there.

    `to_before` and `to_after` go to a strip, then `off_before` and `off_after` are taken from it; `both` is
    there whatever the strips are.
    """

    both: tuple[Ring, ...] = ()
    to_before: tuple[Ring, ...] = ()
    to_after: tuple[Ring, ...] = ()
    off_before: tuple[Ring, ...] = ()
    off_after: tuple[Ring, ...] = ()

    @property
    def swapped(self) -> Joint:
        """The same corner met from the other side."""
        return Joint(self.both, self.to_after, self.to_before, self.off_after, self.off_before)


def mitred(before: Side, after: Side) -> Joint:
    """The two cut edges go on until they meet; a corner too sharp for that is cut off square at the limit."""
    tip = mitre_tip(before, after)
    if tip is None:
        return Joint()
    at, u, v = before.end, before.direction, after.direction
    a, b = at + before.away, at + after.away
    limit = MITRE_LIMIT * max(before.width, after.width)
    far = tip - at
    if far.norm() > limit:
        out = far.unit()
        if (tip - a).dot(u) < 0.0 or (b - tip).dot(v) < 0.0:
            return Joint(thick(at, a, b))
        stop = [p + d * ((limit - (p - at).dot(out)) / d.dot(out)) for p, d in ((a, u), (b, -v))]
        return Joint(thick(at, a, stop[0], stop[1], b))
    # Where one strip is much narrower its cut edge ends inside the other, whose end stands out beyond it.
    if (tip - a).dot(u) < -SAME:
        met = _met(before, v, tip, at=at)
        return Joint(thick(at, met, b), off_before=_surplus(met, tip, a))
    if (b - tip).dot(v) < -SAME:
        met = _met(after, u, tip, at=at)
        return Joint(thick(at, a, met), off_after=_surplus(met, tip, b))
    return Joint(thick(at, a, tip, b))


def squared(before: Side, after: Side) -> Joint | None:
    """The allowance of the side before ends square to it, where its line meets the other's cut edge.

    None where that cannot be: at a hollow corner, or where the one is too narrow for the other.
    """
    tip = mitre_tip(before, after)
    if tip is None or before.width <= 0.0 or after.width <= 0.0:
        return None
    at, u, v = before.end, before.direction, after.direction
    a, b = at + before.away, at + after.away
    reach = after.width / abs(u.cross(v))
    if reach > MITRE_LIMIT * after.width or (tip - a).dot(u) < 0.0 or (b - tip).dot(v) < 0.0:
        return None
    end = at + u * reach
    return Joint((*thick(at, a, end + before.away, end), *thick(at, end, b)))


def mitre_tip(before: Side, after: Side) -> Point | None:
    """Where the two cut edges meet beyond a corner that stands out; None at a hollow or a straight one."""
    u, v = before.direction, after.direction
    if -v.dot(before.out) <= SAME or max(before.width, after.width) <= 0.0:
        return None
    return before.end + before.away + u * ((after.away - before.away).cross(v) / u.cross(v))


def _met(side: Side, other: Point, tip: Point, *, at: Point) -> Point:
    """Where the cut edge through `tip`, of direction `other`, crosses the end of the side's strip."""
    return at + side.out * max(0.0, (tip - at).cross(other) / side.out.cross(other))


def _surplus(met: Point, tip: Point, end: Point) -> tuple[Ring, ...]:
    """What a strip has beyond the other's cut edge: a quarter larger, since a curved strip ends unevenly."""
    return thick(met, met + (tip - met) * 1.25, met + (end - met) * 1.25)


def thick(*corners: Point) -> tuple[Ring, ...]:
    """The polygon, or none where it is too thin to matter."""
    return (corners,) if abs(polygon_area(corners)) > GRID * GRID else ()
