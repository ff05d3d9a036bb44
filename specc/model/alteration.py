"""Owns the alterations of a checked garment: what is to be done to which part, amounts still unevaluated.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from specc.model.fullness import Fullness
from specc.model.recutting import Recutting
from specc.model.reshaping import Reshaping

if TYPE_CHECKING:
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class PieceRef:
    """A piece by name."""

    piece: str
    origin: Span


class Form(StrEnum):
    """What an opening in an edge becomes.

    A dart; gathers, ease, a pleat or a tuck, with which the edge stays as long as sewn; or flare, with which
    it grows.
    """

    DART = "dart"
    GATHERS = "gathers"
    FLARE = "flare"
    EASE = "ease"
    PLEAT = "pleat"
    TUCK = "tuck"


@dataclass(frozen=True, slots=True)
class Place:
    """A place on an edge, measured along its stitched length from the edge's start corner.

    `at` is a ratio of that length, or a length; `origin` is where it was written. `from_corner` names the
    corner from which it is measured when that is not the start.
    """

    at: Expression
    origin: Span
    from_corner: str | None = None


@dataclass(frozen=True, slots=True)
class Level:
    """A reference line, or a distance above (positive `above`) or below it."""

    line: str
    above: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """The piece is not made."""

    pieces: tuple[PieceRef, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class SwingTarget:
    """Where a share of a dart goes: into an edge, or into a dart with the same pivot.

    `share` is a ratio of the dart as the statement finds it; None is all that the others leave. A dart as
    target takes no place and no form. `place` None on an edge means straight below the pivot along the grain,
    or the middle of the edge where the grain line through the pivot does not meet it.
    """

    part: PartRef
    place: Place | None
    form: Form
    share: Expression | None


@dataclass(frozen=True, slots=True)
class Swing:
    """Slash from a place on each target to the dart's pivot and turn.

    The part between slash and dart turns until the dart's legs have come the target's share closer. Places
    are those of the edges before the first turn. What no target takes stays in the dart.
    """

    dart: PartRef
    into: tuple[SwingTarget, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Release:
    """The darts are left unsewn: what they took in becomes ease."""

    darts: tuple[PartRef, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Crop:
    """Everything below the level is cut off.

    The new edge takes the name of the edge that the cut replaces.
    """

    pieces: tuple[PieceRef, ...]
    at: Level
    origin: Span


@dataclass(frozen=True, slots=True)
class Lengthen:
    """Everything below the level moves down by `by` (negative: up, which is `shorten`).

    `at` a Level: cut across there. `at` an edge name: that edge moves out, its neighbours follow their own
    direction.
    """

    pieces: tuple[PieceRef, ...]
    by: Expression
    at: Level | str
    origin: Span
    shorten: bool = False


@dataclass(frozen=True, slots=True)
class MoveCorner:
    """One end of each edge moves and the edge's curve follows, keeping the directions it has at both ends.

    `lower`, `raise`: the end that lies on the neighbouring edge `along` moves down or up that neighbour.
    `widen`: the same, away from the edge. `by` is positive for the verb's own direction.
    """

    verb: str  # "lower", "raise", "widen"
    edges: tuple[PartRef, ...]
    corner: str
    by: Expression
    origin: Span


Alteration = LeaveOut | Swing | Release | Crop | Lengthen | MoveCorner | Reshaping | Fullness | Recutting
