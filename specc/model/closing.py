"""Owns what closes a garment: which sides, how it laps, what fastens it, how the fastenings are spaced.

Knows nothing of the lengths that come out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class TakesPieces:
    """Fastenings used by the piece: `count` of them, or as many at each place of the spacing.

    `rounding`, for what is sold in certain lengths, says which one is taken for the length of the opening:
    the next `shorter` or the next `longer`.
    """

    trim: str
    material: str
    count: int
    each_place: bool
    rounding: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Places:
    """Where fastenings lie: `inset` from the edge of the first side, and `other` from that of the second.

    Each has a hole so long (if any) on the first side.

    A hole lies `across` the edge, square to it and beginning beyond the place, toward the edge; or along it.
    """

    inset: Expression
    other: Expression
    hole: Expression | None
    across: bool
    origin: Span


@dataclass(frozen=True, slots=True)
class Spacing:
    """How the fastenings are spaced along the first side, between `first` and `last`.

    `count` of them, evenly; or one `every` so far from the first, none beyond the last. With a `line` one of
    them lies where that reference line meets the side, and those before and behind it are spaced evenly for
    themselves. `first` and `last` are distances from corners at the ends of the side; both are None where the
    ends of the side lie half as far from a fastening as these do from one another. One alone has no `last`.
    """

    count: int | None
    every: Expression | None
    first: tuple[Expression, str] | None
    last: tuple[Expression, str] | None
    line: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Closing:
    """The two sides (chains of edges) that lie together when the garment is closed; the first lies on top.

    A side that is named twice closes on itself: the left on the right.
    """

    first: tuple[PartRef, ...]
    second: tuple[PartRef, ...]
    spacing: Spacing | None

    @property
    def on_itself(self) -> bool:
        """Whether the left of a pair closes on its right."""
        return _names(self.first) == _names(self.second)


def _names(refs: tuple[PartRef, ...]) -> tuple[tuple[str | None, str], ...]:
    return tuple((ref.piece, ref.name) for ref in refs)
