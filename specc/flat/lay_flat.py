"""Owns laying a garment flat for a drawing: which piece comes first, which beside which.

Knows nothing of paper. A piece with the word `front` or `back` in its name is seen from there; a sleeve and a
band are seen from wherever they are sewn. What lies inside (facings, linings) is not seen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.flat.behind import with_beyond
from specc.flat.laid import Flat
from specc.flat.placing import Placing

if TYPE_CHECKING:
    from specc.making.assembly import SizeAssembly
    from specc.model.garment import Garment

FRONT: Final = "front"
BACK: Final = "back"


def lay_flat(garment: Garment, size: SizeAssembly) -> Flat:
    """The garment in one size, seen from the front and from the back; from one side where it has but one."""
    sides = [Placing(garment, size, words).placed() for words in ((FRONT, BACK), (BACK, FRONT))]
    laid = tuple(side for side in sides if side.pieces)
    if not laid:
        laid = tuple(side for side in (Placing(garment, size, None).placed(),) if side.pieces)
    seen = {piece.name for side in laid for piece in side.pieces}
    seen |= {line.name for side in laid for piece in side.pieces for line in piece.lines}
    if len(laid) > 1:
        front, back = laid
        laid = (with_beyond(front, back, garment.seams), with_beyond(back, front, garment.seams))
    return Flat(
        laid,
        tuple(piece.title for piece in size.pieces if piece.name not in seen),
    )
