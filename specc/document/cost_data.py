"""Owns what programs are told of costs: a table, a row for each size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import DataTable

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.document.sheet import Sheet


def cost_table(sheet: Sheet) -> DataTable:
    """One garment of each size; empty where nothing has a price."""
    columns = (
        "size", "currency", "materials", "minutes_cutting", "minutes_stitching", "minutes_handling",
        "minutes_finishing", "work", "total", "price",
    )  # fmt: skip
    cost = sheet.quantities.cost
    rows = tuple(
        (
            size.size,
            cost.currency,
            _number(size.materials),
            size.minutes.cutting,
            size.minutes.sewing,
            size.minutes.handling,
            size.minutes.finishing,
            _number(size.work),
            _number(size.total),
            _number(size.price),
        )
        for size in (cost.sizes if cost is not None else ())
        if cost is not None
    )
    return DataTable("costs", columns, rows)


def _number(amount: Fraction | None) -> float | None:
    return None if amount is None else float(amount)
