"""Owns what a garment is when its pieces are put together: seams walked, edges used, rounds laid.

Knows nothing of amounts to buy, nor of paper. Lengths are millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.alteration.record import Record
    from specc.geometry.point import Point
    from specc.pattern.piece import Piece


@dataclass(frozen=True, slots=True)
class EdgeLength:
    """An edge and its stitched length (darts closed, gathers drawn in)."""

    piece: str
    edge: str
    length: float


@dataclass(frozen=True, slots=True)
class Walk:
    """A seam walked: both sides, the ease wanted on the first side, and what remains.

    `difference` is first - second - ease; the seam agrees when its size is within `tolerance`.
    """

    seam: str
    first: tuple[EdgeLength, ...]
    second: tuple[EdgeLength, ...]
    first_length: float
    second_length: float
    ease: float
    difference: float
    tolerance: float


@dataclass(frozen=True, slots=True)
class EdgeUse:
    """What an edge of a piece is for.

    `kind` is seam, finish, hem, fold or none, `by` names it, and `allowance` is cut on.
    """

    piece: str
    edge: str
    kind: str
    by: str | None
    allowance: float


@dataclass(frozen=True, slots=True)
class Zone:
    """A stretch of an edge with one way of laying the trim on: flat, or held in by a share of its length.

    `start` and `end` run along the stitched edge from its start corner.
    """

    piece: str
    edge: str
    start: float
    end: float
    held: float


@dataclass(frozen=True, slots=True)
class Round:
    """The edges of a finish or hem as they lie in the made garment: one run, `count` times a garment.

    `closed` when the run comes back to where it began (a neckline), else it has two ends. `zones` go along it
    in order, mirrored halves included. `length` is the stitched length of the whole run, `turning` the angle
    (radians) by which its direction turns in all, sign kept by edge.
    """

    finish: str
    closed: bool
    count: int
    zones: tuple[Zone, ...]
    length: float
    turning: float


@dataclass(frozen=True, slots=True)
class Opening:
    """A closed round of edges that no seam joins: a neckline, an armhole, a hem.

    `central` when it goes round the body's middle (left and right), not round one arm or leg. `flat` is the
    stitched length, `sewn` the same less what is held in, `passes` the greatest girth that goes through with
    what stretches.
    """

    edges: tuple[str, ...]
    finishes: tuple[str, ...]
    central: bool
    flat: float
    sewn: float
    passes: float


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece ready to be cut: closed polygons (first point not repeated), flattened within 0.05 mm.

    A piece on the fold is shown as drawn, up to the fold. Areas are of what is drawn, in square millimetres.
    """

    piece: str
    net: tuple[Point, ...]
    cut: tuple[Point, ...]
    net_area: float
    cut_area: float


@dataclass(frozen=True, slots=True)
class SizeAssembly:
    """The garment in one size.

    `drafted` are the pieces before any alteration, `stages` after each, `pieces` in the end.
    """

    size: str
    drafted: tuple[Piece, ...]
    stages: tuple[tuple[Piece, ...], ...]
    pieces: tuple[Piece, ...]
    walks: tuple[Walk, ...]
    uses: tuple[EdgeUse, ...]
    rounds: tuple[Round, ...]
    openings: tuple[Opening, ...]


@dataclass(frozen=True, slots=True)
class StepRecords:
    """One alteration in every size, in the order of the sizes; `sentence` is the statement as written."""

    sentence: str
    line: int
    records: tuple[Record, ...]


@dataclass(frozen=True, slots=True)
class Assembly:
    """The garment in every size of its range."""

    sizes: tuple[SizeAssembly, ...]
    alterations: tuple[StepRecords, ...]
