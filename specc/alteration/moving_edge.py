"""Owns how an edge of a piece moves parallel to itself between its neighbours; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING, Final

from specc.alteration.fitting import fitted_inside
from specc.alteration.marks import cut_to
from specc.alteration.refusal import Refusal
from specc.alteration.runs import NEAR, with_gone
from specc.geometry.crossing import crossings
from specc.geometry.offset import tapering
from specc.geometry.path import Path
from specc.geometry.region import crosses_itself, signed_area
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import drawn_outline, flat_outline
from specc.pattern.piece import Edge

if TYPE_CHECKING:
    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.pattern.piece import Piece
    from specc.source import Span

FAR: Final = 4.0  # how many times its own distance a moved end may slide along its neighbour
ROUNDS: Final = 12  # attempts to move both legs of every dart alike


@dataclass(frozen=True, slots=True)
class Rail:
    """What an end of a moving run slides on: outward straight, inward along `path`, which starts there."""

    name: str
    path: Path

    def outward(self, reach: float) -> Path:
        """The straight run on which the end moves out, `reach` long."""
        return Path((Line(self.path.start, self.path.start - self.path.start_direction() * reach),))


@dataclass(frozen=True, slots=True)
class Step:
    """An edge that comes between a moving edge and a neighbour that goes straight on from it.

    Edge `name` leads from the old corner, which stays, to the new `corner`; it runs in the direction
    `outward`.
    """

    name: str
    corner: str
    outward: Point


Steps = tuple[Step | None, Step | None]
"""The steps at the start and at the end of an edge."""


def edge_moved(  # noqa: PLR0913 - an edge, how far at either end, and what is said of it
    piece: Piece,
    name: str,
    by: float,
    *,
    then: float | None = None,
    even_legs: bool = False,
    steps: Steps = (None, None),
    origin: Span,
    how: str,
) -> Piece | Refusal:
    """The piece with an edge moved out square to itself, in where the distance is negative.

    The distance goes over evenly along the edge from `by` at its start corner to `then` at its end corner;
    None is the same, and the two must not have different signs. Neighbours, and the legs of darts on the
    edge, go on straight, or are trimmed. A corner that moves by nothing stays. With `even_legs` both legs of
    a dart change by as much: the edge on either side of it moves a little more or less. A neighbour stays as
    it is where one of the `steps` comes between.
    """
    edge = edge_named(piece, name)
    if edge is None:
        gone = next((gone.how for gone in piece.gone if gone.name == name), "never there")
        facts: Facts = (("piece", piece.name), ("name", name), ("how", gone))
        return Refusal(
            "part-gone", facts, origin, "put this alteration before that one, or name another part"
        )
    last = by if then is None else then
    parts = _moved_parts(piece, edge, (by, last), steps=steps, rounds=ROUNDS if even_legs else 1)
    index = piece.edges.index(edge)
    after = piece.edges[(index + 1) % len(piece.edges)]
    blocked = parts.name if isinstance(parts, Rail) else after.name
    if not isinstance(parts, Rail):
        altered = _with_edge(piece, edge, parts, steps=steps, how=how)
        # A run bent more tightly than it moves folds over itself.
        if not crosses_itself(flat_outline(altered)):
            return altered
    amount = max(by, last, key=abs)
    facts = (("piece", piece.name), ("edge", name), ("by", amount), ("neighbour", blocked))
    return Refusal("edge-cannot-move", facts, origin, "take a smaller amount, or move another edge")


def _moved_parts(
    piece: Piece, edge: Edge, by: tuple[float, float], *, steps: Steps, rounds: int
) -> tuple[Path, ...] | Rail:
    """The parts of the edge moved out between their rails, or the rail that one of them does not reach.

    After each round but the last the distances at the darts are set so that both legs change alike.
    """
    index = piece.edges.index(edge)
    before, after = piece.edges[index - 1], piece.edges[(index + 1) % len(piece.edges)]
    inner = {dart.name: dart for dart in piece.darts}
    darts = [inner[name] for name in edge.darts]
    starts = [_beside(steps[0], before.name, before.parts[-1].reversed())]
    starts += (Rail(dart.name, Path.through(dart.second, dart.pivot)) for dart in darts)
    ends = [Rail(dart.name, Path.through(dart.first, dart.pivot)) for dart in darts]
    ends.append(_beside(steps[1], after.name, after.parts[0]))
    # The outline's left is inside when it runs counter-clockwise.
    outward = -1.0 if signed_area(drawn_outline(piece)) > 0.0 else 1.0
    stops = [0.0, *accumulate(part.length() for part in edge.parts)]
    at = [by[0] + (by[1] - by[0]) * stop / stops[-1] for stop in stops]
    distances = list(pairwise(at))
    parts: list[Path] = []
    for _ in range(rounds):
        parts = []
        for part, start, end, (low, high) in zip(edge.parts, starts, ends, distances, strict=True):
            copy = tapering(part, outward * low, outward * high)
            moved = _between_rails(copy, start, end, low, high)
            if isinstance(moved, Rail):
                return moved
            parts.append(moved)
        slides = [
            (a.end.distance(dart.first), b.start.distance(dart.second))
            for dart, (a, b) in zip(darts, pairwise(parts), strict=True)
        ]
        if all(abs(one - two) <= SAME for one, two in slides):
            break
        for i, (one, two) in enumerate(slides):
            mean = 0.5 * (one + two)
            (low, high), (other, far) = distances[i], distances[i + 1]
            distances[i] = (low, high * mean / one if one > SAME else high)
            distances[i + 1] = (other * mean / two if two > SAME else other, far)
    return tuple(parts)


def _beside(step: Step | None, neighbour: str, path: Path) -> Rail:
    """What an outer end slides on: the neighbour, whose `path` begins at the corner, or a step."""
    if step is None:
        return Rail(neighbour, path)
    return Rail(step.name, Path.through(path.start, path.start - step.outward))


def _between_rails(copy: Path, start: Rail, end: Rail, low: float, high: float) -> Path | Rail:
    """The copy, moved by `low` and `high` at its ends, ending on its rails; or a rail that it misses."""
    reach = FAR * max(abs(low), abs(high))
    long = copy.extended(reach, reach)
    stops: list[float] = []
    for rail, near, by in ((start, reach, low), (end, reach + copy.length(), high)):
        if abs(by) <= SAME:
            stops.append(near)
            continue
        met = crossings(long, rail.outward(reach) if by > 0.0 else rail.path)
        if not met:
            return rail
        _, nearest = min((abs(crossing.along - near), crossing.along) for crossing in met)
        stops.append(nearest)
    if stops[1] - stops[0] <= NEAR:
        return end
    moved = long.between(*stops)
    return moved.between_points(
        start.path.start if abs(low) <= SAME else moved.start,
        end.path.start if abs(high) <= SAME else moved.end,
    )


def _with_edge(piece: Piece, edge: Edge, parts: tuple[Path, ...], *, steps: Steps, how: str) -> Piece:
    """The piece with the moved edge, its neighbours reaching to it, and what lay beyond it gone."""
    index, count = piece.edges.index(edge), len(piece.edges)
    edges = list(piece.edges)
    first, second = (index - 1) % count, (index + 1) % count
    row = [replace(edge, parts=parts)]
    if steps[0] is None:
        beside = _reaching(edges[first].parts[-1], parts[0].start)
        grown = beside.length() - edges[first].parts[-1].length()
        before = cut_to(edges[first], 0.0, stitched_length(edges[first]) + grown)
        edges[first] = replace(before, parts=(*before.parts[:-1], beside))
    else:
        up = Path.through(edge.parts[0].start, parts[0].start)
        row = [
            Edge(steps[0].name, edge.start, steps[0].corner, (up,)),
            replace(row[0], start=steps[0].corner),
        ]
    grown = 0.0
    if steps[1] is None:
        beside = _reaching(edges[second].parts[0].reversed(), parts[-1].end).reversed()
        grown = beside.length() - edges[second].parts[0].length()
        after = cut_to(edges[second], -grown, float("inf"))
        edges[second] = replace(after, parts=(beside, *after.parts[1:]))
    else:
        down = Path.through(parts[-1].end, edge.parts[-1].end)
        row[-1] = replace(row[-1], end=steps[1].corner)
        row.append(Edge(steps[1].name, steps[1].corner, edge.end, (down,)))
    shifted = edges[second].name
    edges[index : index + 1] = row
    mouths = {name: (a.end, b.start) for name, (a, b) in zip(edge.darts, pairwise(parts), strict=True)}
    altered = replace(
        piece,
        edges=tuple(edges),
        darts=tuple(
            replace(dart, first=mouths[dart.name][0], second=mouths[dart.name][1])
            if dart.name in mouths
            else dart
            for dart in piece.darts
        ),
        notches=tuple(
            replace(notch, at=notch.at + grown) if notch.edge == shifted else notch for notch in piece.notches
        ),
    )
    return with_gone(piece, fitted_inside(piece, altered), how)


def _reaching(path: Path, end: Point) -> Path:
    """The path trimmed, or made longer straight on, so that it ends at a point on its course."""
    along = path.length_at(end)
    if path.point_at(along).distance(end) <= NEAR and path.length() - along > SAME:
        return path.between(0.0, along).between_points(path.start, end)
    if path.end.distance(end) <= SAME:
        return path.between_points(path.start, end)
    return path.joined(Path((Line(path.end, end),)))
