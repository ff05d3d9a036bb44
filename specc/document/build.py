"""Owns the order of the pages, and the making of a document from what was computed of a garment."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Document, Figure, Group, TitleBlock
from specc.document.links import without_dead_ends
from specc.document.pages import (
    alterations,
    approvals,
    bias,
    bill,
    cautions,
    cost,
    cover,
    labels,
    lays,
    making,
    measures,
    pieces,
    source,
    thread,
    ticket,
    trims,
    work,
)
from specc.document.result import result
from specc.document.tables import tables

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.drawing import Drawing
    from specc.document.sheet import Sheet

PAGES = (
    cover, cautions, measures, pieces, alterations, making, trims, bias, thread, bill, cost, lays,
    ticket, work, labels, approvals, source,
)  # fmt: skip
"""The pages in the order of the sheet; a page with nothing to say is left out."""


def build(sheet: Sheet) -> Document:
    """The sheet of a garment as pages. A copy without prices encloses no source: prices stand in it."""
    written = tuple(page for module in PAGES if (page := module.build(sheet)) is not None)
    pages = without_dead_ends(written)
    drawings = tuple(drawing for page in pages for drawing in _drawings(page.blocks))
    return Document(
        "en",
        sheet.header.paper,
        (sheet.lengths.word, sheet.lengths.other.word),
        sheet.sizes,
        _block(sheet),
        pages,
        drawings,
        tables(sheet),
        result(sheet),
        sheet.project if sheet.quantities.priced else (),
    )


def _block(sheet: Sheet) -> TitleBlock:
    header = sheet.header
    last = header.revisions[-1] if header.revisions else None
    return TitleBlock(
        header.style,
        header.title,
        header.maker or "",
        header.season or "",
        last.name if last else "",
        last.date if last else "",
        header.status or "",
        f"specc {sheet.version}",
        _words(sheet),
    )


def _words(sheet: Sheet) -> tuple[str, ...]:
    """What somebody may look for the sheet by: the garment, its sizes, what it is made of."""
    header = sheet.header
    cloths = (cloth.title for cloth in sheet.garment.cloths)
    sizes = (
        f"sizes {header.sizes[0]} to {header.sizes[-1]}" if len(header.sizes) > 1 else f"size {header.sample}"
    )
    words = ("technical sheet", header.title, header.season or "", sizes, *cloths)
    return tuple(word for word in words if word)


def _drawings(blocks: tuple[Block, ...]) -> Iterator[Drawing]:
    """Every drawing on a page, in reading order."""
    for block in blocks:
        if isinstance(block, Figure):
            yield block.drawing
        elif isinstance(block, Group):
            yield from _drawings(block.blocks)
