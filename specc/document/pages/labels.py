"""Owns the page of labels, care and notes."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.document.document import Page
from specc.document.sheet import part
from specc.document.table import Column, Row, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.sheet import Sheet

# The order of ISO 3758, in words: its pictograms are protected in many countries.
_PROCESSES = MappingProxyType(
    {"wash": "Wash", "bleach": "Bleach", "dry": "Dry", "iron": "Iron", "clean": "Professional care"}
)


def build(sheet: Sheet) -> Page | None:
    """What goes on and with the garment; nothing where nothing is said of it."""
    blocks = (*_labels(sheet), *_care(sheet), *_notes(sheet))
    return Page("labels", "Labels, care, notes", "", blocks) if blocks else None


def _labels(sheet: Sheet) -> Iterator[Table]:
    if sheet.garment.labels:
        rows = tuple(Row((each.name, part(each.at), ", ".join(each.says))) for each in sheet.garment.labels)
        yield Table("labels-sewn-in", "Labels", (Column("Label"), Column("Sewn in at"), Column("Says")), rows)


def _care(sheet: Sheet) -> Iterator[Table]:
    order = tuple(_PROCESSES)
    lines = sorted(
        sheet.garment.care,
        key=lambda each: order.index(each.process) if each.process in order else len(order),
    )
    if lines:
        rows = tuple(Row((_PROCESSES.get(each.process, each.process), each.text)) for each in lines)
        note = "In the order of ISO 3758. Whoever sells the garment needs a reasonable basis for every line."
        yield Table("care", "Care", (Column("Process"), Column("Instruction")), rows, note=note)


def _notes(sheet: Sheet) -> Iterator[Table]:
    if sheet.garment.notes:
        rows = tuple(Row((each.on or "the garment", each.text)) for each in sheet.garment.notes)
        yield Table("notes", "Notes", (Column("On"), Column("Note")), rows)
