"""Owns where the cut pieces are notched: on all sides of a seam, found by walking it, and at limits.

Knows nothing of drawing. What is notched is common practice, no source: the block's own notches, carried to
the other sides; where a corner of one side lies within an edge of another (a side seam on a waistband); where
reference lines end at a seam; where gathers begin and end; the middle of a long seam that has none of these;
the limits between which a trim is held in; both sides of an end that is caught; the fold at edges that are
sewn. Front single, back double.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.making.assembly import NotchMark
from specc.making.attached import CaughtAt
from specc.making.course import course
from specc.making.topology import Topology
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length, stitched_where

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import SizeAssembly
    from specc.making.attached import Attached
    from specc.making.course import Course
    from specc.model.garment import Garment
    from specc.pattern.piece import Edge, Piece

LONG: Final = 200.0  # mm: a seam so long is notched in the middle if it has no other notch
NEAR: Final = 12.0  # mm: notches nearer to each other, or to an end of the seam, cannot be told apart
_ON: Final = 0.5  # mm: so near to an edge, a line ends on it
_SAME: Final = 0.05  # mm


def notches(garment: Garment, size: SizeAssembly) -> tuple[NotchMark, ...]:
    """Every notch of the pieces, in the order of the pieces and their edges."""
    marks = _Marks(size.pieces)
    for piece in size.pieces:
        for notch in piece.notches:
            marks.add(piece.name, notch.edge, notch.at, "block")
    topology = Topology(size.pieces, garment.seams)
    for seam in garment.seams:
        laid = course(seam, size.pieces, topology)
        if laid is not None:
            _seam(seam.name, laid, marks)
    used = {(use.piece, use.edge) for use in size.uses if use.kind in {"seam", "finish"}}
    for piece in size.pieces:
        _fold(piece, used, marks)
    for laid_round in size.rounds:
        for zone in laid_round.zones:
            for limit in (zone.start, zone.end):
                if zone.held:
                    marks.add(zone.piece, zone.edge, limit, laid_round.by)
    _attached(size.attached, marks)
    return marks.found()


def _attached(attached: tuple[Attached, ...], marks: _Marks) -> None:
    """Both sides of every end that is caught."""
    for one in (each for each in attached if isinstance(each, CaughtAt)):
        marks.add(one.piece, one.edge, one.start, one.attachment)
        marks.add(one.piece, one.edge, one.end, one.attachment)


class _Marks:
    """The notches found so far, each place once, none at the very end of an edge but at a fold."""

    def __init__(self, pieces: tuple[Piece, ...]) -> None:
        self.pieces = pieces
        self._at: dict[tuple[str, str], list[NotchMark]] = {}

    def on(self, piece: str, edge: str) -> tuple[NotchMark, ...]:
        """Those on an edge."""
        return tuple(self._at.get((piece, edge), ()))

    def add(self, piece: str, edge: str, at: float, by: str, *, end: bool = False) -> None:
        """Keep the notch, unless its place has one or lies beside its edge."""
        owner = piece_named(self.pieces, piece)
        found = edge_named(owner, edge) if owner else None
        if owner is None or found is None:
            return
        inside = _SAME < at < stitched_length(found) - _SAME or by == "block" or end
        if inside and all(abs(mark.at - at) > _SAME for mark in self.on(piece, edge)):
            self._at.setdefault((piece, edge), []).append(
                NotchMark(piece, edge, at, _is_back(piece, edge), by)
            )

    def found(self) -> tuple[NotchMark, ...]:
        """All, along the outline of one piece after the other."""
        return tuple(
            mark
            for piece in self.pieces
            for edge in piece.edges
            for mark in sorted(self.on(piece.name, edge.name), key=lambda mark: mark.at)
        )


def _is_back(piece: str, edge: str) -> bool:
    return "back" in piece.split("-") or "back" in edge.split("-")


def _seam(name: str, laid: Course, marks: _Marks) -> None:
    """Notch all sides at every place that one of them asks for, those of the block first."""
    chosen: list[float] = []  # along the first side
    for wanted in (_kept(laid, marks), _asked(laid, marks.pieces)):
        for index, place in wanted:
            _choose(chosen, laid, index, place)
    length = laid.sides[0].length
    if not chosen and length > LONG:
        chosen.append(length / 2.0)
    for place in chosen:
        for index, side in enumerate(laid.sides):
            step, at = side.step_at(laid.carried(place, start=0, to=index))
            has = marks.on(step.piece, step.edge)
            near = NEAR + abs(side.length - length)  # ease moves the block's own notches apart
            if not any(abs(mark.at - at) < (near if mark.by == "block" else NEAR) for mark in has):
                marks.add(step.piece, step.edge, at, name)


def _choose(chosen: list[float], laid: Course, index: int, place: float) -> None:
    along = laid.carried(place, start=index, to=0)
    ends = (0.0, laid.sides[0].length)
    near = NEAR + abs(laid.sides[index].length - laid.sides[0].length) * (index > 0)
    if all(abs(along - end) > NEAR for end in ends) and all(abs(along - other) > near for other in chosen):
        chosen.append(along)


def _kept(laid: Course, marks: _Marks) -> Iterator[tuple[int, float]]:
    """The notches that the sides have already: the number of the side, and the place on its course."""
    for index, side in enumerate(laid.sides):
        for step in side.steps:
            for mark in marks.on(step.piece, step.edge):
                for place in side.places(step.piece, step.edge, mark.at):
                    yield index, place


def _asked(laid: Course, pieces: tuple[Piece, ...]) -> Iterator[tuple[int, float]]:
    """The places that the other sides have to find: corners on the way, ends of lines and of gathers."""
    for index, side in enumerate(laid.sides):
        knots = [knot[index] for knot in laid.knots]
        for step in side.steps:
            if all(abs(step.start - knot) > _SAME for knot in knots):
                yield index, step.start
            owner = piece_named(pieces, step.piece)
            edge = edge_named(owner, step.edge) if owner else None
            if owner is None or edge is None:
                continue
            limits = (end for each in edge.gathers for end in (each.start, each.end))
            for at in (*_line_ends(owner, edge), *limits):
                for place in side.places(step.piece, step.edge, at):
                    yield index, place


def _line_ends(piece: Piece, edge: Edge) -> Iterator[float]:
    for line in piece.lines:
        for point in (line.parts[0].start, line.parts[-1].end):
            if any(part.is_near(point, _ON) for part in edge.parts):
                yield stitched_where(edge, point)


def _fold(piece: Piece, used: set[tuple[str, str]], marks: _Marks) -> None:
    """The centre, where an edge that is sewn comes to the fold."""
    fold = edge_named(piece, piece.fold) if piece.fold else None
    if fold is None:
        return
    for edge in piece.edges:
        if edge.name == fold.name or (piece.name, edge.name) not in used:
            continue
        if edge.start in {fold.start, fold.end}:
            marks.add(piece.name, edge.name, 0.0, "fold", end=True)
        if edge.end in {fold.start, fold.end}:
            marks.add(piece.name, edge.name, stitched_length(edge), "fold", end=True)
