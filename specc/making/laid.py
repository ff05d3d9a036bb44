"""Owns how the sides of a seam lie on each other: their edges in order, each in a direction, from end to end.

Knows nothing of notches. A seam that is sewn left and right is laid once, for the left. A round that nothing
pins down (a band closed to a ring, sewn to a neck) is taken to begin at the centre back.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.making.topology import Stretch
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from specc.making.topology import Corner, Topology
    from specc.model.construction import Seam
    from specc.pattern.piece import Edge, Piece


@dataclass(frozen=True, slots=True)
class LaidEdge:
    """An edge in a side of a seam: from `start` millimetres along the side, for its stitched length.

    `forward` says that it runs from its start corner to its end corner.
    """

    stretch: Stretch
    forward: bool
    start: float
    length: float

    @property
    def end(self) -> float:
        """Where along the side it ends."""
        return self.start + self.length

    def on_edge(self, along: float) -> float:
        """The stitched length from the edge's start corner to a place of the side."""
        return along - self.start if self.forward else self.end - along

    def on_side(self, stitched: float) -> float:
        """The place of the side at a stitched length from the edge's start corner."""
        return self.start + stitched if self.forward else self.end - stitched


@dataclass(frozen=True, slots=True)
class LaidSide:
    """The edges of one ply of a seam in order; `joints` are the corners before, between and behind them."""

    edges: tuple[LaidEdge, ...]
    joints: tuple[Corner, ...]

    @property
    def length(self) -> float:
        """The stitched length from end to end."""
        return self.edges[-1].end

    def at(self, along: float) -> LaidEdge:
        """The edge on which a place lies; of two that meet there, the first."""
        return next((edge for edge in self.edges if along <= edge.end), self.edges[-1])


def laid_sides(seam: Seam, pieces: tuple[Piece, ...], topology: Topology) -> tuple[LaidSide, ...] | None:
    """All plies of the seam, each from where the seam begins; None where one does not follow in one run."""
    sides = []
    for ply in range(len(seam.sides)):
        found = _stretches(seam, ply, topology)
        if found is None:
            return None
        stretches, begin = found
        edges = tuple(part_of(pieces, stretch.piece, stretch.edge)[1] for stretch in stretches)
        if begin is None:
            sides.append(_from_centre_back(stretches, edges, topology))
        elif begin[:2] == (stretches[0].piece, stretches[0].side) and begin[2] in (
            edges[0].start,
            edges[0].end,
        ):
            sides.append(_measured(stretches, edges, topology, forward=begin[2] == edges[0].start))
        else:
            forward = begin[2] == edges[-1].start
            sides.append(_measured(stretches[::-1], edges[::-1], topology, forward=forward))
    return tuple(sides)


def _stretches(seam: Seam, ply: int, topology: Topology) -> tuple[tuple[Stretch, ...], Corner | None] | None:
    """The edges of a ply in the order of the text or of its run, and the corner where it begins, if known."""
    begun = topology.beginnings(seam.name, max(ply, 1))
    begin = begun[min(ply, 1)] if begun else None
    if topology.joins_across(seam):
        runs = topology.runs(seam.sides[ply]) or ()
        if len(runs) != 1:
            return None
        return runs[0].stretches, None if runs[0].closed else begin
    if begin is None:
        return None
    return tuple(Stretch(ref.piece or "", begin[1], ref.name) for ref in seam.sides[ply]), begin


def _corners(stretch: Stretch, edge: Edge) -> tuple[Corner, Corner]:
    """The corners of a stretch by their own names, whatever they meet."""
    return (stretch.piece, stretch.side, edge.start), (stretch.piece, stretch.side, edge.end)


def _measured(
    stretches: tuple[Stretch, ...], edges: tuple[Edge, ...], topology: Topology, *, forward: bool
) -> LaidSide:
    """The side from its first edge on, which lies forward or not; every other begins where the last ended."""
    laid: list[LaidEdge] = []
    joints: list[Corner] = []
    along = 0.0
    for stretch, edge in zip(stretches, edges, strict=True):
        ends = topology.ends(stretch)
        ahead = ends[0] == joints[-1] if joints else forward
        joints += (ends if ahead else ends[::-1])[0 if not joints else 1 :]
        length = stitched_length(edge)
        laid.append(LaidEdge(stretch, ahead, along, length))
        along += length
    return LaidSide(tuple(laid), tuple(joints))


def _from_centre_back(
    stretches: tuple[Stretch, ...], edges: tuple[Edge, ...], topology: Topology
) -> LaidSide:
    """A closed run from where the halves of a back piece meet; else from its first corner."""
    count = len(stretches)
    ends = [topology.ends(stretch) for stretch in stretches]
    first, begin = 0, ends[0][0] if ends[0][0] in ends[-1] else ends[0][1]
    for index, stretch in enumerate(stretches):
        before = stretches[index - 1]
        halves = (stretch.piece, stretch.edge) == (before.piece, before.edge) and stretch.side != before.side
        shared = [corner for corner in ends[index] if corner in ends[index - 1]]
        if halves and shared and called_back(stretch.piece, stretch.edge):
            first, begin = index, shared[0]
            break
    order = [(first + step) % count for step in range(count)]
    forward = ends[first][0] == begin
    turned = tuple(stretches[at] for at in order), tuple(edges[at] for at in order)
    return _measured(*turned, topology, forward=forward)


def called_back(piece: str, edge: str) -> bool:
    """Whether an edge is named as one of the back: `back.side`, `sleeve.cap-back`."""
    return "back" in (*piece.split("-"), *edge.split("-"))
