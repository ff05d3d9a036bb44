"""Owns hatched strips in drawings: an outline, level lines across. Knows nothing of what they stand for."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from specc.document.drawing import Stroke
from specc.document.line import LineKind
from specc.document.marks import line
from specc.document.view import box

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Trace
    from specc.document.view import View
    from specc.geometry.point import Point

_APART = 1.0  # millimetres of paper between lines


def hatched(outlines: tuple[tuple[Point, ...], ...], view: View) -> Iterator[Stroke]:
    """Parallelograms with two sides along x, each with its hatching, on white ground."""
    if outlines:
        yield Stroke(LineKind.OUTLINE, tuple(view.polygon(outline) for outline in outlines))
        yield Stroke(LineKind.THIN, tuple(each for outline in outlines for each in _lines(outline, view)))


def _lines(outline: tuple[Point, ...], view: View) -> Iterator[Trace]:
    a, b, c, d = (view.point(corner) for corner in outline)
    low, high = box((a, c))
    for number in range(1, ceil((high.y - low.y) / _APART)):
        share = number * _APART / (high.y - low.y)
        yield line(a.toward(d, share), b.toward(c, share))
