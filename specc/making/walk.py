"""Owns walking seams: the stitched lengths of both sides, darts closed, and what is left between them.

Knows nothing of how a seam is sewn.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.assembly import EdgeLength, Walk
from specc.model.expression import Constant
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.construction import Seam
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Piece


def walk(seam: Seam, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]) -> Walk:
    """The seam walked in one size. Ease given as a share is a share of the second side."""
    first = tuple(_length(ref, pieces) for ref in seam.first)
    second = tuple(_length(ref, pieces) for ref in seam.second)
    first_length = sum(edge.length for edge in first)
    second_length = sum(edge.length for edge in second)
    ease = 0.0
    if seam.ease is not None:
        amount = evaluate(seam.ease)
        ease = amount * second_length if is_share(seam.ease) else amount
    difference = first_length - second_length - ease
    return Walk(
        seam.name, first, second, first_length, second_length, ease, difference, evaluate(seam.tolerance)
    )


def is_share(expression: Expression) -> bool:
    """Whether a value is a share of a length rather than a length."""
    dimension = expression.value.dimension if isinstance(expression, Constant) else expression.dimension
    return dimension == Dimension.RATIO


def _length(ref: PartRef, pieces: tuple[Piece, ...]) -> EdgeLength:
    piece = piece_named(pieces, ref.piece or "")
    edge = edge_named(piece, ref.name) if piece else None
    if piece is None or edge is None:
        raise KeyError(f"{ref.piece}.{ref.name}")
    return EdgeLength(piece.name, edge.name, stitched_length(edge))
