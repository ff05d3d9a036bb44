"""Owns the table of colourways: a column for each, what is made of it, each material's colour and amount."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.document.table import Column, Row, Table
from specc.units import format_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.sheet import Sheet
    from specc.model.colourway import Colourway
    from specc.quantities.quantities import BillLine

_WHOLE: Final = ("piece", "roll", "pack", "cone")
_COUNTED: Final = ("label", "packing")  # by the garment, whatever its colour


def colourways(sheet: Sheet) -> Iterator[Table]:
    """The table; nothing where the garment has no colourways."""
    found = sheet.garment.colourways
    if not found:
        return
    columns = (Column("Colourway"), *(Column(each.title) for each in found))
    rows = [
        Row((f"Garments, size {size}", *(str(each.ordered(size)) for each in found))) for size in sheet.sizes
    ]
    totals = (str(sum(one.count for one in each.order)) for each in found)
    rows.append(Row(("Garments in all", *totals), strong=True))
    rows += _materials(sheet, found)
    note = "Amounts are what the garments take, nothing lost. What to buy of each stands above."
    yield Table("colourways", "Colourways", columns, tuple(rows), note=note)


def _materials(sheet: Sheet, found: tuple[Colourway, ...]) -> Iterator[Row]:
    lines = (line for line in sheet.quantities.bill if line.per_garment and line.kind not in _COUNTED)
    one_each: dict[tuple[str, str, str, str, tuple[float, ...]], BillLine] = {}
    for line in lines:
        one_each.setdefault((line.kind, line.name, line.title, line.unit, line.per_garment), line)
    garment = sheet.garment
    own = {each.name: each.colour for each in garment.cloths}
    own |= {each.name: each.colour for each in garment.trims}
    own |= {each.name: each.colour for each in garment.threads}
    for line in one_each.values():
        yield Row((line.title, *(_cell(sheet, line, each, own.get(line.name)) for each in found)))


def _cell(sheet: Sheet, line: BillLine, colourway: Colourway, own: str | None) -> str:
    """`rust red: 4.25 m`."""
    amounts = zip(sheet.sizes, line.per_garment, strict=True)
    amount = sum(one * colourway.ordered(size) for size, one in amounts)
    told = f"{amount_in(amount, line.unit)} {line.unit}"
    colour = colourway.colour_of(line.name) or own
    return f"{colour}: {told}" if colour else told


def amount_in(amount: float | None, unit: str) -> str:
    """An amount of the bill: whole where the unit is counted and the amount is whole."""
    if amount is None:
        return ""
    whole = unit in _WHOLE and float(amount).is_integer()
    return format_number(amount, decimals=0 if whole else 2)
