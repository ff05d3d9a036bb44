"""Owns the page of the source.

The text that all of the sheet came from, and how to know that it is the same text.
"""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING

from specc.document.document import Fact, Facts, Listing, Page, Paragraph
from specc.document.table import Column, Row, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.sheet import Sheet
    from specc.source import SourceFile, Span


def build(sheet: Sheet) -> Page:
    """The spec with line numbers, and what else was read."""
    spec, *others = sheet.files
    chart = sheet.garment.chart
    facts = (
        Fact("File", spec.name),
        Fact("SHA-256", f"{digest(spec)}, of the text as UTF-8"),
        *((Fact("Chart", _with_source(chart.title, chart.source)),) if chart else ()),
        *(Fact("Block", block.title) for block in sheet.garment.blocks if block.name),
        *_traced(sheet),
        Fact("Compiled by", f"specc {sheet.version}"),
    )
    lines = spec.text.removesuffix("\n").split("\n")
    text: Block = (
        Listing("source-text", tuple(line.removesuffix("\r") for line in lines))
        if sheet.quantities.priced
        else Paragraph("The text is left out of this copy, for it has prices.")
    )
    blocks: tuple[Block, ...] = (Facts(facts), *_others(tuple(others)), *_used(sheet), text)
    lead = "Everything on this sheet comes from this text or is computed from it."
    return Page("source", "Source", lead, blocks)


def _traced(sheet: Sheet) -> Iterator[Fact]:
    """The pieces that were traced in each size, in the order of the text."""
    titles: dict[str, list[str]] = {}
    for piece in (piece for block in sheet.garment.blocks for piece in block.pieces):
        if piece.traced is not None:
            titles.setdefault(piece.traced.size, []).append(piece.title)
    for size, pieces in titles.items():
        yield Fact("Traced on paper", f"{', '.join(pieces)}, in size {size}")


def digest(part: SourceFile | Span) -> str:
    """The SHA-256 of a text, or of a part of one, as UTF-8, without a byte order mark."""
    return sha256(part.text.encode("utf-8", errors="surrogatepass")).hexdigest()


def _with_source(title: str, source: str | None) -> str:
    return f"{title} ({source})" if source else title


def _others(files: tuple[SourceFile, ...]) -> Iterator[Table]:
    if files:
        rows = tuple(Row((file.name, digest(file))) for file in files)
        yield Table("files-used", "Files used", (Column("File"), Column("SHA-256", width=104.0)), rows)


def _used(sheet: Sheet) -> Iterator[Table]:
    """Charts, blocks and methods, each with the hash of its own text from its keyword to its last brace."""
    rows = tuple(
        Row((f"{one.kind} {one.name}", f"{one.origin.file.name} {one.origin.line}", digest(one.origin)))
        for one in sheet.garment.used
    )
    if rows:
        columns = (
            Column("What"),
            Column("File, line", width=42.0),
            Column("SHA-256 of its text", width=104.0),
        )
        yield Table("declarations-used", "Charts, blocks, methods used", columns, rows)
