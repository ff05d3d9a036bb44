"""Owns the first page: which garment, which revision, what for, and the pieces at a glance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Fact, Facts, Figure, Group, Page
from specc.document.garment_bands import bands
from specc.document.garment_drawing import garment_drawing
from specc.document.glance import outline_drawing
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.drawing import Drawing
    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet

_ROOM = Point(118.0, 112.0)


def build(sheet: Sheet) -> Page:
    """The cover."""
    header = sheet.header
    facts = Facts(tuple(Fact(label, value) for label, value in _facts(sheet) if value))
    blocks: tuple[Block, ...] = (
        Group("beside", (facts, _drawn(sheet)), first=62.0),
        *_order(sheet),
        *_revisions(sheet),
    )
    return Page("cover", header.title, f"Technical sheet for style {header.style}.", blocks)


def _drawn(sheet: Sheet) -> Figure:
    """The garment, laid flat; its pieces where it cannot be."""
    title = f"{sheet.header.title}, front and back" if len(sheet.flat.sides) > 1 else sheet.header.title
    size = sheet.header.sample
    drawing = garment_drawing("garment", title, sheet.flat, bands(sheet), room=_ROOM)
    if drawing is None:
        pieces = outline_drawing("pieces-at-a-glance", sheet.sample.pieces, room=_ROOM)
        return Figure(pieces, f"The pieces in size {size} as sewn, opened out at the fold{_scaled(pieces)}.")
    return Figure(
        drawing,
        f"Size {size}, laid flat, drawn from the pieces with their darts closed{_scaled(drawing)}."
        f"{_let_out(sheet)}{_left_out(sheet)}",
    )


def _scaled(drawing: Drawing) -> str:
    return f"; scale {said(drawing.scale)}" if drawing.scale else ""


def _let_out(sheet: Sheet) -> str:
    """What is drawn wider than it is worn."""
    gathered = any(edge.gathers for piece in sheet.sample.pieces for edge in piece.edges)
    held = any(zone.held for each in sheet.sample.rounds for zone in each.zones)
    what = " and ".join(word for word, here in (("gathers", gathered), ("what is held in", held)) if here)
    return f" Drawn with {what} let out." if what else ""


def _left_out(sheet: Sheet) -> str:
    return f" Not drawn: {', '.join(sheet.flat.left_out)}." if sheet.flat.left_out else ""


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
