"""Owns the verb `unfold`: half a piece on the fold becomes the whole piece; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import radians
from typing import TYPE_CHECKING, Final

from specc.alteration.edges import (
    dart_backward,
    edge_backward,
    line_backward,
    notch_backward,
    one_edge,
    one_line,
)
from specc.alteration.refusal import Refusal, found, line_of
from specc.alteration.runs import replaced
from specc.pattern.lookup import names_of
from specc.pattern.measure import stitched_length
from specc.pattern.outline import fold_mirror, moved_dart, moved_two_pointed
from specc.pattern.piece import Gone, NamedPoint, ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Rigid
    from specc.model.expression import Expression
    from specc.model.reshaping import Unfold
    from specc.pattern.piece import Edge, Notch, Piece
    from specc.source import Span

ON: Final = 1e-3  # mm; what lies this near to the fold lies on it
SMOOTH: Final = radians(1.0)  # an edge that stands square to the fold but for so little runs across it
RIGHT, LEFT = "-right", "-left"  # the drawn half, the mirrored half


@dataclass(frozen=True, slots=True)
class Joint:
    """An edge that runs across the fold as one: from its right half to its left one, or the other way."""

    edge: str
    right_first: bool


def apply(
    pieces: tuple[Piece, ...], step: Unfold, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces drawn whole, without a fold; the fold edge stays as a reference line under its name."""
    for ref in step.pieces:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        facts = (("piece", piece.name),)
        mirror = fold_mirror(piece)
        if mirror is None:
            return Refusal("not-on-fold", facts, ref.origin, "leave it as it is")
        fold = next(edge for edge in piece.edges if edge.name == piece.fold)
        if fold.darts:
            more = (*facts, ("dart", fold.darts[0]))
            return Refusal("dart-on-fold", more, ref.origin, "swing it into another edge first")
        known = names_of(piece)
        taken = next((f"{n}{side}" for n in known for side in (RIGHT, LEFT) if f"{n}{side}" in known), None)
        if taken is not None:
            more = (*facts, ("name", taken))
            return Refusal("part-name-taken", more, ref.origin, "give that part of the block another name")
        whole = _whole(piece, fold, mirror)
        pieces = replaced(pieces, replace(whole, gone=(*piece.gone, *_gone(piece, whole, step.origin))))
    return pieces


def _gone(piece: Piece, whole: Piece, origin: Span) -> list[Gone]:
    """What became of the names that the whole piece has no longer, and of the fold edge."""
    kept, line = frozenset(names_of(whole)), line_of(origin)
    rows = [Gone(piece.fold or "", f"unfolded {line} and is a reference line now")]
    rows += (
        Gone(name, f"unfolded into `{name}{RIGHT}` and `{name}{LEFT}` {line}")
        for name in names_of(piece)
        if name not in kept
    )
    return rows


def _whole(piece: Piece, fold: Edge, mirror: Rigid) -> Piece:
    index = piece.edges.index(fold)
    half = piece.edges[index + 1 :] + piece.edges[:index]
    on_fold = fold.start, fold.end
    rights = [_named(edge, RIGHT, on_fold) for edge in half]
    lefts = [_named(_mirrored(edge, mirror), LEFT, on_fold) for edge in reversed(half)]
    across = fold.parts[0].start_direction()
    joints: list[Joint] = []
    # At the fold's start the drawn half ends and the mirrored one begins.
    if abs(rights[-1].parts[-1].end_direction().dot(across)) <= SMOOTH:
        joints.append(Joint(half[-1].name, right_first=True))
        rights[-1] = one_edge(rights[-1], lefts.pop(0), half[-1].name)
    # At its end the mirrored half comes back, unless the only edge has been closed there already.
    if lefts and abs(rights[0].parts[0].start_direction().dot(across)) <= SMOOTH:
        joints.append(Joint(half[0].name, right_first=False))
        rights[0] = one_edge(lefts.pop(), rights[0], half[0].name)
    edges = (*rights, *lefts)
    corners = {edge.start for edge in edges}
    points = tuple(
        NamedPoint(name, at)
        for name, at in ((fold.start, fold.parts[0].start), (fold.end, fold.parts[-1].end))
        if name not in corners
    )
    lead = half[0].name if index == 0 else piece.edges[0].name
    first = next(i for i, e in enumerate(edges) if e.name in {lead, f"{lead}{RIGHT}"})
    sides = _both(piece, mirror, edges)
    return replace(
        piece,
        edges=(*edges[first:], *edges[:first]),
        darts=sides.darts,
        two_pointed=sides.two_pointed,
        lines=(*_lines(piece, fold, mirror), ReferenceLine(fold.name, fold.parts)),
        points=(*sides.points, *points),
        notches=tuple(_notches(piece, half, {joint.edge: joint for joint in joints})),
        fold=None,
    )


