"""Owns at which ends of seams the allowance is cut square, so that the raw edges of both sides end together.

Knows nothing of cut lines. Where a seam ends at a corner that is sharp on one piece and blunt on the other (a
princess seam at the armhole), mitred allowances would not lie on each other: one would stand out in a point,
the other fall short. Both are cut square to the seam instead (common practice, no source), that of the seam
which is written first, since it is crossed by the other.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians
from typing import TYPE_CHECKING, Final

from specc.geometry.region import signed_area
from specc.pattern.lookup import edges_at, piece_named
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import EdgeUse
    from specc.making.laid import LaidEdge, LaidSide
    from specc.pattern.piece import Piece

SHARPER: Final = radians(30.0)
"""Corners that differ by more than this are much sharper on one piece than on the other (no source)."""

End = tuple[str, str, str]  # piece, edge, corner


def squared(
    uses: tuple[EdgeUse, ...], pieces: tuple[Piece, ...], laid: tuple[tuple[LaidSide, ...] | None, ...]
) -> tuple[EdgeUse, ...]:
    """The uses, those of seams squared at the ends where they need it; `laid` are the sides of each seam."""
    found: dict[End, None] = {}
    taken: set[tuple[str, str]] = set()
    seams = {(use.piece, use.edge) for use in uses if use.kind == "seam" and use.allowance > 0.0}
    for sides in laid:
        for at in (0, -1) if sides else ():
            ends = [_end(side.edges[at], pieces, first=at == 0) for side in sides or ()]
            corners = {(piece, corner) for piece, _, corner in ends}
            if corners & taken or not all(_crossed(end, pieces, seams) for end in ends):
                continue
            angles = [_angle(piece, corner, pieces) for piece, corner in corners]
            if max(angles) - min(angles) > SHARPER:
                found |= dict.fromkeys(ends)
                taken |= corners
    return tuple(replace(use, squared=tuple(_corners(use, found))) for use in uses)


def _corners(use: EdgeUse, found: dict[End, None]) -> Iterator[str]:
    return (corner for piece, edge, corner in found if (piece, edge) == (use.piece, use.edge))


def _end(laid: LaidEdge, pieces: tuple[Piece, ...], *, first: bool) -> End:
    """The outer corner of the first or the last edge of a side."""
    stretch = laid.stretch
    piece = piece_named(pieces, stretch.piece)
    assert piece is not None, stretch
    edge = next(edge for edge in piece.edges if edge.name == stretch.edge)
    return stretch.piece, stretch.edge, edge.start if laid.forward == first else edge.end


def _crossed(end: End, pieces: tuple[Piece, ...], seams: set[tuple[str, str]]) -> bool:
    """Whether another seam, with an allowance, begins where this one ends."""
    piece, edge, corner = end
    owner = piece_named(pieces, piece)
    neighbours = edges_at(owner, corner) if owner else ()
    return all(one is not None and (one.name == edge or (piece, one.name) in seams) for one in neighbours)


def _angle(piece: str, corner: str, pieces: tuple[Piece, ...]) -> float:
    """The inner angle of a piece at a corner, in radians."""
    owner = piece_named(pieces, piece)
    assert owner is not None, piece
    before, after = edges_at(owner, corner)
    assert before is not None, corner
    assert after is not None, corner
    turn = before.parts[-1].end_direction().angle_to(after.parts[0].start_direction())
    return pi - turn if signed_area(drawn_outline(owner)) > 0.0 else pi + turn
