"""Owns tables in lines of plain text, their columns aligned. Decides nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.table import Align

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.table import Column, Table


def aligned(table: Table) -> Iterator[str]:
    """The line of headings and a line for every row."""
    headings = tuple(f"{column.over} {column.heading}".strip() for column in table.columns)
    lines = (headings, *(row.cells for row in table.rows))
    widths = [max(len(line[index]) for line in lines) for index in range(len(table.columns))]
    for line in lines:
        yield "  ".join(_cell(*each) for each in zip(line, table.columns, widths, strict=True))


def _cell(text: str, column: Column, width: int) -> str:
    return text.rjust(width) if column.align is Align.RIGHT else text.ljust(width)
