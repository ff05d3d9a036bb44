"""Owns what is measured on a piece: edges as sewn and drawn, places, darts, lines; knows no outlines."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.region import contains
from specc.geometry.tolerance import SAME
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.pattern.piece import Edge, Piece, ReferenceLine, TwoPointedDart


@dataclass(frozen=True, slots=True)
class PlaceOnEdge:
    """A place on an edge: `along` mm from the start of part number `part`, and the direction there."""

    part: int
    along: float
    at: Point
    direction: Point


def run_length(edge: Edge) -> float:
    """The length of cloth along the edge in millimetres: darts closed, gathers let out, folds opened."""
    return sum(part.length() for part in edge.parts)


def stitched_length(edge: Edge) -> float:
    """The length of the edge as sewn, in millimetres: darts closed, gathers drawn in, folds laid."""
    gathered = sum(gathers.amount for gathers in edge.gathers)
    return run_length(edge) - gathered - sum(fold.amount for fold in edge.folds)


def drawn_length(edge: Edge) -> float:
    """The length of the edge along the paper, in millimetres: dart mouths included, straight across."""
    mouths = sum(before.end.distance(after.start) for before, after in pairwise(edge.parts))
    return run_length(edge) + mouths


def place_on_edge(edge: Edge, stitched: float, *, within: float = 0.0) -> PlaceOnEdge:
    """The place that many stitched millimetres from the start corner; beyond an end, that end.

    Where a dart opens there, the place is the end of the part before it; where a fold lies, `within` so much
    cloth behind its beginning.
    """
    left = _interpolated(stitched, _knots(edge)) + within
    last = len(edge.parts) - 1
    for index, part in enumerate(edge.parts):
        length = part.length()
        if left <= length or index == last:
            along = min(length, max(0.0, left))
            return PlaceOnEdge(index, along, part.point_at(along), part.direction_at(along))
        left -= length
    raise AssertionError(edge.name)


def stitched_at(edge: Edge, part: int, along: float) -> float:
    """The stitched length from the start corner to a place on a part: `place_on_edge` the other way round."""
    run = sum(before.length() for before in edge.parts[:part]) + along
    return _interpolated(run, tuple((drawn, sewn) for sewn, drawn in _knots(edge)))


def stitched_where(edge: Edge, point: Point) -> float:
    """The stitched length from the start corner to where the edge comes nearest to a point."""
    part = min(range(len(edge.parts)), key=lambda index: edge.parts[index].distance_to(point))
    return stitched_at(edge, part, edge.parts[part].length_at(point))


def _knots(edge: Edge) -> tuple[tuple[float, float], ...]:
    """Pairs of stitched length and length of cloth between which the one is in proportion to the other."""
    whole = stitched_length(edge)
    stops = {0.0, whole}
    for gathers in edge.gathers:
        stops |= {min(whole, max(0.0, gathers.start)), min(whole, max(0.0, gathers.end))}
    folds = [(min(whole, max(0.0, fold.at)), fold.amount) for fold in edge.folds]
    stops |= {at for at, _ in folds}
    knots: list[tuple[float, float]] = []
    for stop in sorted(stops):
        cloth = stop + sum(_let_out(stop, g.start, g.end, g.amount) for g in edge.gathers)
        folded = sum(amount for at, amount in folds if at < stop)
        here = sum(amount for at, amount in folds if at == stop)
        knots.append((stop, cloth + folded))
        if here > 0.0:
            knots.append((stop, cloth + folded + here))
    return tuple(knots)


def _let_out(stitched: float, start: float, end: float, amount: float) -> float:
    return amount * min(1.0, max(0.0, (stitched - start) / (end - start)))


def _interpolated(value: float, knots: tuple[tuple[float, float], ...]) -> float:
    for (a, b), (c, d) in pairwise(knots):
        if value <= c:
            return b + (d - b) * (value - a) / (c - a) if c > a else b
    return knots[-1][1]


def dart_width(dart: Dart | TwoPointedDart) -> float:
    """What the dart takes in where it is widest, straight across, in millimetres."""
    return dart.first.distance(dart.second)


def dart_angle(dart: Dart) -> float:
    """The angle between the legs at the pivot, in radians."""
    return abs((dart.first - dart.pivot).angle_to(dart.second - dart.pivot))


def dart_depth(dart: Dart | TwoPointedDart) -> float:
    """How deep the dart is: from the middle of its mouth to its pivot, or from top to bottom, in mm."""
    if isinstance(dart, Dart):
        return dart.first.toward(dart.second, 0.5).distance(dart.pivot)
    return dart.top.distance(dart.bottom)


def dart_tip(dart: Dart) -> Point:
    """Where the stitching of the dart stops: `short` of the pivot, toward the middle of the mouth."""
    depth = dart_depth(dart)
    return (
        dart.pivot.toward(dart.first.toward(dart.second, 0.5), dart.short / depth)
        if depth > 0.0
        else dart.pivot
    )


def two_pointed_outline(dart: TwoPointedDart) -> Path:
    """The closed outline of a dart inside the piece."""
    return Path.through(dart.top, dart.first, dart.bottom, dart.second, dart.top)


def taken_in(part: Path, dart: TwoPointedDart) -> float:
    """What a dart inside the piece takes out of a line that crosses it, in millimetres along the line."""
    outline = two_pointed_outline(dart)
    corners = outline.flattened()[:-1]
    stops = sorted({0.0, part.length(), *(crossing.along for crossing in crossings(part, outline))})
    return sum(
        high - low
        for low, high in pairwise(stops)
        if high - low > SAME and contains(corners, part.point_at(0.5 * (low + high)))
    )


def line_length(piece: Piece, line: ReferenceLine) -> float:
    """The length along a reference line as sewn, in millimetres: less what darts take in."""
    return sum(part.length() - sum(taken_in(part, dart) for dart in piece.two_pointed) for part in line.parts)
