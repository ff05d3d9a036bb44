"""Owns what is cut of each cloth for one garment of a size: pieces, their outlines, how many of each.

Knows nothing of how they are placed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.making.cloths import cloth_of, cut_again, times_again

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.geometry.point import Point
    from specc.making.assembly import CutPiece, SizeAssembly
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.pattern.piece import Piece


@dataclass(frozen=True, slots=True)
class Cut:
    """A piece cut `count` times of a cloth along `outline`, which is drawn up to the fold if it has one."""

    piece: Piece
    outline: tuple[Point, ...]
    count: int


@dataclass(frozen=True, slots=True)
class SizeCuts:
    """What is cut of a cloth for one garment of a size."""

    size: str
    cuts: tuple[Cut, ...]


def size_cuts(garment: Garment, cloth: Cloth, size: SizeAssembly, cuts: tuple[CutPiece, ...]) -> SizeCuts:
    """What of the size is cut of the cloth; `cuts` are of its pieces, in their order."""
    return SizeCuts(size.size, tuple(_of(garment, cloth, size, cuts)))


def _of(garment: Garment, cloth: Cloth, size: SizeAssembly, cuts: tuple[CutPiece, ...]) -> Iterator[Cut]:
    for piece, cut in zip(size.pieces, cuts, strict=True):
        if cloth_of(garment, piece.name) is cloth:
            yield Cut(piece, cut.cut, piece.cut)
        for again in cut_again(garment, piece.name):
            if again.cloth == cloth.name:
                yield Cut(piece, cut.net if again.bare else cut.cut, times_again(again, piece))
