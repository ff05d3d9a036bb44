"""Owns what is attached: a piece sewn onto another, and ends that are caught at a place of an edge.

Knows nothing of where that comes to lie: it is found on the altered pieces, size by size.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.alteration import Level, Place
    from specc.model.construction import Making
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class OnLevel:
    """A spot on a level of a piece, `distance` from where the level meets `edge`, into the piece along it."""

    level: Level
    distance: Expression
    edge: PartRef
    origin: Span


@dataclass(frozen=True, slots=True)
class SewnOn:
    """The piece `piece` laid on the piece `on` and sewn down along its edges.

    Its point `corner` lies at `at`, a spot on a level or a point of `on`. Its grain lies along that of `on`,
    turned by `turned` (an angle, counter-clockwise), or square to the edge `square_to`. `side` is `left` or
    `right` as worn where it goes onto one of a pair only. `along` are the edges that are sewn; none named
    means those that no seam and no finish takes. Without a `title` it is called as the piece is.
    """

    name: str
    title: str | None
    piece: str
    on: str
    side: str | None
    corner: PartRef
    at: OnLevel | PartRef
    turned: Expression | None
    square_to: PartRef | None
    along: tuple[PartRef, ...]
    making: Making
    origin: Span


@dataclass(frozen=True, slots=True)
class Caught:
    """Edges of pieces, laid on each other, caught at a place of the edge `to`: ends of straps, ties, loops.

    A length at `at` says where the ends begin, seen from the corner it is measured from; a share of the edge
    says where their middle lies. `side` is as for SewnOn. `making` None means that the seam or finish along
    `to` catches them.
    """

    name: str
    title: str | None
    ends: tuple[PartRef, ...]
    side: str | None
    to: PartRef
    at: Place
    making: Making | None
    origin: Span


Attachment = SewnOn | Caught
