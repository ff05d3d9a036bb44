"""Owns what is cut of each cloth for one garment of a size: pieces, their outlines, how many of each.

Knows nothing of how they are placed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.making.cloths import cut_of
from specc.model.spreading import STRIPS

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


def size_strips(
    garment: Garment, cloth: Cloth, size: SizeAssembly, cuts: tuple[CutPiece, ...]
) -> tuple[Cut, ...]:
    """What of the size is cut off strips on the bias of the cloth."""
    return tuple(cut for cut in _cuts(garment, cloth, size, cuts) if _in_strips(cloth, cut))


def size_cuts(garment: Garment, cloth: Cloth, size: SizeAssembly, cuts: tuple[CutPiece, ...]) -> SizeCuts:
    """What of the size lies in the lays of the cloth; `cuts` are of its pieces."""
    found = _cuts(garment, cloth, size, cuts)
    return SizeCuts(size.size, tuple(cut for cut in found if not _in_strips(cloth, cut)))


def _cuts(garment: Garment, cloth: Cloth, size: SizeAssembly, cuts: tuple[CutPiece, ...]) -> Iterator[Cut]:
    drawn = {cut.piece: cut for cut in cuts}
    for one in cut_of(garment, cloth, size.pieces):
        outline = drawn[one.piece.name].net if one.bare else drawn[one.piece.name].cut
        yield Cut(one.piece, outline, one.count)


def _in_strips(cloth: Cloth, cut: Cut) -> bool:
    return cloth.spreading.way_of(cut.piece.name) == STRIPS
