"""Owns the verb `face`: a facing is derived from edges of a piece, to lie on them; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.facing import outlined, strip_of
from specc.alteration.grain import grain_across
from specc.alteration.refusal import Refusal, found, missing
from specc.geometry.region import contains, crosses_itself
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named, names_of, piece_named
from specc.pattern.outline import drawn_outline, flat_outline, grain_direction
from specc.pattern.piece import Piece

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.facing import Strip
    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.expression import Expression
    from specc.model.reshaping import Face
    from specc.pattern.piece import Edge

TOUCH: Final = 0.1  # mm; how far beside the piece the inner edge may lie


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Face, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces and a facing behind the one faced, as deep as asked all along; the piece stays as it is.

    The facing's edges have the names of those that they face and of the edges along which it ends; they are
    as long as those as sewn. The inner edge is `<edge>-inner`, after the edge named first.
    """
    piece = found(pieces, step.edges[0].piece, step.edges[0].origin)
    if isinstance(piece, Refusal):
        return piece
    by = evaluate(step.by)
    if by <= SAME:
        return Refusal("amount-not-positive", (("by", by),), step.origin, "give the depth of the facing")
    if piece_named(pieces, step.name) is not None:
        return Refusal("piece-name-taken", (("name", step.name),), step.origin, "take another name")
    edges = _row(piece, step)
    if isinstance(edges, Refusal):
        return edges
    strip = strip_of(piece, edges)
    facts: Facts = (("piece", piece.name), ("edge", step.edges[0].name), ("by", by))
    dart = _in_the_way(piece, edges, by)
    if dart is not None:
        cure = "release or swing `{dart}` first, or take a smaller depth"
        return Refusal("facing-meets-dart", (*facts, ("dart", dart)), step.origin, cure)
    tightest = strip.tightest()
    if tightest <= by:
        more = (*facts, ("radius", tightest))
        return Refusal("facing-too-tight", more, step.origin, "take a depth below {radius}")
    drawn = outlined(strip, by, name=f"{step.edges[0].name}-inner")
    cure = "take a smaller depth, or face other edges with it"
    if drawn is None:
        return Refusal("facing-too-deep", facts, step.origin, cure)
    facing = _facing(piece, step.name, drawn, edges)
    if crosses_itself(flat_outline(facing)) or not _lies_inside(piece, strip, facing):
        return Refusal("facing-too-deep", facts, step.origin, cure)
    return tuple(new for old in pieces for new in ((old, facing) if old is piece else (old,)))


def _row(piece: Piece, step: Face) -> tuple[Edge, ...] | Refusal:
    """The edges to be faced in the order of the outline, in which they follow one another."""
    for ref in step.edges:
        facts: Facts = (("piece", piece.name), ("name", ref.name))
        if ref.piece != piece.name:
            more = (("piece", piece.name), ("other", f"{ref.piece}.{ref.name}"))
            return Refusal(
                "face-other-piece", more, ref.origin, "name edges of one piece, or join the pieces"
            )
        edge = edge_named(piece, ref.name)
        if edge is None:
            known = ref.name in names_of(piece)
            return Refusal("not-an-edge", facts, ref.origin, "name edges") if known else missing(piece, ref)
        if edge.name == piece.fold:
            return Refusal("face-along-fold", facts, ref.origin, "unfold `{piece}` first")
        if edge.gathers or edge.folds:
            cure = "face it before it is gathered or folded, or sew a band to it"
            return Refusal("face-gathered", facts, ref.origin, cure)
    names = {ref.name for ref in step.edges}
    count = len(piece.edges)
    starts = [
        index
        for index, edge in enumerate(piece.edges)
        if edge.name in names and piece.edges[index - 1].name not in names
    ]
    if len(starts) != 1 or len(names) >= count - 1:
        cure = "name edges that follow one another, and leave two others free for its ends"
        return Refusal("face-not-a-row", (("piece", piece.name),), step.origin, cure)
    return tuple(piece.edges[(starts[0] + index) % count] for index in range(len(names)))


def _in_the_way(piece: Piece, edges: tuple[Edge, ...], by: float) -> str | None:
    """A dart that reaches under the facing and is not closed with it: inside, or on an edge further away."""
    index = piece.edges.index(edges[0])
    beside = {piece.edges[index - 1].name, piece.edges[(index + len(edges)) % len(piece.edges)].name}
    closed = beside | {edge.name for edge in edges}
    reaching: list[tuple[str, tuple[Point, ...]]] = [
        (dart.name, (dart.pivot,)) for dart in piece.darts if dart.edge not in closed
    ]
    reaching += [(d.name, (d.top, d.first, d.bottom, d.second)) for d in piece.two_pointed]
    runs = [part for edge in edges for part in edge.parts]
    return next(
        (
            name
            for name, points in reaching
            if any(run.distance_to(point) < by for run in runs for point in points)
        ),
        None,
    )


def _facing(piece: Piece, name: str, drawn: tuple[Edge, ...], faced: tuple[Edge, ...]) -> Piece:
    """The facing with its grain, notches and fold."""
    kept = {edge.name for edge in faced}
    on_fold = piece.fold in {edge.name for edge in drawn}
    facing = Piece(
        name,
        name.replace("-", " "),
        drawn,
        notches=tuple(notch for notch in piece.notches if notch.edge in kept),
        fold=piece.fold if on_fold else None,
        cut=2 * piece.cut if piece.fold and not on_fold else piece.cut,
    )
    if piece.grain is None:
        return facing
    return replace(facing, grain=grain_across(flat_outline(facing), grain_direction(piece)))


def _lies_inside(piece: Piece, strip: Strip, facing: Piece) -> bool:
    """Whether the inner edge lies on the piece, with the darts opened again that were closed."""
    outline = drawn_outline(piece)
    polygon = outline.flattened()[:-1]
    inner = facing.edges[-2].parts[0]
    whole = inner.length()
    places = (strip.unclosed(inner.point_at(whole * share / 16)) for share in range(1, 16))
    return all(contains(polygon, place) or outline.distance_to(place) <= TOUCH for place in places)
