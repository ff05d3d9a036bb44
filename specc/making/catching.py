"""Owns putting ends to their place on an edge: straps, ties and loops that a seam or finish catches.

Knows nothing of how they are sewn.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.making.attached import CaughtAt, Misplaced
from specc.making.sewing_on import NO_PLACE
from specc.making.walk import is_share
from specc.pattern.lookup import edge_named, edges_at, part_of
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.attachment import Caught
    from specc.model.construction import Seam
    from specc.model.expression import Expression
    from specc.pattern.piece import Edge, Piece

BEYOND_EDGE = declare(
    "SPC434",
    "end-beyond-edge",
    Severity.ERROR,
    "the end of `{what}` would lie {by} beyond an end of `{edge}`",
)

_SAME: Final = 0.1  # mm; an end that reaches so little beyond an edge ends with it


def catch(
    asked: Caught, pieces: tuple[Piece, ...], seams: tuple[Seam, ...], evaluate: Callable[[Expression], float]
) -> CaughtAt | Misplaced:
    """The ends at their place, or why there is none."""
    owner, edge = part_of(pieces, asked.to.piece or "", asked.to.name)
    corner = asked.at.from_corner
    if corner not in (None, edge.start, edge.end):
        reason = f"`{corner}` is not an end of `{owner.name}.{edge.name}`"
        facts = (("piece", owner.name), ("reason", reason))
        return Misplaced(NO_PLACE, asked.at.origin, facts, f"write `{edge.start}` or `{edge.end}`")
    width = max(_width(*part_of(pieces, end.piece or "", end.name), seams) for end in asked.ends)
    whole = stitched_length(edge)
    share = is_share(asked.at.at)
    along = evaluate(asked.at.at) * (whole if share else 1.0)
    start = along - 0.5 * width if share else along
    if corner == edge.end and corner != edge.start:
        start = whole - start - width
    end = start + width
    across = _across_fold(owner, edge, start, end)
    beyond = max(-start, end - whole)
    if beyond > _SAME and not across:
        names = " and ".join(f"{ref.piece}.{ref.name}" for ref in asked.ends)
        cure = "a length says where the end begins, seen from the corner; a share, where its middle lies"
        edge_name = f"{owner.name}.{edge.name}"
        return Misplaced(
            BEYOND_EDGE, asked.at.origin, (("what", names), ("edge", edge_name), ("by", beyond)), cure
        )
    twice = (owner.fold is not None or owner.cut > 1) and not across and asked.side is None
    ends = tuple(f"{ref.piece}.{ref.name}" for ref in asked.ends)
    return CaughtAt(asked.name, ends, owner.name, edge.name, start, end, 1 + twice, across)


def _width(piece: Piece, edge: Edge, seams: tuple[Seam, ...]) -> float:
    """How wide the end is as sewn: twice the edge at a fold, half of it where the sides are joined."""
    beside = (edges_at(piece, edge.start)[0], edges_at(piece, edge.end)[1])
    names = {(piece.name, one.name) for one in beside if one is not None}
    tube = any(
        len({(ref.piece, ref.name) for side in seam.sides for ref in side} & names) > 1 for seam in seams
    )
    on_fold = any(one is not None and one.name == piece.fold for one in beside)
    return stitched_length(edge) * (2.0 if on_fold else 1.0) * (0.5 if tube else 1.0)


def _across_fold(piece: Piece, edge: Edge, start: float, end: float) -> bool:
    """Whether the place lies in equal parts on both sides of the fold, where the edge meets it."""
    fold = edge_named(piece, piece.fold) if piece.fold else None
    if fold is None:
        return False
    corners = (fold.start, fold.end)
    at = [0.0] * (edge.start in corners) + [stitched_length(edge)] * (edge.end in corners)
    return any(abs(0.5 * (start + end) - place) <= _SAME for place in at)
