"""Owns the verb `scallop`: an edge is cut in equal scallops; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from itertools import accumulate, pairwise
from math import copysign, pi
from typing import TYPE_CHECKING

from specc.alteration.fitting import fitted_inside
from specc.alteration.marks import Stretched, with_marks
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import linked, replaced
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.region import crosses_itself, signed_area
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.outline import drawn_outline, flat_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point
    from specc.model.expression import Expression
    from specc.model.reshaping import Scallop
    from specc.pattern.piece import Edge, Piece


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Scallop, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the edge in scallops: as many as come nearest to the length wished for one.

    They part at even lengths along the edge. Each is the arc that reaches the depth at its middle, outward
    and square to the edge.
    """
    piece = found(pieces, step.edge.piece, step.edge.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, step.edge.name)
    if edge is None:
        return missing(piece, step.edge)
    every, by = evaluate(step.every), evaluate(step.by)
    if every <= SAME or by < 0.0:
        least = every if every <= SAME else by
        return Refusal("amount-not-positive", (("by", least),), step.origin, "give a length and a depth")
    refusal = _refused(piece, edge, step)
    if refusal is not None:
        return refusal
    whole = edge.parts[0].length()
    count = max(1, round(whole / every))
    length = whole / count
    if by > 0.5 * length:
        facts = (("length", length), ("deepest", 0.5 * length), ("by", by))
        return Refusal("scallop-too-deep", facts, step.origin, "make them longer, or less deep")
    if by <= SAME:
        return pieces
    scalloped = _scalloped(piece, edge, count, by)
    if crosses_itself(flat_outline(scalloped)):
        cure = "make the scallops less deep"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    return replaced(pieces, scalloped)


def _refused(piece: Piece, edge: Edge, step: Scallop) -> Refusal | None:
    facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("edge-on-fold", facts, step.edge.origin, "scallop another edge")
    if edge.darts:
        cure = "swing or release {what} first"
        return Refusal("edge-not-plain", (*facts, ("what", f"`{edge.darts[0]}`")), step.edge.origin, cure)
    if edge.gathers or edge.folds:
        what = "gathers" if edge.gathers else f"a {edge.folds[0].kind}"
        cure = "scallop an edge that is not drawn in, such as that of a facing"
        return Refusal("edge-not-plain", (*facts, ("what", what)), step.edge.origin, cure)
    return None


def _scalloped(piece: Piece, edge: Edge, count: int, by: float) -> Piece:
    run = edge.parts[0]
    step = run.length() / count
    # The outline's left is inside when it runs counter-clockwise.
    outward = -by if signed_area(drawn_outline(piece)) > 0.0 else by
    ends = [run.start, *(run.point_at(step * index) for index in range(1, count)), run.end]
    scallops = []
    for index, (start, end) in enumerate(pairwise(ends)):
        middle = (index + 0.5) * step
        crest = run.point_at(middle) + run.direction_at(middle).left() * outward
        scallops.append(_arc_through(start, crest, end))
    path = linked(scallops)
    edges = tuple(replace(edge, parts=(path,)) if old.name == edge.name else old for old in piece.edges)
    old = tuple(step * index for index in range(count + 1))
    new = (0.0, *accumulate(scallop.length() for scallop in scallops))
    marked = with_marks(replace(piece, edges=edges), edge.name, Stretched(old, new))
    return fitted_inside(piece, marked)


def _arc_through(start: Point, crest: Point, end: Point) -> Path:
    """The arc through three points; straight where they lie on a line."""
    u, v = crest - start, end - start
    cross = u.cross(v)
    if abs(cross) <= SAME * v.norm():
        return Path.through(start, end)
    # The centre is as far from all three points: 2 c.u = u.u and 2 c.v = v.v, seen from the first.
    across = v * u.dot(u) - u * v.dot(v)
    centre = start - across.left() * (0.5 / cross)
    # The angle at the crest stands on the rest of the circle.
    angle = copysign(2.0 * (pi - abs((start - crest).angle_to(end - crest))), cross)
    return arc(start, centre, angle).between_points(start, end)
