"""Owns the tables for programs: bill of materials, trims, points of measure, as plain unrounded values."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.bias_data import bias_table
from specc.document.cost_data import cost_table
from specc.document.data import DataTable
from specc.document.lay_data import lay_table
from specc.document.thread_data import thread_table
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.document.sheet import Sheet


def tables(sheet: Sheet) -> tuple[DataTable, ...]:
    """The tables that are handed out as files."""
    return (
        _bill(sheet),
        cost_table(sheet),
        _trims(sheet),
        thread_table(sheet),
        bias_table(sheet),
        lay_table(sheet),
        _points(sheet),
    )


def _bill(sheet: Sheet) -> DataTable:
    sizes = tuple(f"per_garment_{size}" for size in sheet.sizes)
    columns = (
        "kind",
        "name",
        "title",
        "used_on",
        "unit",
        *sizes,
        "order",
        "waste",
        "gross",
        "buy",
        "buy_unit",
        "price",
        "currency",
        "cost",
        "supplier",
        "reference",
        "colour",
        "colourways",
        "basis",
    )
    rows = tuple(
        (
            line.kind,
            line.name,
            line.title,
            ", ".join(line.used_on),
            line.unit,
            *(line.per_garment or (None,) * len(sheet.sizes)),
            line.order,
            line.waste,
            line.gross,
            line.buy,
            line.buy_unit,
            None if line.price is None else float(line.price),
            line.currency,
            None if line.cost is None else float(line.cost),
            line.supplier,
            line.reference,
            line.colour,
            ", ".join(line.colourways),
            line.basis,
        )
        for line in sheet.quantities.bill
    )
    return DataTable("bill-of-materials", columns, rows)


def _trims(sheet: Sheet) -> DataTable:
    columns = (
        "size", "trim", "title", "used_on", "count", "closed_round",
        "seam_mm", "held_mm", "added_mm", "cut_length_mm", "cut_width_mm",
    )  # fmt: skip
    rows = tuple(
        (
            size.size,
            cut.trim,
            sheet.trim_called(cut.trim),
            cut.used_on,
            cut.count,
            "yes" if cut.closed else "no",
            cut.seam_length,
            cut.held,
            sum(added.length for added in cut.additions),
            cut.cut_length,
            cut.cut_width,
        )
        for size in sheet.quantities.sizes
        for cut in size.trims
    )
    return DataTable("trims", columns, rows)


def _points(sheet: Sheet) -> DataTable:
    columns = ("name", "title", "unit", "minus", "plus", *(f"size_{size}" for size in sheet.sizes))
    rows = tuple(
        (point.name, point.title, _unit(point.dimension), point.minus, point.plus, *point.values)
        for point in sheet.quantities.points_of_measure
    )
    return DataTable("points-of-measure", columns, rows)


def _unit(dimension: Dimension) -> str:
    """The base unit in which a value of the dimension is given."""
    known = {Dimension.LENGTH: "mm", Dimension.AREA: "mm2", Dimension.ANGLE: "deg"}
    return known.get(dimension, "")
