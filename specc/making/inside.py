"""Owns which pieces lie inside others: facings and linings that a seam turns in, and what is sewn to these.

Knows nothing of lengths.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.construction import Seam


def pieces_inside(seams: tuple[Seam, ...]) -> frozenset[str]:
    """The pieces that are turned in, and those that hang on them by other seams.

    The first side of a seam that is turned is the outside. A piece that is turned on itself, a collar or the
    end of a band, lies on both sides and is not inside of anything.
    """
    turned = [seam for seam in seams if seam.making.turns]
    outside = {ref.piece or "" for seam in turned for ref in seam.first}
    found = {ref.piece or "" for seam in turned for side in seam.sides[1:] for ref in side} - outside
    joins = [
        {ref.piece or "" for side in seam.sides for ref in side} - outside
        for seam in seams
        if not seam.making.turns
    ]
    while grown := [joined for joined in joins if joined & found and not joined <= found]:
        found.update(*grown)
    return frozenset(found)
