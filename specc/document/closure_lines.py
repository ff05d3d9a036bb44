"""Owns how the fastenings of closures are drawn on a piece: places, buttonholes, numbers.

Knows nothing of pages. Marks are those of hand drafting (common practice, no source): a diagonal cross where
a button, hook or stud is set, a stroke with a bar at both ends for a buttonhole, as long as it is cut.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import line
from specc.document.placement import Place
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Trace
    from specc.document.placement import Placer
    from specc.document.view import View
    from specc.making.closed import FasteningPlace

FASTENED = (
    "Diagonal cross: button, hook or stud, with its number in the table of its closure. Stroke with bars:"
    " buttonhole, on the side that lies on top."
)

_ARM = 1.1  # of the cross, millimetres of paper
_AROUND = ((2.6, -1.6), (2.6, 1.8), (-2.6, -1.6), (-2.6, 1.8), (0, -3.2), (0, 3.4), (4.5, 0), (-4.5, 0))
_BAR = 0.9  # half of the bar at the end of a buttonhole, millimetres of paper


def closure_lines(places: tuple[FasteningPlace, ...], view: View) -> tuple[Stroke, ...]:
    """A cross at every place, and every buttonhole."""
    traces = [trace for place in places for trace in _cross(view.point(place.at))]
    for place in places:
        if place.hole is not None:
            traces += _hole(view.point(place.hole[0]), view.point(place.hole[1]))
    return (Stroke(LineKind.NOTCH, tuple(traces)),) if traces else ()


def _cross(at: Point) -> Iterator[Trace]:
    for x in (_ARM, -_ARM):
        arm = Point(x, _ARM)
        yield line(at - arm, at + arm)


def _hole(start: Point, end: Point) -> Iterator[Trace]:
    yield line(start, end)
    bar = (end - start).unit().left() * _BAR
    for at in (start, end):
        yield line(at - bar, at + bar)


def label_places(placer: Placer, places: tuple[FasteningPlace, ...], view: View) -> None:
    """Every place has its number beside it."""
    for place in places:
        at = view.point(place.at)
        beside = tuple(
            Place(Point(at.x + x, at.y + y), 0.0, 0.05 * rank) for rank, (x, y) in enumerate(_AROUND)
        )
        placer.place(str(place.number), Lettering.SMALL, beside)
