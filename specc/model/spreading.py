"""Owns how a cloth is spread on the table to be cut, as declared.

Knows nothing of what is cut from it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from specc.source import Span
    from specc.units import Quantity

OPEN, FOLDED, TUBE = "open", "folded", "tube"
SPREADS: Final = (OPEN, FOLDED, TUBE)
"""How cloth lies on the table: one ply and then the next; folded lengthwise; knitted as a tube."""

GARMENT, SET, STACKED = "one garment at a time", "one of each size", "stacked plies"
CUTTINGS: Final = (GARMENT, SET, STACKED)
"""The ways in which a studio cuts, from the smallest to the largest."""


JOINED, WHOLE, TUBED, OFFCUTS = "joined strips", "whole strips", "tube", "offcuts"
BIAS_WAYS: Final = (JOINED, WHOLE, TUBED, OFFCUTS)
"""How bias is cut: strips joined to one run; strips long enough for whole pieces; a square sewn to a tube.

Or strips from what the lays leave over, and the rest from cloth of its own.
"""

ACROSS, BIAS, ANY, STRIPS = "across", "on-bias", "any-way", "in-strips"
TURNS: Final = (ACROSS, BIAS, ANY, STRIPS)
"""How a piece may lie other than with its grain along the cloth: square to it, at 45 degrees, as it fits.

A piece in strips is cut off strips on the bias, as bindings are, and lies in no lay.
"""


@dataclass(frozen=True, slots=True)
class Turned:
    """A piece that lies in one of TURNS."""

    piece: str
    way: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Spreading:
    """How a cloth lies: `spread` is open, folded or tube.

    `gap` is kept between pieces and at each side, `ends` is left over at both ends of a ply together, `plies`
    is how many lie on each other at most, `table` how long a lay may be. `lean` is the angle by which a grain
    line may lie off, `turned` are the pieces that lie otherwise.
    """

    spread: str
    gap: Quantity
    ends: Quantity
    plies: int
    table: Quantity
    lean: Quantity | None
    turned: tuple[Turned, ...]

    def way_of(self, piece: str) -> str | None:
        """The one of TURNS in which a piece lies; None where nothing is said of it."""
        return next((each.way for each in self.turned if each.piece == piece), None)
