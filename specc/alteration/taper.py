"""Owns the verbs `take in` and `let out`: edges move in or out, tapering; knows no other verb."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.alteration.moving_edge import edge_moved
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import replaced
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression, PartRef
    from specc.model.reshaping import Taper
    from specc.pattern.piece import Edge, Piece


def apply(
    pieces: tuple[Piece, ...], step: Taper, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with every edge moved square to itself, by amounts that go over evenly from end to end."""
    by = evaluate(step.by)
    and_by = evaluate(step.and_by) if step.and_by is not None else by if step.at is None else 0.0
    if min(by, and_by) < 0.0:
        cure = "use `take in` instead of `let out`" if step.let_out else "use `let out` instead of `take in`"
        return Refusal("amount-not-positive", (("by", min(by, and_by)),), step.origin, cure)
    for ref in step.edges:
        moved = _moved(pieces, ref, step, by=by, and_by=and_by)
        if isinstance(moved, Refusal):
            return moved
        pieces = moved
    return pieces


def _moved(
    pieces: tuple[Piece, ...], ref: PartRef, step: Taper, *, by: float, and_by: float
) -> tuple[Piece, ...] | Refusal:
    piece = found(pieces, ref.piece, ref.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    ends = _at_ends(piece, edge, step, by=by, and_by=and_by)
    if isinstance(ends, Refusal):
        return ends
    if max(ends) <= SAME:
        return pieces
    if edge.name == piece.fold and abs(ends[0] - ends[1]) > SAME:
        facts = (("piece", piece.name), ("edge", edge.name))
        cure = "move it by the same amount at both ends, or unfold `{piece}` first"
        return Refusal("edge-on-fold", facts, ref.origin, cure)
    sign = 1.0 if step.let_out else -1.0
    how = f"trimmed away {line_of(step.origin)}"
    altered = edge_moved(
        piece, edge.name, sign * ends[0], then=sign * ends[1], even_legs=True, origin=step.origin, how=how
    )
    return altered if isinstance(altered, Refusal) else replaced(pieces, altered)


def _at_ends(
    piece: Piece, edge: Edge, step: Taper, *, by: float, and_by: float
) -> tuple[float, float] | Refusal:
    """The amounts at the edge's start and at its end."""
    for corner in (step.at, step.and_at):
        if corner is not None and corner not in {edge.start, edge.end}:
            facts = (("piece", piece.name), ("edge", edge.name), ("corner", corner))
            return Refusal("not-a-corner-of-edge", facts, step.origin, f"name `{edge.start}` or `{edge.end}`")
    at_start = step.at == edge.start if step.at is not None else step.and_at != edge.start
    return (by, and_by) if at_start else (and_by, by)
