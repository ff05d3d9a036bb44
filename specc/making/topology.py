"""Owns how the edges of the pieces hang together in the made garment.

Which corners meet, what closes to a round.

Knows nothing of lengths. A piece on the fold is two halves that meet along the fold; a piece cut twice is a
left and a right; a seam joins left to left and right to right, and an edge sewn to itself joins left to
right. A piece that is there once lies across the middle, and is sewn to both halves of others. Two copies
that are turned on each other (a collar, a belt), or that one seam takes as two plies, are one in the garment.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

from specc.pattern.lookup import edge_named, part_of, piece_named

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.pattern.piece import Piece

Corner = tuple[str, int, str]  # piece, side (0 left, 1 right), corner
Chain = tuple["PartRef", ...]


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
        """`parted` are the seams of which one side lies across the middle and the other does not."""
        self.pieces = pieces
        self._met: dict[Corner, Corner] = {}
        self._since: dict[Corner, int] = {}  # how many corners had met when this one did
        self._begun: dict[tuple[str, int], tuple[Corner, Corner]] = {}
        self._doubled = frozenset(name for seam in seams for name in _doubled(seam))
        self._laid_double: list[frozenset[tuple[str | None, str]]] = []
        self.parted: tuple[Seam, ...] = ()
        for piece in pieces:
            fold = edge_named(piece, piece.fold) if piece.fold else None
            if fold is not None:
                for corner in (fold.start, fold.end):
                    self._meet((piece.name, 0, corner), (piece.name, 1, corner))
        # A seam of single edges tells by itself which ends meet; chains of edges build on those.
        for seam in sorted(seams, key=lambda seam: (self.joins_across(seam), sum(map(len, seam.sides)))):
            for index, other in enumerate(seam.sides[1:], start=1):
                folded, ply = _folded_onto(seam.sides[1:index], other), (seam.name, index)
                if folded is not None:
                    self._sew(folded, other, ply)
                    self._laid_double.append(frozenset(_names((*folded, *other))))
                elif not self.joins_across(seam):
                    self._sew(seam.first, other, ply)
                elif not self._sew_across(seam.first, other, ply) and seam not in self.parted:
                    self.parted += (seam,)

    def sides(self, piece: str) -> tuple[int, ...]:
        """The halves or copies that the garment has of a piece."""
        found = piece_named(self.pieces, piece)
        copies = found.cut * (2 if found.fold else 1) if found is not None else 1
        return (0, 1) if copies > (2 if piece in self._doubled else 1) else (0,)

    def lies_across(self, piece: str) -> bool:
        """Whether the piece is there once, across the middle of the garment."""
        return self.sides(piece) == (0,)

    def ends_fold(self, ref: PartRef) -> bool:
        """Whether one seam lays both neighbours of the edge on each other: the end of a folded band."""
        piece = piece_named(self.pieces, ref.piece or "")
        edges = [edge.name for edge in piece.edges] if piece else []
        if ref.name not in edges:
            return False
        at = edges.index(ref.name)
        beside = {(ref.piece, edges[at - 1]), (ref.piece, edges[(at + 1) % len(edges)])}
        return any(beside <= laid for laid in self._laid_double)

    def joins_across(self, seam: Seam) -> bool:
        """Whether the seam joins pieces that lie across the middle to pieces that have a left and a right."""
        return len({self.lies_across(ref.piece or "") for side in seam.sides for ref in side}) > 1

    def beginnings(self, seam: str, ply: int) -> tuple[Corner, Corner] | None:
        """The corners of the first side and of a further ply that meet where the seam begins, if known."""
        return self._begun.get((seam, ply))

    def ends(self, stretch: Stretch) -> tuple[Corner, Corner]:
        """The corners at the start and at the end of a stretch; corners that meet are one and the same."""
        edge = part_of(self.pieces, stretch.piece, stretch.edge)[1]
        return (
            self.met((stretch.piece, stretch.side, edge.start)),
            self.met((stretch.piece, stretch.side, edge.end)),
        )

    def met(self, corner: Corner) -> Corner:
        """The one corner that stands for all that meet there."""
        while corner in self._met:
            corner = self._met[corner]
        return corner

    def runs(self, refs: tuple[PartRef, ...]) -> tuple[Run, ...] | None:
        """The edges as they follow each other in the garment, run by run; None where three or more meet."""
        runs, branching = self._runs(self.stretches(refs))
        return None if branching else runs

    def clear_runs(self, refs: tuple[PartRef, ...]) -> tuple[Run, ...]:
        """The closed runs of the edges, without those that hang together where three or more meet.

        The end of a folded band, both of whose corners are one, and what leads to nothing but such an end
        (the lap of a waistband) lie on no round.
        """
        stretches = self.stretches(refs)
        while True:
            kept = self._without_tabs(stretches)
            if len(kept) == len(stretches):
                return tuple(run for run in self._runs(kept)[0] if run.closed)
            stretches = kept

    def _without_tabs(self, stretches: list[Stretch]) -> list[Stretch]:
        ends = {stretch: self.ends(stretch) for stretch in stretches}
        meeting = Counter(corner for corners in ends.values() for corner in corners)
        kept = []
        for stretch, (one, other) in ends.items():
            alone = 2 if one == other else 1
            folded = one == other and meeting[one] > alone
            if not folded and meeting[one] >= 2 and meeting[other] >= 2:
                kept.append(stretch)
        return kept

    def copies_alike(self, refs: tuple[PartRef, ...]) -> tuple[Run, ...] | None:
        """The runs of a side of a seam that joins edges to themselves: those of one copy."""
        stretches = [stretch for stretch in self.stretches(refs) if stretch.side == 0]
        runs, branching = self._runs(stretches)
        return None if branching else runs

    def meet(self, one: Corner, other: Corner) -> bool:
        """Whether two corners are one in the garment."""
        return self.met(one) == self.met(other)

    def stretches(self, refs: tuple[PartRef, ...]) -> list[Stretch]:
        """Every edge on each side of the garment that has it."""
        return [
            Stretch(piece, side, ref.name)
            for ref in refs
            for piece in (ref.piece or "",)
            for side in self.sides(piece)
        ]

    def _runs(self, stretches: list[Stretch]) -> tuple[tuple[Run, ...], bool]:
        """The runs that do not branch, and whether there are others."""
        ends = {stretch: self.ends(stretch) for stretch in stretches}
        at: dict[Corner, list[Stretch]] = {}
        for stretch, corners in ends.items():
            for corner in corners:
                at.setdefault(corner, []).append(stretch)
        most = 2
        branching = [stretch for meeting in at.values() if len(meeting) > most for stretch in meeting]
        for stretch in branching:  # grows while it is gone through
            branching += [other for corner in ends[stretch] for other in at[corner] if other not in branching]
        left = {stretch: None for stretch in stretches if stretch not in branching}
        loose = [stretch for stretch in left if any(len(at[corner]) == 1 for corner in ends[stretch])]
        firsts = (*loose, *left)
        runs = tuple(self._follow(first, ends, at, left) for first in firsts if first in left)
        return runs, bool(branching)

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

    def _sew(self, one: Chain, another: Chain, ply: tuple[str, int]) -> None:
        to_itself = _names(one) == _names(another)
        for side in (0, 1):
            other = 1 - side if to_itself else side
            first, second = self.chain_ends(one, side), self.chain_ends(another, other)
            if first is not None and second is not None:
                same_piece = one[0].piece == another[0].piece
                begun = self._meet_ends(first, second, alike=to_itself, same_piece=same_piece)
                self._begun.setdefault(ply, begun)

    def _sew_across(self, one: Chain, another: Chain, ply: tuple[str, int]) -> bool:
        """Sew the whole of one side to the whole of the other; whether each is one run."""
        first, second = self.runs(one) or (), self.runs(another) or ()
        if len(first) != 1 or len(second) != 1:
            return False
        # Where a side comes back to where it began, the ends of the other are joined by a seam of their own.
        if not first[0].closed and not second[0].closed:
            self._begun[ply] = self._meet_ends(self._run_ends(first[0]), self._run_ends(second[0]))
        return True

    def _meet_ends(
        self,
        first: tuple[Corner, Corner],
        second: tuple[Corner, Corner],
        *,
        alike: bool = False,
        same_piece: bool = False,
    ) -> tuple[Corner, Corner]:
        """Let the ends of two sides meet; the two that meet where the first begins."""
        if not alike and crossed(first, second, same_piece=same_piece):
            second = (second[1], second[0])
        self._meet(first[0], second[0])
        self._meet(first[1], second[1])
        return first[0], second[0]

    def _run_ends(self, run: Run) -> tuple[Corner, Corner]:
        """The two outer corners of a run that does not close, by the names that their pieces give them."""
        corners = []
        for stretch in (run.stretches[0], run.stretches[-1]):
            edge = part_of(self.pieces, stretch.piece, stretch.edge)[1]
            corners.append(tuple((stretch.piece, stretch.side, name) for name in (edge.start, edge.end)))
        if len(run.stretches) == 1:
            return corners[0][0], corners[0][1]
        following = (run.stretches[1], run.stretches[-2])
        meeting = [set(self.ends(stretch)) for stretch in following]
        first, last = (
            next(corner for corner in pair if self.met(corner) not in met)
            for pair, met in zip(corners, meeting, strict=True)
        )
        return first, last

    def chain_ends(self, refs: tuple[PartRef, ...], side: int) -> tuple[Corner, Corner] | None:
        """The two outer corners of a chain of edges on one side; None when the garment has no such side."""
        if any(side not in self.sides(ref.piece or "") for ref in refs):
            return None
        corners = []
        for ref in refs:
            edge = part_of(self.pieces, ref.piece or "", ref.name)[1]
            corners.append(((ref.piece or "", side, edge.start), (ref.piece or "", side, edge.end)))
        if len(corners) == 1:
            return corners[0]
        return self._outer(corners[0], corners[1]), self._outer(corners[-1], corners[-2])

    def _outer(self, edge: tuple[Corner, Corner], neighbour: tuple[Corner, Corner]) -> Corner:
        """The corner of an edge that does not meet its neighbour in the chain.

        Two edges that make a round meet at both ends, the two halves of an armhole at the shoulder and under
        the arm: what one piece or an earlier seam joins lies between them.
        """
        joined = [min(self._joined(corner, other) for other in neighbour) for corner in edge]
        return edge[1] if joined[0] < joined[1] else edge[0]

    def _joined(self, one: Corner, other: Corner) -> float:
        """How early two corners came to meet: 0 for one corner of a piece, infinite if they do not."""
        above = {one: 0}
        since, corner = 0, one
        while corner in self._met:
            since, corner = self._since[corner], self._met[corner]
            above[corner] = since
        since, corner = 0, other
        while corner not in above:
            if corner not in self._met:
                return inf
            since, corner = self._since[corner], self._met[corner]
        return max(since, above[corner])

    def _meet(self, one: Corner, other: Corner) -> None:
        first, second = sorted((self.met(one), self.met(other)))
        if first != second:
            self._met[second] = first
            self._since[second] = len(self._met)


def _names(refs: Iterable[PartRef]) -> tuple[tuple[str | None, str], ...]:
    return tuple((ref.piece, ref.name) for ref in refs)


def _folded_onto(sides: tuple[Chain, ...], other: Chain) -> Chain | None:
    """The side of the same piece onto which a further side of a folded band lies.

    Two copies of one edge lie alike; two edges of one piece face each other.
    """
    pieces = {piece for piece, _ in _names(other)}
    return next(
        (one for one in sides if {ref.piece for ref in one} == pieces and _names(one) != _names(other)), None
    )


def _doubled(seam: Seam) -> Iterator[str]:
    """The pieces of which the seam takes two copies, or both halves, as plies that lie on each other.

    An edge that is only sewn to itself joins the left to the right.
    """
    sides = [_names(side) for side in seam.sides]
    for index, side in enumerate(sides):
        for piece, edge in side:
            others = [at for at, other in enumerate(sides) if at > index and (piece, edge) in other]
            if others and (seam.making.turns or (index, *others) != (0, 1)):
                yield piece or ""


def crossed(first: tuple[Corner, Corner], second: tuple[Corner, Corner], *, same_piece: bool) -> bool:
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
