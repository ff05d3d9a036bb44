"""Owns the cross-section of a seam, finish or hem as a figure: who is named in it, what stands below it.

Knows nothing of how it is drawn.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Figure
from specc.document.section_drawing import section_drawing
from specc.making.sections import section_of
from specc.model.construction import Seam

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.sheet import Sheet
    from specc.making.section import Section
    from specc.model.construction import Finish
    from specc.model.expression import PartRef

_LONGEST = 22  # letters of a name that fit beside a section
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth")


def section_figure(sheet: Sheet, each: Seam | Finish, number: int) -> Figure | None:
    """Its cross-section, drawn from what is declared; None where that says too little."""
    section = section_of(each)
    if section is None:
        return None
    title = each.title or each.name
    called = f"section-{each.name}", f"{title[:1].upper()}{title[1:]}, cross-section, not to scale"
    names = dict(_names(each))
    drawing = section_drawing(called, section, number, names, lengths=sheet.lengths)
    return Figure(drawing, " ".join(_said(each, section, number)))


def _names(each: Seam | Finish) -> Iterator[tuple[str, str]]:
    """What the strands of a section are called: sides by their pieces, trims as the method calls them."""
    if isinstance(each, Seam):
        for ordinal, side in zip(_ORDINALS, each.sides, strict=False):
            yield ordinal, _pieces(side)
    for takes in each.making.takes:
        yield takes.material, takes.material


def _pieces(side: tuple[PartRef, ...]) -> str:
    pieces = list(dict.fromkeys(ref.piece for ref in side if ref.piece))
    said = ", ".join(pieces)
    return said if len(said) <= _LONGEST or len(pieces) == 1 else f"{pieces[0]}, …"


def _said(each: Seam | Finish, section: Section, number: int) -> Iterator[str]:
    """What the drawing does not show, or does not know."""
    making = each.making
    if not section.laid:
        yield "As it is sewn: how it lies when it is done is not declared, or not drawn for so many plies."
    elif not section.sided:
        yield f"Allowances {making.laid}."
    drawn = {strand.name for strand in section.strands}
    lacking = [takes.material for takes in making.takes if takes.material not in drawn]
    lacking += [f"{number}.{operation + 1}" for operation in section.unplaced]
    if lacking:
        yield f"Drawn from what is declared; not shown: {', '.join(dict.fromkeys(lacking))}."
