"""Owns how a cloth is spread on the table to be cut, as declared.

Knows nothing of what is cut from it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from specc.units import Quantity

OPEN, FOLDED, TUBE = "open", "folded", "tube"
SPREADS: Final = (OPEN, FOLDED, TUBE)
"""How cloth lies on the table: one ply and then the next; folded lengthwise; knitted as a tube."""

GARMENT, SET, STACKED = "one garment at a time", "one of each size", "stacked plies"
CUTTINGS: Final = (GARMENT, SET, STACKED)
"""The ways in which a studio cuts, from the smallest to the largest."""


@dataclass(frozen=True, slots=True)
class Spreading:
    """How a cloth lies: `spread` is open, folded or tube.

    `gap` is kept between pieces and at each side, `ends` is left over at both ends of a ply together, `plies`
    is how many lie on each other at most, `table` how long a lay may be.
    """

    spread: str
    gap: Quantity
    ends: Quantity
    plies: int
    table: Quantity
