"""Owns the notches that stand on one piece alone: limits of what is done to an edge, folds, centres.

Knows nothing of seams. Common practice, no source: what is held in or caught at an edge, a pleat and a tuck
are notched where they begin and end, a seam that ends where the outline goes straight on, and the centre
where a piece lies on the fold.
"""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING, Final

from specc.geometry.tolerance import SAME
from specc.making.assembly import NotchMark, NotchReason
from specc.making.attached import CaughtAt
from specc.pattern.measure import stitched_length
from specc.pattern.piece import FoldKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import EdgeUse, Round
    from specc.making.attached import Attached
    from specc.pattern.piece import Edge, Piece

UNSEEN: Final = 0.02  # radians; a corner that turns less is not seen on the cut piece
_SEWN = ("seam", "finish", "attachment")  # what covers the edge, with an allowance or without

Edges = dict[tuple[str, str], "Edge"]


def limits(
    pieces: tuple[Piece, ...],
    uses: tuple[EdgeUse, ...],
    rounds: tuple[Round, ...],
    attached: tuple[Attached, ...],
) -> Iterator[NotchMark]:
    """The notches of the pieces that no seam carries over, in no order; `rounds` are those of finishes."""
    edges = {(piece.name, edge.name): edge for piece in pieces for edge in piece.edges}
    return chain(
        _held(rounds), _caught(attached, edges), _centres(pieces, uses), _ends(pieces, uses), _folds(edges)
    )


def _held(rounds: tuple[Round, ...]) -> Iterator[NotchMark]:
    """Where a trim begins or ceases to be held in."""
    for one in rounds:
        for before, after in zip(one.zones, one.zones[1:], strict=False):
            if (before.piece, before.edge) == (after.piece, after.edge) and before.end == after.start:
                yield NotchMark(after.piece, after.edge, after.start, False, NotchReason.HELD)


def _caught(attached: tuple[Attached, ...], edges: Edges) -> Iterator[NotchMark]:
    """Both sides of every end that is caught at an edge."""
    for one in attached:
        if isinstance(one, CaughtAt):
            for at in (one.start, one.end):
                if 0.0 < at < stitched_length(edges[one.piece, one.edge]):
                    yield NotchMark(one.piece, one.edge, at, False, NotchReason.ATTACHED)


def _centres(pieces: tuple[Piece, ...], uses: tuple[EdgeUse, ...]) -> Iterator[NotchMark]:
    """Where the fold of a piece meets its neighbours: the centre of what is sewn or turned there.

    An edge that stays raw is not cut into.
    """
    sewn = {(use.piece, use.edge) for use in uses if use.kind in _SEWN or use.allowance > 0.0}
    for piece in pieces:
        fold = next((edge for edge in piece.edges if edge.name == piece.fold), None)
        for edge in piece.edges if fold else ():
            if edge is fold or (piece.name, edge.name) not in sewn:
                continue
            if fold and edge.start == fold.end:
                yield NotchMark(piece.name, edge.name, 0.0, False, NotchReason.CENTRE)
            if fold and edge.end == fold.start:
                at = stitched_length(edge)
                yield NotchMark(piece.name, edge.name, at, False, NotchReason.CENTRE)


def _ends(pieces: tuple[Piece, ...], uses: tuple[EdgeUse, ...]) -> Iterator[NotchMark]:
    """Where one edge goes straight on from another and into something else: the end of a zip, of a slit."""
    used = {(use.piece, use.edge): (use.kind, use.by) for use in uses}
    for piece in pieces:
        for before, after in zip((piece.edges[-1], *piece.edges), piece.edges, strict=False):
            turn = before.parts[-1].end_direction().angle_to(after.parts[0].start_direction())
            apart = used[piece.name, before.name] != used[piece.name, after.name]
            if abs(turn) <= UNSEEN and apart and piece.fold not in {before.name, after.name}:
                at = stitched_length(before)
                yield NotchMark(piece.name, before.name, at, False, NotchReason.ENDS)


def _folds(edges: Edges) -> Iterator[NotchMark]:
    """Both sides of every pleat and tuck; several at one place follow each other."""
    for (piece, name), edge in edges.items():
        used, last = 0.0, -1.0
        for fold in edge.folds:
            used = used if abs(fold.at - last) <= SAME else 0.0
            reason = NotchReason.PLEAT if fold.kind is FoldKind.PLEAT else NotchReason.TUCK
            for within in (used, used + fold.amount):
                yield NotchMark(piece, name, fold.at, False, reason, within)
            used, last = used + fold.amount, fold.at
