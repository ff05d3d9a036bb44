"""Owns pages as lines for a terminal: words and tables, no drawings. Decides nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.backends.aligned import aligned
from specc.document.document import Facts, Heading, Paragraph
from specc.document.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.document.document import Block, Page


def lines(pages: Iterable[Page]) -> Iterator[str]:
    """The pages one after the other, an empty line before each block but facts."""
    for number, page in enumerate(pages):
        if number:
            yield ""
        yield page.title.upper()
        if page.lead:
            yield str(page.lead)
        for block in page.blocks:
            yield from _block(block)


def _block(block: Block) -> Iterator[str]:
    match block:
        case Heading(text=text, detail=detail):
            yield from ("", f"{text}, {detail}" if detail else str(text))
        case Paragraph(text=text):
            yield str(text)
        case Facts(rows=rows):
            yield from (f"{fact.label}: {fact.value}" for fact in rows)
        case Table(caption=caption, note=note):
            yield ""
            if caption:
                yield str(caption)
            yield from (line.rstrip() for line in aligned(block))
            if note:
                yield str(note)
