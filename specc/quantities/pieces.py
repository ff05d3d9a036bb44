"""Owns fastenings counted by the piece: zips, buttons, hooks, and in which length each is bought.

Knows nothing of what they cost.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import SizeAssembly
    from specc.making.closed import Closed
    from specc.model.closing import TakesPieces
    from specc.model.garment import Garment
    from specc.model.material import Trim
    from specc.units import Quantity

NEAR: Final = 1.0  # mm by which an opening may miss a length that is sold: less is lost in sewing


@dataclass(frozen=True, slots=True)
class PieceCount:
    """`count` pieces of a trim for one closure of one garment.

    `length` is the length in which each is bought, where it is sold in several; `opening` is the stitched
    length of the opening, in millimetres, that it is bought for.
    """

    trim: str
    used_on: str
    count: int
    length: Quantity | None
    opening: float


def piece_counts(garment: Garment, size: SizeAssembly) -> tuple[PieceCount, ...]:
    """The fastenings of one garment of a size, in the order of the text."""
    return tuple(_counts(garment, size))


def _counts(garment: Garment, size: SizeAssembly) -> Iterator[PieceCount]:
    trims = {trim.name: trim for trim in garment.trims}
    closed = {one.closure: one for one in size.closures}
    for finish in garment.finishes:
        if finish.name not in closed:
            continue
        for takes in finish.making.pieces:
            yield _count(takes, trims[takes.trim], closed[finish.name])


def _count(takes: TakesPieces, trim: Trim, closed: Closed) -> PieceCount:
    places = len({place.number for place in closed.places}) if takes.each_place else 1
    length = sold_length(trim, takes, closed.first)
    return PieceCount(trim.name, closed.closure, takes.count * places * closed.count, length, closed.first)


def sold_length(trim: Trim, takes: TakesPieces, opening: float) -> Quantity | None:
    """The length that is bought for an opening: the next shorter or longer; the nearest to it otherwise.

    None for a trim that is not sold in lengths.
    """
    if not trim.lengths:
        return None
    if takes.rounding == "shorter":
        fitting = [one for one in trim.lengths if one.value <= opening + NEAR]
        return fitting[-1] if fitting else trim.lengths[0]
    if takes.rounding == "longer":
        fitting = [one for one in trim.lengths if one.value >= opening - NEAR]
        return fitting[0] if fitting else trim.lengths[-1]
    return min(trim.lengths, key=lambda one: abs(float(one.value) - opening))
