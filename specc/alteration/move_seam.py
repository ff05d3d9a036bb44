"""Owns the verb `move`: a seam line moves from one of its pieces onto the other; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import asin, pi, remainder
from typing import TYPE_CHECKING, Final

from specc.alteration.bending import without_kinks
from specc.alteration.closed_edge import ClosedEdge
from specc.alteration.edges import piece_backward
from specc.alteration.fitting import fitted_inside
from specc.alteration.marks import cut_to
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import replaced, with_gone
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.region import crosses_itself, signed_area
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import drawn_outline, flat_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.expression import Expression, PartRef
    from specc.model.recutting import MoveSeam
    from specc.pattern.piece import Dart, Edge, Piece

UNLIKE: Final = 0.2  # radians by which the two edges may stand differently to their neighbours
SMOOTH: Final = 1e-3  # radians; where they differ by less the neighbour goes on as it did
FAR: Final = 4.0  # how many times its own distance a moved end may slide along its neighbour
STRAIGHT: Final = 1e-3  # mm by which a fold edge may leave a straight line


@dataclass(frozen=True, slots=True)
class Cut:
    """The old and the new course of the edge of the piece that loses, with the darts shut.

    `start` and `end` are what is cut off the neighbours, from the old corner to the new one. `trimmed` is
    by how much the moved edge was trimmed at its start and at its end to reach them (negative: made longer).
    `amounts` are by how much it has moved there, in the unit direction `square`.
    """

    old: Path
    course: Path
    start: Path | None
    end: Path | None
    trimmed: tuple[float, float]
    amounts: tuple[float, float]
    square: Point


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: MoveSeam, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the seam moved: both edges change by as much, and the pieces together keep their area.

    Either edge keeps its shape. What the one piece loses of its neighbouring edges goes to the other's.
    """
    ordered = (step.first, step.second)
    loses, gains = ordered if step.first.piece == step.toward else ordered[::-1]
    losing, gaining = _side(pieces, loses), _side(pieces, gains)
    if isinstance(losing, Refusal):
        return losing
    if isinstance(gaining, Refusal):
        return gaining
    amounts = _amounts(*losing, step, evaluate)
    if isinstance(amounts, Refusal):
        return amounts
    if max(amounts) <= SAME:
        return pieces
    shut = ClosedEdge.of(*losing)
    cut = _cut(losing[0], shut, amounts, step)
    if isinstance(cut, Refusal):
        return cut
    smaller, larger = _smaller(losing[0], shut, cut, step), _gaining(losing[0], gaining, cut, step)
    for piece in (smaller, larger):
        if isinstance(piece, Refusal):
            return piece
        if crosses_itself(flat_outline(piece)):
            cure = "move the seam by less"
            return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
        pieces = replaced(pieces, piece)
    return pieces


def _gaining(losing: Piece, gaining: tuple[Piece, Edge], cut: Cut, step: MoveSeam) -> Piece | Refusal:
    """The piece that gains, its outline travelled the same way round as the other's while it changes.

    The seam is then travelled in opposite ways.
    """
    piece, edge = gaining
    if (signed_area(drawn_outline(losing)) > 0.0) == (signed_area(drawn_outline(piece)) > 0.0):
        return _larger(piece, edge.name, cut, step)
    larger = _larger(piece_backward(piece), edge.name, cut, step)
    return larger if isinstance(larger, Refusal) else piece_backward(larger)


