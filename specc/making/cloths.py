"""Owns which cloth each piece is cut from, and from which others it is cut again.

Knows nothing of amounts.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

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


@dataclass(frozen=True, slots=True)
class CutOf:
    """A piece that is cut `count` times of a cloth for one garment; `bare` without allowances."""

    piece: Piece
    count: int
    bare: bool


def cut_of(garment: Garment, cloth: Cloth, pieces: Iterable[Piece]) -> Iterator[CutOf]:
    """What is cut of the cloth, in the order of the pieces: its own, and those cut again from it."""
    for piece in pieces:
        if cloth_of(garment, piece.name) is cloth:
            yield CutOf(piece, piece.cut, bare=False)
        for ply in cut_again(garment, piece.name):
            if ply.cloth == cloth.name:
                yield CutOf(piece, times_again(ply, piece), ply.bare)
