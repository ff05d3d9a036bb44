"""Owns how lengths of a method are put into its words: in the kind of unit that the sheet is printed in.

Knows nothing of methods.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.units import Dimension, Quantity, format_length, format_number, parse_number, unit

if TYPE_CHECKING:
    from fractions import Fraction

_OF_INCHES: Final = ("in", "ft", "yd")
_CENTIMETRE: Final = 10
_LARGE: Final = 20  # mm from which on centimetres are easier to read


def spoken_length(quantity: Quantity, sheet: str) -> str:
    """A length, put into the kind of unit of the sheet where it is of the other; anything else as written."""
    inches = quantity.unit.symbol in _OF_INCHES
    if quantity.dimension != Dimension.LENGTH or (sheet == "in" and inches):
        return str(quantity)
    if sheet != "in" and not inches and 10 % quantity.number.denominator == 0:
        return str(quantity)
    if sheet == "in":
        return format_length(quantity.value, "in", denominator=16)
    if quantity.value < _LARGE or sheet == "mm":
        return f"{_trimmed(quantity.value)} mm"
    return f"{_trimmed(quantity.value / _CENTIMETRE)} cm"


def length_told(words: str) -> Quantity | None:
    """The length that the words are, such as `1/4 in`; None where they are none."""
    number, _, symbol = words.strip().rpartition(" ")
    written = unit(symbol)
    if not number or written is None or written.dimension != Dimension.LENGTH:
        return None
    try:
        return Quantity.of(parse_number(number), written)
    except ValueError:
        return None


def _trimmed(value: Fraction) -> str:
    return format_number(value, decimals=1).removesuffix(".0")
