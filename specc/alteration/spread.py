"""Owns the verb `spread`: slash a piece from edge to edge and open the slash; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import asin, sin
from typing import TYPE_CHECKING, Final

from specc.alteration.halves import Halves, closed_up
from specc.alteration.opening import Opening, filled
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import Run, edges_from, replaced
from specc.alteration.slash import is_clear, obstacle, stitched_place
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.region import crosses_itself, polygon_area
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import edge_named
from specc.pattern.measure import place_on_edge
from specc.pattern.outline import flat_outline
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point
    from specc.model.alteration import Place
    from specc.model.expression import Expression, PartRef
    from specc.model.reshaping import Spread
    from specc.pattern.measure import PlaceOnEdge
    from specc.pattern.piece import Edge, Piece

START, END = "/", "//"  # stand for the ends of the slash among the darts between runs; no name is written so
UNTURNED: Final = 1e-7  # radians below which the two halves are parallel


@dataclass(frozen=True, slots=True)
class SlashEnd:
    """Where the slash meets an edge: `at` is the stitched place, `by` how far it opens there."""

    edge: Edge
    at: float
    place: PlaceOnEdge
    by: float

    @property
    def point(self) -> Point:
        """The end of the slash."""
        return self.place.at


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Spread, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with one slashed and spread; both halves keep all their lengths and angles."""
    if step.form is Form.DART:
        as_dart = (("verb", "spread"), ("form", step.form.value))
        cure = "say `as flare`, `as gathers`, `as ease`, `as pleat` or `as tuck`"
        return Refusal("form-not-for-verb", as_dart, step.origin, cure)
    piece = found(pieces, step.start.piece, step.start.origin)
    if isinstance(piece, Refusal):
        return piece
    if step.end.piece != piece.name:
        facts = (
            ("piece", piece.name),
            ("edge", step.start.name),
            ("other", f"{step.end.piece}.{step.end.name}"),
        )
        return Refusal("slash-to-other-piece", facts, step.end.origin, "name an edge of `{piece}`")
    by = evaluate(step.by)
    and_by = by if step.and_by is None else evaluate(step.and_by)
    if min(by, and_by) < 0.0:
        cure = "spread by an amount of nothing or more; take in or shorten to make a piece smaller"
        return Refusal("amount-not-positive", (("by", min(by, and_by)),), step.origin, cure)
    start = _end(piece, step.start, step.start_place, by=by, evaluate=evaluate)
    if isinstance(start, Refusal):
        return start
    end = _end(piece, step.end, step.end_place, by=and_by, evaluate=evaluate)
    if isinstance(end, Refusal):
        return end
    refusal = _refused(piece, start, end, step)
    if refusal is not None:
        return refusal
    if max(by, and_by) <= SAME:
        return pieces
    spread = _spread(piece, start, end, step.form)
    if crosses_itself(flat_outline(spread)):
        cure = "spread by less, or place the slash elsewhere"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    return replaced(pieces, spread)


def _end(
    piece: Piece, ref: PartRef, place: Place, *, by: float, evaluate: Callable[[Expression], float]
) -> SlashEnd | Refusal:
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("slash-into-fold", facts, ref.origin, "slash to another edge")
    at = stitched_place(edge, place, evaluate)
    on_edge = place_on_edge(edge, at)
    if not is_clear(edge, on_edge):
        cure = "place it further from the end of the edge, or slash to the neighbouring edge"
        return Refusal("slash-at-end", facts, place.origin, cure)
    return SlashEnd(edge, at, on_edge, by)


def _refused(piece: Piece, start: SlashEnd, end: SlashEnd, step: Spread) -> Refusal | None:
    """Why the slash cannot be cut, or not opened so far, if it cannot."""
    if start.edge.name == end.edge.name:
        facts = (("piece", piece.name), ("edge", start.edge.name))
        return Refusal("slash-on-one-edge", facts, step.end.origin, "slash to another edge")
    cut = Path.through(start.point, end.point)
    joined = (("piece", piece.name), ("dart", start.edge.name), ("edge", end.edge.name))
    stands = obstacle(piece, cut, piece.darts, facts=joined, origin=step.origin)
    if stands is not None:
        return stands
    if abs(start.by - end.by) >= cut.length():
        amounts = (("length", cut.length()), ("by", start.by), ("other", end.by))
        return Refusal("spread-too-far", amounts, step.origin, "spread by less")
    return None


def _spread(piece: Piece, start: SlashEnd, end: SlashEnd, form: Form) -> Piece:
    """The piece opened: as cut, moved and drawn over at both ends."""
    halves, begin = _halved(piece, start, end)
    following, _ = halves.turning()
    motion, pivot = _opened(halves, start, end, following=following)
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
        opening = Opening(name, this.at, pivot, inner[::-1] if moves_before else inner)
        moved, runs = filled(moved, runs, opening, form)
    return replace(moved, edges=edges_from(moved, runs))


def _halved(piece: Piece, start: SlashEnd, end: SlashEnd) -> tuple[Halves, int]:
    """The ring of runs cut at both ends of the slash, begun behind its end; and at which run of the outline.

    The end of the slash stands for a dart without width, which is what the halves begin behind.
    """
    runs: list[Run] = []
    ends = {(one.edge.name, one.place.part): (one, name) for one, name in ((start, START), (end, END))}
    for edge in piece.edges:
        for index, (part, dart) in enumerate(zip(edge.parts, (*edge.darts, None), strict=True)):
            if (edge.name, index) in ends:
                one, name = ends[edge.name, index]
                before, after = part.split_at(one.place.along)
                runs += (Run(edge.name, before, name), Run(edge.name, after, dart))
            else:
                runs.append(Run(edge.name, part, dart))
    names = [run.dart for run in runs]
    begin, cut = names.index(END) + 1, names.index(START) + 1
    ring = (*runs[begin:], *runs[:begin])
    hinge = Dart(END, end.edge.name, end.point, end.point, end.point)
    slash = (cut - begin) % len(ring)
    return Halves.of(piece, hinge, ring, cut=slash, slash=start.point, into=None), begin % len(runs)


def _opened(halves: Halves, start: SlashEnd, end: SlashEnd, *, following: bool) -> tuple[Rigid, Point | None]:
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
