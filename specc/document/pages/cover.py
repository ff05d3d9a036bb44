"""Owns the first page: which garment, which revision, what for, and the pieces at a glance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Fact, Facts, Figure, Group, Page
from specc.document.glance import outline_drawing
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet

_ROOM = Point(118.0, 112.0)


def build(sheet: Sheet) -> Page:
    """The cover."""
    header = sheet.header
    drawing = outline_drawing("pieces-at-a-glance", sheet.sample.pieces, room=_ROOM)
    caption = (
        f"The pieces in size {header.sample} as sewn, without allowances, opened out at the fold;"
        f" scale {said(drawing.scale)}. Not a drawing of the garment as worn."
        if drawing.scale
        else ""
    )
    facts = Facts(tuple(Fact(label, value) for label, value in _facts(sheet) if value))
    blocks: tuple[Block, ...] = (
        Group("beside", (facts, Figure(drawing, caption)), first=62.0),
        *_order(sheet),
        *_revisions(sheet),
    )
    return Page("cover", header.title, f"Technical sheet for style {header.style}.", blocks)


def _facts(sheet: Sheet) -> Iterator[tuple[str, Text]]:
    header, garment = sheet.header, sheet.garment
    last = header.revisions[-1] if header.revisions else None
    yield "Style", header.style
    yield "Revision", f"{last.name}, {last.date}" if last else "none"
    yield "Maker", header.maker or ""
    yield "Season", header.season or ""
    yield "Status", header.status or ""
    yield "Worn by", header.wearer
    yield "Puts on", header.puts_on or "opens"
    yield "Sizes", ", ".join(header.sizes)
    yield "Sample size", header.sample
    yield "Lengths in", sheet.lengths.both(_word)
    for cloth in garment.cloths:
        yield "Cloth" if cloth.use == "shell" else f"Cloth for {cloth.use}", cloth.title
    for trim in garment.trims:
        yield "Trim", trim.title
    for thread in garment.threads:
        yield "Thread", ", ".join(part for part in (thread.title, thread.size) if part)


def _word(lengths: Lengths) -> str:
    return lengths.word


def _order(sheet: Sheet) -> Iterator[Table]:
    order = {each.size: each.count for each in sheet.header.order}
    if not order:
        return
    columns = (
        Column("Size"),
        *sheet.size_columns(),
        Column("In all", Align.RIGHT),
    )
    counts = tuple(str(order.get(size, 0)) for size in sheet.sizes)
    row = Row(("to be made", *counts, str(sum(order.values()))))
    yield Table("order", f"Order of {plural(sum(order.values()), 'garment')}", columns, (row,))


def _revisions(sheet: Sheet) -> Iterator[Table]:
    if not sheet.header.revisions:
        return
    rows = tuple(Row((each.name, each.date, each.text)) for each in reversed(sheet.header.revisions))
    columns = (Column("Revision"), Column("Date"), Column("What changed"))
    yield Table("revisions", "Revisions", columns, rows)