def _mirrored(edge: Edge, mirror: Rigid) -> Edge:
    """The edge on the other side of the fold, as the outline goes on there."""
    back = edge_backward(edge)
    return replace(back, parts=tuple(part.transformed(mirror) for part in back.parts))


def _named(edge: Edge, side: str, on_fold: tuple[str, str]) -> Edge:
    """The edge with the names of its side; corners on the fold keep theirs."""
    start, end = (name if name in on_fold else f"{name}{side}" for name in (edge.start, edge.end))
    darts = tuple(f"{name}{side}" for name in edge.darts)
    return replace(edge, name=f"{edge.name}{side}", start=start, end=end, darts=darts)


def _both(piece: Piece, mirror: Rigid, edges: tuple[Edge, ...]) -> Piece:
    """The piece with its darts and points on both sides; points on the fold once, under their own names."""
    hosts = {dart: edge.name for edge in edges for dart in edge.darts}
    darts = [replace(d, name=f"{d.name}{RIGHT}") for d in piece.darts]
    darts += [replace(dart_backward(moved_dart(d, mirror)), name=f"{d.name}{LEFT}") for d in piece.darts]
    darts = [replace(dart, edge=hosts[dart.name]) for dart in darts]
    inner = [replace(d, name=f"{d.name}{RIGHT}") for d in piece.two_pointed]
    inner += [replace(moved_two_pointed(d, mirror), name=f"{d.name}{LEFT}") for d in piece.two_pointed]
    points = []
    for point in piece.points:
        twin = mirror(point.at)
        if twin.distance(point.at) <= 2.0 * ON:
            points.append(point)
        else:
            points += (NamedPoint(f"{point.name}{RIGHT}", point.at), NamedPoint(f"{point.name}{LEFT}", twin))
    return replace(piece, darts=tuple(darts), two_pointed=tuple(inner), points=tuple(points))


def _lines(piece: Piece, fold: Edge, mirror: Rigid) -> list[ReferenceLine]:
    """The lines on both sides; one that ends on the fold goes on across it, one that lies in it stays."""
    along = fold.parts[0]
    lines = []
    for line in piece.lines:
        ends = line.parts[0].start, line.parts[-1].end
        first, last = (along.distance_to(end) <= ON for end in ends)
        twin = tuple(part.transformed(mirror) for part in line.parts)
        back = line_backward(twin)
        if first and last:
            lines.append(line)
        elif first:
            lines.append(ReferenceLine(line.name, one_line(back, line.parts)))
        elif last:
            lines.append(ReferenceLine(line.name, one_line(line.parts, back)))
        else:
            lines += (
                ReferenceLine(f"{line.name}{RIGHT}", line.parts),
                ReferenceLine(f"{line.name}{LEFT}", twin),
            )
    return lines


def _notches(piece: Piece, half: tuple[Edge, ...], joints: dict[str, Joint]) -> list[Notch]:
    """The notches on both halves of every edge; across the fold they are counted along the whole."""
    edges = {edge.name: edge for edge in half}
    notches: list[Notch] = []
    for notch in piece.notches:
        if notch.edge == piece.fold:
            continue
        edge = edges[notch.edge]
        joint = joints.get(edge.name)
        back = notch_backward(notch, edge)
        if joint is None:
            notches += (
                replace(notch, edge=f"{edge.name}{RIGHT}"),
                replace(back, edge=f"{edge.name}{LEFT}"),
            )
        else:
            first, second = (notch, back) if joint.right_first else (back, notch)
            notches += (first, replace(second, at=second.at + stitched_length(edge)))
    return notches
