"""Owns how a traced point moves from size to size: by its rule, or carried along by what it lies on.

Knows nothing of how points, edges and values are found.
"""

from __future__ import annotations

from itertools import accumulate, pairwise
from typing import TYPE_CHECKING, Final, Protocol

from specc.geometry.point import Point
from specc.model.block import Arc, At, Curve, DartRun, LineDraft
from specc.model.tracing import Meeting, Near
from specc.pattern.measure import place_on_edge, stitched_at, stitched_length

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from specc.model.block import EdgeDraft, PieceDraft, PointDraft
    from specc.model.expression import Expression
    from specc.model.tracing import Shift, Traced
    from specc.pattern.piece import Edge

ON: Final = 0.5  # mm: a traced point this near an edge lies on it; nobody measures paper better
STILL: Final = Point(0.0, 0.0)


class OnePiece(Protocol):
    """A piece in one size: its points, its edges, its values."""

    def at(self, name: str) -> Point:
        """The point of that name."""

    def edge(self, name: str) -> Edge:
        """The edge of that name."""

    def value(self, expression: Expression) -> float:
        """The value in millimetres, radians or a plain number."""


def shifted(grading: tuple[Shift | None, ...], traced: Traced, size: str, now: OnePiece) -> Point:
    """How far a rule moves a point from the traced size to another: up by its steps, down against them."""
    first, last = traced.sizes.index(traced.size), traced.sizes.index(size)
    steps = grading[min(first, last) : max(first, last)]
    sign = 1.0 if last > first else -1.0
    across = sum(now.value(step.right) for step in steps if step is not None)
    up = sum(now.value(step.up) for step in steps if step is not None)
    return Point(across, up) * sign


def carried(draft: PointDraft, piece: PieceDraft, now: OnePiece, before: OnePiece) -> Point:
    """How far a point without a rule has moved, `before` being the piece as traced.

    What is described from other points has moved with them already. The ends of edges stay where they are.
    Within an edge a point moves as its neighbours with a rule do, more like the nearer one, by the length
    along the edge; the point of a dart goes with the dart, a point on an edge with the edge. A point that a
    reference line passes moves between those of the line. All else stays.
    """
    name = draft.name
    if not isinstance(draft.position, At | Meeting | Near) or any(
        name in _ends(edge) for edge in piece.edges
    ):
        return STILL
    for edge in piece.edges:
        if name in _knots(edge, piece.name):
            return _between_neighbours(edge, piece, now, before, name=name)
        for here, run in zip(_stops(edge), edge.runs, strict=False):
            if isinstance(run, DartRun) and run.pivot == name:
                return (_moved(here, now, before) + _moved(run.to, now, before)) * 0.5
    at = before.at(name)
    for edge in piece.edges:
        along = before.edge(edge.name)
        if any(part.is_near(at, ON) for part in along.parts):
            place = _place(along, at)
            went = _follow(edge, place, now, before, knots=_knots(edge, piece.name))
            return went - place_on_edge(along, place).at
    for line in piece.lines:
        if isinstance(line, LineDraft) and name in line.through:
            return _between_ends(line, piece, now, before, name=name)
    return STILL


def _between_neighbours(
    edge: EdgeDraft, piece: PieceDraft, now: OnePiece, before: OnePiece, *, name: str
) -> Point:
    """What the nearest points of the edge with a rule, or its ends, have moved by, in proportion."""
    start, end = _ends(edge)
    along = before.edge(edge.name)
    anchors = {0.0: start, stitched_length(along): end}
    ruled = _ruled(piece, _knots(edge, piece.name))
    anchors |= {_place(along, before.at(knot)): knot for knot in ruled}
    return _between(anchors, _place(along, before.at(name)), now, before)


def _between_ends(line: LineDraft, piece: PieceDraft, now: OnePiece, before: OnePiece, *, name: str) -> Point:
    """What the nearest points of the line with a rule, or its ends, have moved by, in proportion."""
    names = (line.start, *line.through, line.end)
    steps = (before.at(one).distance(before.at(other)) for one, other in pairwise(names))
    places = dict(zip(names, accumulate(steps, initial=0.0), strict=True))
    stops = (line.start, *_ruled(piece, line.through), line.end)
    return _between({places[stop]: stop for stop in stops}, places[name], now, before)


def _ruled(piece: PieceDraft, names: Iterable[str]) -> tuple[str, ...]:
    """Those of the points that have a rule."""
    ruled = {point.name for point in piece.points if point.graded is not None}
    return tuple(name for name in names if name in ruled)


def _between(anchors: Mapping[float, str], at: float, now: OnePiece, before: OnePiece) -> Point:
    """What a place has moved by between the points that lie at the lengths before and behind it."""
    stops = sorted(anchors.items())
    for (low, first), (high, second) in pairwise(stops):
        if at <= high:
            share = (at - low) / (high - low)
            return _moved(first, now, before).toward(_moved(second, now, before), share)
    return _moved(stops[-1][1], now, before)


def _follow(
    edge: EdgeDraft, place: float, now: OnePiece, before: OnePiece, *, knots: tuple[str, ...]
) -> Point:
    """Where a place of the edge as traced has gone: as far between the same two points of the edge."""
    old, new = before.edge(edge.name), now.edge(edge.name)
    stops = sorted((_place(old, before.at(knot)), _place(new, now.at(knot))) for knot in knots)
    stops = [(0.0, 0.0), *stops, (stitched_length(old), stitched_length(new))]
    for (low, first), (high, second) in pairwise(stops):
        if low <= place <= high and high > low:
            share = (place - low) / (high - low)
            return place_on_edge(new, first + (second - first) * share).at
    return place_on_edge(new, stops[-1][1]).at


def _place(edge: Edge, at: Point) -> float:
    """The stitched length from the start at which the edge is nearest to a point."""
    part = min(range(len(edge.parts)), key=lambda index: edge.parts[index].distance_to(at))
    return stitched_at(edge, part, edge.parts[part].length_at(at))


def _moved(name: str, now: OnePiece, before: OnePiece) -> Point:
    return now.at(name) - before.at(name)


def _ends(edge: EdgeDraft) -> tuple[str, str]:
    return edge.start, edge.runs[-1].to if edge.runs else edge.start


def _stops(edge: EdgeDraft) -> tuple[str, ...]:
    """The points at which the runs of the edge begin and the last one ends."""
    return edge.start, *(run.to for run in edge.runs)


def _knots(edge: EdgeDraft, piece: str) -> tuple[str, ...]:
    """The points of the piece within the edge: between its runs, and those that its curves pass."""
    passed = []
    for run in edge.runs:
        refs = run.through if isinstance(run, Curve) else (run.through,) if isinstance(run, Arc) else ()
        passed += [ref.name for ref in refs if ref.piece == piece]
        passed.append(run.to)
    return tuple(passed[:-1])
