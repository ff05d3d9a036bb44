"""Owns the drawing of a lay: the cloth as it lies on the table, and every piece on it.

Knows nothing of pages.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.hatching import hatched
from specc.document.lettering import Lettering, height_of, width_of
from specc.document.line import LineKind
from specc.document.marks import grain_arrow, line, scale_bar
from specc.document.view import View, box, said, scale_for
from specc.geometry.point import Point
from specc.geometry.region import contains

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.lengths import Lengths
    from specc.laying import LaidPiece, Lay

_ROOM = Point(186.0, 92.0)  # for the drawing, millimetres of paper
_MARGIN = 1.0  # round the cloth, millimetres of paper
_FOOT = 8.0  # for the scale bar
_AIR = 0.6  # round a label inside a piece
_TRIES = 12  # places of a label tried along each side of a piece
_BESIDE = 2.0  # that a grain line is longer than the label which may lie on it
_UPRIGHT, _LYING = -pi / 2, 0.0


@dataclass(frozen=True, slots=True)
class Keyed:
    """A drawing, and what the numbers in it stand for: pieces too small for their names."""

    drawing: Drawing
    key: tuple[str, ...]


def lay_drawing(
    called: tuple[str, str],
    lay: Lay,
    lengths: Lengths,
    *,
    folded: bool,
    strips: tuple[tuple[Point, ...], ...] = (),
) -> Keyed:
    """The lay at the largest usual scale that fits the page; `called` are the drawing's name and title.

    `strips` are what is cut on the bias of what the pieces leave over, hatched.
    """
    name, title = called
    scale = scale_for(lay.length, lay.width, Point(_ROOM.x - 2 * _MARGIN, _ROOM.y - 2 * _MARGIN - _FOOT))
    view = View(scale, Point(0.0, lay.width), Point(_MARGIN, _MARGIN))
    far = view.point(Point(lay.length, 0.0))
    sides = view.polygon(
        (Point(0.0, 0.0), Point(lay.length, 0.0), Point(lay.length, lay.width), Point(0.0, lay.width))
    )
    items: list[Stroke | Label] = [
        Stroke(LineKind.SHADE, (sides,)),
        Stroke(LineKind.THIN, (sides,)),
        Stroke(LineKind.OUTLINE, tuple(view.polygon(piece.outline) for piece in lay.pieces)),
        *hatched(strips, view),
    ]
    if folded:
        items.append(Stroke(LineKind.FOLD, (line(Point(_MARGIN, far.y), far),)))
    key: dict[str, int] = {}
    for piece in lay.pieces:
        items += _marks(piece, view, key)
    height, width = far.y + _MARGIN + _FOOT, max(far.x + _MARGIN, 34.0)
    items += scale_bar(Point(_MARGIN + 0.5, height - _FOOT + 1.5), scale, lengths)
    drawing = Drawing(name, f"{title}, scale {said(scale)}", width, height, scale, tuple(items))
    return Keyed(drawing, tuple(f"{number} is {called}" for called, number in key.items()))


def _marks(piece: LaidPiece, view: View, key: dict[str, int]) -> Iterator[Stroke | Label]:
    """The name of a piece, or a number where there is no room for it, and its grain where there is."""
    outline = tuple(map(view.point, piece.outline))
    called = f"{piece.size} {piece.piece}"
    label = _fitting(called, outline)
    if label is None:
        number = key.setdefault(called, len(key) + 1)
        low, high = box(outline)
        label = _fitting(str(number), outline) or Label(
            str(number), low.toward(high, 0.5), Lettering.SMALL, ground=True
        )
    ends = tuple(map(view.point, piece.grain))
    if ends and ends[0].distance(ends[1]) > width_of(label.text, label.lettering) + _BESIDE:
        yield from grain_arrow(*ends)
    yield label


def _fitting(text: str, outline: tuple[Point, ...]) -> Label | None:
    """The label where it lies wholly on the piece, as near to the middle as it can, else upright.

    None where it is too long for either.
    """
    wide, high = width_of(text, Lettering.SMALL) + 2 * _AIR, height_of(Lettering.SMALL) + 2 * _AIR
    low, top = box(outline)
    middle = low.toward(top, 0.5)
    for angle, half in ((_LYING, Point(wide / 2, high / 2)), (_UPRIGHT, Point(high / 2, wide / 2))):
        places = sorted(_places(low, top), key=middle.distance)
        for place in places:
            if _is_on(place, half, outline):
                return Label(text, place, Lettering.SMALL, angle, ground=True)
    return None


def _places(low: Point, high: Point) -> tuple[Point, ...]:
    across, along = (high.x - low.x) / _TRIES, (high.y - low.y) / _TRIES
    steps = range(1, _TRIES)
    return tuple(Point(low.x + i * across, low.y + j * along) for i in steps for j in steps)


def _is_on(place: Point, half: Point, outline: tuple[Point, ...]) -> bool:
    """Whether the box of a label lies on the piece, going by points along its sides."""
    sides = (-1.0, -0.5, 0.0, 0.5, 1.0)
    corners = (Point(place.x + x * half.x, place.y + y * half.y) for x in sides for y in (-1.0, 0.0, 1.0))
    return all(contains(outline, corner) for corner in corners)
