"""Owns the course of a seam: its sides laid along each other, so that a place on one is found on the others.

Knows nothing of what is marked there. Lengths are stitched: darts closed, gathers drawn in.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.topology import Corner, Run, Stretch, Topology
    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.pattern.piece import Edge, Piece

SAME: Final = 1e-6  # mm


@dataclass(frozen=True, slots=True)
class Step:
    """An edge on a side's course: from `start` on, so long, walked `backward` from its end to its start."""

    piece: str
    edge: str
    backward: bool
    start: float
    length: float


@dataclass(frozen=True, slots=True)
class Side:
    """A side of a seam as sewn once: its steps, and its length."""

    steps: tuple[Step, ...]
    length: float

    def places(self, piece: str, edge: str, at: float) -> Iterator[float]:
        """Where a place of an edge (from its start) lies on the course: twice where both halves lie on it."""
        for step in self.steps:
            if (step.piece, step.edge) == (piece, edge):
                yield step.start + (step.length - at if step.backward else at)

    def step_at(self, place: float) -> tuple[Step, float]:
        """The edge at a place of the course, and the place on it from its start."""
        starts = [step.start for step in self.steps]
        step = self.steps[max(0, bisect_right(starts, place) - 1)]
        along = min(max(place - step.start, 0.0), step.length)
        return step, step.length - along if step.backward else along


@dataclass(frozen=True, slots=True)
class Course:
    """The sides of a seam beside each other; a knot is a place on each side that is the same in the seam."""

    sides: tuple[Side, ...]
    knots: tuple[tuple[float, ...], ...]

    def carried(self, place: float, *, start: int, to: int) -> float:
        """The place of one side on another: shared out between the knots, as ease is."""
        for low, high in pairwise(self.knots):
            if place <= high[start] or high is self.knots[-1]:
                wide = high[start] - low[start]
                share = (place - low[start]) / wide if wide > SAME else 0.0
                return low[to] + share * (high[to] - low[to])
        return place


def course(seam: Seam, pieces: tuple[Piece, ...], topology: Topology) -> Course | None:
    """The seam's sides along each other; None where it cannot be told how they lie.

    So it is of a seam that goes all the way round and whose sides have no corner in common.
    """
    walked = [_walked(refs, pieces, topology) for refs in seam.sides]
    if any(each is None for each in walked):
        return None
    first, *others = [each for each in walked if each is not None]
    laid = [first]
    for other in others:
        aligned = _aligned(first, other)
        if aligned is None:
            return None
        laid.append(aligned)
    sides = tuple(_side(each) for each in laid)
    return Course(sides, _knots(laid, sides))


@dataclass(frozen=True, slots=True)
class _Way:
    """Edges in the order in which they are walked, each from a corner to a corner."""

    steps: tuple[tuple[Stretch, bool, float, Corner, Corner], ...]  # edge, backward, length, from, to
    closed: bool

    def turned(self) -> _Way:
        """Walked the other way."""
        return _Way(tuple((s, not back, n, b, a) for s, back, n, a, b in reversed(self.steps)), self.closed)

    def begun_at(self, index: int) -> _Way:
        """A closed way that begins with another of its edges."""
        return _Way(self.steps[index:] + self.steps[:index], self.closed)

    @property
    def corners(self) -> tuple[Corner, ...]:
        """The corners on the way, the last one too."""
        return (*(step[3] for step in self.steps), self.steps[-1][4])


def _walked(refs: tuple[PartRef, ...], pieces: tuple[Piece, ...], topology: Topology) -> _Way | None:
    """One side as sewn once, in the order of the text; None where it is not one run."""
    runs = topology.runs(refs) or ()
    names = {(ref.piece, ref.name) for ref in refs}
    if not runs or any({(s.piece, s.edge) for s in run.stretches} != names for run in runs):
        return None
    way = _way(runs[0], pieces, topology)
    wanted = [(ref.piece or "", ref.name) for ref in refs]
    if way.closed:
        found = [(step[0].piece, step[0].edge) for step in way.steps]
        way = way.begun_at(found.index(wanted[0]))
        if len(refs) > 1 and (way.steps[1][0].piece, way.steps[1][0].edge) != wanted[1]:
            way = way.turned()
            way = way.begun_at(len(way.steps) - 1)
    elif len(refs) > 1 and (way.steps[0][0].piece, way.steps[0][0].edge) != wanted[0]:
        way = way.turned()
    return way


def _way(run: Run, pieces: tuple[Piece, ...], topology: Topology) -> _Way:
    steps = []
    at: Corner | None = None
    for index, stretch in enumerate(run.stretches):
        start, end = topology.ends(stretch)
        if at is None and index + 1 < len(run.stretches):
            at = end if start in topology.ends(run.stretches[index + 1]) and start != end else start
            at = start if at == end and end in topology.ends(run.stretches[index + 1]) else at
        backward = at is not None and at != start and at == end
        length = stitched_length(_edge(stretch, pieces))
        steps.append((stretch, backward, length, *((end, start) if backward else (start, end))))
        at = start if backward else end
    return _Way(tuple(steps), run.closed)


def _aligned(first: _Way, other: _Way) -> _Way | None:
    """The other side walked along the first, so that corners in common are passed in the same order."""
    a, b = first.corners, other.corners
    if not first.closed and not other.closed:
        if a[0] == a[-1] or (a[0], a[-1]) == (b[0], b[-1]):
            return other
        return other.turned() if (a[0], a[-1]) == (b[-1], b[0]) else None
    if first.closed and other.closed:
        # Both begin with the edge that the text names first and go on as it does.
        return other if a[0] == b[0] else None
    # A band not yet closed, sewn all the way round, begins where its ends meet.
    return other if a[0] == b[0] and b[0] == b[-1] else None


def _side(way: _Way) -> Side:
    steps, reached = [], 0.0
    for stretch, backward, length, _, _ in way.steps:
        steps.append(Step(stretch.piece, stretch.edge, backward, reached, length))
        reached += length
    return Side(tuple(steps), reached)


def _knots(laid: list[_Way], sides: tuple[Side, ...]) -> tuple[tuple[float, ...], ...]:
    """Both ends, and the corners between that all sides pass, as long as they pass them in one order."""
    knots: list[tuple[float, ...]] = [tuple(0.0 for _ in sides)]
    inner = [
        {corner: step.start for corner, step in list(zip(way.corners, side.steps, strict=False))[1:]}
        for way, side in zip(laid, sides, strict=True)
    ]
    for corner in inner[0]:
        if all(corner in one for one in inner):
            knot = tuple(one[corner] for one in inner)
            if all(high > low + SAME for low, high in zip(knots[-1], knot, strict=True)):
                knots.append(knot)
    return (*knots, tuple(side.length for side in sides))


def _edge(stretch: Stretch, pieces: tuple[Piece, ...]) -> Edge:
    owner = piece_named(pieces, stretch.piece)
    edge = edge_named(owner, stretch.edge) if owner else None
    if edge is None:
        raise KeyError(f"{stretch.piece}.{stretch.edge}")
    return edge
