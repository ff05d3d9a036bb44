"""Owns the verb `release`: darts are left unsewn and become ease; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.halves import closed_up
from specc.alteration.marks import behind, with_marks
from specc.alteration.opening import lines_over
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import edges_from, replaced, runs_of
from specc.pattern.lookup import dart_named
from specc.pattern.measure import dart_width, stitched_at
from specc.pattern.piece import Dart, Gone

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.alteration import Release
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Piece


def apply(
    pieces: tuple[Piece, ...], step: Release, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces without the darts: an edge grows by the mouth of each, lines by what it took in."""
    for ref in step.darts:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        released = _released(piece, ref, f"released {line_of(step.origin)}")
        if isinstance(released, Refusal):
            return released
        pieces = replaced(pieces, released)
    return pieces


def _released(piece: Piece, ref: PartRef, how: str) -> Piece | Refusal:
    dart = dart_named(piece, ref.name)
    if dart is None:
        return missing(piece, ref)
    gone = (*piece.gone, Gone(dart.name, how))
    if not isinstance(dart, Dart):
        inner = tuple(other for other in piece.two_pointed if other.name != dart.name)
        return replace(piece, two_pointed=inner, gone=gone)
    host = next(edge for edge in piece.edges if dart.name in edge.darts)
    index = host.darts.index(dart.name)
    at = stitched_at(host, index, host.parts[index].length())
    marked = with_marks(piece, host.name, behind(at, dart_width(dart)))
    return replace(
        marked,
        edges=edges_from(marked, closed_up(runs_of(marked), dart.name)),
        darts=tuple(other for other in piece.darts if other.name != dart.name),
        lines=lines_over(piece, dart),
        gone=gone,
    )
