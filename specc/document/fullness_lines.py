"""Owns how pleats, tucks, gathers and ease are marked on the drawing of a piece.

Knows nothing of other lines. Marks are those of hand drafting (common practice, no source): two strokes where
the sides of a fold come together, the fold dotted between them, an arrow from the side that is laid to where
it is laid; a wave along what is drawn in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import arrow_head, line
from specc.document.piece_labels import upright
from specc.document.piece_lines import on_paper, outward_at
from specc.document.placement import Place
from specc.geometry.tolerance import SAME
from specc.pattern.measure import place_on_edge

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Trace
    from specc.document.lengths import Lengths
    from specc.document.placement import Placer
    from specc.document.view import View
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.pattern.piece import Edge, Fold, Gathers, Piece

_DEEP = 60.0  # how far the strokes of a fold run into the piece, millimetres of garment
_LEAST = 9.0  # but millimetres of paper at least
_ARROW_AT = 0.6  # how far along the strokes the arrow lies
_OFF, _SWING, _STEP = 2.2, 0.8, 0.9  # a wave: off the edge, to either side, along it; millimetres of paper


def fullness_lines(piece: Piece, view: View) -> tuple[Stroke, ...]:
    """The marks of every fold and of all that is gathered or eased."""
    strokes: list[Stroke] = []
    for edge in piece.edges:
        for fold, start, end in _folds(edge):
            strokes += _fold(piece, edge, view, laid=(start, end) if fold.onto_after else (end, start))
        strokes += (Stroke(LineKind.THIN, (_wave(piece, edge, gathers, view),)) for gathers in edge.gathers)
    return tuple(strokes)


def label_fullness(placer: Placer, piece: Piece, view: View, lengths: Lengths) -> None:
    """What is drawn in is said beside its wave: to which length, and how."""
    for edge in piece.edges:
        for gathers in edge.gathers:
            how = "ease" if gathers.eased else "gather"
            text = f"{how} to {lengths.near(gathers.end - gathers.start)}"
            placer.place(text, Lettering.SMALL, tuple(_beside(piece, edge, gathers, view)))


def _folds(edge: Edge) -> Iterator[tuple[Fold, Point, Point]]:
    """Every fold with the places of its two sides on the paper."""
    used, last = 0.0, -1.0
    for fold in edge.folds:
        used = used if abs(fold.at - last) <= SAME else 0.0
        place = place_on_edge(edge, fold.at)
        part = edge.parts[place.part]
        start = place.along + used
        yield fold, part.point_at(start), part.point_at(start + fold.amount)
        used, last = used + fold.amount, fold.at


def _fold(piece: Piece, edge: Edge, view: View, *, laid: tuple[Point, Point]) -> tuple[Stroke, ...]:
    """Both sides, the fold between them, and the arrow to the first of the two from the second."""
    to, by = laid
    part = next(part for part in edge.parts if part.distance_to(to) <= SAME and part.distance_to(by) <= SAME)
    along = (by - to).unit() * (1.0 if part.length_at(by) > part.length_at(to) else -1.0)
    reach = on_paper(-outward_at(piece, along)) * max(_LEAST, _DEEP * float(view.scale))
    target, source, fold = view.point(to), view.point(by), view.point(to.toward(by, 0.5))
    tip, tail = target + reach * _ARROW_AT, source + reach * _ARROW_AT
    return (
        Stroke(LineKind.DART, (line(target, target + reach), line(source, source + reach))),
        Stroke(LineKind.DART_MIDDLE, (line(fold, fold + reach),)),
        Stroke(LineKind.GRAIN, (line(tail, tip),)),
        Stroke(LineKind.ARROW, (arrow_head(tip, (tip - tail).unit()),)),
    )


def _stretch(edge: Edge, gathers: Gathers) -> Iterator[Path]:
    """The runs of an edge that are drawn in."""
    first, last = place_on_edge(edge, gathers.start), place_on_edge(edge, gathers.end)
    for index in range(first.part, last.part + 1):
        part = edge.parts[index]
        low = first.along if index == first.part else 0.0
        high = last.along if index == last.part else part.length()
        if high - low > SAME:
            yield part.between(low, high)


def _wave(piece: Piece, edge: Edge, gathers: Gathers, view: View) -> Trace:
    """A wave beside the stretch, inside the piece."""
    points: list[Point] = []
    scale = float(view.scale)
    for run in _stretch(edge, gathers):
        length = run.length()
        count = max(2, round(length * scale / _STEP))
        for index in range(count + 1):
            at = length * index / count
            inward = on_paper(-outward_at(piece, run.direction_at(at)))
            points.append(view.point(run.point_at(at)) + inward * (_OFF + _SWING * (-1.0) ** index))
    return line(points[0], *points[1:])


def _beside(piece: Piece, edge: Edge, gathers: Gathers, view: View) -> Iterator[Place]:
    for order, share in enumerate((0.5, 0.35, 0.65, 0.2, 0.8)):
        at = place_on_edge(edge, gathers.start + share * (gathers.end - gathers.start))
        inward = on_paper(-outward_at(piece, at.direction))
        for rank, off in enumerate((2.5 * _OFF, 4.0 * _OFF, 6.0 * _OFF)):
            spot = view.point(at.at) + inward * off
            yield Place(spot, upright(on_paper(at.direction)), 0.3 * rank + 0.02 * order)
