"""Owns which notches the pieces get: those of the block on both sides of every seam, and what sewing needs.

Knows nothing of how they are drawn. All of it is common practice, no source: two notches that meet look
alike, double at the back and single elsewhere; what is a seam on one side is a notch on the other; gathers
and ease are notched where they begin and end; where a bust line or hip line comes to a seam, both sides are.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.making.assembly import NotchesApart, NotchMark, NotchReason
from specc.making.balance import balance_points
from specc.making.laid import called_back
from specc.making.meeting import CLOSE, meeting
from specc.pattern.measure import stitched_where
from specc.pattern.piece import NotchKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.making.assembly import Walk
    from specc.making.laid import LaidSide
    from specc.model.construction import Seam
    from specc.pattern.piece import Edge, Piece

MEANT: Final = 10.0
"""Two notches of the two sides of a seam nearer than this, in millimetres, are meant to meet (no source)."""

CROWDED: Final = 12.0
"""A line that ends nearer to a notch than this, in millimetres, gets none: they could not be told apart."""

_BROUGHT = (NotchReason.MATCH, NotchReason.GATHERS, NotchReason.EASE)

Edges = dict[tuple[str, str], "Edge"]


@dataclass(frozen=True, slots=True)
class _Mark:
    """A place of one side of a seam that is marked: `on_ruler` is where that is on the second side."""

    side: int
    along: float
    on_ruler: float
    double: bool
    reason: NotchReason


def notches(
    seams: tuple[Seam, ...],
    pieces: tuple[Piece, ...],
    walks: tuple[Walk, ...],
    laid: tuple[tuple[LaidSide, ...] | None, ...],
    limits: Iterable[NotchMark],
) -> tuple[tuple[NotchMark, ...], tuple[NotchesApart, ...]]:
    """The notches of all pieces in one size, and those that do not meet.

    `laid` are the sides of each seam, `limits` the notches that stand on one piece alone.
    """
    edges = {(piece.name, edge.name): edge for piece in pieces for edge in piece.edges}
    own, lines = tuple(_own(pieces)), tuple(_line_ends(pieces))
    found = list(limits)
    apart: list[NotchesApart] = []
    walked: set[tuple[str, str]] = set()
    for seam, walk, sides in zip(seams, walks, laid, strict=True):
        if sides is None:
            continue
        sewing = _Sewing(seam, sides, max(walk.tolerance, CLOSE), own, lines)
        found += sewing.placed()
        apart += sewing.apart
        walked |= {(edge.stretch.piece, edge.stretch.edge) for side in sides for edge in side.edges}
    found += (notch for notch in own if (notch.piece, notch.edge) not in walked)
    return tuple(_ordered(found, edges)), tuple(dict.fromkeys(apart))


def _own(pieces: tuple[Piece, ...]) -> Iterator[NotchMark]:
    """What the pieces bring: their notches, and where gathers and ease begin and end."""
    for piece in pieces:
        for notch in piece.notches:
            double = notch.kind is NotchKind.DOUBLE
            yield NotchMark(piece.name, notch.edge, notch.at, double, NotchReason.MATCH)
        for edge in piece.edges:
            for gathers in edge.gathers:
                reason = NotchReason.EASE if gathers.eased else NotchReason.GATHERS
                for at in (gathers.start, gathers.end):
                    yield NotchMark(piece.name, edge.name, at, False, reason)


def _line_ends(pieces: tuple[Piece, ...]) -> Iterator[NotchMark]:
    """Where bust line, hip line and the like come to an edge."""
    for piece in pieces:
        for line in piece.lines:
            for point in (line.parts[0].start, line.parts[-1].end):
                for edge in piece.edges:
                    if any(part.is_near(point, CLOSE) for part in edge.parts):
                        at = stitched_where(edge, point)
                        yield NotchMark(piece.name, edge.name, at, False, NotchReason.LINE)


class _Sewing:
    """A seam as it is sewn once, with what is marked on its sides; places are told on its second side."""

    def __init__(
        self,
        seam: Seam,
        sides: tuple[LaidSide, ...],
        near: float,
        own: tuple[NotchMark, ...],
        lines: tuple[NotchMark, ...],
    ) -> None:
        self.apart: list[NotchesApart] = []
        self._seam = seam
        self._sides = sides
        self._near = near
        on_sides = [tuple(_on_side(side, own)) for side in sides]
        self._meetings = [
            meeting(
                (side.length, self._ruler.length),
                _joints(side, self._ruler, near),
                ([along for along, _ in on_side], [along for along, _ in on_sides[1]]),
                near,
            )
            for side, on_side in zip(sides, on_sides, strict=True)
        ]
        self._own, self._lines = own, lines

    @property
    def _ruler(self) -> LaidSide:
        return self._sides[1]

    def placed(self) -> Iterator[NotchMark]:
        """The notches of all sides."""
        groups = self._grouped(self._marked(self._own))
        at = [group[0].on_ruler for group in groups]
        seams = sorted(joint for index in range(len(self._sides)) for joint in self._seams(index))
        groups += self._others(seams, NotchReason.SEAM, at)
        at += seams
        for mark in self._marked(self._lines):
            if all(abs(mark.on_ruler - other) > CROWDED for other in (0.0, self._ruler.length, *at)):
                groups.append((mark,))
                at.append(mark.on_ruler)
        balance = balance_points(self._ruler.length, at, gathered=self._seam.gathered)
        groups += self._others(balance, NotchReason.BALANCE, at)
        for group in groups:
            yield from self._on_all(group)

    def _marked(self, notches: tuple[NotchMark, ...]) -> list[_Mark]:
        """Those notches that lie on the sides, in order along the second side."""
        marks = (
            _Mark(index, along, met.onto(along), notch.double, notch.reason)
            for index, (side, met) in enumerate(zip(self._sides, self._meetings, strict=True))
            for along, notch in _on_side(side, notches)
        )
        return sorted(marks, key=lambda mark: (mark.on_ruler, mark.side))

    def _seams(self, index: int) -> Iterator[float]:
        """Where edges of a side meet, told on the second side."""
        for edge in self._sides[index].edges[1:]:
            yield self._meetings[index].onto(edge.start)

    def _others(
        self, places: Iterable[float], reason: NotchReason, marked: list[float]
    ) -> list[tuple[_Mark, ...]]:
        """Places of the second side, each once, at which nothing is marked yet."""
        kept: list[float] = []
        for place in places:
            if all(abs(place - other) > self._near for other in (*kept, *marked)):
                kept.append(place)
        return [(_Mark(-1, place, place, False, reason),) for place in kept]

    def _grouped(self, marks: list[_Mark]) -> list[tuple[_Mark, ...]]:
        """The marks that are one place of the seam; reports those that should be and are not quite."""
        groups: list[list[_Mark]] = []
        for mark in marks:
            last = groups[-1] if groups else []
            gap = mark.on_ruler - last[0].on_ruler if last else 0.0
            if last and gap <= self._near:
                last.append(mark)
            elif last and gap <= MEANT and all(other.side != mark.side for other in last):
                if not self._within_fullness(last[0].on_ruler, mark.on_ruler):
                    self._report(last[0], mark, gap)
                    if len(last) == 1 and mark.side < last[0].side:
                        groups[-1] = [mark]  # that of the side named first stands on both
                    continue
                last.append(mark)
            else:
                groups.append([mark])
        return [tuple(group) for group in groups]

    def _within_fullness(self, low: float, high: float) -> bool:
        """Whether both places lie where one side is eased: there, where they meet is the maker's choice."""
        return any(
            start < low and high < end for met in self._meetings for start, end in met.eased(self._near)
        )

    def _report(self, one: _Mark, other: _Mark, distance: float) -> None:
        first, second = sorted((one, other), key=lambda mark: mark.side)
        names = tuple(
            f"{edge.stretch.piece}.{edge.stretch.edge}"
            for edge in (self._sides[mark.side].at(mark.along) for mark in (first, second))
        )
        self.apart.append(NotchesApart(self._seam.name, (names[0], names[1]), distance))

    def _on_all(self, group: tuple[_Mark, ...]) -> Iterator[NotchMark]:
        """A place of the seam as notches of every side; where a side has a seam or a fold, that marks it."""
        places = []
        for index, (side, met) in enumerate(zip(self._sides, self._meetings, strict=True)):
            own = next((mark.along for mark in group if mark.side == index), None)
            along = met.back(group[0].on_ruler) if own is None else own
            places.append((side, side.at(along), along))
        back = all(called_back(edge.stretch.piece, edge.stretch.edge) for _, edge, _ in places)
        double = back and not any(mark.reason in _BROUGHT for mark in group)
        double = double or any(mark.double for mark in group)
        for side, edge, along in places:
            if not self._is_marked(side, along):
                stretch = edge.stretch
                yield NotchMark(stretch.piece, stretch.edge, edge.on_edge(along), double, group[0].reason)

    def _is_marked(self, side: LaidSide, along: float) -> bool:
        """Whether the side ends there, or a seam or a fold crosses it."""
        crossed = (
            after.start
            for before, after in zip(side.edges, side.edges[1:], strict=False)
            if (before.stretch.piece, before.stretch.side) != (after.stretch.piece, after.stretch.side)
        )
        return any(abs(along - stop) <= self._near for stop in (0.0, side.length, *crossed))


