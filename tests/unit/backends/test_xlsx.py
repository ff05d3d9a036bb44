"""The workbook: the tables as they are, text as text, the same bytes each time."""

from __future__ import annotations

import io
from dataclasses import replace

import openpyxl
import pytest

from specc.backends import xlsx
from specc.document.data import DataTable
from tests.unit.document.values import document

SKIFF = document()
WORDS = ("=1+1", "+1", "-2", "@SUM(A1)", "http://example.com", "12", "\x07bell", "plain")


def book(of: object = SKIFF) -> openpyxl.Workbook:
    (file,) = xlsx.write(of, "")  # type: ignore[arg-type]
    assert file.path == "tables.xlsx"
    return openpyxl.load_workbook(io.BytesIO(file.data))


def test_every_table_is_a_sheet_with_its_values() -> None:
    read = book()
    assert read.sheetnames == [table.name for table in SKIFF.tables]
    for table in SKIFF.tables:
        first, *rows = read[table.name].iter_rows(values_only=True)
        assert first == table.columns
        assert len(rows) == len(table.rows)
        for found, wanted in zip(rows, table.rows, strict=True):
            for cell, value in zip(found, wanted, strict=True):
                if isinstance(value, float):
                    assert cell == pytest.approx(value, abs=5.1e-5)
                else:
                    assert cell == (value if value != "" else None)


def test_text_that_begins_like_a_formula_stays_text() -> None:
    table = DataTable("words", ("word",), tuple((word,) for word in WORDS))
    sheet = book(replace(SKIFF, tables=(table,)))["words"]
    cells = [sheet.cell(row, 1) for row in range(2, 2 + len(WORDS))]
    assert {cell.data_type for cell in cells} == {"s"}
    assert [cell.value for cell in cells[:6]] == list(WORDS[:6])
    assert not any(cell.hyperlink for cell in cells)


def test_the_same_tables_are_the_same_bytes() -> None:
    first, second = (xlsx.write(SKIFF, "")[0].data for _ in range(2))
    assert first == second