def _side(pieces: tuple[Piece, ...], ref: PartRef) -> tuple[Piece, Edge] | Refusal:
    piece = found(pieces, ref.piece, ref.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    if edge.name == piece.fold:
        facts: Facts = (("piece", piece.name), ("edge", edge.name))
        return Refusal("edge-on-fold", facts, ref.origin, "name the edges of a seam")
    return piece, edge


def _amounts(
    piece: Piece, edge: Edge, step: MoveSeam, evaluate: Callable[[Expression], float]
) -> tuple[float, float] | Refusal:
    """By how much the start and the end of the edge move into the piece that loses."""
    by = evaluate(step.by)
    and_by = by if step.and_by is None else evaluate(step.and_by)
    if min(by, and_by) < 0.0:
        cure = "name the other piece behind `toward`"
        return Refusal("amount-not-positive", (("by", min(by, and_by)),), step.origin, cure)
    for corner in (step.at, step.and_at):
        if corner is not None and corner not in {edge.start, edge.end}:
            facts = (("piece", piece.name), ("edge", edge.name), ("corner", corner))
            return Refusal("not-a-corner-of-edge", facts, step.origin, f"name `{edge.start}` or `{edge.end}`")
    return (and_by, by) if edge.start == step.and_at else (by, and_by)


def _displaced(start: Point, end: Point, square: Point, first: float, last: float) -> Rigid:
    """The motion that takes a straight way aside, by `first` at its start and `last` at its end.

    `square` is the unit direction aside. Where both differ it turns about the point that stays.
    """
    length = start.distance(end)
    if abs(last - first) <= SAME:
        return Rigid.moving(square * first)
    along = (end - start).unit()
    still = start - along * (first * length / (last - first))
    angle = asin(min(1.0, max(-1.0, (last - first) / length)))
    return Rigid.turning(still, angle if along.cross(square) > 0.0 else -angle)


def _cut(piece: Piece, shut: ClosedEdge, amounts: tuple[float, float], step: MoveSeam) -> Cut | Refusal:
    """The new course: the edge moved into the piece, trimmed or made longer straight on to its neighbours."""
    path = shut.path
    square = (path.end - path.start).unit().left()
    if signed_area(drawn_outline(piece)) < 0.0:
        square = -square
    moved = path.transformed(_displaced(path.start, path.end, square, *amounts))
    reach = FAR * max(amounts)
    long = moved.extended(reach, reach)
    index = piece.edges.index(shut.edge)
    neighbours = piece.edges[index - 1], piece.edges[(index + 1) % len(piece.edges)]
    ends: list[tuple[float, Path | None]] = []
    for beside, rail, near, by in zip(
        neighbours, (shut.before, shut.after), (reach, reach + moved.length()), amounts, strict=True
    ):
        if by <= SAME:
            ends.append((near, None))
            continue
        met = crossings(long, rail)
        if not met:
            facts: Facts = (("piece", piece.name), ("edge", shut.edge.name), ("by", by))
            cure = "move the seam by less, or move another seam"
            more = (*facts, ("neighbour", beside.name))
            return Refusal("edge-cannot-move", more, step.origin, cure)
        best = min(met, key=lambda crossing: abs(crossing.along - near))
        ends.append((best.along, rail.between(0.0, best.across)))
    (low, start), (high, end) = ends
    course = long.between(low, high).between_points(
        start.end if start else path.start, end.end if end else path.end
    )
    return Cut(path, course, start, end, (low - reach, reach + moved.length() - high), amounts, square)


def _smaller(piece: Piece, shut: ClosedEdge, cut: Cut, step: MoveSeam) -> Piece | Refusal:
    """The piece that loses: its neighbours are trimmed."""
    opened = shut.opened(cut.course)
    if isinstance(opened, str):
        return _dart_lost(piece, opened, step)
    parts, darts = opened
    index, count = piece.edges.index(shut.edge), len(piece.edges)
    edges = list(piece.edges)
    lost = tuple(bit.length() if bit else 0.0 for bit in (cut.start, cut.end))
    before, after = edges[index - 1], edges[(index + 1) % count]
    trimmed = before.parts[-1].between(0.0, before.parts[-1].length() - lost[0])
    edges[index - 1] = replace(
        cut_to(before, 0.0, stitched_length(before) - lost[0]),
        parts=(*before.parts[:-1], trimmed.between_points(trimmed.start, parts[0].start)),
    )
    after = edges[(index + 1) % count]
    trimmed = after.parts[0].between(lost[1], after.parts[0].length())
    edges[(index + 1) % count] = replace(
        cut_to(after, lost[1], float("inf")),
        parts=(trimmed.between_points(parts[-1].end, trimmed.end), *after.parts[1:]),
    )
    edges[index] = replace(
        cut_to(shut.edge, cut.trimmed[0], stitched_length(shut.edge) - cut.trimmed[1]), parts=parts
    )
    shifts = {shut.edge.name: -cut.trimmed[0], after.name: -lost[1]}
    altered = _shifted(piece, tuple(edges), shifts, darts)
    return with_gone(piece, fitted_inside(piece, altered), f"cut off {line_of(step.origin)}")


def _larger(piece: Piece, name: str, cut: Cut, step: MoveSeam) -> Piece | Refusal:
    """The piece that gains: its neighbours grow by what was cut off those of the other piece."""
    edge = next(edge for edge in piece.edges if edge.name == name)
    shut = ClosedEdge.of(piece, edge)
    own = shut.path
    square = cut.square.turned(_frame(cut.old, own))
    moved = own.transformed(_displaced(own.start, own.end, square, cut.amounts[1], cut.amounts[0]))
    reach = max(0.0, -cut.trimmed[0], -cut.trimmed[1])
    long = moved.extended(reach, reach)
    course = long.between(reach + cut.trimmed[1], reach + moved.length() - cut.trimmed[0])
    opened = shut.opened(course)
    if isinstance(opened, str):
        return _dart_lost(piece, opened, step)
    parts, darts = opened
    index, count = piece.edges.index(edge), len(piece.edges)
    edges = list(piece.edges)
    edges[index] = replace(cut_to(edge, cut.trimmed[1], stitched_length(edge) - cut.trimmed[0]), parts=parts)
    shifts = {name: -cut.trimmed[1]}
    for bit, at in ((cut.end, index - 1), (cut.start, (index + 1) % count)):
        if bit is None:
            continue
        beside, leads = edges[at], at == index - 1
        run = beside.parts[-1] if leads else beside.parts[0].reversed()
        end = parts[0].start if leads else parts[-1].end
        kink = _kink(cut, edge, bit, end - run.end, at_start=leads)
        if abs(kink) > UNLIKE:
            facts: Facts = (("piece", piece.name), ("edge", name), ("angle", abs(kink)))
            cure = "move the seam by less, or swing its darts to other edges first"
            return Refusal("seam-sides-unlike", facts, step.origin, cure)
        added = _laid(bit, run.end, end)
        grown = run.joined(added)
        if abs(kink) > SMOOTH:
            grown = without_kinks((run, added), length=grown.length()) or grown
        if leads:
            edges[at] = replace(beside, parts=(*beside.parts[:-1], grown))
        else:
            longer = cut_to(beside, run.length() - grown.length(), float("inf"))
            edges[at] = replace(longer, parts=(grown.reversed(), *beside.parts[1:]))
            shifts[beside.name] = grown.length() - run.length()
    altered = _shifted(piece, tuple(edges), shifts, darts)
    fold = edge_named(altered, piece.fold or "")
    if fold is not None:
        ends = (fold.parts[0].start, fold.parts[-1].end)
        straight = Path.through(*ends)
        if any(straight.distance_to(s.end) > STRAIGHT for part in fold.parts for s in part.segments):
            facts = (("piece", piece.name), ("edge", fold.name))
            return Refusal("fold-would-bend", facts, step.origin, "unfold `{piece}` first")
        altered = replace(
            altered,
            edges=tuple(replace(e, parts=(straight,)) if e.name == fold.name else e for e in altered.edges),
        )
    return fitted_inside(piece, altered)


def _frame(old: Path, own: Path) -> float:
    """How an edge lies when sewn to another one, in radians from where it lies now; both have no darts.

    Where the one is bent more than the other it lies between what either end asks for.
    """
    ends = (-own.end_direction(), -own.start_direction())
    at_start, at_end = (
        here.angle_to(there)
        for here, there in zip((old.start_direction(), old.end_direction()), ends, strict=True)
    )
    return at_start + 0.5 * remainder(at_end - at_start, 2.0 * pi)


def _kink(cut: Cut, edge: Edge, bit: Path, new: Point, *, at_start: bool) -> float:
    """How much more the other edge turns against its neighbour, in radians, where a bit of that goes over.

    0 where both edges are of one shape. Beside a dart the one is bent more than the other, and what is put on
    there fans out or closes up. `at_start` says at which end of the edge that gains.
    """
    here = -cut.old.end_direction() if at_start else cut.old.start_direction()
    there = edge.parts[0].start_direction() if at_start else -edge.parts[-1].end_direction()
    return here.angle_to(bit.end - bit.start) - there.angle_to(new)


def _laid(bit: Path, start: Point, end: Point) -> Path:
    """What was cut off a neighbour, laid between two points: turned, and where it does not fit, stretched."""
    old, new = bit.end - bit.start, end - start
    turn, scale = old.angle_to(new), new.norm() / old.norm()
    return bit.mapped(lambda point: start + (point - bit.start).turned(turn) * scale).between_points(
        start, end
    )


def _shifted(
    piece: Piece, edges: tuple[Edge, ...], shifts: dict[str, float], darts: tuple[Dart, ...]
) -> Piece:
    """The piece with new edges, notches as far along them as before, and the darts of the moved edge."""
    by_name = {dart.name: dart for dart in darts}
    return replace(
        piece,
        edges=edges,
        darts=tuple(by_name.get(dart.name, dart) for dart in piece.darts),
        notches=tuple(replace(notch, at=notch.at + shifts.get(notch.edge, 0.0)) for notch in piece.notches),
    )


def _dart_lost(piece: Piece, dart: str, step: MoveSeam) -> Refusal:
    facts = (("piece", piece.name), ("dart", dart))
    cure = "swing or release `{dart}` first, or move the seam by less"
    return Refusal("seam-through-dart", facts, step.origin, cure)
