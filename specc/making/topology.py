"""Owns how the edges of the pieces hang together in the made garment.

Which corners meet, what closes to a round.

Knows nothing of lengths. A piece on the fold is two halves that meet along the fold; a piece cut twice is a
left and a right; a seam joins left to left and right to right, and an edge sewn to itself joins left to
right.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.pattern.lookup import edge_named, piece_named

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.pattern.piece import Edge, Piece

Corner = tuple[str, int, str]  # piece, side (0 left, 1 right), corner


@dataclass(frozen=True, slots=True)
class Stretch:
    """An edge of one half or one copy of a piece, as it lies in the garment."""

    piece: str
    side: int
    edge: str


@dataclass(frozen=True, slots=True)
class Run:
    """Stretches in the order in which they follow each other; closed when the last meets the first."""

    stretches: tuple[Stretch, ...]
    closed: bool


class Topology:
    """Which corners of the pieces meet once the seams are sewn."""

    def __init__(self, pieces: tuple[Piece, ...], seams: tuple[Seam, ...]) -> None:
        self._pieces = pieces
        self._met: dict[Corner, Corner] = {}
        for piece in pieces:
            fold = edge_named(piece, piece.fold) if piece.fold else None
            if fold is not None:
                for corner in (fold.start, fold.end):
                    self._meet((piece.name, 0, corner), (piece.name, 1, corner))
        # A seam of single edges tells by itself which ends meet; chains of edges build on those.
        for seam in sorted(seams, key=lambda seam: len(seam.first) + len(seam.second)):
            self._sew(seam)

    def sides(self, piece: str) -> tuple[int, ...]:
        """The halves or copies that the garment has of a piece."""
        found = piece_named(self._pieces, piece)
        return (0, 1) if found is not None and (found.fold or found.cut > 1) else (0,)

    def runs(self, refs: tuple[PartRef, ...]) -> tuple[Run, ...] | None:
        """The edges as they follow each other in the garment, run by run; None where three or more meet."""
        stretches = [
            Stretch(piece, side, ref.name)
            for ref in refs
            for piece in (ref.piece or "",)
            for side in self.sides(piece)
        ]
        ends = {stretch: self._ends(stretch) for stretch in stretches}
        at: dict[Corner, list[Stretch]] = {}
        for stretch, corners in ends.items():
            for corner in corners:
                at.setdefault(corner, []).append(stretch)
        most = 2
        if any(len(meeting) > most for meeting in at.values()):
            return None
        left = dict.fromkeys(stretches)
        loose = [stretch for stretch in stretches if any(len(at[corner]) == 1 for corner in ends[stretch])]
        return tuple(self._follow(first, ends, at, left) for first in (*loose, *stretches) if first in left)

    def _follow(
        self,
        first: Stretch,
        ends: dict[Stretch, tuple[Corner, Corner]],
        at: dict[Corner, list[Stretch]],
        left: dict[Stretch, None],
    ) -> Run:
        """The run that begins with `first`, taken out of `left`."""
        start, corner = ends[first]
        if len(at[start]) > 1 and len(at[corner]) == 1:
            start, corner = corner, start
        found = [first]
        del left[first]
        while True:
            following = next((stretch for stretch in at[corner] if stretch in left), None)
            if following is None:
                return Run(tuple(found), closed=corner == start)
            found.append(following)
            del left[following]
            one, other = ends[following]
            corner = other if one == corner else one

    def _ends(self, stretch: Stretch) -> tuple[Corner, Corner]:
        edge = self._edge(stretch.piece, stretch.edge)
        return (
            self._root((stretch.piece, stretch.side, edge.start)),
            self._root((stretch.piece, stretch.side, edge.end)),
        )

    def _edge(self, piece: str, name: str) -> Edge:
        owner = piece_named(self._pieces, piece)
        edge = edge_named(owner, name) if owner else None
        if edge is None:
            raise KeyError(f"{piece}.{name}")
        return edge

    def _sew(self, seam: Seam) -> None:
        to_itself = _names(seam.first) == _names(seam.second)
        for side in (0, 1):
            other = 1 - side if to_itself else side
            first = self._chain_ends(seam.first, side)
            second = self._chain_ends(seam.second, other)
            if first is None or second is None:
                continue
            if not to_itself and _crossed(
                first, second, same_piece=seam.first[0].piece == seam.second[0].piece
            ):
                second = (second[1], second[0])
            self._meet(first[0], second[0])
            self._meet(first[1], second[1])

    def _chain_ends(self, refs: tuple[PartRef, ...], side: int) -> tuple[Corner, Corner] | None:
        """The two outer corners of a chain of edges on one side; None when the garment has no such side."""
        if any(side not in self.sides(ref.piece or "") for ref in refs):
            return None
        corners = []
        for ref in refs:
            edge = self._edge(ref.piece or "", ref.name)
            corners.append(((ref.piece or "", side, edge.start), (ref.piece or "", side, edge.end)))
        if len(corners) == 1:
            return corners[0]
        return self._outer(corners[0], corners[1]), self._outer(corners[-1], corners[-2])

    def _outer(self, edge: tuple[Corner, Corner], neighbour: tuple[Corner, Corner]) -> Corner:
        """The corner of an edge that does not meet its neighbour in the chain."""
        meeting = {self._root(corner) for corner in neighbour}
        return edge[1] if self._root(edge[0]) in meeting else edge[0]

    def _root(self, corner: Corner) -> Corner:
        while corner in self._met:
            corner = self._met[corner]
        return corner

    def _meet(self, one: Corner, other: Corner) -> None:
        first, second = sorted((self._root(one), self._root(other)))
        if first != second:
            self._met[second] = first


def _names(refs: Iterable[PartRef]) -> tuple[tuple[str | None, str], ...]:
    return tuple((ref.piece, ref.name) for ref in refs)


def _crossed(first: tuple[Corner, Corner], second: tuple[Corner, Corner], *, same_piece: bool) -> bool:
    """Whether the start of one side meets the end of the other.

    Corners of one name meet. Where no names agree, two edges of one piece face each other, since the outline
    passes them in opposite directions; edges of two pieces run alike.
    """
    names = [corner[2] for corner in (*first, *second)]
    if not same_piece:
        if names[0] == names[2] or names[1] == names[3]:
            return False
        return names[0] == names[3] or names[1] == names[2]
    return True
