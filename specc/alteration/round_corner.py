"""Owns the verb `round`: a corner is rounded off by an arc; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from math import pi, tan
from typing import TYPE_CHECKING, Final

from specc.alteration.fitting import fitted_inside
from specc.alteration.marks import Stretched, with_marks
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import replaced
from specc.geometry.fit import arc, blend, corner
from specc.geometry.region import crosses_itself
from specc.geometry.tolerance import SAME
from specc.model.expression import PartRef
from specc.pattern.lookup import edges_at
from specc.pattern.measure import stitched_at, stitched_length
from specc.pattern.outline import flat_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.path import Path
    from specc.model.expression import Expression
    from specc.model.reshaping import RoundCorner
    from specc.pattern.piece import Edge, Piece

SMOOTH: Final = 1e-3  # radians; edges that meet at a smaller turn meet smoothly
EVEN: Final = 1e-6  # share by which the two tangents of an arc may differ


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: RoundCorner, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the corner rounded: an arc touches both edges at the distance from the corner.

    The corner keeps its name and lies at the middle of the arc: either edge has half of it.
    """
    piece = found(pieces, step.piece.piece, step.piece.origin)
    if isinstance(piece, Refusal):
        return piece
    ending, starting = edges_at(piece, step.corner)
    if ending is None or starting is None:
        return missing(piece, PartRef(piece.name, step.corner, step.origin))
    by = evaluate(step.by)
    if by < 0.0:
        return Refusal(
            "amount-not-positive", (("by", by),), step.origin, "round it by a length along its edges"
        )
    refusal = _refused(piece, ending, starting, step, by=by)
    if refusal is not None:
        return refusal
    if by <= SAME:
        return pieces
    rounded = _rounded(piece, ending, starting, by)
    if crosses_itself(flat_outline(rounded)):
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, "round it by less")
    return replaced(pieces, rounded)


def _refused(piece: Piece, ending: Edge, starting: Edge, step: RoundCorner, *, by: float) -> Refusal | None:
    facts = (("piece", piece.name), ("corner", step.corner))
    turn = ending.parts[-1].end_direction().angle_to(starting.parts[0].start_direction())
    if not SMOOTH < abs(turn) < pi - SMOOTH:
        return Refusal("corner-is-smooth", facts, step.origin, "round another corner")
    for edge, part in ((ending, ending.parts[-1]), (starting, starting.parts[0])):
        if edge.name == piece.fold:
            on_fold = (("piece", piece.name), ("edge", edge.name))
            cure = "round another corner, or unfold `{piece}` first"
            return Refusal("edge-on-fold", on_fold, step.origin, cure)
        # An edge that begins and ends at the corner is trimmed at both ends.
        available = part.length() / (2.0 if ending.name == starting.name and len(edge.parts) == 1 else 1.0)
        if by >= available - SAME:
            trimmed = (*facts, ("neighbour", edge.name), ("available", available), ("by", by))
            return Refusal("trim-too-long", trimmed, step.origin, "take less than {available}")
    return None


def _rounded(piece: Piece, ending: Edge, starting: Edge, by: float) -> Piece:
    """The piece with both edges trimmed, and half of the arc on either."""
    last = ending.parts[-1]
    kept = last.between(0.0, last.length() - by)
    path = _arc(kept, starting.parts[0].between(by, starting.parts[0].length()))
    first, second = path.split_at(0.5 * path.length())
    whole, at = stitched_length(ending), stitched_at(ending, len(ending.parts) - 1, kept.length())
    grown = first.length() - by
    rounded = _with_parts(
        piece,
        replace(ending, parts=(*ending.parts[:-1], kept.joined(first))),
        Stretched((0.0, at, whole), (0.0, at, whole + grown)),
    )
    # An edge that begins and ends at the corner has changed by now.
    start = next(edge for edge in rounded.edges if edge.name == starting.name)
    whole, at = stitched_length(start), stitched_at(start, 0, by)
    grown = second.length() - by
    kept = start.parts[0].between(by, start.parts[0].length())
    rounded = _with_parts(
        rounded,
        replace(start, parts=(second.joined(kept), *start.parts[1:])),
        Stretched((0.0, at, whole), (0.0, at + grown, whole + grown)),
    )
    return fitted_inside(piece, rounded)


def _with_parts(piece: Piece, edge: Edge, where: Stretched) -> Piece:
    edges = tuple(edge if old.name == edge.name else old for old in piece.edges)
    return with_marks(replace(piece, edges=edges), edge.name, where)


def _arc(before: Path, after: Path) -> Path:
    """The arc from the end of one run to the start of the other that goes on smoothly from both.

    Between tangents of unlike lengths, as curved edges have them, it is the curve nearest to an arc.
    """
    start, end = before.end, after.start
    u, v = before.end_direction(), after.start_direction()
    reach = corner(start, u, end, v)
    if reach is None or abs(reach[0] - reach[1]) > EVEN * max(reach):
        return blend(start, u, end, v)
    angle = u.angle_to(v)
    side = u.left() if angle > 0.0 else -u.left()
    centre = start + side * (reach[0] / tan(0.5 * abs(angle)))
    return arc(start, centre, angle).between_points(start, end)
