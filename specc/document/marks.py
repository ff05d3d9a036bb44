"""Owns the marks that drawings are made of: arrows, drill marks, notches, fold brackets, scale bars.

Knows nothing of pieces. Marks are those of hand drafting (common practice, no source): a straight arrow for
the grain, a bent arrow for the fold, a cross in a circle for a drill mark, short strokes for notches.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.drawing import Bend, Label, Stroke, Trace
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.geometry.point import Point
from specc.units import UNITS

if TYPE_CHECKING:
    from specc.document.lengths import Lengths

_HEAD_LONG, _HEAD_HALF = 2.6, 0.75
_CIRCLE = 0.5522847498  # handle of the cubic that draws a quarter circle, for radius 1
_BAR = 1.6


def line(start: Point, *others: Point, closed: bool = False) -> Trace:
    """Straight runs from point to point."""
    return Trace(start, others, closed)


def arrow_head(tip: Point, direction: Point) -> Trace:
    """A filled head whose point is at `tip`; `direction` has length 1."""
    back, side = tip - direction * _HEAD_LONG, direction.left() * _HEAD_HALF
    return line(tip, back + side, back - side, closed=True)


def grain_arrow(start: Point, end: Point) -> tuple[Stroke, ...]:
    """A line with a head at both ends."""
    along = (end - start).unit()
    return (
        Stroke(LineKind.GRAIN, (line(start, end),)),
        Stroke(LineKind.ARROW, (arrow_head(end, along), arrow_head(start, -along))),
    )


def fold_bracket(start: Point, end: Point, inward: Point) -> tuple[Stroke, ...]:
    """A line beside the fold, bent at both ends toward it, with heads that touch it.

    `inward` has length 1.
    """
    first, last = start.toward(end, 0.12), start.toward(end, 0.88)
    reach = inward * 5.0
    return (
        Stroke(LineKind.GRAIN, (line(first, first + reach, last + reach, last),)),
        Stroke(LineKind.ARROW, (arrow_head(first, -inward), arrow_head(last, -inward))),
    )


def circle(middle: Point, radius: float) -> Trace:
    """A circle."""
    r, h = radius, radius * _CIRCLE

    def at(x: float, y: float) -> Point:
        return Point(middle.x + x, middle.y + y)

    return Trace(
        at(r, 0),
        (
            Bend(at(r, h), at(h, r), at(0, r)),
            Bend(at(-h, r), at(-r, h), at(-r, 0)),
            Bend(at(-r, -h), at(-h, -r), at(0, -r)),
            Bend(at(h, -r), at(r, -h), at(r, 0)),
        ),
        closed=True,
    )


def drill_mark(middle: Point) -> Stroke:
    """A cross in a circle."""
    arm = 1.7
    across = line(Point(middle.x - arm, middle.y), Point(middle.x + arm, middle.y))
    down = line(Point(middle.x, middle.y - arm), Point(middle.x, middle.y + arm))
    return Stroke(LineKind.MARK, (circle(middle, 0.9), across, down))


def notch(at: Point, reach: Point, *, double: bool) -> tuple[Trace, ...]:
    """One stroke from the edge, or two side by side; `reach` is how far and which way."""
    if not double:
        return (line(at, at + reach),)
    side = reach.unit().left() * 0.8
    return line(at + side, at + side + reach), line(at - side, at - side + reach)


def scale_bar(at: Point, scale: Fraction, lengths: Lengths) -> tuple[Stroke | Label, ...]:
    """A bar of four equal parts with its ends named.

    4 inches or 100 mm of garment, three times that at small scales.
    """
    inches = lengths.unit == "in"
    whole = 4 * UNITS["in"].size if inches else Fraction(100)
    whole = whole * 3 if scale < Fraction(1, 8) else whole
    part = float(whole * scale) / 4
    dark: list[Trace] = []
    light: list[Trace] = []
    for index in range(4):
        left, right = at.x + index * part, at.x + (index + 1) * part
        box = line(
            Point(left, at.y),
            Point(right, at.y),
            Point(right, at.y + _BAR),
            Point(left, at.y + _BAR),
            closed=True,
        )
        (light if index % 2 else dark).append(box)
    below = at.y + _BAR + 2.2
    return (
        Stroke(LineKind.SCALE_DARK, tuple(dark)),
        Stroke(LineKind.SCALE_LIGHT, tuple(light)),
        Label("0", Point(at.x, below), Lettering.SMALL),
        Label(lengths.said(whole).replace(".0 ", " "), Point(at.x + 4 * part, below), Lettering.SMALL),
    )
