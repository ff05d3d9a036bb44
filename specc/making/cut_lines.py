"""Owns the cut pieces: the outline as sewn and as cut, every edge with its allowance.

Knows nothing of cloth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.region import polygon_area
from specc.making.assembly import CutPiece
from specc.pattern.outline import capped_runs, flat_outline

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.making.assembly import Assembly, EdgeUse, SizeAssembly
    from specc.pattern.piece import Edge, Piece


def cut(assembly: Assembly) -> tuple[tuple[CutPiece, ...], ...]:
    """The cut pieces of every size, in the order of the pieces."""
    return tuple(cut_pieces(size) for size in assembly.sizes)


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
