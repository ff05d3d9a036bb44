"""Owns the order of the pages, and the making of a document from what was computed of a garment."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Document, Figure, Group, TitleBlock
from specc.document.pages import (
    alterations,
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
)
from specc.document.result import result
from specc.document.sheet import Sheet
from specc.document.tables import tables

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.drawing import Drawing
    from specc.document.sheet import Judged
    from specc.making.assembly import Assembly
    from specc.model.garment import Garment
    from specc.quantities.quantities import Quantities

PAGES = (
    cover, cautions, measures, pieces, alterations, making, trims, bias, thread, bill, cost, lays,
    ticket, labels, source,
)  # fmt: skip
"""The pages in the order of the sheet; a page with nothing to say is left out."""


def build(
    garment: Garment,
    assembly: Assembly,
    quantities: Quantities,
    judgement: Judged,
    *,
    version: str,
) -> Document:
    """The sheet of a garment. Amounts must be of the same sizes, in the same order, as the assembly."""
    sheet = Sheet(garment, assembly, quantities, judgement, version)
    pages = tuple(page for module in PAGES if (page := module.build(sheet)) is not None)
    drawings = tuple(drawing for page in pages for drawing in _drawings(page.blocks))
    return Document("en", garment.header.paper, _block(sheet), pages, drawings, tables(sheet), result(sheet))


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
        f"specc {sheet.version}",
    )


def _drawings(blocks: tuple[Block, ...]) -> Iterator[Drawing]:
    """Every drawing on a page, in reading order."""
    for block in blocks:
        if isinstance(block, Figure):
            yield block.drawing
        elif isinstance(block, Group):
            yield from _drawings(block.blocks)
