"""Owns the alterations that make new edges or new pieces: what is to be done, with amounts still unevaluated.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.model.dividing import Divide

if TYPE_CHECKING:
    from specc.model.alteration import Form, PieceRef, Place
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Spread:
    """Slash straight from a place on one edge to a place on another, and open the slash: slash and spread.

    An end without a place is a corner, where the slash can only be hinged.

    It opens by `by` at the first edge and by `and_by` at the second (None: the same, a parallel spread; 0:
    hinged there). The half without the fold moves; without a fold, the one without the grain line, else the
    smaller. `form` is any but a dart. Flare: an edge that opens is drawn smooth and grows. The others keep
    each edge as long as sewn: gathers and ease are drawn in over the inner halves of the runs beside the
    slash, a pleat or a tuck is folded at it, toward the centre.
    """

    start: PartRef
    start_place: Place | None
    end: PartRef
    end_place: Place | None
    by: Expression
    and_by: Expression | None
    form: Form
    origin: Span


@dataclass(frozen=True, slots=True)
class Taper:
    """Edges taken in or let out.

    By `by` everywhere, or by `by` at corner `at`, going over evenly to `and_by` (None: nothing) at `and_at`
    (None: the other corner). Amounts are measured square to the edge; neighbours are trimmed along their own
    course or go on straight, and both legs of a dart on the edge change by as much.
    """

    edges: tuple[PartRef, ...]
    let_out: bool
    by: Expression
    at: str | None
    and_by: Expression | None
    and_at: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class SplitEnd:
    """Where a split begins or ends.

    A place on an edge; or, `place` being None, a corner, or a dart that vanishes into the seam.
    """

    part: PartRef
    place: Place | None


@dataclass(frozen=True, slots=True)
class Split:
    """Cut a piece along a smooth line named `line` into two pieces, whose new edges bear the line's name.

    The line runs from `start` through points to `end`. A dart at an end, or one whose pivot is one of the
    points, vanishes into the new edges, which then sew together and keep its shape. `into[0]` is the piece
    that holds the fold or, without a fold, the first corner of the piece's first edge.
    """

    piece: PieceRef
    line: str
    start: SplitEnd
    through: tuple[PartRef, ...]
    end: SplitEnd
    into: tuple[str, str]
    origin: Span


@dataclass(frozen=True, slots=True)
class Join:
    """Lay two pieces together along an edge of each: one piece, named `name`, in place of both.

    Darts on the two edges whose mouths meet become darts inside.
    """

    first: PartRef
    second: PartRef
    name: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Unfold:
    """Pieces on the fold become whole pieces.

    The parts of the mirrored half get `-left` after their names.
    """

    pieces: tuple[PieceRef, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Mirror:
    """A mirrored copy of a piece, named `name`; both are then cut half as often."""

    piece: PieceRef
    name: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Face:
    """A facing: a new piece as deep as `by` along edges of one piece that follow one another."""

    edges: tuple[PartRef, ...]
    by: Expression
    name: str
    origin: Span


# The corners of a band in the order of its outline, each with the edge that begins there.
BAND: Final = (("bottom-start", "bottom"), ("bottom-end", "end"), ("top-end", "top"), ("top-start", "start"))
LAPPED_BAND: Final = (
    ("bottom-start", "bottom"),
    ("lap-bottom", "bottom-lap"),
    ("bottom-end", "end"),
    ("top-end", "top-lap"),
    ("lap-top", "top"),
    ("top-start", "start"),
)


@dataclass(frozen=True, slots=True)
class Band:
    """A straight band: a new piece as long as the edges as sewn, all rounds counted, and as wide as `by`.

    `share` of the length is cut (a rib band shorter than its opening). Its edges are `bottom`, `end`, `top`,
    `start`, its corners `bottom-start`, `bottom-end`, `top-end`, `top-start`; the grain runs along it, or
    `across`, as in a rib, which stretches across its wales. Edges that reach a fold give one band for both
    halves; others, such as armholes or the hems of two sleeves, give a band for each time that they are
    there, or one for all if it is cut `in_one`, as the waistband of trousers whose halves a seam joins. A
    band that laps goes on beyond them by `lapping` at its end:
    with the edges `bottom-lap` and `top-lap` from the corners `lap-bottom` and `lap-top`.
    """

    edges: tuple[PartRef, ...]
    by: Expression
    share: Expression | None
    name: str
    origin: Span
    lapping: Expression | None = None
    across: bool = False
    in_one: bool = False


@dataclass(frozen=True, slots=True)
class Extend:
    """An edge moves out by `by`, its neighbours go straight on (button stand, grown-on strip).

    A neighbour that goes straight on from the edge itself, as where an edge was divided, stays, and a step
    comes between them (vent): square to the edge, or `slanting` lower at its outer end. Where the edge lay
    stays as the line `<edge>-line`, with a number where that name is taken.
    """

    edge: PartRef
    by: Expression
    origin: Span
    slanting: Expression | None = None


@dataclass(frozen=True, slots=True)
class SewAs:
    """Darts that are not sewn as darts: eased in, gathered, or laid in pleats or tucks at their edge.

    The edge stays as long as sewn. `form` is neither a dart nor flare.
    """

    darts: tuple[PartRef, ...]
    form: Form
    origin: Span


@dataclass(frozen=True, slots=True)
class Scallop:
    """An edge cut in scallops about `every` long (made to fit a whole number) and `by` deep, outward.

    Both are measured on the edge as it is: along it, and square to it at the middle of each scallop.
    """

    edge: PartRef
    every: Expression
    by: Expression
    origin: Span


@dataclass(frozen=True, slots=True)
class RoundCorner:
    """A corner rounded off by an arc that touches both edges `by` from the corner, measured along them.

    It keeps its name and lies at the middle of the arc, of which either edge has a half.
    """

    piece: PieceRef
    corner: str
    by: Expression
    origin: Span


Reshaping = (
    Spread
    | Taper
    | Split
    | Join
    | Unfold
    | Mirror
    | Face
    | Band
    | Extend
    | SewAs
    | Scallop
    | RoundCorner
    | Divide
)
