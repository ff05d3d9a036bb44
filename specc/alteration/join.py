"""Owns the verb `join`: two pieces laid together along an edge become one; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.edges import line_backward, one_edge, one_line, piece_backward, renamed
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.region import crosses_itself, signed_area
from specc.pattern.lookup import edge_named, line_named, names_of, piece_named
from specc.pattern.measure import dart_tip
from specc.pattern.outline import (
    drawn_outline,
    edge_path,
    flat_outline,
    grain_direction,
    straight_across,
    transformed,
)
from specc.pattern.piece import Gone, Piece, ReferenceLine, TwoPointedDart

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.model.expression import Expression, PartRef
    from specc.model.reshaping import Join
    from specc.pattern.piece import Dart, Edge

APART: Final = 1.0  # mm by which the two edges may differ, in length and in shape
ONE_LINE: Final = 1e-2  # sine of the angle up to which two fold edges are one line
SAMPLES: Final = 32  # places at which the two edges are compared


@dataclass(frozen=True, slots=True)
class Side:
    """A piece and the edge along which it is joined."""

    piece: Piece
    edge: Edge

    def drawn(self) -> Path:
        """The edge along the paper, straight across the mouths of its darts."""
        return edge_path(self.piece, self.edge, straight_across)

    def darts(self) -> tuple[Dart, ...]:
        """The darts that open on the edge, in its order."""
        inner = {dart.name: dart for dart in self.piece.darts}
        return tuple(inner[name] for name in self.edge.darts)

    def others(self) -> tuple[Edge, ...]:
        """The other edges, in order from behind the joined one."""
        index = self.piece.edges.index(self.edge)
        return self.piece.edges[index + 1 :] + self.piece.edges[:index]


def apply(
    pieces: tuple[Piece, ...], step: Join, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with one in place of two, where the first lay; the second is turned, never turned over.

    Both edges are gone. Names that both pieces have get the name of their piece before them, but for lines
    that continue each other across the seam and points that lie on each other.
    """
    first, second = (_side(pieces, ref) for ref in (step.first, step.second))
    if isinstance(first, Refusal):
        return first
    if isinstance(second, Refusal):
        return second
    refused = _unlike(pieces, first, second, step)
    if refused is not None:
        return refused
    moved = _laid(first, second, step)
    if isinstance(moved, Refusal):
        return moved
    joined = _joined(first, moved, step)
    if isinstance(joined, Refusal):
        return joined
    kept = [joined if old is first.piece else old for old in pieces if old is not second.piece]
    return tuple(kept)


def _side(pieces: tuple[Piece, ...], ref: PartRef) -> Side | Refusal:
    piece = found(pieces, ref.piece, ref.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, ref.name)
    facts: Facts = (("piece", piece.name), ("name", ref.name))
    if edge is None:
        if ref.name in names_of(piece):
            return Refusal("not-an-edge", facts, ref.origin, "name an edge")
        return missing(piece, ref)
    if edge.gathers or edge.folds or edge.start == edge.end:
        cure = "what is gathered or folded cannot lie flat on another edge; sew the two instead"
        return Refusal("edge-not-flat", facts, ref.origin, cure)
    return Side(piece, edge)


def _unlike(pieces: tuple[Piece, ...], first: Side, second: Side, step: Join) -> Refusal | None:
    """Why the two cannot be one piece, whatever their shapes."""
    one, other = first.piece, second.piece
    facts: Facts = (("piece", one.name), ("other", other.name))
    if one is other:
        return Refusal("join-to-itself", facts, step.origin, "name edges of two pieces")
    for side, ref in ((first, step.first), (second, step.second)):
        if side.edge.name == side.piece.fold:
            more: Facts = (("piece", side.piece.name), ("edge", side.edge.name))
            return Refusal(
                "join-along-fold", more, ref.origin, "unfold `{piece}` first, or join it elsewhere"
            )
    known = piece_named(pieces, step.name)
    if known is not None and known is not one and known is not other:
        return Refusal("piece-name-taken", (("name", step.name),), step.origin, "take another name")
    # A piece on the fold holds two of what is drawn.
    halves = [piece.cut * (2 if piece.fold else 1) for piece in (one, other)]
    if halves[0] != halves[1]:
        more = (*facts, ("first", str(halves[0])), ("second", str(halves[1])))
        cure = "cut both equally often; a piece on the fold counts twice"
        return Refusal("cut-unequally", more, step.origin, cure)
    return None


