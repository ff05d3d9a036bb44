"""Owns which cloth each piece is cut from, and from which others it is cut again.

Knows nothing of amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.model.plies import CutAgain
    from specc.pattern.piece import Piece

SHELL = "shell"


def cloth_of(garment: Garment, piece: str) -> Cloth | None:
    """The cloth that names the piece in its `for`, else the first that is for the shell."""
    for cloth in garment.cloths:
        if piece in cloth.use.split(", "):
            return cloth
    return next((cloth for cloth in garment.cloths if cloth.use == SHELL), None)


def cut_again(garment: Garment, piece: str) -> tuple[CutAgain, ...]:
    """From what else the piece is cut, in the order of the text."""
    return tuple(ply for ply in garment.cut_again if ply.piece == piece)


def times_again(ply: CutAgain, piece: Piece) -> int:
    """How many are cut of the piece from the other cloth."""
    return piece.cut if ply.count is None else ply.count
