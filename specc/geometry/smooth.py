"""Owns smooth curves through points; knows nothing of what is drawn with them."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from specc.geometry.fit import blend
from specc.geometry.path import Path

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.geometry.point import Point


def smooth_through(
    points: Sequence[Point], *, leaving: Point | None = None, arriving: Point | None = None
) -> tuple[Path, ...]:
    """The smooth curve through two or more points, no neighbours the same, as a path from each to the next.

    At an inner point the curve has the direction of the circle through the point and its two neighbours, and
    from point to point it runs near an arc: points on a circle give that circle, points on a line that line.
    At an end it goes on as the last arc does, unless a direction of travel is given. Two points are joined
    straight.
    """
    chords = [b - a for a, b in pairwise(points)]
    inner = [_tangent(a, b) for a, b in pairwise(chords)]
    first = leaving or (_mirrored(inner[0], chords[0]) if inner else arriving or chords[0])
    last = arriving or (_mirrored(inner[-1], chords[-1]) if inner else first)
    directions = [first.unit(), *inner, last.unit()]
    return tuple(
        Path(blend(a, u, b, v).segments)
        for (a, b), (u, v) in zip(pairwise(points), pairwise(directions), strict=True)
    )


def _tangent(before: Point, after: Point) -> Point:
    """The direction at the point between two chords, of the circle through their three ends.

    The sine of the angle between a chord and the circle at its end is the chord over the diameter, so the
    directions of the chords count as much as the other chord is long.
    """
    along = before.unit() * after.norm() + after.unit() * before.norm()
    # Where the way turns straight back the circle is a line: square to it.
    return along.unit() if along.norm() > 1e-9 * before.norm() else before.left().unit()


def _mirrored(direction: Point, chord: Point) -> Point:
    """The direction at the other end of an arc with this chord and this direction at its one end."""
    along = chord.unit()
    return along * (2.0 * along.dot(direction)) - direction
