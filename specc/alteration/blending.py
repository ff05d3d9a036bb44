"""Owns how an opened edge is drawn anew as one smooth run; knows nothing of darts and pieces."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.geometry.fit import arc, blend
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from specc.geometry.point import Point

SQUARE: Final = 1e-6  # cosine below which a direction stands square to another


def flared(before: Path, after: Path, pivot: Point) -> Path:
    """One smooth run in place of two that were cut apart and turned about the pivot.

    Where the uncut edge was smooth and stood square to a line from the pivot, within the inner halves of the
    two runs, the edge is opened at that foot and follows the arc about the pivot: the new edge keeps its
    distance from the pivot. Elsewhere it runs smoothly from the middle of the one run to that of the other.
    """
    angle = (before.end - pivot).angle_to(after.start - pivot)
    motion = Rigid.turning(pivot, angle)
    unturned = after.transformed(Rigid.turning(pivot, -angle))
    uncut = before.joined(unturned.between_points(before.end, unturned.end))
    first, second = before.length(), after.length()
    low, high = 0.5 * first, first + 0.5 * second
    near = uncut.between(low, high)
    foot = low + near.length_at(pivot)
    kink = before.end_direction().cross(unturned.start_direction())
    if abs(kink) <= SQUARE and low + SAME < foot < high - SAME:
        away, along = (uncut.point_at(foot) - pivot).unit(), uncut.direction_at(foot)
        if abs(away.dot(along)) <= SQUARE and away.left().dot(along) * angle > 0.0:
            start, rest = uncut.split_at(foot)
            opening = arc(start.end, pivot, angle)
            moved = rest.transformed(motion)
            return start.joined(opening).joined(moved.between_points(opening.end, moved.end))
    return smoothed(before, after)


def smoothed(before: Path, after: Path) -> Path:
    """One smooth run in place of two that lie apart: straight on if it can be, else from middle to middle."""
    way = after.start - before.end
    if way.norm() > SAME:
        u, v = before.end_direction(), after.start_direction()
        along = way.unit()
        if min(u.dot(along), v.dot(along)) > 0.0 and max(abs(u.cross(along)), abs(v.cross(along))) <= SQUARE:
            return before.joined(Path((Line(before.end, after.start),))).joined(after)
    start, _ = before.split_at(0.5 * before.length())
    _, rest = after.split_at(0.5 * after.length())
    bridge = blend(start.end, start.end_direction(), rest.start, rest.start_direction())
    return start.joined(bridge).joined(rest)
