"""Owns how much of each cloth the cut pieces cover.

Knows nothing of lays.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.cloths import cut_of
from specc.quantities.quantities import ClothUse

if TYPE_CHECKING:
    from specc.making.assembly import CutPiece, SizeAssembly
    from specc.model.garment import Garment
    from specc.quantities.quantities import TrimCut


def cloth_uses(
    garment: Garment, size: SizeAssembly, cuts: tuple[CutPiece, ...], trims: tuple[TrimCut, ...]
) -> tuple[ClothUse, ...]:
    """The area of each cloth in one garment.

    Pieces (mirrored halves and pairs counted), pieces cut again from it, and strips.
    """
    drawn = {cut.piece: cut for cut in cuts}
    areas = {
        cloth.name: sum(
            (drawn[one.piece.name].net_area if one.bare else drawn[one.piece.name].cut_area)
            * one.count
            * (2 if one.piece.fold else 1)
            for one in cut_of(garment, cloth, size.pieces)
        )
        for cloth in garment.cloths
    }
    sources = {trim.name: trim.cut_from for trim in garment.trims}
    for trim in trims:
        source = sources.get(trim.trim)
        if source is not None and trim.cut_width is not None:
            areas[source] += trim.cut_length * trim.cut_width * trim.count
    return tuple(ClothUse(cloth, area) for cloth, area in areas.items() if area > 0.0)
