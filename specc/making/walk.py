"""Owns walking seams: the stitched lengths of all sides, darts closed, and what is left between them.

Knows nothing of how a seam is sewn.
"""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

from specc.making.assembly import EdgeLength, Walk, WalkedPly
from specc.model.construction import ToFit
from specc.model.expression import Constant
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.construction import Seam
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Piece

Side = tuple["PartRef", ...]


def walk(seam: Seam, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]) -> Walk:
    """The seam walked in one size. Ease given as a share is a share of the second side.

    A seam is sewn as often as all its edges are there: a shoulder left and right, a waist to a whole band
    once. It is walked as it is sewn once, with an edge as often as it then lies in it.
    """
    often = [_often(seam, side, pieces) for side in seam.sides]
    count = gcd(*(times for side in often for _, times in side))
    first, second, *others = (
        tuple(EdgeLength(*_names(ref, pieces), times // count) for ref, times in side) for side in often
    )
    first_length, second_length = _whole(first), _whole(second)
    ease = _ease(seam, first_length, second_length, evaluate)
    return Walk(
        seam.name,
        first,
        second,
        first_length,
        second_length,
        ease,
        first_length - second_length - ease,
        evaluate(seam.tolerance),
        count,
        tuple(WalkedPly(side, _whole(side), _whole(side) - second_length) for side in others),
    )


def _ease(
    seam: Seam, first_length: float, second_length: float, evaluate: Callable[[Expression], float]
) -> float:
    """How much longer than the second the first side is meant to be."""
    if seam.ease is None:
        return 0.0
    if isinstance(seam.ease, ToFit):
        return max(0.0, first_length - second_length)
    amount = evaluate(seam.ease)
    return amount * second_length if is_share(seam.ease) else amount


def is_share(expression: Expression) -> bool:
    """Whether a value is a share of a length rather than a length."""
    dimension = expression.value.dimension if isinstance(expression, Constant) else expression.dimension
    return dimension == Dimension.RATIO


def _often(seam: Seam, side: Side, pieces: tuple[Piece, ...]) -> list[tuple[PartRef, int]]:
    """How often each edge lies on the side in the whole garment.

    The copies of an edge that stands on several sides are shared out among them.
    """
    found = []
    for ref in side:
        piece, edge = part_of(pieces, ref.piece or "", ref.name)
        copies = piece.cut * (2 if piece.fold not in {None, edge.name} else 1)
        sides = sum(any(_same(ref, one) for one in other) for other in seam.sides)
        found.append((ref, max(1, copies // sides)))
    return found


def _same(one: PartRef, other: PartRef) -> bool:
    return (one.piece, one.name) == (other.piece, other.name)


def _names(ref: PartRef, pieces: tuple[Piece, ...]) -> tuple[str, str, float]:
    piece, edge = part_of(pieces, ref.piece or "", ref.name)
    return piece.name, edge.name, stitched_length(edge)


def _whole(side: tuple[EdgeLength, ...]) -> float:
    return sum(edge.length * edge.times for edge in side)
