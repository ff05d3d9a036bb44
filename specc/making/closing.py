"""Owns laying out closures on the pieces: sides that meet, and fastenings spaced along them.

Knows nothing of what the fastenings are.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.geometry.crossing import crossings
from specc.geometry.region import signed_area
from specc.making.closed import Closed, FasteningPlace
from specc.making.spacing import Spread, spread
from specc.making.topology import crossed
from specc.pattern.lookup import line_named, part_of
from specc.pattern.measure import place_on_edge, stitched_at, stitched_length
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.diagnostics import Diagnostic
    from specc.making.topology import Corner, Topology
    from specc.model.closing import Closing, Places, Spacing
    from specc.model.construction import Finish
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Edge, Piece

NO_OTHER_SIDE = declare("SPC524", "closure-lacks-side", Severity.ERROR, "closure `{name}` {lack}")
DO_NOT_FIT = declare(
    "SPC526", "fastenings-do-not-fit", Severity.ERROR, "the places of closure `{name}` do not fit: {reason}"
)

ON: Final = 0.1  # mm; a line that ends this near an edge ends on it
# A hole begins so far beyond the place, for the thread on which a button stands. Common practice, no source:
# 1/8 in.
BEYOND: Final = 3.175


@dataclass(frozen=True, slots=True)
class _Link:
    """An edge of a side, travelled forward or backward, beginning `start` mm along the side."""

    piece: Piece
    edge: Edge
    forward: bool
    start: float

    @property
    def length(self) -> float:
        return stitched_length(self.edge)


@dataclass(frozen=True, slots=True)
class _Side:
    """A side of a closure from one end to the other; `ends` are the names of its two outer corners."""

    links: tuple[_Link, ...]
    ends: tuple[Corner, Corner]

    @property
    def length(self) -> float:
        return sum(link.length for link in self.links)


def closed(
    finish: Finish,
    pieces: tuple[Piece, ...],
    topology: Topology,
    evaluate: Callable[[Expression], float],
) -> tuple[tuple[Closed, ...], tuple[Diagnostic, ...]]:
    """The closure as it lies on the pieces of one size; none for a finish or hem, or without two sides."""
    closing, making = finish.closing, finish.making
    if closing is None:
        return (), ()
    counts = [_times(side, topology) for side in (closing.first, closing.second)]
    lack = _lack(closing, counts)
    sides = [_side(side, pieces, topology) for side in (closing.first, closing.second)]
    first, second = sides
    if lack is None and (first is None or second is None):
        lack = "goes along edges that do not follow one another"
    if lack is not None or first is None or second is None:
        cure = "name the edge on which it closes: `along EDGE to EDGE`"
        return (), (NO_OTHER_SIDE.at(finish.origin, name=finish.name, lack=lack).help(cure),)
    along: tuple[float, ...] | str = ()
    if closing.spacing is not None:
        along = _distances(first, closing.spacing, evaluate)
    if isinstance(along, str):
        return (), (DO_NOT_FIT.at(finish.origin, name=finish.name, reason=along),)
    places: tuple[FasteningPlace, ...] = ()
    backward = _from_the_end(first, closing.spacing)
    told = tuple(first.length - one if backward else one for one in along)
    if making.places is not None:
        places = _places(first, along, told, making.places, evaluate)
    if making.places is not None and not closing.on_itself:
        turned = crossed(first.ends, second.ends, same_piece=first.ends[0][0] == second.ends[0][0])
        facing = tuple(second.length - one if turned else one for one in along)
        under = replace(making.places, inset=making.places.other, hole=None)
        places += _places(second, facing, told, under, evaluate)
    count = 1 if closing.on_itself else counts[0]
    laps = 0.0 if making.laps is None else evaluate(making.laps)
    corner = first.ends[1 if backward else 0][2]
    return (Closed(finish.name, count, first.length, second.length, laps, corner, places),), ()


def _from_the_end(side: _Side, spacing: Spacing | None) -> bool:
    """Whether the first fastening is counted from the other end of the side."""
    return spacing is not None and spacing.first is not None and spacing.first[1] == side.ends[1][2]


def _times(side: tuple[PartRef, ...], topology: Topology) -> int:
    return min(len(topology.sides(ref.piece or "")) for ref in side)


def _lack(closing: Closing, counts: list[int]) -> str | None:
    """What is missing for two sides, in words."""
    edge = f"`{closing.first[0].piece}.{closing.first[0].name}`"
    if closing.on_itself:
        return None if counts[0] > 1 else f"has one side: {edge} is there once"
    if counts[0] != counts[1]:
        other = f"`{closing.second[0].piece}.{closing.second[0].name}`"
        words = {1: "once", 2: "twice"}
        return f"closes {edge}, which is there {words[counts[0]]}, on {other}, {words[counts[1]]}"
    return None


def _side(refs: tuple[PartRef, ...], pieces: tuple[Piece, ...], topology: Topology) -> _Side | None:
    """The side from the first edge's outer corner on; None where its edges do not hang together."""
    ends = topology.chain_ends(refs, 0)
    if ends is None:
        return None
    links: list[_Link] = []
    at, start = ends[0], 0.0
    for ref in refs:
        piece, edge = part_of(pieces, ref.piece or "", ref.name)
        forward = topology.meet(at, (piece.name, 0, edge.start))
        if not forward and not topology.meet(at, (piece.name, 0, edge.end)):
            return None
        link = _Link(piece, edge, forward, start)
        links.append(link)
        at, start = (piece.name, 0, edge.end if forward else edge.start), start + link.length
    return _Side(tuple(links), ends)


