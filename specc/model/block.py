"""Owns what a block is: pieces described by points, edges, darts and lines over measurements, not yet drawn.

Knows nothing of sizes: the same description is drafted once for each.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression, PartRef
    from specc.model.tracing import Along, Drawing, Grading, Meeting, Near, Traced
    from specc.source import Span
    from specc.units import Dimension


@dataclass(frozen=True, slots=True)
class Let:
    """A named value: a parameter with its setting, or a `let`. A piece's own names are `piece.name`."""

    name: str
    value: Expression
    dimension: Dimension
    origin: Span


@dataclass(frozen=True, slots=True)
class Find:
    """A named value between `low` and `high` such that `left` equals `right`."""

    name: str
    low: Expression
    high: Expression
    left: Expression
    right: Expression
    dimension: Dimension
    origin: Span


Definition = Let | Find


@dataclass(frozen=True, slots=True)
class At:
    """Right of and above the origin of the piece."""

    across: Expression
    up: Expression


@dataclass(frozen=True, slots=True)
class Going:
    """From where one stands, `by` in `direction` (left, right, up, down are directions too)."""

    direction: Expression
    by: Expression


@dataclass(frozen=True, slots=True)
class Toward:
    """From where one stands, `by` toward a point."""

    target: PartRef
    by: Expression


@dataclass(frozen=True, slots=True)
class Moved:
    """From a point by moves, one after the other."""

    start: PartRef
    moves: tuple[Going | Toward, ...]


@dataclass(frozen=True, slots=True)
class Turned:
    """A point turned counter-clockwise about another."""

    point: PartRef
    angle: Expression
    around: PartRef


@dataclass(frozen=True, slots=True)
class On:
    """A place on an edge or reference line: a length or a ratio of it, from its start or from `corner`."""

    edge: PartRef
    at: Expression
    corner: str | None


@dataclass(frozen=True, slots=True)
class PointDraft:
    """A named point, how it is found, and how it moves from size to size beside what it is found from."""

    name: str
    position: At | Moved | Turned | On | Meeting | Near
    origin: Span
    graded: Grading | None = None


@dataclass(frozen=True, slots=True)
class Bearing:
    """The direction of a curve at one end; `handle` is how far it holds that direction, if stated."""

    direction: Expression
    handle: Expression | None


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight run to a point."""

    to: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Curve:
    """A curved run to a point.

    With a direction at both ends and at most one point to pass `through` it is one cubic: handles that are
    not stated go `full` of the way to where the two directions meet (0.5523 draws the quarter of an ellipse),
    or as far as makes the curve pass through the point. Otherwise it is a smooth curve through the points,
    and a direction that is not stated is the one in which the curve goes on by itself.
    """

    to: str
    leaving: Bearing | None
    arriving: Bearing | None
    full: Expression | None
    through: tuple[PartRef, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Arc:
    """A run to a point that is an arc of a circle through another."""

    to: str
    through: PartRef
    origin: Span


@dataclass(frozen=True, slots=True)
class DartRun:
    """A dart: the edge goes on at `to`, the legs meet at `pivot`, the stitching stops `short` of it."""

    name: str
    to: str
    pivot: str
    short: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class EdgeDraft:
    """An edge: from a point through its runs."""

    name: str
    start: str
    runs: tuple[Straight | Curve | Arc | Along | DartRun, ...]
    out_of_sight: bool
    origin: Span


@dataclass(frozen=True, slots=True)
class TwoPointedDraft:
    """A dart inside the piece: `width` wide at `middle`, square to the line from `top` to `bottom`."""

    name: str
    top: str
    bottom: str
    middle: str
    width: Expression
    origin: Span


@dataclass(frozen=True, slots=True)
class LineDraft:
    """A reference line between two points: straight, or a smooth curve `through` points between them."""

    name: str
    start: str
    end: str
    through: tuple[str, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class LevelDraft:
    """A reference line level with a point, from one side of the outline to the other."""

    name: str
    point: str
    origin: Span


@dataclass(frozen=True, slots=True)
class NotchDraft:
    """A notch on an edge of this piece: at a length or share of it, or where a point lies on it."""

    edge: str
    at: Expression | str
    corner: str | None
    double: bool
    origin: Span


@dataclass(frozen=True, slots=True)
class PieceDraft:
    """A piece; the edges, in order, close the outline. `grain` names two points.

    `traced` says in which size it was traced, if it was; `drawing` what it is taken from, if from a file.
    """

    name: str
    title: str
    cut: int
    fold: str | None
    points: tuple[PointDraft, ...]
    edges: tuple[EdgeDraft, ...]
    two_pointed: tuple[TwoPointedDraft, ...]
    lines: tuple[LineDraft | LevelDraft, ...]
    notches: tuple[NotchDraft, ...]
    grain: tuple[str, str] | None
    origin: Span
    traced: Traced | None = None
    drawing: Drawing | None = None


@dataclass(frozen=True, slots=True)
class Block:
    """A block with the settings of the garment that uses it; `origin` is where it is used.

    The one without a `name` holds the pieces that stand in the garment by themselves.
    """

    name: str
    title: str
    definitions: tuple[Definition, ...]
    pieces: tuple[PieceDraft, ...]
    origin: Span
