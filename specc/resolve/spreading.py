"""Owns giving meaning to how a cloth is spread on the table: open or double, gaps, plies, the table's length.

Knows nothing of what is cut.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.spreading import OPEN, SPREADS, Spreading
from specc.resolve.codes import out_of_range, wrong_value
from specc.resolve.properties import span_of
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.resolve.properties import Properties

SPREADING = ("spread", "gap", "ends", "plies", "table")
"""The lines of a cloth that say how it is spread."""

# Common practice, no source; facts on fabric consumption give 2 cm a ply end.
_GAP = Quantity.of(3, UNITS["mm"])
_ENDS = Quantity.of(4, UNITS["cm"])
_PLIES = 20
_TABLE = Quantity.of(6, UNITS["m"])
_MOST_PLIES = 500
_MOST_GAP = Quantity.of(1, UNITS["m"])


def resolve_spreading(sheet: Properties) -> Spreading:
    """How the cloth is spread; open where nothing is said."""
    return Spreading(
        sheet.word("spread", SPREADS, kind="a way of spreading cloth") or OPEN,
        _length(sheet, "gap", "3 mm") or _GAP,
        _length(sheet, "ends", "4 cm") or _ENDS,
        _plies(sheet),
        sheet.quantity("table", Dimension.LENGTH, wanted="a length, such as `6 m`") or _TABLE,
    )


def _length(sheet: Properties, name: str, example: str) -> Quantity | None:
    return sheet.quantity(name, Dimension.LENGTH, wanted=f"a length, such as `{example}`", most=_MOST_GAP)


def _plies(sheet: Properties) -> int:
    found = sheet.get("plies")
    if found is None:
        return _PLIES
    match found.values:
        case ((tree.Number(unit=None) as count,),):
            if count.value.denominator == 1 and 1 <= count.value <= _MOST_PLIES:
                return int(count.value)
            bounds = f"a whole number from 1 to {_MOST_PLIES}"
            sheet.say.add(out_of_range(count.span, "`plies`", bounds, found=count.span.text))
        case _:
            sheet.say.add(wrong_value(span_of(found.values), "plies", "a number, such as `12`"))
    return _PLIES
