"""Owns the page of the bill of materials: what one garment takes, what the order takes, what to buy."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.amount_origins import of_bought, of_cost, of_gross, of_line
from specc.document.colourways import amount_in, colourways
from specc.document.document import Page, Paragraph
from specc.document.links import billed, cut_for, listed, made
from specc.document.printed import traced
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.quantities.bill_cloth import BY_AREA
from specc.units import format_money

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import BillLine

_BY_AREA = (
    "Where cloth is counted by the area of what is cut from it, a lay needs more, since pieces do not fill"
    " the cloth: do not buy cloth by such a figure alone."
)


def build(sheet: Sheet) -> Page | None:
    """The bill; nothing where nothing is used."""
    lines = sheet.quantities.bill
    if not lines:
        return None
    blocks: tuple[Block, ...] = (_bill(sheet), *_by_size(sheet), *colourways(sheet), *_bases(lines))
    by_area = any(BY_AREA in line.basis for line in lines)
    return Page("bill", "Bill of materials", _BY_AREA if by_area else "", blocks)


def _bill(sheet: Sheet) -> Table:
    count = sum(each.count for each in sheet.header.order)
    priced = any(line.price is not None for line in sheet.quantities.bill)
    columns = [
        Column("Material"),
        Column("For"),
        Column(f"One garment, size {sheet.header.sample}", Align.RIGHT),
        Column(f"Order of {count}" if count else "No order", Align.RIGHT),
        *((Column("With waste", Align.RIGHT),) if _wasted(sheet.quantities.bill) else ()),
        Column("Buy", Align.RIGHT, strong=True),
        Column(""),
    ]
    if priced:
        columns += [Column("Price", Align.RIGHT), Column("Cost", Align.RIGHT)]
    lines = sheet.quantities.bill
    named = [line.name for line in lines]
    rows = [
        _line(sheet, line, priced=priced, first=line.name not in named[:number])
        for number, line in enumerate(lines)
    ]
    if priced:
        rows += _totals(sheet.quantities.bill, len(columns))
    return Table("bill-of-materials", "", tuple(columns), tuple(rows))


def _line(sheet: Sheet, line: BillLine, *, priced: bool, first: bool) -> Row:
    title, of_title = listed(((_titled(line), _shown_at(line)),))
    used, of_use = listed(
        ((sheet.title_of(name), _used_at(sheet, line, name)) for name in line.used_on), of=1
    )
    cells = (title, used, *_counted(sheet, line), *(_priced(sheet, line) if priced else ()))
    return Row(cells, place=billed(line.name) if first else "", links=(*of_title, *of_use))


def _shown_at(line: BillLine) -> str:
    """Where it is shown how the amount of a material came about."""
    if line.kind == "trim" and line.used_on:
        return cut_for(line.name, line.used_on[0])
    return {"cloth": "lays", "thread": "thread", "label": "labels"}.get(line.kind, "")


def _used_at(sheet: Sheet, line: BillLine, used_on: str) -> str:
    """Where it is said how what a material is used for is made."""
    if line.kind != "cloth":
        return made(used_on)
    strips = (billed(trim.name) for trim in sheet.garment.trims if trim.title == used_on)
    return next(strips, "")


def _counted(sheet: Sheet, line: BillLine) -> tuple[Text, ...]:
    one = line.per_garment[sheet.sample_index] if line.per_garment else None
    wasted = _wasted(sheet.quantities.bill)
    if line.order is None:
        return ("not counted", "", *(("",) if wasted else ()), "", "")
    gross = (traced(amount_in(line.gross, line.unit), of_gross(sheet, line)),) if wasted else ()
    found = of_line(sheet, line)
    net = (traced(amount_in(amount, line.unit), found) for amount in (one, line.order))
    buy = traced("cut" if _comes_with_cloth(line) else _bought(line), of_bought(sheet, line))
    return (*net, *gross, buy, line.unit)


def _priced(sheet: Sheet, line: BillLine) -> tuple[Text, Text]:
    if _comes_with_cloth(line):
        return "in the cloth", ""
    if line.price is None or line.currency is None:
        return "not priced", ""
    cost = "" if line.cost is None else format_money(line.cost, line.currency)
    price = f"{format_money(line.price, line.currency)} per {line.buy_unit}"
    return price, traced(cost, of_cost(sheet, line))


def _wasted(lines: tuple[BillLine, ...]) -> bool:
    """Whether something is added for what is lost."""
    return any(line.waste and line.order is not None for line in lines)


def _bought(line: BillLine) -> str:
    """What is bought, with its unit where that is not the line's own."""
    if line.buy is None:
        return "not known"
    amount = amount_in(line.buy, line.buy_unit)
    return amount if line.buy_unit == line.unit else plural(int(line.buy), line.buy_unit)


def _comes_with_cloth(line: BillLine) -> bool:
    """Whether it is counted and not bought: strips that are cut from a cloth."""
    return line.kind == "trim" and line.order is not None and line.buy is None


def _totals(lines: tuple[BillLine, ...], columns: int) -> Iterator[Row]:
    """The sums of the costs as they are printed, by currency."""
    totals: dict[str, Fraction] = {}
    for line in lines:
        if line.currency and line.cost is not None:
            totals[line.currency] = totals.get(line.currency, Fraction(0)) + line.cost
    unpriced = any(line.cost is None and not _comes_with_cloth(line) for line in lines)
    name = "In all, of what is priced" if unpriced else "In all"
    for currency, total in totals.items():
        yield Row((name, *("" for _ in range(columns - 2)), format_money(total, currency)), strong=True)


def _by_size(sheet: Sheet) -> Iterator[Table]:
    if len(sheet.sizes) == 1:
        return
    columns = (
        Column("Material"),
        Column("", width=12.0),
        *sheet.size_columns("One garment of size"),
    )
    lines = (line for line in sheet.quantities.bill if line.per_garment)
    rows = (Row((_plain(line), line.unit, *_amounts(sheet, line))) for line in lines)
    apart = {row.cells: row for row in rows}
    yield Table("materials-by-size", "By size", columns, tuple(apart.values()))


def _amounts(sheet: Sheet, line: BillLine) -> Iterator[Text]:
    found = of_line(sheet, line)
    return (traced(amount_in(amount, line.unit), found) for amount in line.per_garment)


def _bases(lines: tuple[BillLine, ...]) -> Iterator[Paragraph]:
    for text in dict.fromkeys(f"{_plain(line)}: {line.basis}." for line in lines if line.basis):
        yield Paragraph(text.replace("`", ""), "note")


def _titled(line: BillLine) -> str:
    return f"{_plain(line)}, {line.colour}" if line.colourways and line.colour else _plain(line)


def _plain(line: BillLine) -> str:
    """What it is called, whatever its colour."""
    return f"Label: {line.title}" if line.kind == "label" else line.title