def _laid(first: Side, second: Side, step: Join) -> Side | Refusal:
    """The second piece where its edge lies on the first's, its outline travelled the same way round."""
    orientations = [signed_area(drawn_outline(side.piece)) > 0.0 for side in (first, second)]
    piece = second.piece if orientations[0] == orientations[1] else piece_backward(second.piece)
    edge = next(edge for edge in piece.edges if edge.name == second.edge.name)
    onto, back = first.drawn(), Side(piece, edge).drawn().reversed()
    lengths = onto.length(), back.length()
    facts: Facts = (
        ("piece", first.piece.name),
        ("edge", first.edge.name),
        ("other", f"{piece.name}.{edge.name}"),
    )
    if abs(lengths[0] - lengths[1]) > APART:
        more = (*facts, ("first", lengths[0]), ("second", lengths[1]))
        return Refusal("edges-unequal", more, step.origin, "make them equally long first")
    motion = _motion(onto, back)
    moved = transformed(piece, motion)
    distance = max(
        max(
            b.distance_to(a.point_at(a.length() * share / SAMPLES)),
            a.distance_to(b.point_at(b.length() * share / SAMPLES)),
        )
        for a, b in ((onto, back.transformed(motion)),)
        for share in range(SAMPLES + 1)
    )
    if distance > APART:
        more = (*facts, ("distance", distance))
        return Refusal("edges-unlike", more, step.origin, "make them of one shape first, or sew them")
    laid = Side(moved, next(e for e in moved.edges if e.name == edge.name))
    return _dart_unmatched(first, laid, step) or laid


def _dart_unmatched(first: Side, second: Side, step: Join) -> Refusal | None:
    """The refusal for a dart on the one edge whose mouth is not that of a dart on the other."""
    mouths = [(dart.first, dart.second) for dart in first.darts()]
    back = [(dart.second, dart.first) for dart in second.darts()]
    for side, other, own, theirs in ((first, second, mouths, back), (second, first, back, mouths)):
        for dart, mouth in zip(side.darts(), own, strict=True):
            if not any(max(map(Point.distance, mouth, each)) <= APART for each in theirs):
                facts: Facts = (
                    ("piece", side.piece.name),
                    ("dart", dart.name),
                    ("other", f"{other.piece.name}.{other.edge.name}"),
                )
                cure = "swing or release `{dart}` first, or sew the two pieces instead"
                return Refusal("dart-unmatched", facts, step.origin, cure)
    return None


def _merged(first: Side, second: Side) -> tuple[TwoPointedDart, ...]:
    """The darts that open on the joined edges, two by two as darts inside, under the names of the first."""
    up = grain_direction(first.piece)
    merged = []
    for dart, other in zip(first.darts(), reversed(second.darts()), strict=True):
        tips = sorted((dart_tip(dart), dart_tip(other)), key=up.dot)
        sides = (dart.first.toward(other.second, 0.5), dart.second.toward(other.first, 0.5))
        # As drafted, `first` lies to the left of the way from top to bottom.
        left = (tips[0] - tips[1]).cross(sides[0] - tips[1]) > 0.0
        merged.append(TwoPointedDart(dart.name, tips[1], tips[0], *(sides if left else sides[::-1])))
    return tuple(merged)


def _motion(onto: Path, path: Path) -> Rigid:
    """The motion that lays the ends of a path on those of another, a difference shared between them."""
    away, there = path.end - path.start, onto.end - onto.start
    turned = Rigid.turning(path.start, away.angle_to(there))
    middle = turned(path.start.toward(path.end, 0.5))
    by = onto.start.toward(onto.end, 0.5) - middle
    return replace(turned, dx=turned.dx + by.x, dy=turned.dy + by.y)


