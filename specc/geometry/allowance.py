"""Owns the cut line round a closed outline whose runs have each their allowance; knows no seams."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.geometry.corner import Side, mitred, squared
from specc.geometry.point import Point
from specc.geometry.region import polygon_area
from specc.geometry.tolerance import GRID, SAME
from specc.geometry.turned import turned_back

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.corner import Joint
    from specc.geometry.path import Path

GRID_DIGITS: Final = 4  # decimals of GRID


@dataclass(frozen=True, slots=True)
class Allowed:
    """A run of an outline and the allowance outside it, in millimetres; 0 for none.

    `turned` are the depths by which the allowance is turned back onto the piece, from the run outward: none,
    one for a hem turned once, two for one turned twice. Where such a run meets another, its end is the mirror
    image of what it will lie on. `square_start` and `square_end` say that the allowance ends square to the
    run there. Along a run `on_fold` the cloth is folded: allowances end on its line.
    """

    run: Path
    width: float
    turned: tuple[float, ...] = ()
    square_start: bool = False
    square_end: bool = False
    on_fold: bool = False


def cut_line(outline: tuple[Allowed, ...]) -> tuple[Point, ...]:
    """The corners of a simple polygon that holds the outline and its allowances, in the outline's direction.

    The runs follow each other and the last ends where the first starts. Corners are mitred unless their runs
    ask for something else. Where the allowance is wider than a hollow of the outline, the hollow is filled.
    Coordinates are multiples of GRID.
    """
    from shapely import Polygon, difference, union_all  # noqa: PLC0415 - slow to import, rarely needed

    points = [allowed.run.flattened() for allowed in outline]
    net = [p for run in points for p in run[:-1]]
    turn = 1.0 if polygon_area(net) > 0.0 else -1.0
    sides = [_sides(run, allowed.width, turn) for run, allowed in zip(points, outline, strict=True)]
    runs = tuple(zip(outline, sides, strict=True))
    joints = [_joint(before, after) for before, after in zip(runs, runs[1:] + runs[:1], strict=True)]
    shapes = [Polygon(_pairs(net))]
    for index, run in enumerate(sides):
        start, end = joints[index - 1], joints[index]
        inner = [ring for a, b in itertools.pairwise(run) for ring in mitred(a, b).both]
        rings = [*(side.strip for side in run if side.width > 0.0), *inner, *start.to_after, *end.to_before]
        strip = union_all([Polygon(_pairs(ring)) for ring in rings])
        for surplus in (*start.off_after, *end.off_before):
            strip = difference(strip, Polygon(_pairs(surplus)))
        shapes.append(strip)
    shapes += [Polygon(_pairs(ring)) for joint in joints for ring in joint.both]
    joined = union_all(shapes, grid_size=GRID)
    held = max(getattr(joined, "geoms", [joined]), key=lambda shape: shape.area)
    corners = [Point(round(x, GRID_DIGITS), round(y, GRID_DIGITS)) for x, y in held.exterior.coords[:-1]]
    return _from_first(_cornered(corners), net[0], turn)


def _joint(before: tuple[Allowed, list[Side]], after: tuple[Allowed, list[Side]]) -> Joint:
    """The corner between two runs as they ask for it; mitred where what they ask for cannot be."""
    (first, ending), (second, starting) = before, after
    back = [side.reversed() for side in reversed(ending)]
    joint: Joint | None = None
    if first.on_fold or second.on_fold or (first.turned and second.turned):
        pass
    elif second.turned:
        joint = turned_back(starting[0], second.run.start_direction(), second.turned, back)
    elif first.turned:
        found = turned_back(back[0], -first.run.end_direction(), first.turned, starting)
        joint = found.swapped if found else None
    elif first.square_end:
        joint = squared(ending[-1], starting[0])
    elif second.square_start:
        found = squared(starting[0].reversed(), back[0])
        joint = found.swapped if found else None
    return joint or mitred(ending[-1], starting[0])


def _sides(points: Iterable[Point], width: float, turn: float) -> list[Side]:
    """The straight sides of a flattened run; `turn` is 1 where the piece lies to the left, else -1."""
    pairs = ((a, b) for a, b in itertools.pairwise(points) if a.distance(b) > SAME)
    return [Side(a, b, width, (b - a).unit().left() * -turn) for a, b in pairs]


def _pairs(points: Iterable[Point]) -> list[tuple[float, float]]:
    return [(p.x, p.y) for p in points]


def _cornered(points: list[Point]) -> list[Point]:
    """The polygon without corners that lie exactly on a straight run."""
    triples = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    return [b for a, b, c in triples if (b - a).cross(c - b) != 0.0]


def _from_first(points: list[Point], first: Point, turn: float) -> tuple[Point, ...]:
    """The polygon in the outline's direction, from the corner nearest to the outline's first point."""
    if polygon_area(points) * turn < 0.0:
        points.reverse()
    nearest = min(range(len(points)), key=lambda i: (points[i].distance(first), points[i].x, points[i].y))
    return tuple(points[nearest:] + points[:nearest])
