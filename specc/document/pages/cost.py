"""Owns the page of costs: materials, work as stated, the price when asked for."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from specc.document.amount_origins import (
    of_handling_minutes,
    of_price,
    of_stitching_minutes,
    of_total,
    of_work,
)
from specc.document.document import Page, Paragraph
from specc.document.printed import traced
from specc.document.table import Column, Row, Table
from specc.units import format_money, format_number, format_ratio

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator
    from fractions import Fraction

    from specc.document.printed import Origin, Text
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import Cost, SizeCost

_Origins = tuple["Origin | None", ...]
_NOT_STATED = "not stated"


def build(sheet: Sheet) -> Page | None:
    """The costs of one garment; nothing where nothing has a price."""
    cost = sheet.quantities.cost
    if cost is None:
        return None
    lead = (
        "Materials at the prices of the order, with what is wasted, without what is left of rolls and packs."
    )
    return Page("cost", "Costs", lead, (_table(sheet, cost), *_notes(sheet, cost)))


def _table(sheet: Sheet, cost: Cost) -> Table:
    def money(of: Callable[[SizeCost], Fraction | None], otherwise: str) -> tuple[str, ...]:
        found = (of(size) for size in cost.sizes)
        return tuple(
            otherwise if each is None or cost.currency is None else format_money(each, cost.currency)
            for each in found
        )

    def minutes(of: Callable[[SizeCost], float | None]) -> tuple[str, ...]:
        found = (of(size) for size in cost.sizes)
        return tuple("" if each is None else format_number(each, decimals=1) for each in found)

    places, nothing = range(len(cost.sizes)), (None,) * len(cost.sizes)
    stitching, handling = partial(of_stitching_minutes, sheet), partial(of_handling_minutes, sheet)
    rows = [Row(("Materials", *money(lambda size: size.materials, "")))]
    parts: tuple[tuple[str, Callable[[SizeCost], float | None], _Origins], ...] = (
        ("Minutes: cutting", lambda size: size.minutes.cutting, nothing),
        ("Minutes: stitching", lambda size: size.minutes.sewing, tuple(map(stitching, places))),
        ("Minutes: handling", lambda size: size.minutes.handling, tuple(map(handling, places))),
        ("Minutes: finishing", lambda size: size.minutes.finishing, nothing),
    )
    rows += [
        Row((f"{name}, {_NOT_STATED}" if not any(minutes(of)) else name, *_told(minutes(of), origins)))
        for name, of, origins in parts
    ]
    work = (of_work(sheet, size) for size in cost.sizes)
    name = _said("Work", cost, lambda size: size.work)
    rows.append(Row((name, *_told(money(lambda size: size.work, ""), work))))
    if any(size.total is not None for size in cost.sizes):
        totals = (of_total(sheet, size) for size in cost.sizes)
        rows.append(Row(("In all", *_told(money(lambda size: size.total, ""), totals)), strong=True))
    if any(size.price is not None for size in cost.sizes):
        margin = sheet.garment.costing.margin if sheet.garment.costing else None
        name = f"Price at a margin of {format_ratio(margin)}" if margin is not None else "Price"
        prices = (of_price(sheet, size) for size in cost.sizes)
        rows.append(Row((name, *_told(money(lambda size: size.price, ""), prices)), strong=True))
    columns = (Column("One garment"), *sheet.size_columns("of size", width=22.0))
    return Table("costs", "", columns, tuple(rows))


def _told(texts: tuple[str, ...], origins: Iterable[Origin | None]) -> Iterator[Text]:
    return map(traced, texts, origins)


def _said(name: str, cost: Cost, of: Callable[[SizeCost], Fraction | None]) -> str:
    return name if any(of(size) is not None for size in cost.sizes) else f"{name}, {_NOT_STATED}"


def _notes(sheet: Sheet, cost: Cost) -> Iterator[Paragraph]:
    if cost.currency is None:
        named = " and ".join(cost.currencies)
        yield Paragraph(f"Prices are in {named}, and no rate is stated: nothing is added up.")
    if cost.order is not None and cost.currency is not None:
        yield Paragraph(f"Materials of the order as bought: {format_money(cost.order, cost.currency)}.")
    if any(line.colourways for line in sheet.quantities.bill):
        yield Paragraph("Where colourways differ, one garment has the mean of what is ordered.", "note")
    if cost.unpriced:
        yield Paragraph(f"Without a price, so not in: {'; '.join(cost.unpriced)}.")
    for rate in sheet.garment.costing.rates if sheet.garment.costing else ():
        yield Paragraph(
            f"1 {rate.of} is taken as {format_number(rate.worth.amount)} {rate.worth.currency}, the rate of"
            f" {rate.day}.",
            "note",
        )
    if sheet.garment.costing is None:
        yield Paragraph("No work is stated, and none is guessed: the times are for the maker to say.", "note")
