"""Owns the drawing of all pieces at a glance: side by side, in rows, at one scale. Knows nothing of pages."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.lettering import Lettering, width_of
from specc.document.line import LineKind
from specc.document.piece_lines import dart_lines
from specc.document.view import SCALES, View, box, said
from specc.geometry.point import Point
from specc.pattern.outline import fold_mirror, transformed, unfolded_outline

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.pattern.piece import Piece

_GAP = 6.0  # between pieces side by side, or their titles, millimetres of paper
_BELOW = 9.0  # from a row of pieces to the next: for their titles


def outline_drawing(name: str, pieces: tuple[Piece, ...], *, room: Point) -> Drawing:
    """The pieces side by side as sewn, opened out at the fold, at one scale; in rows where there are many.

    What the garment is made of, at a glance.
    """
    outlines = [unfolded_outline(piece) for piece in pieces]
    boxes = [box(p for segment in outline.segments for p in segment.extremes()) for outline in outlines]
    sizes = [high - low for low, high in boxes]
    titles = [piece.title[:1].upper() + piece.title[1:] for piece in pieces]
    places, scale = _places(sizes, titles, room)
    slots = [_slot(size, title, scale) for size, title in zip(sizes, titles, strict=True)]
    items: list[Stroke | Label] = []
    for piece, outline, (low, high), size, called, place in zip(
        pieces, outlines, boxes, sizes, titles, places, strict=True
    ):
        view = View(scale, Point(low.x, high.y), Point(place.x - size.x * scale / 2.0, place.y))
        items.append(Stroke(LineKind.OUTLINE, (view.trace(outline, closed=True),)))
        mirror = fold_mirror(piece)
        for half in (piece,) if mirror is None else (piece, transformed(piece, mirror)):
            items += dart_lines(half, view)
        items.append(Label(called, Point(place.x, view.point(low).y + 4.0), Lettering.NAME))
    title = f"{', '.join(piece.title for piece in pieces)}, scale {said(scale)}"
    width = max(place.x + slot / 2.0 for place, slot in zip(places, slots, strict=True)) + 1.0
    foot = max(place.y + size.y * scale for place, size in zip(places, sizes, strict=True))
    return Drawing(name, title, width, foot + 7.0, scale, tuple(items))


def _slot(size: Point, title: str, scale: Fraction) -> float:
    """The width on paper that a piece and the title below it take."""
    return max(size.x * scale, width_of(title, Lettering.NAME))


def _places(sizes: list[Point], titles: list[str], room: Point) -> tuple[list[Point], Fraction]:
    """The middle of the upper side of each piece on paper, row by row, and the largest scale that fits."""
    places: list[Point] = []
    for scale in SCALES:
        places, left, top, row = [], 1.0, 1.0, 0.0
        for size, title in zip(sizes, titles, strict=True):
            slot = _slot(size, title, scale)
            if places and left + slot > room.x - 1.0:
                left, top, row = 1.0, top + row + _BELOW, 0.0
            places.append(Point(left + slot / 2.0, top))
            left, row = left + slot + _GAP, max(row, size.y * scale)
        widest = max(_slot(size, title, scale) for size, title in zip(sizes, titles, strict=True))
        if widest <= room.x - 2.0 and top + row + _BELOW <= room.y:
            break
    return places, scale
