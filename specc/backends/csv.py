"""Owns writing the tables as CSV (RFC 4180, UTF-8). Knows nothing of what is in them.

A cell of text that a spreadsheet would take for a formula is made text by an apostrophe before it (advice of
OWASP on CSV injection). Numbers stay numbers.
"""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING

from specc.backends.lettered import fit
from specc.backends.output import OutputFile

if TYPE_CHECKING:
    from specc.document.data import DataTable
    from specc.document.document import Document

_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
_DECIMALS = 4


def write(document: Document, _pages: object) -> tuple[OutputFile, ...]:
    """The tables of the document, one file each."""
    return tuple(OutputFile(f"{table.name}.csv", _text(table).encode()) for table in document.tables)


def _text(table: DataTable) -> str:
    lines = io.StringIO(newline="")
    writer = csv.writer(lines)
    writer.writerow([_safe(name) for name in table.columns])
    writer.writerows([_cell(value) for value in row] for row in table.rows)
    return lines.getvalue()


def _cell(value: str | float | None) -> str:
    if value is None:
        return ""
    if isinstance(value, str):
        return _safe(value)
    return str(value) if isinstance(value, int) else _number(value)


def _number(value: float) -> str:
    """At most four decimals, never with an exponent, never -0."""
    text = f"{value:.{_DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _safe(text: str) -> str:
    clean = fit(text)
    return f"'{clean}" if clean.startswith(_FORMULA) else clean
