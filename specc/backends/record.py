"""Owns writing a document as readable text: to look at it, and to compare it in tests. Decides nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.backends.aligned import aligned
from specc.document.document import Caution, Facts, Figure, Group, Heading, Listing, Paragraph
from specc.document.drawing import Bend, Stroke
from specc.document.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block, Document
    from specc.document.drawing import Drawing, Label, Trace
    from specc.geometry.point import Point


def text(document: Document, *, drawings: bool = True) -> str:
    """The whole document; with `drawings`, every stroke and label of them too."""
    return "\n".join(_document(document, drawings=drawings)) + "\n"


def _document(document: Document, *, drawings: bool) -> Iterator[str]:
    block = document.block
    yield f"document {document.language} {document.paper}"
    parts = (block.style, block.title, block.maker, block.season, block.revision, block.date)
    status = (block.status,) if block.status else ()
    yield f"title block: {' | '.join((*parts, *status))}"
    for page in document.pages:
        yield ""
        yield f"== {page.title} [{page.kind}] =="
        if page.lead:
            yield str(page.lead)
        yield from _blocks(page.blocks, drawings=drawings)


def _blocks(blocks: tuple[Block, ...], *, drawings: bool) -> Iterator[str]:
    for block in blocks:
        match block:
            case Group(layout=layout, blocks=inner):
                yield f"[{layout}"
                yield from _blocks(inner, drawings=drawings)
                yield "]"
            case Figure(drawing=drawing, caption=caption):
                yield from _figure(drawing, str(caption), drawings=drawings)
            case _:
                yield from _text_block(block)


def _text_block(block: Block) -> Iterator[str]:
    match block:
        case Heading(text=words, number=number, detail=detail):
            yield f"-- {' '.join(part for part in (number, str(words), detail and f'({detail})') if part)} --"
        case Paragraph(text=words, style=style):
            yield f"{words}" if style == "plain" else f"{style}: {words}"
        case Facts(rows=rows):
            yield from (f"{fact.label}: {fact.value}" for fact in rows)
        case Caution(title=title, text=words, law=law):
            yield f"! {title}: {words}{f' [{law}]' if law else ''}"
        case Listing(lines=lines):
            yield from (f"{number:4} {line}".rstrip() for number, line in enumerate(lines, start=1))
        case Table():
            yield from _table(block)


def _table(table: Table) -> Iterator[str]:
    yield f"table {table.name}{f': {table.caption}' if table.caption else ''}"
    yield from (f"  {line}".rstrip() for line in aligned(table))
    if table.note:
        yield f"  note: {table.note}"


def _figure(drawing: Drawing, caption: str, *, drawings: bool) -> Iterator[str]:
    size = f"{drawing.width:.2f} x {drawing.height:.2f} mm"
    yield f"figure {drawing.name}: {drawing.title}, {size}{f'; {caption}' if caption else ''}"
    if not drawings:
        return
    for item in drawing.items:
        if isinstance(item, Stroke):
            yield from (f"  {item.line}: {_trace(trace)}" for trace in item.traces)
        else:
            yield f"  {_label(item)}"


def _label(label: Label) -> str:
    return f"{label.lettering} {label.text!r} at {_at(label.at)} turned {label.angle:.3f}"


def _trace(trace: Trace) -> str:
    runs = (
        f"~ {_at(run.first)} {_at(run.second)} {_at(run.to)}" if isinstance(run, Bend) else f"- {_at(run)}"
        for run in trace.runs
    )
    return " ".join((_at(trace.start), *runs, *(("closed",) if trace.closed else ())))


def _at(point: Point) -> str:
    return f"{point.x + 0.0:.2f},{point.y + 0.0:.2f}"
