"""Owns what a cross-section is: plies and trims cut across, how they are folded, the rows that go through.

Knows nothing of how it is found, nor of paper.

Layers are numbered from the outside of the garment inward; x runs along the cloth, across the seam or edge,
0 at the seam line, the fold or the finished edge. Both are of the section alone: layers lie on each other
without thickness, and a strand that goes on out of the picture ends at infinity.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

ON = float("inf")  # where what goes on out of the picture ends
NEAR = 1e-6  # millimetres


@dataclass(frozen=True, slots=True)
class Node:
    """A place on a strand: where it begins, ends, or is turned to another layer."""

    x: float
    layer: float


@dataclass(frozen=True, slots=True)
class Run:
    """A flat stretch of a strand, from `start` to `end`; `number` counts those of the strand."""

    strand: int
    number: int
    start: float
    end: float
    layer: float

    def holds(self, x: float) -> bool:
        """Whether it lies at a place."""
        low, high = sorted((self.start, self.end))
        return low - NEAR <= x <= high + NEAR


@dataclass(frozen=True, slots=True)
class Strand:
    """A ply or a trim: its nodes from one end to the other.

    `name` is `first`, `second`, `third` ... for the sides of a seam, `cloth` for the one of an edge, or what
    the method calls the trim (`trim`). `right_up` is whether its right side lies outward on the first run;
    None where that is not known.
    """

    name: str
    nodes: tuple[Node, ...]
    right_up: bool | None = None
    trim: bool = False

    def ends_raw(self, x: float, layer: float) -> bool:
        """Whether its cut edge lies at this place."""
        ends = (self.nodes[0], self.nodes[-1])
        return any(abs(end.x - x) <= NEAR and end.layer == layer for end in ends)

    def runs(self, number: int) -> tuple[Run, ...]:
        """Its flat stretches; it is strand `number` of the section."""
        flat = ((a, b) for a, b in pairwise(self.nodes) if a.layer == b.layer and a.x != b.x)
        return tuple(Run(number, place, a.x, b.x, a.layer) for place, (a, b) in enumerate(flat))


@dataclass(frozen=True, slots=True)
class Row:
    """A row of stitches: operation `operation` (from 0), its places, the layers from `top` to `bottom`.

    `pierces` are the names of what it goes through at each place, outermost first. `across` says that it goes
    through two folds side by side, along the layers. `needles` of them run beside each other; `blind` ones
    come out on one side only; `covers` is on which sides threads lie across: `below`, `both` or nothing.
    """

    operation: int
    stitch: str
    places: tuple[float, ...]
    top: float
    bottom: float
    pierces: tuple[tuple[str, ...], ...]
    needles: int = 1
    across: bool = False
    blind: bool = False
    covers: str = ""


@dataclass(frozen=True, slots=True)
class CutEdge:
    """Raw edges that lie together: at x, from layer `top` to `bottom`, the cloth on the side `inward`."""

    x: float
    inward: int
    top: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Overlock:
    """Loops over raw edges, by operation `operation`; `bite` is how far its needle runs inside of them."""

    operation: int
    stitch: str
    edges: tuple[CutEdge, ...]
    pierces: tuple[str, ...]
    bite: float | None


@dataclass(frozen=True, slots=True)
class Width:
    """A declared width, from x to x: what it is."""

    what: str
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class Section:
    """A seam or an edge cut across, as it is when it is done.

    `unplaced` are operations with a stitch of which is not declared where the needle runs. `sided` says
    whether it is known which side of a seam lies where. Not `laid`, the plies lie as they are sewn.
    """

    strands: tuple[Strand, ...]
    rows: tuple[Row, ...] = ()
    overlocks: tuple[Overlock, ...] = ()
    widths: tuple[Width, ...] = ()
    unplaced: tuple[int, ...] = ()
    sided: bool = True
    laid: bool = True

    @property
    def runs(self) -> tuple[Run, ...]:
        """All flat stretches."""
        return tuple(run for number, strand in enumerate(self.strands) for run in strand.runs(number))

    @property
    def layers(self) -> tuple[float, float]:
        """The outermost and the innermost layer."""
        found = [node.layer for strand in self.strands for node in strand.nodes]
        return min(found), max(found)