def _joined(first: Side, second: Side, step: Join) -> Piece | Refusal:
    """The two pieces as one, under the new name."""
    facts: Facts = (("piece", first.piece.name), ("other", second.piece.name))
    fold = _one_fold(first, second)
    if first.piece.fold and second.piece.fold and fold is None:
        return Refusal("folds-apart", facts, step.origin, "unfold one of them first")
    shared = _shared(first, second)
    ours = {name: f"{first.piece.name}-{name}" for name in shared}
    theirs = {name: f"{second.piece.name}-{name}" for name in shared}
    known = {*names_of(first.piece), *names_of(second.piece)}
    taken = next((name for name in (*ours.values(), *theirs.values()) if name in known), None)
    if taken is not None:
        cure = "give one of the pieces another name"
        return Refusal("part-name-taken", (("piece", step.name), ("name", taken)), step.origin, cure)
    theirs |= {
        second.edge.end: ours.get(first.edge.start, first.edge.start),
        second.edge.start: ours.get(first.edge.end, first.edge.end),
    }
    if second.piece.fold and first.piece.fold:
        theirs[second.piece.fold] = ours.get(first.piece.fold, first.piece.fold)
    one = Side(renamed(first.piece, ours), _under(first.edge, ours))
    other = Side(renamed(second.piece, theirs), _under(second.edge, theirs))
    joined = _one_piece(one, other, step.name, fold=fold)
    inner = _merged(first, second)
    if inner:
        joined = replace(joined, two_pointed=(*joined.two_pointed, *inner))
    if crosses_itself(flat_outline(joined)):
        return Refusal("pieces-overlap", facts, step.origin, "join them along other edges, or sew them")
    rows = (*first.piece.gone, *second.piece.gone, *_gone(first, second, (ours, theirs), step))
    there = {*names_of(joined), joined.name}
    return replace(joined, gone=tuple(row for row in dict.fromkeys(rows) if row.name not in there))


def _under(edge: Edge, names: dict[str, str]) -> Edge:
    """The edge as it is called in its renamed piece."""
    start, end = (names.get(corner, corner) for corner in (edge.start, edge.end))
    return replace(edge, name=names.get(edge.name, edge.name), start=start, end=end)


def _one_fold(first: Side, second: Side) -> bool | None:
    """Whether the folds run on from the first piece to the second, or back, in one line; None if not."""
    a, b = first.others(), second.others()
    for leads, ours, theirs in ((True, a[-1], b[0]), (False, a[0], b[-1])):
        if (ours.name, theirs.name) == (first.piece.fold, second.piece.fold):
            before, after = (ours, theirs) if leads else (theirs, ours)
            u, v = before.parts[-1].end_direction(), after.parts[0].start_direction()
            if abs(u.cross(v)) <= ONE_LINE and u.dot(v) > 0.0:
                return leads
    return None


def _shared(first: Side, second: Side) -> list[str]:
    """The names that both pieces have for different things that stay."""
    one, other = first.piece, second.piece
    dropped = {second.edge.name, second.edge.start, second.edge.end, *second.edge.darts}
    if one.fold and other.fold:
        dropped.add(other.fold)
    theirs = frozenset(names_of(other)) - dropped
    return [
        name
        for name in names_of(one)
        if name in theirs and name != first.edge.name and not _is_one(one, other, name)
    ]


def _is_one(one: Piece, other: Piece, name: str) -> bool:
    """Whether a name is that of two lines which continue each other, or of points that lie on each other."""
    a, b = line_named(one, name), line_named(other, name)
    if a is not None and b is not None:
        return _order(a, b) is not None
    spots = [[p.at for p in piece.points if p.name == name] for piece in (one, other)]
    return bool(spots[0] and spots[1]) and spots[0][0].distance(spots[1][0]) <= APART


