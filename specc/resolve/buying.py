"""Owns reading how a material is bought: rolls and packs, waste, the least that is sold, spare pieces.

Knows nothing of prices.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.model.material import Buying
from specc.resolve.codes import wrong_value
from specc.resolve.properties import span_of
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.resolve.properties import Properties

BUYING: Final = ("waste", "at-least", "reference")
"""The lines of a cloth or trim that say how it is bought; a trim may have `spare` too."""

NOTHING_SAID: Final = Buying(Fraction(0), None, 0, None)
_MOST_SPARE = 100
_MOST_LENGTH = Quantity.of(100_000, UNITS["m"])
_MOST_PIECES = Quantity.of(1_000_000, UNITS[""])
_MOST_PACK = Quantity.of(100_000, UNITS[""])


def resolve_buying(sheet: Properties, *, by_length: bool = True, by_piece: bool = True) -> Buying:
    """How it is bought, by length or by the piece; no waste and no spare pieces where nothing is said."""
    return Buying(
        sheet.ratio("waste") or Fraction(0),
        _least(sheet, by_length=by_length, by_piece=by_piece),
        sheet.count("spare", "1", least=0, most=_MOST_SPARE) or 0,
        sheet.words("reference", example="L-204"),
    )


def _least(sheet: Properties, *, by_length: bool, by_piece: bool) -> Quantity | None:
    """`at-least 10 m`, `at-least 50` pieces."""
    found = sheet.get("at-least")
    if found is None:
        return None
    length, number = "a length, such as `10 m`", "a number, such as `50`"
    wanted = (f"{length}, or {number}" if by_piece else length) if by_length else number
    match found.values:
        case ((tree.Number(unit=None) as count,),) if by_piece:
            return sheet.measure(count, "at-least", Dimension.NUMBER, wanted=wanted, most=_MOST_PIECES)
        case _ if by_length:
            return sheet.quantity("at-least", Dimension.LENGTH, wanted=wanted, most=_MOST_LENGTH)
        case _:
            sheet.say.add(wrong_value(span_of(found.values), "at-least", wanted))
            return None


def resolve_sold(sheet: Properties) -> Quantity | None:
    """`sold in rolls of 25 yd`, `sold in packs of 12`."""
    found = sheet.get("sold")
    if found is None:
        return None
    match found.values:
        case (
            (tree.Word(text="in"), tree.Word(text="packs"), tree.Word(text="of"), tree.Number() as amount),
        ) if amount.unit is None and amount.value.denominator == 1:
            return sheet.measure(amount, "sold", Dimension.NUMBER, wanted="a count", most=_MOST_PACK)
        case ((tree.Word(text="in"), tree.Word(), tree.Word(text="of"), tree.Number() as amount),):
            wanted = "a length, such as `in rolls of 25 yd`"
            return sheet.measure(amount, "sold", Dimension.LENGTH, wanted=wanted, most=_MOST_LENGTH)
    sheet.say.add(wrong_value(span_of(found.values), "sold", "a form of sale, such as `in rolls of 25 yd`"))
    return None


def resolve_rolls(sheet: Properties) -> Quantity | None:
    """`sold in rolls of 25 m`; cloth comes in no packs."""
    sold, found = resolve_sold(sheet), sheet.get("sold")
    if sold is None or found is None or sold.dimension == Dimension.LENGTH:
        return sold
    sheet.say.add(wrong_value(span_of(found.values), "sold", "rolls, such as `in rolls of 25 m`"))
    return None