def _on_side(side: LaidSide, own: Iterable[NotchMark]) -> Iterator[tuple[float, NotchMark]]:
    """The notches that the pieces bring to a side, and where along it."""
    for edge in side.edges:
        for notch in own:
            if (notch.piece, notch.edge) == (edge.stretch.piece, edge.stretch.edge):
                yield edge.on_side(notch.at), notch


def _joints(side: LaidSide, ruler: LaidSide, near: float) -> Iterator[tuple[float, float]]:
    """Corners of a side that are known to meet corners of the second side.

    They are sewn together already; or both sides have as many edges, and fullness can make up the difference.
    """
    for edge, joint in zip(side.edges[1:], side.joints[1:], strict=False):
        if joint in ruler.joints[1:-1]:
            yield edge.start, ruler.edges[ruler.joints.index(joint, 1)].start
    fullness = abs(side.length - ruler.length) + near
    if len(side.edges) == len(ruler.edges):
        for one, other in zip(side.edges[1:], ruler.edges[1:], strict=True):
            if abs(one.start - other.start) <= fullness:
                yield one.start, other.start


def _ordered(found: Iterable[NotchMark], edges: Edges) -> Iterator[NotchMark]:
    """The notches in the order of the outlines, each once: double where one of several is."""
    order = {name: index for index, name in enumerate(edges)}
    kept: NotchMark | None = None
    for notch in sorted(found, key=lambda one: (order[one.piece, one.edge], one.at, one.within, one.reason)):
        if kept is None:
            kept = notch
        elif (kept.piece, kept.edge) == (notch.piece, notch.edge) and _same(kept, notch):
            kept = replace(kept, double=kept.double or notch.double)
        else:
            yield kept
            kept = notch
    if kept is not None:
        yield kept


def _same(one: NotchMark, other: NotchMark) -> bool:
    return abs(one.at - other.at) + abs(one.within - other.within) <= CLOSE
