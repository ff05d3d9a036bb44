"""Owns the verb `gather`: cloth put in between two places of an edge and gathered; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING, Final

from specc.alteration.marks import with_marks
from specc.alteration.opening import Filling
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import replaced
from specc.alteration.slash import CLEAR, stitched_place
from specc.alteration.slashes import STEEP, Slash, opened_all, planned
from specc.alteration.slashing import SlashEnd
from specc.alteration.stretching import Stretch, stretched
from specc.geometry.region import crosses_itself
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import edge_named
from specc.pattern.measure import place_on_edge, stitched_length
from specc.pattern.outline import flat_outline, grain_direction
from specc.pattern.piece import Gathers

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.expression import Expression
    from specc.model.fullness import Gather
    from specc.pattern.piece import Edge, Piece

EVERY: Final = 25.0  # mm of edge for each slash that is hinged. Common practice, no source.
FEWEST: Final = 3  # slashes in a stretch however short


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Gather, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with one wider by the amount, and the edge gathered between the places to its old length.

    Along the grain the cloth is put in evenly, all the way through. Hinged, or slashed to another edge, it is
    put in by slashes every EVERY along the edge, or a little closer.
    """
    piece = found(pieces, step.edge.piece, step.edge.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, step.edge.name)
    if edge is None:
        return missing(piece, step.edge)
    facts: Facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("edge-on-fold", facts, step.edge.origin, "gather another edge")
    by = evaluate(step.by)
    if by <= SAME:
        return Refusal("amount-not-positive", (("by", by),), step.origin, "say how much cloth is put in")
    whole = stitched_length(edge)
    low, high = sorted(
        min(whole, max(0.0, stitched_place(edge, place, evaluate))) for place in (step.start, step.end)
    )
    if high - low < CLEAR:
        cure = "gather it over a longer stretch"
        return Refusal("stretch-too-short", (*facts, ("length", high - low)), step.origin, cure)
    through = step.slashed.to is None and not step.slashed.hinged
    gathering = _stretched if through else _slashed
    gathered = gathering(piece, edge, (low, high), by, step)
    if isinstance(gathered, Refusal):
        return gathered
    if crosses_itself(flat_outline(gathered)):
        cure = "put in less, or over a longer stretch"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    return replaced(pieces, gathered)


def _slashed(
    piece: Piece, edge: Edge, stretch: tuple[float, float], by: float, step: Gather
) -> Piece | Refusal:
    """The piece opened by slashes at even places; what each puts in is one run of gathers."""
    low, high = stretch
    count = max(FEWEST, ceil((high - low) / EVERY))
    places = [low + (high - low) * (index + 0.5) / count for index in range(count)]
    ends = planned(piece, edge, places, step.slashed, origin=step.origin)
    if isinstance(ends, Refusal):
        return ends
    far = 0.0 if step.slashed.hinged else by / count
    opens = Filling(Form.FLARE)
    slashes = [Slash(SlashEnd(start, by / count, opens), SlashEnd(end, far, opens)) for start, end in ends]
    opened = opened_all(piece, slashes, origin=step.origin)
    if isinstance(opened, Refusal):
        return opened
    whole = stitched_length(edge)
    added = next(stitched_length(each) for each in opened.edges if each.name == edge.name) - whole
    # Along the gathered edge as sewn everything is where it was.
    notches = tuple(
        old if old.edge == edge.name else new for old, new in zip(piece.notches, opened.notches, strict=True)
    )
    wider = next(each for each in opened.edges if each.name == edge.name)
    wider = replace(wider, gathers=edge.gathers, folds=edge.folds)
    return _with_gathers(replace(opened, notches=notches), wider, low, high, added)


