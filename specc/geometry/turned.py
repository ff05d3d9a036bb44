"""Owns the corner where an allowance that is turned back meets another edge; knows nothing of hems.

A hem turned up along its line lies on the piece. It lies flat, and its end is caught in the seam, when that
end is cut as the mirror image of what it lies on: the seam's cut edge, mirrored in the line of the fold.
Below a skirt that widens the hem narrows, below a leg that narrows it widens. Turned twice, the part that is
turned under is mirrored again, in the second fold. Common practice, no source: the paper is folded along the
hem line, and the seam is cut through both layers.
"""

from __future__ import annotations

from itertools import pairwise
from math import radians, tan
from typing import TYPE_CHECKING, Final, NamedTuple

from specc.geometry.corner import Joint, thick
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from specc.geometry.corner import Side
    from specc.geometry.point import Point

MOST_SLANT: Final = radians(60.0)
"""An edge that leans further than this from square to the fold is mitred like any other.

Common practice, no source: mirrored, it would take more from the turned part than a seam can hold.
"""

_PAST: Final = 0.5  # of its width: how far past its cut edge the end of the turned part is cleared


class _Place(NamedTuple):
    """A point as seen from the corner: `along` the fold into the turned part, `up` from it onto the piece."""

    along: float
    up: float


def turned_back(hem: Side, along: Point, turned: tuple[float, ...], edge: Sequence[Side]) -> Joint | None:
    """The corner from which the turned part leads away along `hem`, the other edge along the sides of `edge`.

    `along` is the direction of the fold at the corner, `turned` are the depths. In the joint the edge stands
    before and the turned part after. None where the edge does not rise from the fold, or leans over too far.
    """
    at = hem.start
    out = along.left() if along.left().dot(hem.out) > 0.0 else -along.left()
    rising = _rising([_chain(side, at, along, out) for side in edge], max(turned))
    if rising is None:
        return None
    end = [*_folded(rising, turned)]
    end.append(_Place(end[-1].along, end[-1].up - _PAST * hem.width))
    wide, below = edge[0].width, end[-1].up
    aside = max(0.0, *(-place.along for place in end)) + SAME
    past = aside + hem.width
    rises = edge[0].away.dot(out) < 0.0

    def ring(*places: tuple[float, float]) -> tuple[Point, ...]:
        return tuple(at + along * x - out * y for x, y in places)

    corner = ring(rising[0])
    return Joint(
        to_before=thick(at, at + edge[0].away, *corner) if rises else (),
        off_before=thick(
            *ring((0.0, 0.0), (-2.0 * wide, 0.0), (-2.0 * wide, -2.0 * wide), (0.0, -2.0 * wide))
        ),
        to_after=(
            *thick(*ring((0.0, 0.0), (-aside, 0.0), (-aside, -hem.width), (0.0, -hem.width))),
            *thick(at, *ring((0.0, -hem.width)), at + hem.away),
        ),
        off_after=thick(*ring(*end, (-past, below), (-past, 0.0))),
    )


def _chain(side: Side, at: Point, along: Point, out: Point) -> tuple[_Place, _Place]:
    """The cut edge of a side as seen from the corner."""
    start, end = side.start + side.away - at, side.end + side.away - at
    return _Place(start.dot(along), -start.dot(out)), _Place(end.dot(along), -end.dot(out))


def _rising(chains: Sequence[tuple[_Place, _Place]], height: float) -> tuple[_Place, ...] | None:
    """The cut edge from the line of the fold up to a height, in places each above the one before it.

    Where it does not go on upward it is carried on straight.
    """
    line = chains[0]
    if line[1].up - line[0].up <= SAME:
        return None
    places = [_on(line, 0.0)]
    for chain, following in pairwise((*chains, chains[-1])):
        joint = _meeting(chain, following)
        if not places[-1].up + SAME < joint.up < height:
            break
        places.append(joint)
        if following[1].up - following[0].up <= SAME:
            break
        line = following
    places.append(_on(line, height))
    if abs(places[-1].along - places[0].along) > height * tan(MOST_SLANT):
        return None
    return tuple(places)


def _on(line: tuple[_Place, _Place], up: float) -> _Place:
    """The place at a height on the endless line through two places of different height."""
    (a, low), (b, high) = line
    return _Place(a + (b - a) * (up - low) / (high - low), up)


def _meeting(line: tuple[_Place, _Place], other: tuple[_Place, _Place]) -> _Place:
    """Where the endless lines of two neighbours meet; the end of the first where they run on straight."""
    (a, p), (b, q) = line
    (c, r), (d, s) = other
    cross = (b - a) * (s - r) - (q - p) * (d - c)
    if abs(cross) <= SAME:
        return line[1]
    share = ((c - a) * (s - r) - (r - p) * (d - c)) / cross
    return _Place(a + (b - a) * share, p + (q - p) * share)


def _folded(rising: tuple[_Place, ...], turned: tuple[float, ...]) -> Iterator[_Place]:
    """The end of the turned part laid open, below the fold (`up` is negative): mirrored at each fold."""
    yield rising[0]
    opened, up, way = 0.0, 0.0, 1.0
    for depth in turned:
        stop = up + way * depth
        passed = [place for place in rising if min(up, stop) + SAME < place.up < max(up, stop) - SAME]
        for place in passed if way > 0.0 else reversed(passed):
            yield _Place(place.along, -(opened + abs(place.up - up)))
        opened, up, way = opened + depth, stop, -way
        yield _Place(_along(rising, up), -opened)


def _along(rising: tuple[_Place, ...], up: float) -> float:
    """How far along the fold the cut edge is at a height; below the fold carried on straight."""
    line = next((pair for pair in pairwise(rising) if up <= pair[1].up), rising[-2:])
    return _on((line[0], line[1]), up).along
