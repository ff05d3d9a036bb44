"""Owns how an edge of a piece moves parallel to itself between its neighbours; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.fitting import fitted_inside
from specc.alteration.refusal import Refusal
from specc.alteration.runs import NEAR, with_gone
from specc.geometry.crossing import crossings
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.region import crosses_itself, signed_area
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.measure import run_length
from specc.pattern.outline import drawn_outline, flat_outline

if TYPE_CHECKING:
    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.pattern.piece import Edge, Piece
    from specc.source import Span

FAR: Final = 4.0  # how many times its own distance a moved end may slide along its neighbour


@dataclass(frozen=True, slots=True)
class Rail:
    """What an end of a moving run slides on: outward straight, inward along `path`, which starts there."""

    name: str
    path: Path

    def outward(self, reach: float) -> Path:
        """The straight run on which the end moves out, `reach` long."""
        return Path((Line(self.path.start, self.path.start - self.path.start_direction() * reach),))


def edge_moved(piece: Piece, name: str, by: float, *, origin: Span, how: str) -> Piece | Refusal:
    """The piece with an edge moved out by a distance square to itself, in where it is negative.

    Its neighbours, and the legs of darts on it, go on straight, or are trimmed.
    """
    edge = edge_named(piece, name)
    if edge is None:
        gone = next((gone.how for gone in piece.gone if gone.name == name), "never there")
        facts: Facts = (("piece", piece.name), ("name", name), ("how", gone))
        return Refusal(
            "part-gone", facts, origin, "put this alteration before that one, or name another part"
        )
    index = piece.edges.index(edge)
    before, after = piece.edges[index - 1], piece.edges[(index + 1) % len(piece.edges)]
    inner = {dart.name: dart for dart in piece.darts}
    starts = [Rail(before.name, before.parts[-1].reversed())]
    ends = []
    for dart in (inner[name] for name in edge.darts):
        ends.append(Rail(dart.name, Path.through(dart.first, dart.pivot)))
        starts.append(Rail(dart.name, Path.through(dart.second, dart.pivot)))
    ends.append(Rail(after.name, after.parts[0]))
    # The outline's left is inside when it runs counter-clockwise.
    outward = -by if signed_area(drawn_outline(piece)) > 0.0 else by
    parts: list[Path] = []
    for part, start, end in zip(edge.parts, starts, ends, strict=True):
        moved = _between_rails(parallel(part, outward), start, end, by)
        if isinstance(moved, Rail):
            facts = (("piece", piece.name), ("edge", name), ("by", by), ("neighbour", moved.name))
            return Refusal("edge-cannot-move", facts, origin, "take a smaller amount, or move another edge")
        parts.append(moved)
    altered = _with_edge(piece, edge, tuple(parts), how=how)
    # A run bent more tightly than it moves folds over itself.
    if crosses_itself(flat_outline(altered)):
        facts = (("piece", piece.name), ("edge", name), ("by", by), ("neighbour", after.name))
        return Refusal("edge-cannot-move", facts, origin, "take a smaller amount, or move another edge")
    return altered


def _between_rails(copy: Path, start: Rail, end: Rail, by: float) -> Path | Rail:
    """The parallel copy made to begin and end on its rails, or the rail that it does not reach."""
    reach = FAR * abs(by)
    long = copy.extended(reach, reach)
    stops: list[float] = []
    for rail, near in ((start, reach), (end, reach + copy.length())):
        met = crossings(long, rail.outward(reach) if by > 0.0 else rail.path)
        if not met:
            return rail
        _, nearest = min((abs(crossing.along - near), crossing.along) for crossing in met)
        stops.append(nearest)
    if stops[1] - stops[0] <= NEAR:
        return end
    return long.between(*stops)


def _with_edge(piece: Piece, edge: Edge, parts: tuple[Path, ...], *, how: str) -> Piece:
    """The piece with the moved edge, its neighbours reaching to it, and what lay beyond it gone."""
    index, count = piece.edges.index(edge), len(piece.edges)
    edges = list(piece.edges)
    edges[index] = replace(edge, parts=parts)
    first, second = (index - 1) % count, (index + 1) % count
    edges[first] = replace(
        edges[first], parts=(*edges[first].parts[:-1], _reaching(edges[first].parts[-1], parts[0].start))
    )
    edges[second] = replace(
        edges[second],
        parts=(
            _reaching(edges[second].parts[0].reversed(), parts[-1].end).reversed(),
            *edges[second].parts[1:],
        ),
    )
    darts = tuple(
        replace(dart, first=parts[i].end, second=parts[i + 1].start)
        for dart in piece.darts
        for i in (edge.darts.index(dart.name) if dart.name in edge.darts else -1,)
        if i >= 0
    )
    moved = {dart.name: dart for dart in darts}
    old = {e.name: e for e in piece.edges}
    grown = {e.name: run_length(e) - run_length(old[e.name]) for e in edges}
    altered = replace(
        piece,
        edges=tuple(edges),
        darts=tuple(moved.get(dart.name, dart) for dart in piece.darts),
        notches=tuple(
            replace(notch, at=notch.at + (grown[notch.edge] if notch.edge == edges[second].name else 0.0))
            for notch in piece.notches
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
