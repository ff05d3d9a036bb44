"""Owns what is drawn on a piece beside its edges: reference lines, what is sewn on, where it fastens.

Knows nothing of where the piece lies.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.flat.closing import drawn
from specc.flat.laid import LaidLine, Mark
from specc.making.attached import Placed
from specc.model.attachment import SewnOn

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import SizeAssembly
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece


def lines_on(piece: Piece, size: SizeAssembly, garment: Garment) -> Iterator[LaidLine]:
    """All lines of a piece, as drafted."""
    for line in piece.lines:
        for part in line.parts:
            yield LaidLine(Mark.LINE, line.name, drawn(part))
    sides = {each.name: each.side for each in garment.attachments if isinstance(each, SewnOn)}
    for one in size.attached:
        if isinstance(one, Placed) and one.on == piece.name:
            yield LaidLine(Mark.POCKET, one.piece, drawn(one.outline), sides.get(one.attachment))
    for closure in size.closures:
        for place in closure.places:
            if place.piece == piece.name:
                yield LaidLine(Mark.FASTENING, closure.closure, (place.at,))
