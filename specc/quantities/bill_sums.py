"""Owns what all lines of the bill share: units of sale, prices, rounding up to what a shop cuts.

Knows nothing of any one line.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from specc.model.garment import Garment
    from specc.model.material import Price

SQUARE: Final = 1e-9  # of a unit: what floats lose


def unit_of(price: Price | None, garment: Garment) -> str:
    """The unit of sale: that of the price, else yards or metres as the sheet's unit suggests."""
    if price is not None and price.per != "piece":
        return price.per
    return "yd" if garment.header.unit == "in" else "m"


def paid(price: Price | None) -> tuple[Fraction | None, str | None]:
    """The amount and the currency of a price, if there is one."""
    return (None, None) if price is None else (price.amount, price.currency)


def rounded_up(amount: float) -> Fraction:
    """To the next quarter: shops cut to a quarter of a yard or metre (common practice, no source)."""
    return Fraction(ceil(amount * 4 - SQUARE), 4)
