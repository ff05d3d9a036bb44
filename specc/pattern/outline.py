"""Owns the outlines of a piece: darts cut out, drawn over or capped, folded or not; knows no seams."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.geometry import region
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.pattern.folding import fold_edge
from specc.pattern.piece import NamedPoint, TwoPointedDart

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.pattern.piece import Dart, Edge, Piece

UP = Point(0.0, 1.0)


def edge_path(piece: Piece, edge: Edge, across: Callable[[Dart], Path]) -> Path:
    """The edge as one path; `across` gives the run between a dart's two mouth ends."""
    darts = {dart.name: dart for dart in piece.darts}
    path = edge.parts[0]
    for name, part in zip(edge.darts, edge.parts[1:], strict=True):
        between = across(darts[name])
        runs = tuple(run for run in between.segments if run.length() > SAME)
        path = Path((*path.segments, *runs, *part.segments))
    return path


def straight_across(dart: Dart) -> Path:
    """A straight run across the mouth of a dart."""
    return Path((Line(dart.first, dart.second),))


def notched_outline(piece: Piece) -> Path:
    """The closed outline with every dart cut out to its pivot."""
    return _outline(piece, lambda dart: Path.through(dart.first, dart.pivot, dart.second))


def drawn_outline(piece: Piece) -> Path:
    """The closed outline with a straight run across every dart's mouth."""
    return _outline(piece, straight_across)


def capped_outline(piece: Piece) -> Path:
    """The closed outline with a cap on every dart, so that the folded dart's end is caught in the seam."""
    return _outline(piece, lambda dart: _cap(piece, dart))


def capped_runs(piece: Piece) -> tuple[tuple[str, Path], ...]:
    """Every edge by name with its run, in order, with a cap on every dart."""
    return tuple((edge.name, edge_path(piece, edge, lambda dart: _cap(piece, dart))) for edge in piece.edges)


def _outline(piece: Piece, across: Callable[[Dart], Path]) -> Path:
    segments = [segment for edge in piece.edges for segment in edge_path(piece, edge, across).segments]
    segments[-1] = segments[-1].between(segments[-1].start, segments[0].start)
    return Path(tuple(segments))


def _cap(piece: Piece, dart: Dart) -> Path:
    """The end of the dart's folded cloth, trued to the seam beyond the leg over which it is pressed."""
    edge = next(edge for edge in piece.edges if dart.name in edge.darts)
    index = edge.darts.index(dart.name)
    inner = (dart.pivot, dart.pivot)
    if laid_onto_second(piece, dart.first, dart.second):
        return fold_edge(edge.parts[index + 1], dart.second, dart.first, inner).reversed()
    return fold_edge(edge.parts[index].reversed(), dart.first, dart.second, inner)


def laid_onto_second(piece: Piece, first: Point, second: Point) -> bool:
    """Whether cloth folded away between two places of an edge is laid toward the second of them.

    Common practice, no source: a fold that lies across is laid down, an upright one toward the centre.
    """
    mouth = second - first
    if abs(mouth.y) > abs(mouth.x):
        return second.y < first.y
    centre = _centre(piece)
    return abs(second.x - centre) < abs(first.x - centre)


def _centre(piece: Piece) -> float:
    """Where the centre of the body lies, left or right: the fold, else the grain, else the first corner."""
    fold = next((edge.parts[0] for edge in piece.edges if edge.name == piece.fold), piece.grain)
    return (fold or piece.edges[0].parts[0]).start.x


def area(piece: Piece) -> float:
    """The area of cloth of the piece as drawn, without what its edge darts take in, in square millimetres."""
    return abs(region.signed_area(notched_outline(piece)))


def flat_outline(piece: Piece) -> tuple[Point, ...]:
    """The corners of a polygon that stands for the outline, dart mouths drawn straight across."""
    return drawn_outline(piece).flattened()[:-1]


def bounds(piece: Piece) -> tuple[Point, Point]:
    """The lower left and the upper right corner of the upright box round the outline, exact for curves."""
    return region.bounds(p for segment in drawn_outline(piece).segments for p in segment.extremes())


def grain_direction(piece: Piece) -> Point:
    """The unit direction of the grain, upward: that of the grain line, else straight up."""
    if piece.grain is None or piece.grain.start.distance(piece.grain.end) <= SAME:
        return UP
    along = (piece.grain.end - piece.grain.start).unit()
    return -along if along.dot(UP) < 0.0 else along


def transformed(piece: Piece, motion: Rigid) -> Piece:
    """The piece where the motion takes it; every name stays."""
    return replace(
        piece,
        edges=tuple(replace(e, parts=tuple(p.transformed(motion) for p in e.parts)) for e in piece.edges),
        darts=tuple(moved_dart(dart, motion) for dart in piece.darts),
        two_pointed=tuple(moved_two_pointed(dart, motion) for dart in piece.two_pointed),
        lines=tuple(replace(e, parts=tuple(p.transformed(motion) for p in e.parts)) for e in piece.lines),
        points=tuple(NamedPoint(point.name, motion(point.at)) for point in piece.points),
        grain=piece.grain.transformed(motion) if piece.grain else None,
    )


def moved_dart(dart: Dart, motion: Rigid) -> Dart:
    """The dart where the motion takes it."""
    return replace(dart, first=motion(dart.first), second=motion(dart.second), pivot=motion(dart.pivot))


def moved_two_pointed(dart: TwoPointedDart, motion: Rigid) -> TwoPointedDart:
    """The dart where the motion takes it."""
    return TwoPointedDart(
        dart.name, motion(dart.top), motion(dart.bottom), motion(dart.first), motion(dart.second)
    )


def mirrored(piece: Piece) -> Piece:
    """The other piece of a pair: left and right changed."""
    return transformed(piece, Rigid.mirroring(Point(0.0, 0.0), UP))


def fold_mirror(piece: Piece) -> Rigid | None:
    """The reflection in the fold edge, if the piece lies on the fold."""
    fold = next((edge for edge in piece.edges if edge.name == piece.fold), None)
    return Rigid.mirroring(fold.parts[0].start, fold.parts[-1].end - fold.parts[0].start) if fold else None


def unfolded_outline(piece: Piece) -> Path:
    """The whole closed outline as cut, dart mouths drawn across; of a piece on the fold, both halves."""
    mirror = fold_mirror(piece)
    if mirror is None:
        return drawn_outline(piece)
    index = next(i for i, edge in enumerate(piece.edges) if edge.name == piece.fold)
    order = piece.edges[index + 1 :] + piece.edges[:index]
    segments = [segment for edge in order for segment in edge_path(piece, edge, straight_across).segments]
    # The mirrored half comes back from the fold's start to its end.
    half = Path(tuple(segments))
    back = half.transformed(mirror).reversed().between_points(half.end, half.start)
    return half.joined(back)
