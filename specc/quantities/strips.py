"""Owns the strips that one garment takes of each cloth: trims cut from it, and pieces cut off strips.

Knows nothing of how strips lie on the cloth.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.region import bounds
from specc.laying.cutting import size_strips
from specc.pattern.outline import fold_mirror
from specc.quantities.quantities import StripCut

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying.cutting import Cut
    from specc.making.assembly import CutPiece, SizeAssembly
    from specc.model.garment import Garment
    from specc.quantities.quantities import TrimCut

BIAS_KINDS: Final = ("bias strip", "piping")
"""Kinds of trim that are cut at 45 degrees where they are cut from a cloth."""

_DIGITS = 3  # of a millimetre: pieces of one width in several sizes are cut of one strip


def strip_cuts(
    garment: Garment, size: SizeAssembly, cuts: tuple[CutPiece, ...], trims: tuple[TrimCut, ...]
) -> tuple[StripCut, ...]:
    """The strips of one garment of a size: of trims in the order of the text, then of pieces."""
    return (*_of_trims(garment, trims), *_of_pieces(garment, size, cuts))


def _of_trims(garment: Garment, trims: tuple[TrimCut, ...]) -> Iterator[StripCut]:
    named = {trim.name: trim for trim in garment.trims if trim.cut_from is not None}
    for cut in trims:
        trim = named.get(cut.trim)
        if trim is not None and trim.cut_from is not None and cut.cut_width is not None:
            bias = trim.kind in BIAS_KINDS
            yield StripCut(
                trim.name,
                trim.cut_from,
                cut.cut_width,
                cut.used_on,
                cut.cut_length,
                cut.count,
                bias=bias,
                piece=False,
            )


def _of_pieces(garment: Garment, size: SizeAssembly, cuts: tuple[CutPiece, ...]) -> Iterator[StripCut]:
    for cloth in garment.cloths:
        for cut in size_strips(garment, cloth, size, cuts):
            long, wide = _extents(cut)
            name = cut.piece.name
            yield StripCut(name, cloth.name, wide, name, long, cut.count, bias=True, piece=True)


def _extents(cut: Cut) -> tuple[float, float]:
    """How long and how wide a strip must be for the piece, its longest side lying along it."""
    mirror = fold_mirror(cut.piece)
    outline = (*cut.outline, *(map(mirror, cut.outline) if mirror is not None else ()))
    along = _longest(cut.outline)
    low, high = bounds(Point(point.dot(along), point.dot(along.left())) for point in outline)
    return round(high.x - low.x, _DIGITS), round(high.y - low.y, _DIGITS)


def _longest(outline: tuple[Point, ...]) -> Point:
    start, end = max(pairwise((*outline, outline[0])), key=lambda pair: pair[0].distance(pair[1]))
    return (end - start).unit()
