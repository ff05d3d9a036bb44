"""Owns what programs are told of bias strips. Lengths are millimetres under names that end in `_mm`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import DataTable, Members

if TYPE_CHECKING:
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import BiasPlan


def bias_data(plan: BiasPlan) -> Members:
    """How the strips of a trim are cut."""
    return Members(
        (
            ("trim", None if plan.piece else plan.name),
            ("piece", plan.name if plan.piece else None),
            ("cloth", plan.cloth),
            ("strip_width_mm", plan.wide),
            ("pieces", len(plan.pieces)),
            ("way", plan.chosen.way),
            (
                "ways",
                Members(
                    tuple(
                        (
                            cut.way,
                            Members(
                                (
                                    ("cloth_mm", cut.length * plan.grown),
                                    ("strips", len(cut.strips)),
                                    ("longest_mm", max(cut.strips)),
                                    ("pieces_with_joins", sum(1 for joins in cut.joins if joins)),
                                )
                            ),
                        )
                        for cut in plan.cuts
                    )
                ),
            ),
        )
    )


def bias_table(sheet: Sheet) -> DataTable:
    """A row for each piece of each strip, in the order of cutting."""
    columns = ("cut_of", "cloth", "strip_width_mm", "piece", "size", "used_on", "length_mm", "joins_at_mm")
    rows = tuple(
        (
            plan.name,
            plan.cloth,
            plan.wide,
            number,
            size,
            used_on,
            length,
            " ".join(f"{join:.1f}" for join in joins),
        )
        for plan in sheet.quantities.bias
        for number, ((size, used_on, length), joins) in enumerate(
            zip(plan.pieces, plan.chosen.joins, strict=True), start=1
        )
    )
    return DataTable("bias-strips", columns, rows)
