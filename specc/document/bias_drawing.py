"""Owns the drawing of cloth cut into bias strips. Knows nothing of pages."""

from __future__ import annotations

from itertools import count, takewhile
from math import sqrt
from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Stroke
from specc.document.line import LineKind
from specc.document.marks import grain_arrow, line, scale_bar
from specc.document.view import View, said, scale_for
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Label, Trace
    from specc.document.lengths import Lengths

_MARGIN, _FOOT = 1.0, 8.0  # millimetres of paper
_SLANT = sqrt(2.0)


def bias_drawing(
    called: tuple[str, str], cloth: tuple[float, float], wide: float, lengths: Lengths, *, room: Point
) -> Drawing:
    """The cloth (length, width) with every cut; `called` are the drawing's name and title."""
    (name, title), (length, width) = called, cloth
    scale = scale_for(length, width, Point(room.x - 2 * _MARGIN, room.y - 2 * _MARGIN - _FOOT))
    view = View(scale, Point(0.0, width), Point(_MARGIN, _MARGIN))
    far = view.point(Point(length, 0.0))
    corners = (Point(0.0, 0.0), Point(length, 0.0), Point(length, width), Point(0.0, width))
    middle = Point(length / 2.0, width / 2.0)
    arrow = min(length, width) / 4.0
    height = far.y + _MARGIN + _FOOT
    items: tuple[Stroke | Label, ...] = (
        Stroke(LineKind.OUTLINE, (view.polygon(corners),)),
        Stroke(LineKind.CUT, tuple(_cuts(length, width, wide, view))),
        *grain_arrow(view.point(middle + Point(-arrow, 0.0)), view.point(middle + Point(arrow, 0.0))),
        *scale_bar(Point(_MARGIN + 0.5, height - _FOOT + 1.5), scale, lengths),
    )
    return Drawing(name, f"{title}, scale {said(scale)}", max(far.x + _MARGIN, 34.0), height, scale, items)


def _cuts(length: float, width: float, wide: float, view: View) -> Iterator[Trace]:
    """The cuts lie on x - y = c: side by side between the full corners, and outward from there."""
    low, high = sorted((0.0, length - width))
    step = wide * _SLANT
    between = takewhile(lambda c: c <= high + 1e-6, (low + step * number for number in count()))
    before = takewhile(lambda c: c > -width, (low - step * number for number in count(1)))
    behind = takewhile(lambda c: c < length, (high + step * number for number in count()))
    for c in (*between, *before, *behind):
        start, end = Point(max(c, 0.0), max(-c, 0.0)), Point(min(length, width + c), min(width, length - c))
        yield line(view.point(start), view.point(end))
