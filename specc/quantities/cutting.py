"""Owns the cut pieces: the outline as sewn and as cut, and how much cloth they cover.

Knows nothing of lays.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.region import polygon_area
from specc.laying import SizeCuts
from specc.making.assembly import CutPiece
from specc.making.cloths import cloth_of, cut_again, times_again
from specc.pattern.outline import capped_runs, flat_outline
from specc.quantities.quantities import ClothUse

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.making.assembly import EdgeUse, SizeAssembly
    from specc.model.garment import Garment
    from specc.pattern.piece import Edge, Piece
    from specc.quantities.quantities import TrimCut


def cut_pieces(size: SizeAssembly) -> tuple[CutPiece, ...]:
    """Every piece with its allowances, darts capped; the fold has no allowance."""
    uses = {(use.piece, use.edge): use for use in size.uses}
    return tuple(_cut(piece, uses) for piece in size.pieces)


def _cut(piece: Piece, uses: dict[tuple[str, str], EdgeUse]) -> CutPiece:
    net = flat_outline(piece)
    runs = zip(piece.edges, capped_runs(piece), strict=True)
    cut = cut_line(tuple(_allowed(edge, run, uses[piece.name, edge.name]) for edge, (_, run) in runs))
    return CutPiece(piece.name, net, cut, abs(polygon_area(net)), abs(polygon_area(cut)))


def _allowed(edge: Edge, run: Path, use: EdgeUse) -> Allowed:
    return Allowed(
        run,
        use.allowance,
        use.turned,
        square_start=edge.start in use.squared,
        square_end=edge.end in use.squared,
        on_fold=use.kind == "fold",
    )


def cut_from(
    garment: Garment, sizes: tuple[SizeAssembly, ...], cuts: tuple[tuple[CutPiece, ...], ...]
) -> dict[str, tuple[SizeCuts, ...]]:
    """What is cut of each cloth, by its name: for each size the pieces, their cut outlines, how many of each."""
    return {
        cloth.name: tuple(
            SizeCuts(
                size.size,
                tuple(
                    (piece, cut, piece.cut)
                    for piece, cut in zip(size.pieces, of_size, strict=True)
                    if cloth_of(garment, piece.name) is cloth
                ),
            )
            for size, of_size in zip(sizes, cuts, strict=True)
        )
        for cloth in garment.cloths
    }


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
