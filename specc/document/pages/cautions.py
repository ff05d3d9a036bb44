"""Owns the page of cautions, of warnings that the designer accepts, and of those that remain."""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.diagnostics import Severity
from specc.document.document import Caution, Heading, Page, Paragraph
from specc.document.link import Link
from specc.document.links import billed, drawn, line_of, listed, made
from specc.document.table import Column, Row, Table
from specc.library.cautions import cautions

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.diagnostics import Diagnostic
    from specc.document.sheet import Sheet
    from specc.model.garment import Garment
    from specc.source import Span

_DEFERS = (
    "This sheet certifies nothing. The laws are named as they were read, not as they stand today: check the"
    " current text and your local law, and leave tests to a licensed laboratory."
)
_EXEMPT = Fraction("2.6") * Fraction("33.9057")  # 2.6 oz/yd² in g/m²: 16 CFR 1610.1(d)


def _has(garment: Garment, *traits: str) -> bool:
    return any(trait in cloth.traits for cloth in garment.cloths for trait in traits)


def _light(garment: Garment) -> bool:
    return any(cloth.weight is not None and cloth.weight.value < _EXEMPT for cloth in garment.cloths)


CONDITIONS: MappingProxyType[str, Callable[[Garment], bool]] = MappingProxyType(
    {
        "always": lambda _: True,
        "several materials": lambda garment: len(garment.cloths) + len(garment.trims) > 1,
        "open cloth": lambda garment: _has(garment, "open"),
        "open, sheer or raised cloth": lambda garment: _has(
            garment, "open", "sheer", "raised", "napped", "pile"
        ),
        "light cloth": _light,
        "child": lambda garment: garment.header.wearer != "adult",
    }
)


def build(sheet: Sheet) -> Page:
    """Cautions that this garment calls for, then warnings."""
    shown = tuple(
        Caution(each.title, each.text, each.law)
        for each in cautions()
        if CONDITIONS[each.when](sheet.garment)
    )
    blocks = (*shown, *_accepted(sheet), *_remaining(sheet))
    return Page("cautions", "Cautions", _DEFERS, blocks)


def _accepted(sheet: Sheet) -> Iterator[Table]:
    if not sheet.judgement.accepted:
        return
    rows = []
    for each in sheet.judgement.accepted:
        (line, of_line), (warning, of_warning) = (
            _line(sheet, each.accept.origin),
            _worded(sheet, each.diagnostic),
        )
        cells = (each.diagnostic.code.id, line, warning, each.accept.because)
        rows.append(Row(cells, links=(*of_line, *of_warning)))
    columns = (
        Column("Code", width=16.0),
        Column("Line", width=14.0),
        Column("Warning"),
        Column("Why the designer accepts it"),
    )
    yield Table("accepted", "Accepted warnings", columns, tuple(rows))


def _remaining(sheet: Sheet) -> Iterator[Heading | Paragraph | Table]:
    left = tuple(each for each in sheet.judgement.standing if each.severity < Severity.ERROR)
    if not left:
        yield Heading("Remaining warnings")
        yield Paragraph("None.")
        return
    columns = (
        Column("Code", width=16.0),
        Column("Line", width=14.0),
        Column("Warning"),
        Column("What to do"),
    )
    rows = tuple(_warning(sheet, each) for each in left)
    yield Table("warnings", "Remaining warnings", columns, rows)


def plain(message: str) -> str:
    """A message without the marks that set names apart on a terminal."""
    return message.replace("`", "")


def _warning(sheet: Sheet, each: Diagnostic) -> Row:
    (line, of_line), (warning, of_warning) = _line(sheet, each.span), _worded(sheet, each)
    cells = (each.code.id, line, warning, plain("; ".join(each.helps)))
    return Row(cells, links=(*of_line, *of_warning))


def _line(sheet: Sheet, span: Span | None) -> tuple[str, tuple[Link, ...]]:
    """The line of a text, which is to be found on the page of the source where it is one of the spec."""
    if span is None:
        return "", ()
    if span.file != sheet.garment.sources[0]:
        return f"{span.file.name} {span.line}", ()
    return listed(((str(span.line), line_of(span.line)),), of=1)


def _worded(sheet: Sheet, each: Diagnostic) -> tuple[str, tuple[Link, ...]]:
    """What a warning says, each name in it leading to where that is drawn, made or billed."""
    text = ""
    links: list[Link] = []
    for number, words in enumerate(each.message.split("`")):
        if number % 2 and (to := _place(sheet, words)):
            links.append(Link(2, len(text), len(text) + len(words), to))
        text += words
    return text, tuple(links)


def _place(sheet: Sheet, name: str) -> str:
    """Where a thing of that name stands on the sheet; nothing for what has no place."""
    if sheet.made_by(name) is not None:
        return made(name)
    if name in {line.name for line in sheet.quantities.bill}:
        return billed(name)
    piece = name.partition(".")[0]
    return drawn(piece) if any(each.name == piece for each in sheet.sample.pieces) else ""
