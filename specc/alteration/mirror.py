"""Owns the verb `mirror`: a piece and its mirror image become two pieces; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.refusal import Refusal, found
from specc.pattern.lookup import piece_named
from specc.pattern.outline import mirrored

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.model.reshaping import Mirror
    from specc.pattern.piece import Piece


def apply(
    pieces: tuple[Piece, ...], step: Mirror, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with a mirrored copy behind the one; all parts of the copy keep their names.

    Both are then cut half as often; of a number that cannot be halved the piece keeps the larger half, and
    each is cut once at least.
    """
    piece = found(pieces, step.piece.piece, step.piece.origin)
    if isinstance(piece, Refusal):
        return piece
    if piece_named(pieces, step.name) is not None:
        return Refusal("piece-name-taken", (("name", step.name),), step.origin, "take another name")
    copy = replace(
        mirrored(piece), name=step.name, title=step.name.replace("-", " "), cut=max(1, piece.cut // 2)
    )
    kept = replace(piece, cut=(piece.cut + 1) // 2)
    return tuple(new for old in pieces for new in ((kept, copy) if old is piece else (old,)))
