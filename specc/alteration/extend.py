"""Owns the verb `extend`: an edge moves out and where it lay stays as a line; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.marks import with_marks
from specc.alteration.moving_edge import Step, edge_moved
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import free_name, replaced
from specc.geometry.region import signed_area
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.outline import drawn_outline
from specc.pattern.piece import ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.moving_edge import Steps
    from specc.alteration.refusal import Facts
    from specc.model.expression import Expression
    from specc.model.reshaping import Extend
    from specc.pattern.piece import Edge, Piece


SMOOTH: Final = 1e-3  # radians; edges that meet at a smaller turn go straight on


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Extend, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the edge moved out; the line `<edge>-line` lies where it lay.

    Where a neighbour goes straight on from the edge, as it does where an edge was divided, it stays, and a
    step comes between: the edge `<edge>-step`, with its outer corner `<edge>-out`. It is square to the edge,
    or as much lower at its outer end as it slants.
    """
    piece = found(pieces, step.edge.piece, step.edge.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, step.edge.name)
    if edge is None:
        return missing(piece, step.edge)
    by, slant = evaluate(step.by), evaluate(step.slanting) if step.slanting else 0.0
    if by < 0.0 or slant < 0.0:
        facts: Facts = (("by", min(by, slant)),)
        return Refusal("amount-not-positive", facts, step.origin, "take the edge in instead")
    facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        cure = "a fold has no edge to extend: draft `{piece}` without the fold, or unfold it first"
        return Refusal("edge-on-fold", facts, step.edge.origin, cure)
    if by <= SAME:
        return pieces
    steps = _steps(piece, edge, by, slant)
    if slant > SAME and steps == (None, None):
        cure = "divide the edge first, so that what is extended is one of its parts"
        return Refusal("no-step-to-slant", facts, step.origin, cure)
    how = f"moved away {line_of(step.origin)}"
    if steps[0] is not None:
        # A slanting step at its start shortens the edge there.
        piece = with_marks(piece, edge.name, lambda at: at - slant)
    moved = edge_moved(piece, edge.name, by, steps=steps, origin=step.origin, how=how)
    if isinstance(moved, Refusal):
        return moved
    line = ReferenceLine(free_name(moved, f"{edge.name}-line"), edge.parts)
    return replaced(pieces, replace(moved, lines=(*moved.lines, line)))


def _steps(piece: Piece, edge: Edge, by: float, slant: float) -> Steps:
    """The steps at the ends of the edge, where its neighbours go straight on."""
    index = piece.edges.index(edge)
    before, after = piece.edges[index - 1], piece.edges[(index + 1) % len(piece.edges)]
    first, last = edge.parts[0].start_direction(), edge.parts[-1].end_direction()
    # The outline's left is inside when it runs counter-clockwise.
    side = -1.0 if signed_area(drawn_outline(piece)) > 0.0 else 1.0
    turns = (
        before.parts[-1].end_direction().angle_to(first),
        last.angle_to(after.parts[0].start_direction()),
    )
    outward = (first.left() * (side * by) + first * slant, last.left() * (side * by) - last * slant)
    steps: list[Step | None] = []
    for number, (turn, out) in enumerate(zip(turns, outward, strict=True)):
        if abs(turn) > SMOOTH:
            steps.append(None)
            continue
        again = number == 1 and steps[0] is not None
        name, corner = (f"{edge.name}-{what}{'-2' if again else ''}" for what in ("step", "out"))
        steps.append(Step(free_name(piece, name), free_name(piece, corner), out))
    return steps[0], steps[1]
