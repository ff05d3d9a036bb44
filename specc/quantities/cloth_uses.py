"""Owns how much of each cloth the cut pieces cover.

Knows nothing of lays.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.cloths import cloth_of, cut_again, times_again
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
    areas = {cloth.name: 0.0 for cloth in garment.cloths}
    pieces = {piece.name: piece for piece in size.pieces}
    for cut in cuts:
        cloth, piece = cloth_of(garment, cut.piece), pieces[cut.piece]
        halves = 2 if piece.fold else 1
        if cloth is not None:
            areas[cloth.name] += cut.cut_area * piece.cut * halves
        for ply in cut_again(garment, cut.piece):
            areas[ply.cloth] += (
                (cut.net_area if ply.bare else cut.cut_area) * times_again(ply, piece) * halves
            )
    sources = {trim.name: trim.cut_from for trim in garment.trims}
    for trim in trims:
        source = sources.get(trim.trim)
        if source is not None and trim.cut_width is not None:
            areas[source] += trim.cut_length * trim.cut_width * trim.count
    return tuple(ClothUse(cloth, area) for cloth, area in areas.items() if area > 0.0)