def _order(a: ReferenceLine, b: ReferenceLine) -> tuple[bool, bool] | None:
    """Whether the first of two lines that are one comes first, and whether the other is turned."""
    a_ends, b_ends = (a.parts[0].start, a.parts[-1].end), (b.parts[0].start, b.parts[-1].end)
    for i, leads in ((1, True), (0, False)):
        for j in (0, 1):
            if a_ends[i].distance(b_ends[j]) <= APART:
                return leads, (j == 1) is leads
    return None


def _one_piece(one: Side, other: Side, name: str, *, fold: bool | None) -> Piece:
    """The piece made of both, whose names do not clash."""
    a, b = one.piece, other.piece
    points = {point.name for point in a.points}
    return Piece(
        name,
        name.replace("-", " "),
        _edges(one, other, fold=fold),
        darts=tuple(
            dart for side in (one, other) for dart in side.piece.darts if dart.edge != side.edge.name
        ),
        two_pointed=(*a.two_pointed, *b.two_pointed),
        lines=_lines(a, b),
        points=(*a.points, *(point for point in b.points if point.name not in points)),
        notches=tuple(
            notch for side in (one, other) for notch in side.piece.notches if notch.edge != side.edge.name
        ),
        grain=a.grain or b.grain,
        fold=a.fold or b.fold,
        cut=b.cut if b.fold else a.cut,
    )


def _edges(one: Side, other: Side, *, fold: bool | None) -> tuple[Edge, ...]:
    """The other edges of both in one ring, from the first edge of the first piece on."""
    ours = [edge for edge in one.piece.edges if edge.name != one.edge.name]
    lead = ours[0].name
    before = list(one.others())
    after = list(other.others())
    start, end = before[-1].parts[-1].end, before[0].parts[0].start
    head = after[0].parts
    after[0] = replace(after[0], parts=(head[0].between_points(start, head[0].end), *head[1:]))
    tail = after[-1].parts
    after[-1] = replace(after[-1], parts=(*tail[:-1], tail[-1].between_points(tail[-1].start, end)))
    if fold is True:
        before[-1] = _straight(one_edge(before[-1], after.pop(0), before[-1].name))
    elif fold is False:
        before[0] = _straight(one_edge(after.pop(), before[0], before[0].name))
    ring = (*before, *after)
    at = next(index for index, edge in enumerate(ring) if edge.name == lead)
    return (*ring[at:], *ring[:at])


def _straight(edge: Edge) -> Edge:
    """A fold edge, which is one straight run."""
    return replace(edge, parts=(Path.through(edge.parts[0].start, edge.parts[-1].end),))


def _lines(one: Piece, other: Piece) -> tuple[ReferenceLine, ...]:
    """The lines of both; those of one name, which continue each other, as one."""
    lines = []
    for line in one.lines:
        twin = line_named(other, line.name)
        order = _order(line, twin) if twin is not None else None
        if twin is None or order is None:
            lines.append(line)
            continue
        leads, turned = order
        parts = line_backward(twin.parts) if turned else twin.parts
        both = one_line(line.parts, parts) if leads else one_line(parts, line.parts)
        lines.append(ReferenceLine(line.name, both))
    names = {line.name for line in lines}
    return (*lines, *(line for line in other.lines if line.name not in names))


def _gone(first: Side, second: Side, names: tuple[dict[str, str], dict[str, str]], step: Join) -> list[Gone]:
    """What became of both pieces and of the names that changed."""
    line = line_of(step.origin)
    rows = []
    for side, other, new in ((first, second, names[0]), (second, first, names[1])):
        rows.append(Gone(side.piece.name, f"joined with `{other.piece.name}` into `{step.name}` {line}"))
        rows.append(Gone(side.edge.name, f"joined with `{other.piece.name}.{other.edge.name}` {line}"))
        into = f"joined into darts inside {line}"
        rows += (Gone(dart, into) for dart in side.edge.darts)
        rows += (Gone(old, f"named `{now}` {line}") for old, now in new.items() if old != now)
    return rows
