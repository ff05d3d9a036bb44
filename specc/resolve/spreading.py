"""Owns giving meaning to how a cloth is spread on the table: open or double, gaps, plies, the table's length.

Knows nothing of what is cut.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.spreading import OPEN, SPREADS, TURNS, Spreading, Turned
from specc.resolve.codes import name_taken, wrong_value
from specc.resolve.properties import span_of_value
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Collector
    from specc.model.material import Cloth
    from specc.resolve.parts import Parts
    from specc.resolve.properties import Properties

SPREADING = ("spread", "gap", "ends", "plies", "table", "may-lean", *TURNS)
"""The lines of a cloth that say how it is spread."""

# Common practice, no source; facts on fabric consumption give 2 cm a ply end.
_GAP = Quantity.of(3, UNITS["mm"])
_ENDS = Quantity.of(4, UNITS["cm"])
_PLIES = 20
_TABLE = Quantity.of(6, UNITS["m"])
_MOST_PLIES = 500
_MOST_LEAN = Quantity.of(45, UNITS["deg"])
_MOST_GAP = Quantity.of(1, UNITS["m"])


def resolve_spreading(sheet: Properties) -> Spreading:
    """How the cloth is spread; open where nothing is said."""
    return Spreading(
        sheet.word("spread", SPREADS, kind="a way of spreading cloth") or OPEN,
        _length(sheet, "gap", "3 mm") or _GAP,
        _length(sheet, "ends", "4 cm") or _ENDS,
        sheet.count("plies", "12", most=_MOST_PLIES) or _PLIES,
        sheet.quantity("table", Dimension.LENGTH, wanted="a length, such as `6 m`") or _TABLE,
        sheet.quantity("may-lean", Dimension.ANGLE, wanted="an angle, such as `2 deg`", most=_MOST_LEAN),
        tuple(turned for way in TURNS for turned in _turned(sheet, way)),
    )


def report_turned(cloths: tuple[Cloth, ...], parts: Parts, say: Collector) -> None:
    """Report pieces that are not there, and those that are to lie in two ways."""
    for cloth in cloths:
        first: dict[str, Turned] = {}
        for each in cloth.spreading.turned:
            parts.piece(tree.Word(each.piece, each.origin), say)
            if each.piece in first:
                say.add(
                    name_taken(each.origin, "a way to lie of", each.piece, first=first[each.piece].origin)
                )
            first.setdefault(each.piece, each)


def _turned(sheet: Properties, way: str) -> Iterator[Turned]:
    found = sheet.get(way)
    for value in found.values if found else ():
        match value:
            case (tree.Word() as piece,):
                yield Turned(piece.text, way, piece.span)
            case _:
                sheet.say.add(
                    wrong_value(span_of_value(value), way, "pieces by their names, such as `facing`")
                )


def _length(sheet: Properties, name: str, example: str) -> Quantity | None:
    return sheet.quantity(name, Dimension.LENGTH, wanted=f"a length, such as `{example}`", most=_MOST_GAP)
