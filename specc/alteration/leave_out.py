"""Owns the verb `leave out`: a piece is not made; knows no other verb."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.alteration.refusal import Refusal, found

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.alteration import LeaveOut
    from specc.model.expression import Expression
    from specc.pattern.piece import Piece


def apply(
    pieces: tuple[Piece, ...], step: LeaveOut, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces without those left out."""
    for ref in step.pieces:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        pieces = tuple(other for other in pieces if other.name != ref.piece)
    return pieces