def _stretched(
    piece: Piece, edge: Edge, places: tuple[float, float], by: float, step: Gather
) -> Piece | Refusal:
    """The piece with all that lies between the grain lines through both places stretched square to them."""
    low, high = places
    stretch = _band(piece, edge, places, by)
    refusal = _along_it(piece, edge, places, stretch, step) or _in_the_way(piece, edge, stretch, step)
    if refusal is not None:
        return refusal
    wider = stretched(piece, stretch)
    amount = stretch.edge_growth(edge, high) - stretch.edge_growth(edge, low)

    def where(on: Edge) -> Callable[[float], float]:
        def moved(at: float) -> float:
            taken = 0.0
            if on.name == edge.name:
                inner = min(high, max(low, at))
                taken = stretch.edge_growth(on, inner) - stretch.edge_growth(on, low)
            return at + stretch.edge_growth(on, at) - taken

        return moved

    for old in piece.edges:
        wider = with_marks(wider, old.name, where(old))
    grown = next(each for each in wider.edges if each.name == edge.name)
    moved = where(edge)
    return _with_gathers(wider, grown, moved(low), moved(high), amount)


def _band(piece: Piece, edge: Edge, places: tuple[float, float], by: float) -> Stretch:
    """The band between two places of an edge; what holds the fold stays, else what holds the grain line."""
    low, high = (place_on_edge(edge, at).at for at in places)
    across = grain_direction(piece).left()
    if across.dot(high - low) < 0.0:
        low, high = high, low
    width = across.dot(high - low)
    held = next((each.parts[0] for each in piece.edges if each.name == piece.fold), piece.grain)
    if held is not None and across.dot(held.point_at(0.5 * held.length()) - low) > 0.5 * width:
        return Stretch(high, -across, width, by)
    return Stretch(low, across, width, by)


def _along_it(
    piece: Piece, edge: Edge, places: tuple[float, float], stretch: Stretch, step: Gather
) -> Refusal | None:
    """Why nothing can be put in where the edge runs along the grain."""
    low, high = (place_on_edge(edge, at).at for at in places)
    if stretch.width >= max(SAME, STEEP * low.distance(high)):
        return None
    cure = "name the edge on the other side: `hinged at EDGE` or `slashed to EDGE`"
    return Refusal("edge-along-grain", (("piece", piece.name), ("edge", edge.name)), step.origin, cure)


def _in_the_way(piece: Piece, edge: Edge, stretch: Stretch, step: Gather) -> Refusal | None:
    """What must not be stretched and lies in the band, if anything does."""
    facts: Facts = (("piece", piece.name), ("edge", edge.name), ("dart", edge.name))
    darts: list[tuple[str, tuple[Point, ...]]] = [
        (dart.name, (dart.first, dart.second, dart.pivot)) for dart in piece.darts
    ]
    darts += [(each.name, (each.first, each.second, each.top, each.bottom)) for each in piece.two_pointed]
    for name, points in darts:
        if stretch.holds(*points):
            cure = "swing or release `{crossed}` first, or gather another stretch"
            return Refusal("slash-crosses-dart", (*facts, ("crossed", name)), step.origin, cure)
    for each in piece.edges:
        if each.name == piece.fold and stretch.holds(each.parts[0].start, each.parts[-1].end):
            return Refusal(
                "slash-into-fold", (*facts[:1], ("edge", each.name)), step.origin, "gather less far"
            )
        # What the edge itself has gathered already it keeps, and what is put in comes on top.
        if _drawn_in(each, () if each.name == edge.name else each.gathers, stretch):
            what = "gathers" if each.gathers else f"a {each.folds[0].kind}"
            more: Facts = (("piece", piece.name), ("edge", each.name), ("what", what))
            return Refusal("edge-not-plain", more, step.origin, "gather it before, or another stretch")
    return None


def _drawn_in(edge: Edge, gathers: tuple[Gathers, ...], stretch: Stretch) -> bool:
    """Whether these gathers of the edge, or a fold of it, would be stretched."""
    if any(stretch.edge_growth(edge, g.end) - stretch.edge_growth(edge, g.start) > SAME for g in gathers):
        return True
    for fold in edge.folds:
        place = place_on_edge(edge, fold.at)
        part = edge.parts[place.part]
        if stretch.growth(part, place.along + fold.amount) - stretch.growth(part, place.along) > SAME:
            return True
    return False


def _with_gathers(piece: Piece, edge: Edge, low: float, high: float, amount: float) -> Piece:
    gathered = replace(edge, gathers=(*edge.gathers, Gathers(low, high, amount)))
    return replace(piece, edges=tuple(gathered if e.name == edge.name else e for e in piece.edges))
