"""Owns the verb `extend`: an edge moves out and where it lay stays as a line; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.moving_edge import edge_moved
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import free_name, replaced
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.piece import ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.model.reshaping import Extend
    from specc.pattern.piece import Piece


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Extend, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the edge moved out; the line `<edge>-line` lies where it lay."""
    piece = found(pieces, step.edge.piece, step.edge.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, step.edge.name)
    if edge is None:
        return missing(piece, step.edge)
    by = evaluate(step.by)
    if by < 0.0:
        return Refusal("amount-not-positive", (("by", by),), step.origin, "take the edge in instead")
    if edge.name == piece.fold:
        facts = (("piece", piece.name), ("edge", edge.name))
        cure = "a fold has no edge to extend: draft `{piece}` without the fold, or unfold it first"
        return Refusal("edge-on-fold", facts, step.edge.origin, cure)
    if by <= SAME:
        return pieces
    how = f"moved away {line_of(step.origin)}"
    moved = edge_moved(piece, edge.name, by, origin=step.origin, how=how)
    if isinstance(moved, Refusal):
        return moved
    line = ReferenceLine(free_name(moved, f"{edge.name}-line"), edge.parts)
    return replaced(pieces, replace(moved, lines=(*moved.lines, line)))
