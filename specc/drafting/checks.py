"""Owns whether a drafted piece is sound: its outline closes, does not cross itself, its fold is straight.

Knows nothing of how the piece was drafted, but for the places in the text to blame.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.geometry.region import crosses_itself
from specc.geometry.segment import Line
from specc.pattern.outline import flat_outline
from specc.units import format_length

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.model.block import PieceDraft
    from specc.pattern.piece import Piece

OPEN = declare(
    "SPC401",
    "outline-open",
    Severity.ERROR,
    "`{piece}` is open: `{edge}` ends at `{end}`, `{following}` begins at `{start}`, {gap} away",
)
CROSSES = declare(
    "SPC402", "outline-crosses-itself", Severity.ERROR, "the outline of `{piece}` crosses itself"
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
    if not said and crosses_itself(flat_outline(piece)):
        crosses = CROSSES.at(draft.origin, piece=piece.name)
        said.append(
            crosses.help(
                "look where its edges meet: a curve may be too full, or two points may have changed places"
            )
        )
    return tuple(said)


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
