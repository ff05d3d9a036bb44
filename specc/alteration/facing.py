"""Owns the outline of a facing: edges with their darts closed, a parallel copy, two ends; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf
from typing import TYPE_CHECKING, Final

from specc.alteration.bending import without_kinks
from specc.alteration.runs import linked
from specc.geometry.crossing import crossings
from specc.geometry.offset import parallel
from specc.geometry.point import Rigid
from specc.geometry.region import signed_area
from specc.geometry.segment import Cubic
from specc.geometry.tolerance import SAME
from specc.pattern.measure import run_length
from specc.pattern.outline import drawn_outline
from specc.pattern.piece import Edge

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.pattern.piece import Piece

FAR: Final = 4.0  # how many times its depth a facing may run along its ends
SAMPLES: Final = 16  # places on a curve at which its radius is found

Turn = tuple["Point", float]
"""A turn about a point by an angle."""


@dataclass(frozen=True, slots=True)
class Strip:
    """The edges to be faced, with their darts closed, and the edges beside them.

    `before` runs back from the first edge's start, `after` on from the last edge's end. `side` is 1 where the
    piece lies to the left of its outline, else -1. `parts` holds every run with the turns that closed the
    darts before it.
    """

    edges: tuple[Edge, ...]
    before: Edge
    after: Edge
    ends: tuple[Path, Path]
    side: float
    parts: tuple[tuple[Path, tuple[Turn, ...]], ...]

    def tightest(self) -> float:
        """The smallest radius in mm with which an edge bends round the facing; infinity if none does."""
        curves = (s for e in self.edges for p in e.parts for s in p.segments if isinstance(s, Cubic))
        bends = (
            self.side * _curvature(cubic, step / SAMPLES) for cubic in curves for step in range(SAMPLES + 1)
        )
        tightest = max(bends, default=0.0)
        return 1.0 / tightest if tightest > 0.0 else inf

    def unclosed(self, point: Point) -> Point:
        """Where a point of the facing lies on the piece, on whose nearest run no dart was closed yet."""
        _, turns = min(self.parts, key=lambda part: part[0].distance_to(point))
        for about, angle in reversed(turns):
            point = Rigid.turning(about, -angle)(point)
        return point


def _curvature(cubic: Cubic, t: float) -> float:
    first, second = cubic.derivative_at(t), cubic.second_derivative_at(t)
    speed = first.norm()
    return first.cross(second) / speed**3 if speed > SAME else 0.0


def strip_of(piece: Piece, edges: tuple[Edge, ...]) -> Strip:
    """The edges, which follow one another, with their darts and those on the edges beside them closed.

    What lies next to the fold, or else what comes first, stays where it was.
    """
    count = len(piece.edges)
    first = next(index for index, edge in enumerate(piece.edges) if edge.name == edges[0].name)
    before, after = piece.edges[first - 1], piece.edges[(first + len(edges)) % count]
    turns: tuple[Turn, ...] = ()
    if after.name == piece.fold:
        # Turned all the way back, so that in the end nothing has happened to the last run.
        every = [turn for edge in edges for turn in _closings(piece, edge.darts)]
        turns = tuple((about, -angle) for about, angle in every)
    back = tuple((about, -angle) for about, angle in _closings(piece, before.darts)[::-1])
    closed_before = linked(part.reversed() for part, _ in _chain(before.parts[::-1], back, turns))
    parts: list[tuple[Path, tuple[Turn, ...]]] = []
    closed: list[Edge] = []
    for edge in edges:
        closings = _closings(piece, edge.darts)
        chain = list(_chain(edge.parts, tuple(closings), turns))
        turns = _after(turns, closings)
        parts += chain
        paths = [path for path, _ in chain]
        path = without_kinks(paths, length=run_length(edge)) or linked(paths)
        closed.append(replace(edge, parts=(path,), darts=()))
    closed_after = linked(
        part for part, _ in _chain(after.parts, tuple(_closings(piece, after.darts)), turns)
    )
    side = 1.0 if signed_area(drawn_outline(piece)) > 0.0 else -1.0
    return Strip(tuple(closed), before, after, (closed_before, closed_after), side, tuple(parts))


def _closings(piece: Piece, names: tuple[str, ...]) -> list[Turn]:
    """The turns that bring what follows each dart onto what comes before it."""
    darts = {dart.name: dart for dart in piece.darts}
    return [
        (dart.pivot, (dart.second - dart.pivot).angle_to(dart.first - dart.pivot))
        for dart in (darts[name] for name in names)
    ]


def _after(turns: tuple[Turn, ...], closings: list[Turn]) -> tuple[Turn, ...]:
    """The turns of what lies behind further darts: these are closed where they lie, before all else turns."""
    for closing in closings:
        turns = (closing, *turns)
    return turns


def _chain(
    parts: tuple[Path, ...], closings: tuple[Turn, ...], turns: tuple[Turn, ...]
) -> Iterable[tuple[Path, tuple[Turn, ...]]]:
    """Every part where it lies when the darts between them are closed, with the turns that took it there."""
    for index, part in enumerate(parts):
        if index:
            turns = (closings[index - 1], *turns)
        moved = part
        for about, angle in turns:
            moved = moved.transformed(Rigid.turning(about, angle))
        yield moved, turns


def outlined(strip: Strip, by: float, *, name: str) -> tuple[Edge, ...] | None:
    """The facing's edges: those faced, one end, the inner edge `name`, the other end; None without ends."""
    reach = FAR * by
    copies = [parallel(edge.parts[0], strip.side * by) for edge in strip.edges]
    chain = copies[0].extended(reach, 0.0)
    for copy in copies[1:]:
        met = _met(chain, copy, reach)
        if met is None:
            return None
        chain = met
    chain = chain.extended(0.0, reach)
    starts = crossings(chain, strip.ends[0])
    ends = crossings(chain, strip.ends[1])
    if not starts or not ends:
        return None
    # Beside the corner, not where the copy may meet a bent neighbour again.
    low = min(starts, key=lambda c: c.across)
    high = min(ends, key=lambda c: c.across)
    if high.along - low.along <= SAME or min(low.across, high.across) <= SAME:
        return None
    inner = chain.between(low.along, high.along).reversed()
    start, end = f"{name}-start", f"{name}-end"
    last = strip.ends[1].between(0.0, high.across).between_points(strip.ends[1].start, inner.start)
    first = strip.ends[0].between(0.0, low.across).between_points(strip.ends[0].start, inner.end)
    return (
        *strip.edges,
        Edge(strip.after.name, strip.after.start, start, (last,)),
        Edge(name, start, end, (inner,)),
        Edge(strip.before.name, end, strip.before.end, (first.reversed(),)),
    )


def _met(chain: Path, copy: Path, reach: float) -> Path | None:
    """The copies of two edges as one: cut where they cross, else made longer straight until they meet."""
    if chain.end.distance(copy.start) <= SAME:
        return chain.joined(copy)
    longer, other = chain.extended(0.0, reach), copy.extended(reach, 0.0)
    met = crossings(longer, other)
    if not met:
        return None
    at = min(met, key=lambda c: abs(c.across - reach))  # nearest to the corner
    if at.along <= SAME or other.length() - at.across <= SAME:
        return None
    before = longer.between(0.0, at.along)
    rest = other.between(at.across, other.length())
    return before.joined(rest.between_points(before.end, rest.end))
