"""Owns what work costs and what money is worth, as declared.

Knows nothing of how much work there is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Money:
    """An exact amount in a currency (ISO 4217)."""

    amount: Fraction
    currency: str


@dataclass(frozen=True, slots=True)
class Rate:
    """One unit of the currency `of` is worth `worth`, on a day as the maker wrote it."""

    of: str
    worth: Money
    day: str


@dataclass(frozen=True, slots=True)
class Costing:
    """What work costs; None is what is not said.

    `minute` is what a minute costs, `sews` the millimetres stitched in one, `handling` the minutes for each
    row of stitches, `cutting` and `finishing` those for each garment, `margin` a share of the price.
    """

    minute: Money | None
    sews: Fraction | None
    handling: Fraction | None
    cutting: Fraction | None
    finishing: Fraction | None
    margin: Fraction | None
    rates: tuple[Rate, ...]
    origin: Span
