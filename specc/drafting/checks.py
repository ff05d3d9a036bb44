"""Owns whether a drafted piece is sound: its outline closes, does not cross itself, its fold is straight.

Knows nothing of how the piece was drafted, but for the places in the text to blame.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.geometry.region import self_crossing
from specc.geometry.segment import Line
from specc.pattern.outline import edge_path, straight_across
from specc.units import format_length

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.geometry.point import Point
    from specc.model.block import PieceDraft
    from specc.pattern.piece import Piece

OPEN = declare(
    "SPC401",
    "outline-open",
    Severity.ERROR,
    "`{piece}` is open: `{edge}` ends at `{end}`, `{following}` begins at `{start}`, {gap} away",
)
CROSSES = declare(
    "SPC402",
    "outline-crosses-itself",
    Severity.ERROR,
    "the outline of `{piece}` crosses itself: {edges} {right} to the right and {up} up",
)
CROOKED_FOLD = declare(
    "SPC417",
    "fold-not-straight",
    Severity.ERROR,
    "`{piece}.{edge}` lies on the fold but is not one straight line",
)


def unsound(piece: Piece, draft: PieceDraft) -> tuple[Diagnostic, ...]:
    """What is wrong with the piece, none when it is sound."""
    said = [*_open(piece, draft), *_crooked(piece, draft)]
    return tuple(said or _crossing(piece, draft))


def _crossing(piece: Piece, draft: PieceDraft) -> list[Diagnostic]:
    points: list[Point] = []
    owners: list[str] = []
    for edge in piece.edges:
        flat = edge_path(piece, edge, straight_across).flattened()[:-1]
        points += flat
        owners += [edge.name] * len(flat)
    crossing = self_crossing(points)
    if crossing is None:
        return []
    first, second = (owners[run] for run in crossing.runs)
    both = f"`{first}` meets itself" if first == second else f"`{first}` and `{second}` meet"
    right, up = (format_length(value, "mm", decimals=0) for value in (crossing.at.x, crossing.at.y))
    told = CROSSES.at(draft.origin, piece=piece.name, edges=both, right=right, up=up)
    cure = "look there: a curve may be too full, two points changed, or one graded too far"
    return [told.help(cure)]


def _open(piece: Piece, draft: PieceDraft) -> list[Diagnostic]:
    said = []
    origins = {edge.name: edge.origin for edge in draft.edges}
    for edge, following in pairwise((*piece.edges, piece.edges[0])):
        if edge.end == following.start:
            continue
        gap = format_length(edge.parts[-1].end.distance(following.parts[0].start), "mm", decimals=1)
        open_outline = OPEN.at(
            origins[following.name],
            piece=piece.name,
            edge=edge.name,
            end=edge.end,
            following=following.name,
            start=following.start,
            gap=gap,
        )
        said.append(
            open_outline.see(origins[edge.name], f"ends at `{edge.end}`").help(
                f"begin `{following.name}` at `{edge.end}`, or put between them the edge that is missing"
            )
        )
    return said


def _crooked(piece: Piece, draft: PieceDraft) -> list[Diagnostic]:
    said = []
    for edge, edge_draft in zip(piece.edges, draft.edges, strict=True):
        straight = len(edge.parts) == 1 and all(isinstance(run, Line) for run in edge.parts[0].segments)
        if edge.name == piece.fold and not (straight and len(edge.parts[0].segments) == 1):
            crooked = CROOKED_FOLD.at(edge_draft.origin, piece=piece.name, edge=edge.name)
            said.append(crooked.help("draw it as one `line to`, or cut the piece twice and sew a seam there"))
    return said