# --- along the side ---


def _distances(
    side: _Side, spacing: Spacing, evaluate: Callable[[Expression], float]
) -> tuple[float, ...] | str:
    """How far along the side the fastenings lie, from the one called the first; or why they cannot."""
    ends: list[float | None] = []
    for end in (spacing.first, spacing.last):
        if end is None:
            ends.append(None)
            continue
        by, corner = end
        names = [name for _, _, name in side.ends]
        if corner not in names:
            return f"`{corner}` is no end of its side"
        ends.append(evaluate(by) if corner == names[0] else side.length - evaluate(by))
    met = None
    if spacing.line is not None:
        met = _met(side, spacing.line)
        if met is None:
            return f"`{spacing.line}` does not meet its side"
    every = None if spacing.every is None else evaluate(spacing.every)
    return spread(Spread(side.length, spacing.count, every, ends[0], ends[1], met))


def _met(side: _Side, name: str) -> float | None:
    """How far along the side the reference line meets it."""
    for link in side.links:
        line = line_named(link.piece, name)
        if line is None:
            continue
        for index, part in enumerate(link.edge.parts):
            met = [crossing.along for run in line.parts for crossing in crossings(part, run)]
            tips = (line.parts[0].start, line.parts[-1].end)
            met += [part.length_at(tip) for tip in tips if part.is_near(tip, ON)]
            if met:
                at = stitched_at(link.edge, index, met[0])
                return link.start + (at if link.forward else link.length - at)
    return None


# --- on the pieces ---


def _places(
    side: _Side,
    along: tuple[float, ...],
    told: tuple[float, ...],
    places: Places,
    evaluate: Callable[[Expression], float],
) -> tuple[FasteningPlace, ...]:
    """The places so far `along` the side from its first end; `told` are the distances as counted."""
    inset, hole = evaluate(places.inset), None if places.hole is None else evaluate(places.hole)
    # A hole along the edge begins beyond the place on the side of the first one.
    ahead = 1.0 if len(along) < 2 or along[0] <= along[1] else -1.0
    found = []
    for number, (distance, counted) in enumerate(zip(along, told, strict=True), 1):
        link = _link_at(side, distance)
        stitched = distance - link.start if link.forward else link.start + link.length - distance
        on_edge = place_on_edge(link.edge, stitched)
        # The outline's left is inside when it runs counter-clockwise.
        inward = on_edge.direction.left() * (1.0 if signed_area(drawn_outline(link.piece)) > 0.0 else -1.0)
        at = on_edge.at + inward * inset
        way = inward if places.across else on_edge.direction * (ahead if link.forward else -ahead)
        ends = None if hole is None else (at - way * BEYOND, at + way * (hole - BEYOND))
        found.append(FasteningPlace(number, link.piece.name, link.edge.name, counted, at, ends))
    return tuple(found)


def _link_at(side: _Side, distance: float) -> _Link:
    for link, following in pairwise((*side.links, None)):
        if link is not None and (following is None or distance <= following.start):
            return link
    raise AssertionError(side)
