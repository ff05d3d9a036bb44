"""Owns what programs are told of thread. Lengths are millimetres under names that end in `_mm`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import DataTable, Members

if TYPE_CHECKING:
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import ThreadUse


def thread_data(use: ThreadUse) -> Members:
    """The thread of one pass."""
    return Members(
        (
            ("on", use.on),
            ("pass", use.number),
            ("stitch", use.stitch),
            ("stitched_mm", use.length),
            ("reckoned_by", use.by),
            ("ratio", use.ratio),
            ("needle", use.needle),
            ("needle_mm", use.needle_length),
            ("other", use.other),
            ("other_mm", use.other_length),
        )
    )


def thread_table(sheet: Sheet) -> DataTable:
    """A row for each pass in each size."""
    columns = (
        "size", "on", "pass", "stitch", "stitched_mm", "reckoned_by", "ratio", "needle", "needle_mm",
        "other", "other_mm",
    )  # fmt: skip
    rows = tuple(
        (
            size.size,
            use.on,
            use.number,
            use.stitch,
            use.length,
            use.by,
            use.ratio,
            use.needle,
            use.needle_length,
            use.other,
            use.other_length,
        )
        for size in sheet.quantities.sizes
        for use in size.threads
    )
    return DataTable("thread", columns, rows)
