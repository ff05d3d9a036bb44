"""Owns the verb `shape`: an edge drawn anew between ends that move up or down; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.fitting import fitted_inside
from specc.alteration.marks import Stretched, cut_to, with_marks
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import replaced, with_gone
from specc.geometry.fit import curve
from specc.geometry.path import Path
from specc.geometry.region import crosses_itself, signed_area
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.measure import run_length, stitched_length
from specc.pattern.outline import drawn_outline, flat_outline, grain_direction

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.model.expression import Expression, PartRef
    from specc.model.recutting import Shape
    from specc.pattern.piece import Edge, Piece

FULL: Final = 1.0 / 3.0  # of the way between the ends: the handle of a cubic that is near an arc
FULLEST: Final = 0.9  # a fuller one turns back on itself
LEVEL: Final = 0.25  # sine of the angle to the level below which an edge runs level


def apply(
    pieces: tuple[Piece, ...], step: Shape, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with each edge a smooth curve, square to its neighbours at both ends.

    So two of them go on smoothly in each other.
    """
    full = FULL if step.full is None else evaluate(step.full)
    if not 0.0 < full <= FULLEST:
        facts: Facts = (("share", full), ("most", f"{FULLEST:.0%}"))
        return Refusal("curve-too-full", facts, step.origin, "give a share above nothing, up to {most}")
    shifts = {shift.corner: (evaluate(shift.by), shift.up) for shift in step.shifts}
    least = min(by for by, _ in shifts.values())
    if least < 0.0:
        cure = "say `down` instead of `up`, or `up` instead of `down`"
        return Refusal("amount-not-positive", (("by", least),), step.origin, cure)
    for ref in step.edges:
        shaped = _shaped(pieces, step, ref, shifts, full=full)
        if isinstance(shaped, Refusal):
            return shaped
        pieces = replaced(pieces, shaped)
    return pieces


def _shaped(
    pieces: tuple[Piece, ...],
    step: Shape,
    ref: PartRef,
    shifts: dict[str, tuple[float, bool]],
    *,
    full: float,
) -> Piece | Refusal:
    piece = found(pieces, ref.piece, ref.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    refusal = _refused(piece, edge, step, shifts)
    if refusal is not None:
        return refusal
    moved = piece
    for corner, (by, up) in shifts.items():
        slid = _slid(moved, edge.name, corner, by, up=up, step=step)
        if isinstance(slid, Refusal):
            return slid
        moved = slid
    drawn = _drawn(moved, edge.name, full)
    if crosses_itself(flat_outline(drawn)):
        cure = "move the ends by less, or draw the curve less full"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    whole = stitched_length(edge), run_length(next(e for e in drawn.edges if e.name == edge.name))
    marked = with_marks(drawn, edge.name, Stretched((0.0, whole[0]), (0.0, whole[1])))
    return with_gone(piece, fitted_inside(piece, marked), f"cut off {line_of(step.origin)}")


def _refused(piece: Piece, edge: Edge, step: Shape, shifts: dict[str, tuple[float, bool]]) -> Refusal | None:
    facts: Facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("edge-on-fold", facts, step.origin, "shape another edge")
    if edge.darts or edge.gathers or edge.folds:
        what = (
            f"`{edge.darts[0]}`" if edge.darts else "gathers" if edge.gathers else f"a {edge.folds[0].kind}"
        )
        cure = "shape it before it is drawn in, and swing or release its darts first"
        return Refusal("edge-not-plain", (*facts, ("what", what)), step.origin, cure)
    other = next((corner for corner in shifts if corner not in {edge.start, edge.end}), None)
    if other is not None:
        more = (*facts, ("corner", other))
        return Refusal("not-a-corner-of-edge", more, step.origin, f"name `{edge.start}` or `{edge.end}`")
    return None


def _slid(  # noqa: PLR0913 - an end of an edge, and how it moves
    piece: Piece, name: str, corner: str, by: float, *, up: bool, step: Shape
) -> Piece | Refusal:
    """The piece with a corner moved along the neighbour; the edge itself is straight for now."""
    index, edge = next((i, e) for i, e in enumerate(piece.edges) if e.name == name)
    at_start = edge.start == corner
    beside = (index - 1 if at_start else index + 1) % len(piece.edges)
    neighbour = piece.edges[beside]
    # Seen from the corner the neighbour's first run begins there.
    run = neighbour.parts[-1].reversed() if at_start else neighbour.parts[0]
    rises = run.start_direction().dot(grain_direction(piece))
    facts: Facts = (("piece", piece.name), ("neighbour", neighbour.name), ("corner", corner), ("by", by))
    if abs(rises) < LEVEL:
        return Refusal("moves-level", facts, step.origin, "shape an edge whose neighbours run up and down")
    if by <= SAME:
        left, grown = run, 0.0
    elif (rises > 0.0) is up:
        if by >= run.length() - SAME:
            more = (*facts, ("available", run.length()))
            return Refusal("trim-too-long", more, step.origin, "take less than {available}")
        left, grown = run.between(by, run.length()), -by
    else:
        left = Path((Line(run.start - run.start_direction() * by, run.start),)).joined(run)
        grown = by
    edges = list(piece.edges)
    ends = (left.start, edge.parts[0].end) if at_start else (edge.parts[0].start, left.start)
    edges[index] = replace(edge, parts=(Path.through(*ends),))
    if at_start:
        kept = cut_to(neighbour, 0.0, stitched_length(neighbour) + grown)
        edges[beside] = replace(kept, parts=(*kept.parts[:-1], left.reversed()))
        return replace(piece, edges=tuple(edges))
    kept = cut_to(neighbour, -grown, float("inf"))
    edges[beside] = replace(kept, parts=(left, *kept.parts[1:]))
    notches = tuple(
        replace(notch, at=notch.at + grown) if notch.edge == neighbour.name else notch
        for notch in piece.notches
    )
    return replace(piece, edges=tuple(edges), notches=notches)


def _drawn(piece: Piece, name: str, full: float) -> Piece:
    """The piece with the edge as one curve between its ends, square to both neighbours."""
    index, edge = next((i, e) for i, e in enumerate(piece.edges) if e.name == name)
    before, after = piece.edges[index - 1].parts[-1], piece.edges[(index + 1) % len(piece.edges)].parts[0]
    start, end = before.end, after.start
    # An outline that runs counter-clockwise turns left at its corners.
    counter = signed_area(drawn_outline(piece)) > 0.0
    leaving, arriving = before.end_direction().left(), -after.start_direction().left()
    if not counter:
        leaving, arriving = -leaving, -arriving
    reach = full * start.distance(end)
    path = Path((curve(start, leaving, end, arriving, handles=(reach, reach)),))
    edges = tuple(replace(edge, parts=(path,)) if e.name == name else e for e in piece.edges)
    return replace(piece, edges=edges)
