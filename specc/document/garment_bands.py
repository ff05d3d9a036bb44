"""Owns which lines run along the edges of a garment as it is drawn: where a binding ends, rows that are seen.

Knows nothing of where they lie on paper.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.garment_drawing import Band
from specc.document.line import LineKind
from specc.making.sections import section_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.garment_drawing import Bands
    from specc.document.sheet import Sheet
    from specc.making.section import Section


def bands(sheet: Sheet) -> Bands:
    """For every edge of a piece that has any, the lines inside it, as its cross-section has them."""
    found: Bands = {}
    for finish in sheet.garment.finishes:
        section = section_of(finish)
        lines = tuple(_lines(section)) if section is not None else ()
        if lines:
            found.update({(ref.piece or "", ref.name): lines for ref in finish.along})
    return found


def _lines(section: Section) -> Iterator[Band]:
    """Where the binding ends; without one, the rows that are seen from outside.

    Beside the end of a binding its row is not to be told apart.
    """
    bound = [width for width in section.widths if width.what == "binding"]
    if bound:
        yield from (Band(-width.start, LineKind.SEAM) for width in bound if width.start < 0.0)
        return
    outermost, _ = section.layers
    for row in section.rows:
        if row.top <= outermost and not row.blind:
            yield from (Band(-place, LineKind.ROW) for place in row.places if place < 0.0)
