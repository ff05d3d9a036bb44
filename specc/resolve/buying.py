"""Owns reading how a material is bought: waste, the least that is sold, spare pieces, a reference.

Knows nothing of prices.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.model.material import Buying
from specc.resolve.codes import out_of_range, wrong_value
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


def resolve_buying(sheet: Properties) -> Buying:
    """How it is bought; no waste and no spare pieces where nothing is said."""
    return Buying(
        sheet.ratio("waste") or Fraction(0),
        _least(sheet),
        _spare(sheet),
        sheet.words("reference", example="L-204"),
    )


def _least(sheet: Properties) -> Quantity | None:
    """`at-least 10 m`, `at-least 50` pieces."""
    found = sheet.get("at-least")
    if found is None:
        return None
    wanted = "a length or a number, such as `10 m` or `50`"
    match found.values:
        case ((tree.Number(unit=None) as count,),):
            return sheet.measure(count, "at-least", Dimension.NUMBER, wanted=wanted, most=_MOST_PIECES)
        case _:
            return sheet.quantity("at-least", Dimension.LENGTH, wanted=wanted, most=_MOST_LENGTH)


def _spare(sheet: Properties) -> int:
    found = sheet.get("spare")
    if found is None:
        return 0
    match found.values:
        case ((tree.Number(unit=None) as count,),):
            if count.value.denominator == 1 and count.value <= _MOST_SPARE:
                return int(count.value)
            bounds = f"a whole number up to {_MOST_SPARE}"
            sheet.say.add(out_of_range(count.span, "`spare`", bounds, found=count.span.text))
        case _:
            sheet.say.add(wrong_value(span_of(found.values), "spare", "a number, such as `1`"))
    return 0
