"""Owns the drawing of a square made a parallelogram, marked for a tube of bias. Knows nothing of pages."""

from __future__ import annotations

from math import floor, sqrt
from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import grain_arrow, line, scale_bar
from specc.document.view import View, said, scale_for
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.lengths import Lengths

_MARGIN, _FOOT = 8.0, 8.0  # millimetres of paper
_BESIDE, _APART = 2.5, 3.0  # a number from its line; numbers from each other
_EVERY = (1, 2, 5, 10, 20, 50)
_SLANT = sqrt(2.0)
_EXACT = 1e-9


def tube_drawing(
    called: tuple[str, str], inner: float, wide: float, lengths: Lengths, *, room: Point
) -> Drawing:
    """The parallelogram within its seams, its bias edges level; `called` are the drawing's name and title.

    `inner` is the side of the square less what its seams take. Lines lie a strip's width apart; equal numbers
    at the two slanting ends meet in the second seam, which so lies one strip off.
    """
    name, title = called
    long, high = inner * _SLANT, inner / _SLANT
    scale = scale_for(long + high, high, Point(room.x - 2 * _MARGIN, room.y - 2 * _MARGIN - _FOOT))
    view = View(scale, Point(0.0, high), Point(_MARGIN, _MARGIN))
    far = view.point(Point(long + high, 0.0))
    strips = floor(high / wide + _EXACT)
    heights = [wide * number for number in range(strips + 1)]
    outline = (Point(0.0, 0.0), Point(long, 0.0), Point(long + high, high), Point(high, high))
    last = Point(heights[-1], heights[-1])
    spare = (last, last + Point(long, 0.0), outline[2], outline[3])
    marked = (line(view.point(Point(at, at)), view.point(Point(at + long, at))) for at in heights[1:])
    paper = far.y + _MARGIN + _FOOT
    middle = Point(0.72 * long, high / 2.0)
    arrow = Point(1.0, 1.0) * (high / 8.0)
    items: tuple[Stroke | Label, ...] = (
        Stroke(LineKind.OUTLINE, (view.polygon(outline),)),
        Stroke(LineKind.SHADE, (view.polygon(spare),) if high - heights[-1] > _EXACT else ()),
        Stroke(LineKind.CUT, tuple(marked)),
        Stroke(LineKind.STITCH, (line(view.point(outline[3]), view.point(outline[1])),)),
        Stroke(LineKind.THIN, (view.polygon(outline),)),
        *grain_arrow(view.point(middle - arrow), view.point(middle + arrow)),
        *_numbers(heights, long, view),
        *scale_bar(Point(_MARGIN + 0.5, paper - _FOOT + 1.5), scale, lengths),
    )
    return Drawing(name, f"{title}, scale {said(scale)}", max(far.x + _MARGIN, 34.0), paper, scale, items)


def _numbers(heights: list[float], long: float, view: View) -> Iterator[Label]:
    """The lines at both ends: the first at the right meets the second at the left."""
    step = view.point(Point(0.0, 0.0)).y - view.point(Point(0.0, heights[1] if len(heights) > 1 else 0.0)).y
    every = next((each for each in _EVERY if each * step >= _APART), _EVERY[-1])
    for number, at in enumerate(heights):
        left, right = Point(at, at), Point(at + long, at)
        if number and number % every == 0:
            yield Label(str(number), view.point(left) - Point(_BESIDE, 0.0), Lettering.SMALL)
        if (number + 1) % every == 0:
            yield Label(str(number + 1), view.point(right) + Point(_BESIDE, 0.0), Lettering.SMALL)
