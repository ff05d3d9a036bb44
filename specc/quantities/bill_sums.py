"""Owns what all lines of the bill share: units of sale, waste, rounding up to what is sold, exact money.

Knows nothing of how amounts are found.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING, Final

from specc.model.garment import Label
from specc.model.material import Cloth, Packing
from specc.quantities.quantities import BillLine
from specc.units import CURRENCIES, UNITS, Dimension

if TYPE_CHECKING:
    from specc.model.garment import Garment
    from specc.model.material import Price, Trim
    from specc.units import Quantity

    Bought = Cloth | Trim | Packing | Label

SQUARE: Final = 1e-9  # of a unit: what floats lose
QUARTER: Final = Fraction(1, 4)
"""Shops cut to a quarter of a yard or metre (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Amounts:
    """Amounts in `unit`, nothing lost: for one garment of each size, for the order; sold in such steps."""

    unit: str
    per_garment: tuple[float, ...]
    order: float
    step: Fraction


def unit_of(price: Price | None, garment: Garment) -> str:
    """The unit of sale: that of the price, else yards or metres as the sheet's unit suggests."""
    if price is not None and price.per != "piece":
        return price.per
    return "yd" if garment.header.unit == "in" else "m"


def paid(price: Price | None) -> tuple[Fraction | None, str | None]:
    """The amount and the currency of a price, if there is one."""
    return (None, None) if price is None else (price.amount, price.currency)


def stepped_up(amount: float, step: Fraction) -> Fraction:
    """The amount, up to the next step."""
    return ceil(amount / float(step) - SQUARE) * step


def money(amount: Fraction, currency: str) -> Fraction:
    """What can be paid: rounded, half to even, to the smallest coin that ISO 4217 gives the currency."""
    coins = 10 ** CURRENCIES[currency]
    return Fraction(round(amount * coins), coins)


def bought_line(
    material: Bought, title: str, used_on: tuple[str, ...], amounts: Amounts, basis: str
) -> BillLine:
    """The line of a material that is bought: waste added, rounded up, at least what is sold."""
    buying, price, unit = material.buying, material.price, amounts.unit
    gross = amounts.order * (1.0 + float(buying.waste))
    buy = stepped_up(gross, amounts.step)
    if buy:
        buy = max(buy, ceil(_least(material, unit) / amounts.step) * amounts.step)
    # A price by the piece says nothing about a length, nor one by length about a piece.
    told = price is not None and price.per == unit
    amount, currency = (price.of(buy) if told else price.amount, price.currency) if price else (None, None)
    cost = money(amount * buy, currency) if told and amount is not None and currency is not None else None
    return BillLine(
        _kind(material),
        material.name,
        title,
        used_on,
        unit,
        amounts.per_garment,
        amounts.order,
        float(buy),
        unit,
        amount,
        currency,
        cost,
        basis,
        float(buying.waste),
        gross,
        material.supplier,
        buying.reference,
        None if isinstance(material, Label) else material.colour,
    )


def _kind(material: Bought) -> str:
    kinds = {Cloth: "cloth", Packing: "packing", Label: "label"}
    return kinds.get(type(material), "trim")


def pack(sold_in: Quantity | None) -> Fraction:
    """How many pieces are bought at once: a pack of so many, else one."""
    in_packs = sold_in is not None and sold_in.dimension == Dimension.NUMBER
    return sold_in.value if sold_in is not None and in_packs else Fraction(1)


def _least(material: Bought, unit: str) -> Fraction:
    """The least that is sold, in the unit; nothing where it is said by another kind of amount."""
    least = material.buying.at_least
    if least is None:
        return Fraction(0)
    if least.dimension == Dimension.NUMBER:
        return least.value if unit == "piece" else Fraction(0)
    return Fraction(0) if unit == "piece" else least.value / UNITS[unit].size
