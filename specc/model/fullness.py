"""Owns the alterations that put cloth in along an edge, in pleats, tucks or gathers; amounts are unevaluated.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.alteration import Form, Place
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


class Lay(StrEnum):
    """How pleats lie: all one way; two folds turned away from each other; two that meet."""

    KNIFE = "knife"
    BOX = "box"
    INVERTED = "inverted"


@dataclass(frozen=True, slots=True)
class Slashed:
    """How far a piece is slashed from an edge: along the grain, or to the facing place of another edge.

    Facing places have the same share of their edges, which an outline travels in opposite ways. `hinged`:
    nothing opens at the far end; otherwise as much as at the near one.
    """

    to: PartRef | None = None
    hinged: bool = False


@dataclass(frozen=True, slots=True)
class Pleat:
    """Equal pleats or tucks (`form`) laid along an edge, each fold `deep` and of twice as much cloth.

    `count` of them from `start` to `end`, evenly; a single one at `start`. A knife pleat faces the corner
    `toward`, seen from outside; None: it is pressed toward the centre, as darts are. Where the slash is not
    hinged the other edge opens too: it grows under a pleat and is folded alike by a tuck.
    """

    form: Form
    edge: PartRef
    count: int
    start: Place
    end: Place | None
    deep: Expression
    lay: Lay
    toward: str | None
    slashed: Slashed
    origin: Span


@dataclass(frozen=True, slots=True)
class Gather:
    """An edge gathered between two places, which stays as long as sewn; `by` is the width of cloth put in."""

    edge: PartRef
    start: Place
    end: Place
    by: Expression
    slashed: Slashed
    origin: Span


Fullness = Pleat | Gather
