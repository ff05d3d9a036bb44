"""Owns writing the tables as one workbook (ECMA-376), a sheet each. Knows nothing of what is in them.

Text is always text: nothing in it is taken for a formula, a number or an address.
"""

from __future__ import annotations

import io
from datetime import datetime
from typing import TYPE_CHECKING, Final

from xlsxwriter import Workbook

from specc.backends.lettered import fit
from specc.backends.output import OutputFile

if TYPE_CHECKING:
    from xlsxwriter.worksheet import Worksheet

    from specc.document.data import DataTable
    from specc.document.document import Document

_DECIMALS = 4
_LONGEST_NAME: Final = 31  # of a sheet, as spreadsheets allow
_WIDEST: Final = 60  # of a column, in characters
_OPTIONS: Final = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_numbers": False,
    "strings_to_urls": False,
}
# The file says when it was made; the same tables are the same bytes.
_MADE: Final = datetime(1980, 1, 1)  # noqa: DTZ001 - the format has no time zones


def write(document: Document, _pages: object) -> tuple[OutputFile, ...]:
    """The workbook."""
    held = io.BytesIO()
    book = Workbook(held, dict(_OPTIONS))
    book.set_properties({"title": fit(document.block.title), "created": _MADE})
    strong = book.add_format({"bold": True})
    for table in document.tables:
        sheet = book.add_worksheet(table.name[:_LONGEST_NAME])
        for place, name in enumerate(table.columns):
            sheet.write_string(0, place, fit(name), strong)
        for number, row in enumerate(table.rows, start=1):
            _row(sheet, number, row)
        sheet.freeze_panes(1, 0)
        _widths(sheet, table)
    book.close()
    return (OutputFile("tables.xlsx", held.getvalue()),)


def _row(sheet: Worksheet, number: int, row: tuple[str | float | int | None, ...]) -> None:
    for place, value in enumerate(row):
        if value is None or value == "":
            continue  # an empty cell
        if isinstance(value, str):
            sheet.write_string(number, place, fit(value))
        else:
            sheet.write_number(number, place, round(value, _DECIMALS) + 0.0)


def _widths(sheet: Worksheet, table: DataTable) -> None:
    for place, name in enumerate(table.columns):
        texts = (str(row[place]) for row in table.rows if isinstance(row[place], str))
        sheet.set_column(place, place, min(_WIDEST, max(len(name), *(len(text) for text in texts), 8) + 2))
