"""Owns laying a piece onto another: where its outline comes to lie, and whether it may lie there.

Knows nothing of how it is sewn.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi, radians
from typing import TYPE_CHECKING, Final

from specc.alteration.level import level_of
from specc.alteration.refusal import Refusal
from specc.diagnostics import Severity, declare
from specc.geometry.crossing import crossings
from specc.geometry.lying import reach_beyond, shared_area
from specc.geometry.point import Rigid
from specc.geometry.region import contains, signed_area
from specc.making.attached import Distances, Misplaced, Placed
from specc.model.attachment import OnLevel
from specc.pattern.lookup import edge_named, piece_named, point_named
from specc.pattern.measure import dart_tip, two_pointed_outline
from specc.pattern.outline import (
    flat_outline,
    fold_mirror,
    grain_direction,
    transformed,
    unfolded_outline,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.model.attachment import SewnOn
    from specc.model.expression import Expression
    from specc.pattern.piece import Piece

NO_PLACE = declare(
    "SPC433", "place-not-found", Severity.ERROR, "there is no such place on `{piece}`: {reason}"
)
OFF_PIECE = declare(
    "SPC535",
    "attached-off-piece",
    Severity.ERROR,
    "`{what}` does not lie wholly on `{piece}`: it reaches {by} beyond it",
)
OVER_DART = declare(
    "SPC536", "attached-over-dart", Severity.ERROR, "`{what}` lies over the dart `{piece}.{dart}`"
)

# 1/8 in inside the outline, so that what is sewn on covers the holes: common practice, no source.
DRILL_INSIDE: Final = 3.175
_CORNER: Final = radians(15.0)  # an outline that turns by less has no corner there
_TOUCHING: Final = 0.1  # mm; two outlines as flattened may lie so far apart where they are one
_TOUCHED: Final = 1.0  # mm2; a corner that just touches a dart shares no more with it
_STEP: Final = 0.1  # mm; so far along the level one sees on which side of an edge the piece lies


def lay(
    asked: SewnOn, pieces: tuple[Piece, ...], sewn: tuple[str, ...], evaluate: Callable[[Expression], float]
) -> Placed | Misplaced:
    """The piece laid onto the other, or why it cannot be; `sewn` are the edges that are sewn down."""
    piece, on = piece_named(pieces, asked.piece), piece_named(pieces, asked.on)
    if piece is None or on is None:
        raise KeyError(asked.name)
    corner = point_named(piece, asked.corner.name)
    if corner is None:
        return _no_place(asked, piece, f"`{piece.name}.{asked.corner.name}` was cut away")
    found = _spot(asked, on, evaluate)
    if isinstance(found, Misplaced):
        return found
    spot, distances = found
    turned = _turn(asked, piece, on, spot, evaluate)
    laid = transformed(transformed(piece, Rigid.turning(corner, turned)), Rigid.moving(spot - corner))
    outline = unfolded_outline(laid)
    fault = _unfit(asked, on, outline)
    if fault is not None:
        return fault
    across = _across_fold(on, outline)
    twice = (on.fold is not None or on.cut > 1) and not across and asked.side is None
    drills = tuple(_drills(outline))
    return Placed(
        asked.name, piece.name, on.name, outline, spot, turned, sewn, drills, distances, 1 + twice, across
    )


def _no_place(asked: SewnOn, piece: Piece, reason: str, cure: str = "name another") -> Misplaced:
    origin = asked.at.origin if piece.name == asked.on else asked.corner.origin
    return Misplaced(NO_PLACE, origin, (("piece", piece.name), ("reason", reason)), cure)


# --- the spot ---


def _spot(
    asked: SewnOn, on: Piece, evaluate: Callable[[Expression], float]
) -> tuple[Point, Distances | None] | Misplaced:
    at = asked.at
    if isinstance(at, OnLevel):
        return _on_level(asked, at, on, evaluate)
    spot = point_named(on, at.name)
    if spot is None:
        return _no_place(asked, on, f"`{on.name}.{at.name}` was cut away")
    return spot, None


def _on_level(
    asked: SewnOn, at: OnLevel, on: Piece, evaluate: Callable[[Expression], float]
) -> tuple[Point, Distances] | Misplaced:
    """The spot on the level, from the one place where that meets the edge, into the piece."""
    level = level_of(on, at.level, evaluate)
    line = level_of(on, replace(at.level, above=None), evaluate)
    edge, name = edge_named(on, at.edge.name), f"`{on.name}.{at.edge.name}`"
    if isinstance(level, Refusal) or isinstance(line, Refusal):
        return _no_place(asked, on, f"the line `{at.level.line}` was cut away")
    if edge is None:
        return _no_place(asked, on, f"{name} was cut away")
    met = [crossing for part in edge.parts for crossing in crossings(level.line, part)]
    if len(met) != 1:
        how = "does not meet" if not met else f"meets more than once, at {len(met)} places,"
        cure = "measure from an edge that the level meets once, or take a point of the piece: `at POINT`"
        return _no_place(asked, on, f"the level {how} {name}", cure)
    polygon = flat_outline(on)
    into = 1.0 if contains(polygon, level.line.point_at(met[0].along + _STEP)) else -1.0
    distance = evaluate(at.distance)
    spot = level.line.point_at(met[0].along + into * distance)
    at_line = line.line.point_at(line.line.length_at(spot))
    below = 0.0 if at.level.above is None else -evaluate(at.level.above)
    return spot, Distances(distance, met[0].at, below, at_line)


def _turn(
    asked: SewnOn, piece: Piece, on: Piece, spot: Point, evaluate: Callable[[Expression], float]
) -> float:
    """By how much the piece is turned from where it was drafted."""
    own, along = grain_direction(piece), grain_direction(on)
    if asked.square_to is not None:
        edge = edge_named(on, asked.square_to.name)
        if edge is None:
            raise KeyError(asked.square_to.name)
        nearest = min(edge.parts, key=lambda part: part.distance_to(spot))
        square = nearest.direction_at(nearest.length_at(spot)).left()
        return own.angle_to(square if square.dot(along) > 0.0 else -square)
    return own.angle_to(along) + (0.0 if asked.turned is None else evaluate(asked.turned))


# --- whether it may lie there ---


def _unfit(asked: SewnOn, on: Piece, outline: Path) -> Misplaced | None:
    points = outline.flattened()[:-1]
    beneath = unfolded_outline(on).flattened()[:-1] if _across_fold(on, outline) else flat_outline(on)
    by = reach_beyond(points, beneath)
    if by > _TOUCHING:
        cure = f"move it in, or lay another corner of `{asked.piece}` on that spot"
        return Misplaced(
            OFF_PIECE, asked.at.origin, (("what", asked.piece), ("piece", on.name), ("by", by)), cure
        )
    for name, wedge in _wedges(on):
        if shared_area(points, wedge) > _TOUCHED:
            cure = "move it off the dart, or swing or release the dart in `alter`"
            return Misplaced(
                OVER_DART, asked.at.origin, (("what", asked.piece), ("piece", on.name), ("dart", name)), cure
            )
    return None


def _wedges(piece: Piece) -> Iterator[tuple[str, tuple[Point, ...]]]:
    """The cloth that each dart takes in, as a polygon; beyond the fold too."""
    found: list[tuple[str, tuple[Point, ...]]] = [
        (dart.name, (dart.first, dart_tip(dart), dart.second)) for dart in piece.darts
    ]
    found += [(dart.name, two_pointed_outline(dart).flattened()[:-1]) for dart in piece.two_pointed]
    mirror = fold_mirror(piece)
    for name, wedge in found:
        yield name, wedge
        if mirror is not None:
            yield name, tuple(mirror(point) for point in wedge)


def _across_fold(piece: Piece, outline: Path) -> bool:
    """Whether the outline lies on both sides of the fold of the piece."""
    fold = edge_named(piece, piece.fold) if piece.fold else None
    if fold is None:
        return False
    start = fold.parts[0].start
    along = (fold.parts[-1].end - start).unit()
    off = [along.cross(point - start) for point in outline.flattened()]
    return min(off) < -_TOUCHING and max(off) > _TOUCHING


# --- marks ---


def _drills(outline: Path) -> Iterator[Point]:
    """A mark inside every corner that points outward, as far from the one edge as from the other."""
    turn = 1.0 if signed_area(outline) > 0.0 else -1.0
    segments = outline.segments
    for before, after in pairwise((*segments, segments[0])):
        u, v = before.end_direction(), after.start_direction()
        angle = u.angle_to(v) * turn
        if _CORNER < angle < pi - _CORNER:
            # The point p with p.n = p.m = DRILL_INSIDE for the inward normals n of u and m of v.
            n, m = u.left() * turn, v.left() * turn
            yield after.start + (n + m) * (DRILL_INSIDE / (1.0 + n.dot(m)))
