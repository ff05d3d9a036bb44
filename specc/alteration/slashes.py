"""Owns several slashes from one edge: planned on the piece as it lies, opened one by one; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.alteration.marks import behind
from specc.alteration.refusal import Refusal, missing
from specc.alteration.slash import CLEAR
from specc.alteration.slashing import SlashEnd, Spot, in_the_way, opened, too_far
from specc.geometry.crossing import line_crossings
from specc.geometry.region import signed_area
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_at, stitched_length
from specc.pattern.outline import drawn_outline, grain_direction

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.alteration.refusal import Facts
    from specc.model.fullness import Slashed
    from specc.pattern.piece import Edge, Piece
    from specc.source import Span

STEEP: Final = 0.25  # sine of the angle to the grain below which an edge runs along it


@dataclass(frozen=True, slots=True)
class Slash:
    """A slash that is to be opened: how far at either end, and as what."""

    start: SlashEnd
    end: SlashEnd


def planned(
    piece: Piece, edge: Edge, places: Sequence[float], slashed: Slashed, *, origin: Span
) -> tuple[tuple[Spot, Spot], ...] | Refusal:
    """The ends of slashes from places along the stitched edge, or why one cannot be cut."""
    slashes = []
    for at in places:
        start = Spot.on(edge, at)
        if not start.is_clear:
            facts: Facts = (("piece", piece.name), ("edge", edge.name))
            cure = "keep further from the ends of the edge and from its darts"
            return Refusal("slash-at-end", facts, origin, cure)
        end = _facing(piece, start, slashed) if slashed.to else _along_grain(piece, start, origin)
        if isinstance(end, Refusal):
            return end
        facts = (("piece", piece.name), ("edge", end.edge.name))
        cure = "move the places, or say `hinged at EDGE` or `slashed to EDGE` with another edge"
        if end.edge.name == piece.fold:
            return Refusal("slash-into-fold", facts, origin, cure)
        if not end.is_clear:
            return Refusal("slash-at-end", facts, origin, cure)
        stands = in_the_way(piece, start, end, origin=origin)
        if stands is not None:
            return stands
        slashes.append((start, end))
    return tuple(slashes)


def _facing(piece: Piece, start: Spot, slashed: Slashed) -> Spot | Refusal:
    """The facing place of the edge that is named: an outline travels facing edges in opposite ways."""
    assert slashed.to is not None
    to = edge_named(piece, slashed.to.name)
    if to is None:
        return missing(piece, slashed.to)
    return Spot.on(to, (1.0 - start.at / stitched_length(start.edge)) * stitched_length(to))


def _along_grain(piece: Piece, start: Spot, origin: Span) -> Spot | Refusal:
    """Where the grain line through a place of the outline comes to the outline again, through the piece."""
    counter = signed_area(drawn_outline(piece)) > 0.0
    inward = start.place.direction.left() if counter else -start.place.direction.left()
    grain = grain_direction(piece)
    steep = inward.dot(grain)
    facts: Facts = (("piece", piece.name), ("edge", start.edge.name))
    if abs(steep) < STEEP:
        cure = "name the edge on the other side: `hinged at EDGE` or `slashed to EDGE`"
        return Refusal("edge-along-grain", facts, origin, cure)
    along = grain if steep > 0.0 else -grain
    met = [
        (crossing.across, edge.name, index, crossing.along)
        for edge in piece.edges
        for index, part in enumerate(edge.parts)
        for crossing in line_crossings(part, start.place.at, along)
        if crossing.across > CLEAR
    ]
    if not met:
        # The grain line runs out through the mouth of a dart.
        cure = "move the places, or swing or release the dart first"
        return Refusal("slash-leaves-piece", (*facts, ("dart", start.edge.name)), origin, cure)
    _, name, index, length = min(met)
    to = next(edge for edge in piece.edges if edge.name == name)
    return Spot.on(to, stitched_at(to, index, length))


def opened_all(piece: Piece, slashes: Sequence[Slash], *, origin: Span) -> Piece | Refusal:
    """The piece with every slash open, in their order; each stays where it was planned on its edges."""
    left = list(slashes)
    while left:
        slash = left.pop(0)
        refusal = too_far(slash.start, slash.end, origin=origin)
        if refusal is not None:
            return refusal
        wider = opened(piece, slash.start, slash.end)
        left = [Slash(*(_after(wider, end, slash) for end in (one.start, one.end))) for one in left]
        piece = wider
    return piece


def _after(wider: Piece, end: SlashEnd, slash: Slash) -> SlashEnd:
    """The end of a slash on the piece in which another was opened: behind it, the edge may have grown."""
    old = end.spot
    edge = edge_named(wider, old.edge.name)
    assert edge is not None
    at = old.at
    for other in (slash.start.spot, slash.end.spot):
        if other.edge.name == edge.name:
            at = behind(other.at, stitched_length(edge) - stitched_length(other.edge))(at)
    return SlashEnd(Spot.on(edge, at), end.by, end.filling)
