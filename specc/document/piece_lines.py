"""Owns which lines a pattern piece is drawn with. Knows nothing of labels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Stroke, Trace
from specc.document.line import LineKind
from specc.document.marks import drill_mark, fold_bracket, grain_arrow, line, notch
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.region import signed_area
from specc.geometry.within import within
from specc.pattern.drilling import drill_marks
from specc.pattern.measure import dart_tip, place_on_edge
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.view import View
    from specc.geometry.point import Point
    from specc.making.assembly import EdgeUse, NotchMark
    from specc.pattern.piece import Dart, Edge, Piece, TwoPointedDart

_ON_FOLD = 0.2  # how far from the fold, in millimetres of garment, a cut point counts as lying on it
_SHORTEST_NOTCH, _LONGEST_NOTCH = 1.8, 3.0  # millimetres of paper
_FOLDS_APART = 1.2  # millimetres of paper: folds that lie closer cannot be told apart


def fold_of(piece: Piece) -> Edge | None:
    """The edge that lies on the fold."""
    return next((edge for edge in piece.edges if edge.name == piece.fold), None)


def outward_turn(piece: Piece) -> float:
    """1 where the outside lies to the left of travel along the outline, -1 where it lies to the right."""
    return -1.0 if signed_area(drawn_outline(piece)) > 0.0 else 1.0


def outward_at(piece: Piece, direction: Point) -> Point:
    """The unit direction out of the piece at a place of its outline with that direction of travel."""
    return direction.left() * outward_turn(piece)


def on_paper(vector: Point) -> Point:
    """A direction of the garment's plane as a direction of paper, where y runs down."""
    return type(vector)(vector.x, -vector.y)


def stitch_lines(piece: Piece, view: View, uses: dict[str, EdgeUse]) -> tuple[Stroke, ...]:
    """The edges as sewn, the fold of the cloth and those that are turned left out."""
    sewn = (edge for edge in piece.edges if edge.name != piece.fold and not uses[edge.name].turned)
    traces = tuple(view.trace(part) for edge in sewn for part in edge.parts)
    return (Stroke(LineKind.STITCH, traces),) if traces else ()


def turned_lines(
    piece: Piece, view: View, uses: dict[str, EdgeUse], polygon: tuple[Point, ...]
) -> tuple[Stroke, ...]:
    """Where the allowance of a hem is folded: along its edge, and as far within as it is turned under."""
    cut = Path.through(*polygon, polygon[0])
    traces: list[Trace] = []
    for edge in piece.edges:
        turned = uses[edge.name].turned
        traces += (view.trace(part) for part in edge.parts if turned)
        deep = turned[0] if len(turned) > 1 else 0.0
        if deep * float(view.scale) >= _FOLDS_APART:
            away = deep * outward_turn(piece)
            traces += (view.trace(run) for part in edge.parts for run in within(parallel(part, away), cut))
    return (Stroke(LineKind.DART_MIDDLE, tuple(traces)),) if traces else ()


def cut_line(piece: Piece, polygon: tuple[Point, ...], view: View) -> Stroke:
    """The line that is cut; along the fold nothing is cut."""
    fold = fold_of(piece)
    if fold is None:
        return Stroke(LineKind.CUT, (view.polygon(polygon),))
    on = fold.parts[0].start
    along = (fold.parts[-1].end - on).unit()
    lies = [abs(along.cross(point - on)) <= _ON_FOLD for point in polygon]
    return Stroke(LineKind.CUT, tuple(_runs_off(polygon, lies, view)))


def _runs_off(polygon: tuple[Point, ...], lies: list[bool], view: View) -> Iterator[Trace]:
    """The runs of a closed polygon that do not lie on the fold."""
    count = len(polygon)
    kept = [not (lies[index] and lies[(index + 1) % count]) for index in range(count)]
    if all(kept):
        yield view.polygon(polygon)
        return
    first = kept.index(False)
    run: list[Point] = []
    for step in range(1, count + 1):
        index = (first + step) % count
        if kept[index]:
            run = run or [view.point(polygon[index])]
            run.append(view.point(polygon[(index + 1) % count]))
        elif run:
            yield Trace(run[0], tuple(run[1:]))
            run = []


def fold_lines(piece: Piece, view: View) -> tuple[Stroke, ...]:
    """The fold as a chain line with its bracket."""
    fold = fold_of(piece)
    if fold is None:
        return ()
    start, end = fold.parts[0].start, fold.parts[-1].end
    inward = on_paper(-outward_at(piece, (end - start).unit()))
    traces = tuple(view.trace(part) for part in fold.parts)
    return (Stroke(LineKind.FOLD, traces), *fold_bracket(view.point(start), view.point(end), inward))


def grain_lines(piece: Piece, view: View) -> tuple[Stroke, ...]:
    """The grain as an arrow."""
    if piece.grain is None:
        return ()
    return grain_arrow(view.point(piece.grain.start), view.point(piece.grain.end))


def reference_lines(piece: Piece, view: View) -> tuple[Stroke, ...]:
    """Bust line, waist line and the like."""
    traces = tuple(view.trace(part) for each in piece.lines for part in each.parts)
    return (Stroke(LineKind.REFERENCE, traces),) if traces else ()


def dart_lines(piece: Piece, view: View) -> tuple[Stroke, ...]:
    """Darts: legs as far as they are stitched, the fold between them dotted, drill marks short of the tip."""
    strokes = [drill_mark(view.point(at)) for at in drill_marks(piece)]
    for dart in piece.darts:
        strokes += _edge_dart(dart, view)
    for two_pointed in piece.two_pointed:
        strokes += _inner_dart(two_pointed, view)
    return tuple(strokes)


def _edge_dart(dart: Dart, view: View) -> tuple[Stroke, ...]:
    tip = view.point(dart_tip(dart))
    middle = view.point(dart.first.toward(dart.second, 0.5))
    return (
        Stroke(LineKind.DART, (line(view.point(dart.first), tip, view.point(dart.second)),)),
        Stroke(LineKind.DART_MIDDLE, (line(middle, tip),)),
    )


def _inner_dart(dart: TwoPointedDart, view: View) -> tuple[Stroke, ...]:
    top, bottom = view.point(dart.top), view.point(dart.bottom)
    first, second = view.point(dart.first), view.point(dart.second)
    return (
        Stroke(LineKind.DART, (line(top, first, bottom, second, closed=True),)),
        Stroke(LineKind.DART_MIDDLE, (line(top, bottom),)),
    )


def notch_lines(
    piece: Piece, view: View, notches: tuple[NotchMark, ...], uses: dict[str, EdgeUse]
) -> tuple[Stroke, ...]:
    """Notches as short strokes from the cut edge inward, at most half way to the stitches."""
    traces: list[Trace] = []
    edges = {edge.name: edge for edge in piece.edges}
    for mark in notches:
        place = place_on_edge(edges[mark.edge], mark.at, within=mark.within)
        outward = on_paper(outward_at(piece, place.direction))
        allowance = uses[mark.edge].allowance * float(view.scale)
        deep = max(_SHORTEST_NOTCH, min(_LONGEST_NOTCH, 0.5 * allowance))
        traces += notch(view.point(place.at) + outward * allowance, outward * -deep, double=mark.double)
    return (Stroke(LineKind.NOTCH, tuple(traces)),) if traces else ()
