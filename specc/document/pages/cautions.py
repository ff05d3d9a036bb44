"""Owns the page of cautions, of warnings that the designer accepts, and of those that remain."""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.diagnostics import Severity
from specc.document.document import Caution, Heading, Page, Paragraph
from specc.document.table import Column, Row, Table
from specc.library.cautions import cautions

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.diagnostics import Diagnostic
    from specc.document.sheet import Sheet
    from specc.model.garment import Garment

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
    rows = tuple(
        Row((each.diagnostic.code.id, plain(each.diagnostic.message), each.accept.because))
        for each in sheet.judgement.accepted
    )
    columns = (Column("Code"), Column("Warning"), Column("Why the designer accepts it"))
    yield Table("accepted", "Accepted warnings", columns, rows)


def _remaining(sheet: Sheet) -> Iterator[Heading | Paragraph | Table]:
    left = tuple(each for each in sheet.judgement.standing if each.severity < Severity.ERROR)
    if not left:
        yield Heading("Remaining warnings")
        yield Paragraph("None.")
        return
    columns = (Column("Code"), Column("Line"), Column("Warning"), Column("What to do"))
    yield Table("warnings", "Remaining warnings", columns, tuple(map(_warning, left)))


def plain(message: str) -> str:
    """A message without the marks that set names apart on a terminal."""
    return message.replace("`", "")


def _warning(each: Diagnostic) -> Row:
    line = str(each.span.line) if each.span else ""
    return Row((each.code.id, line, plain(each.message), plain("; ".join(each.helps))))
