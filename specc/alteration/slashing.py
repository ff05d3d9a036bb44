"""Owns a slash from edge to edge and how it opens: both halves, turned or moved apart; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import asin, sin
from typing import TYPE_CHECKING, Final

from specc.alteration.grain import grain_on_fold
from specc.alteration.halves import Halves, closed_up
from specc.alteration.opening import Opening, filled
from specc.alteration.refusal import Refusal
from specc.alteration.runs import Run, edges_from
from specc.alteration.slash import is_clear, obstacle
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.region import polygon_area
from specc.geometry.tolerance import SAME
from specc.pattern.measure import PlaceOnEdge, place_on_edge, stitched_length
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from specc.alteration.opening import Filling
    from specc.geometry.point import Point
    from specc.pattern.piece import Edge, Piece
    from specc.source import Span

START, END = "/", "//"  # stand for the ends of the slash among the darts between runs; no name is written so
UNTURNED: Final = 1e-7  # radians below which the two halves are parallel


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on an edge: `at` along the stitched edge, and where that is.

    Of a corner (`corner` names it) the edge is the one that ends there.
    """

    edge: Edge
    at: float
    place: PlaceOnEdge
    corner: str | None = None

    @staticmethod
    def on(edge: Edge, at: float) -> Spot:
        """The spot at a stitched length from the edge's start."""
        return Spot(edge, at, place_on_edge(edge, at))

    @staticmethod
    def at_corner(edge: Edge) -> Spot:
        """The corner in which the edge ends."""
        whole = stitched_length(edge)
        part = edge.parts[-1]
        place = PlaceOnEdge(len(edge.parts) - 1, part.length(), part.end, part.end_direction())
        return Spot(edge, whole, place, edge.end)

    @property
    def is_clear(self) -> bool:
        """Whether it is a corner, or keeps clear of the ends of the edge and of the darts on it."""
        return self.corner is not None or is_clear(self.edge, self.place)


@dataclass(frozen=True, slots=True)
class SlashEnd:
    """Where the slash meets an edge, how far it opens there, and as what."""

    spot: Spot
    by: float
    filling: Filling

    @property
    def point(self) -> Point:
        """The end of the slash."""
        return self.spot.place.at


def in_the_way(piece: Piece, start: Spot, end: Spot, *, origin: Span) -> Refusal | None:
    """Why a slash between two spots cannot be cut, if it cannot."""
    if _touching(piece, start) & _touching(piece, end):
        facts = (("piece", piece.name), ("edge", start.edge.name))
        return Refusal("slash-on-one-edge", facts, origin, "slash to another edge")
    cut = Path.through(start.place.at, end.place.at)
    names = [spot.corner or spot.edge.name for spot in (start, end)]
    joined = (("piece", piece.name), ("dart", names[0]), ("edge", names[1]))
    return obstacle(piece, cut, piece.darts, facts=joined, origin=origin)


def _touching(piece: Piece, spot: Spot) -> set[str]:
    """The names of the edges on which a spot lies: a corner lies on two."""
    if spot.corner is None:
        return {spot.edge.name}
    return {edge.name for edge in piece.edges if spot.corner in {edge.start, edge.end}}


def too_far(start: SlashEnd, end: SlashEnd, *, origin: Span) -> Refusal | None:
    """Why the slash cannot open so unequally, if it cannot."""
    length = start.point.distance(end.point)
    if abs(start.by - end.by) < length:
        return None
    amounts = (("length", length), ("by", start.by), ("other", end.by))
    return Refusal("spread-too-far", amounts, origin, "spread by less")


def opened(piece: Piece, start: SlashEnd, end: SlashEnd) -> Piece:
    """The piece opened: as cut, moved and drawn over at both ends."""
    halves, begin = _halved(piece, start, end)
    following, _ = halves.turning()
    motion, pivot = _motion(halves, start, end, following=following)
    moved = halves.moved_inside(motion, following=following, bridged=True)
    turned = halves.moved_runs(motion, following=following)
    runs = turned[len(turned) - begin :] + turned[: len(turned) - begin]
    for name, this, other in ((START, start, end), (END, end, start)):
        if this.by <= SAME:
            runs = closed_up(runs, name)
            continue
        # The half behind the end of the slash is the one that follows; it lies before the start of the slash.
        moves_before = following if name == START else not following
        inner = (other.point, motion(other.point))
        opening = Opening(name, this.spot.at, pivot, inner[::-1] if moves_before else inner)
        moved, runs = filled(moved, runs, opening, this.filling)
    return grain_on_fold(piece, replace(moved, edges=edges_from(moved, runs)))


def _halved(piece: Piece, start: SlashEnd, end: SlashEnd) -> tuple[Halves, int]:
    """The ring of runs cut at both ends of the slash, begun behind its end; and at which run of the outline.

    The end of the slash stands for a dart without width, which is what the halves begin behind.
    """
    runs: list[Run] = []
    spots = ((start.spot, START), (end.spot, END))
    ends = {(one.edge.name, one.place.part): (one, name) for one, name in spots}
    for edge in piece.edges:
        for index, (part, dart) in enumerate(zip(edge.parts, (*edge.darts, None), strict=True)):
            if (edge.name, index) in ends:
                one, name = ends[edge.name, index]
                if one.corner is not None:
                    runs.append(Run(edge.name, part, name))
                    continue
                before, after = part.split_at(one.place.along)
                runs += (Run(edge.name, before, name), Run(edge.name, after, dart))
            else:
                runs.append(Run(edge.name, part, dart))
    names = [run.dart for run in runs]
    begin, cut = names.index(END) + 1, names.index(START) + 1
    ring = (*runs[begin:], *runs[:begin])
    hinge = Dart(END, end.spot.edge.name, end.point, end.point, end.point)
    slash = (cut - begin) % len(ring)
    return Halves.of(piece, hinge, ring, cut=slash, slash=start.point, into=None), begin % len(runs)


def _motion(halves: Halves, start: SlashEnd, end: SlashEnd, *, following: bool) -> tuple[Rigid, Point | None]:
    """How the moving half moves, and the point about which it turns, if it turns.

    Opened by unequal amounts the halves turn about the point in line with the slash where nothing opens.
    """
    along = start.point - end.point
    length, along = along.norm(), along.unit()
    # Seen from the end of the slash toward its start, the following half of an outline that runs
    # counter-clockwise lies to the right.
    left = (polygon_area(halves.following) < 0.0) == following
    side = along.left() if left else -along.left()
    turn = 2.0 * asin((start.by - end.by) / (2.0 * length))
    angle = turn if left else -turn
    turning = Rigid.turning(end.point, angle)
    shift = side.turned(0.5 * angle) * end.by
    motion = replace(turning, dx=turning.dx + shift.x, dy=turning.dy + shift.y)
    pivot = end.point - along * (end.by / (2.0 * sin(0.5 * turn))) if abs(turn) > UNTURNED else None
    return motion, pivot
