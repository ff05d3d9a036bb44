"""Owns what a garment is when its pieces are put together: seams walked, edges used, rounds laid.

Knows nothing of amounts to buy, nor of paper. Lengths are millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.alteration.record import Record
    from specc.geometry.point import Point
    from specc.making.attached import Attached
    from specc.making.closed import Closed
    from specc.pattern.piece import Piece


@dataclass(frozen=True, slots=True)
class EdgeLength:
    """An edge and its stitched length (darts closed, gathers drawn in).

    It lies in its seam `times` times, where a whole piece is sewn to both halves of others.
    """

    piece: str
    edge: str
    length: float
    times: int


@dataclass(frozen=True, slots=True)
class WalkedPly:
    """A further ply of a seam walked; `difference` is its length less that of the second side."""

    edges: tuple[EdgeLength, ...]
    length: float
    difference: float


@dataclass(frozen=True, slots=True)
class Walk:
    """A seam walked: both sides, the ease wanted on the first side, and what remains.

    `difference` is first - second - ease; the seam agrees when its size is within `tolerance`, and so are the
    differences of further plies (`others`). All lengths are of the seam sewn once; it is sewn `count` times.
    """

    seam: str
    first: tuple[EdgeLength, ...]
    second: tuple[EdgeLength, ...]
    first_length: float
    second_length: float
    ease: float
    difference: float
    tolerance: float
    count: int
    others: tuple[WalkedPly, ...]

    @property
    def sides(self) -> tuple[tuple[EdgeLength, ...], ...]:
        """The edges of all plies, in the order of the text."""
        return self.first, self.second, *(ply.edges for ply in self.others)

    @property
    def worst(self) -> float:
        """What is left over, sign kept, where most is."""
        return max((self.difference, *(ply.difference for ply in self.others)), key=abs)


@dataclass(frozen=True, slots=True)
class EdgeUse:
    """What an edge of a piece is for.

    `kind` is seam, finish, hem, closure, attachment, fold or none, `by` names it, and `allowance` is cut on.
    `turned` are the depths by which it is turned back, from the edge outward. At the corners `squared` it
    ends square to the edge.
    """

    piece: str
    edge: str
    kind: str
    by: str | None
    allowance: float
    turned: tuple[float, ...] = ()
    squared: tuple[str, ...] = ()


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
    """The edges of a finish, hem or seam as they lie in the made garment: one run, `count` times a garment.

    `closed` when the run comes back to where it began (a neckline), else it has two ends. `zones` go along it
    in order, mirrored halves included. `length` is the stitched length of the whole run, `turning` the angle
    (radians) by which its direction turns in all, sign kept by edge.
    """

    by: str
    closed: bool
    count: int
    zones: tuple[Zone, ...]
    length: float
    turning: float


class NotchReason(StrEnum):
    """What a notch is for, as the sheet says it."""

    MATCH = "match"
    BALANCE = "balance"
    SEAM = "seam meets"
    CENTRE = "centre"
    GATHERS = "gathers end"
    EASE = "ease ends"
    PLEAT = "pleat"
    TUCK = "tuck"
    HELD = "held in"
    LINE = "line"
    ATTACHED = "attached"
    ENDS = "ends"


@dataclass(frozen=True, slots=True)
class NotchMark:
    """A notch to be cut on an edge, `at` millimetres along the stitched edge from its start corner.

    In cloth that is folded away there, `within` is how far the notch lies behind the beginning of the fold.
    """

    piece: str
    edge: str
    at: float
    double: bool
    reason: NotchReason
    within: float = 0.0


@dataclass(frozen=True, slots=True)
class NotchesApart:
    """Two notches of a seam that do not meet: `distance` is how far apart they are, one on each edge."""

    seam: str
    edges: tuple[str, str]
    distance: float


@dataclass(frozen=True, slots=True)
class Opening:
    """A closed round of edges that stay open, a neckline, an armhole, a hem, or of a seam that goes round.

    `by` are the finishes along it, the seams that turn a facing or lining in there, or that fold a band whose
    fold it is; `seam` is the seam, where the round is not an edge but a seam. `central` when it goes round
    the body's middle, not round one arm or leg. `flat` is the stitched length, `sewn` the same less what is
    held in, `passes` the greatest girth that goes through with what stretches.
    """

    edges: tuple[str, ...]
    by: tuple[str, ...]
    seam: str | None
    central: bool
    flat: float
    sewn: float
    passes: float

    @property
    def called(self) -> str:
        """What it is, in words."""
        if self.seam is not None:
            return f"the round of seam `{self.seam}`"
        return f"the opening of {' and '.join(f'`{edge}`' for edge in self.edges)}"


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

    `drafted` are the pieces before any alteration, `stages` after each, `pieces` in the end. `rounds` are
    those of finishes and hems, `sewn` those of seams. `openings` are what it is put on through, with all
    closures open; `worn` are those that are left when they are closed. `notches` are all that are cut, in the
    order of the pieces and along them; `apart` are those of seams that do not meet.
    """

    size: str
    drafted: tuple[Piece, ...]
    stages: tuple[tuple[Piece, ...], ...]
    pieces: tuple[Piece, ...]
    walks: tuple[Walk, ...]
    uses: tuple[EdgeUse, ...]
    rounds: tuple[Round, ...]
    sewn: tuple[Round, ...]
    openings: tuple[Opening, ...]
    worn: tuple[Opening, ...]
    closures: tuple[Closed, ...]
    attached: tuple[Attached, ...]
    notches: tuple[NotchMark, ...]
    apart: tuple[NotchesApart, ...]


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
