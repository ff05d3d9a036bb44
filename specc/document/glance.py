"""Owns the drawing of all pieces at a glance; knows nothing of pages."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.piece_lines import dart_lines
from specc.document.side_by_side import Figure, side_by_side
from specc.document.view import View, box, said
from specc.geometry.point import Point
from specc.pattern.outline import fold_mirror, transformed, unfolded_outline

if TYPE_CHECKING:
    from specc.pattern.piece import Piece


def outline_drawing(name: str, pieces: tuple[Piece, ...], *, room: Point) -> Drawing:
    """The pieces side by side as sewn, opened out at the fold, at one scale; in rows where there are many.

    What the garment is made of, at a glance: without the drill marks of darts.
    """
    outlines = [unfolded_outline(piece) for piece in pieces]
    boxes = [box(p for segment in outline.segments for p in segment.extremes()) for outline in outlines]
    sizes = [high - low for low, high in boxes]
    titles = [piece.title[:1].upper() + piece.title[1:] for piece in pieces]
    figures = [Figure(title, size.x, size.y) for title, size in zip(titles, sizes, strict=True)]
    laid = side_by_side(figures, room=room)
    items: list[Stroke | Label] = []
    for piece, outline, (low, high), called, stand in zip(
        pieces, outlines, boxes, titles, laid.stands, strict=True
    ):
        view = View(laid.scale, Point(low.x, high.y), stand.corner)
        items.append(Stroke(LineKind.OUTLINE, (view.trace(outline, closed=True),)))
        mirror = fold_mirror(piece)
        for half in (piece,) if mirror is None else (piece, transformed(piece, mirror)):
            items += (stroke for stroke in dart_lines(half, view) if stroke.line is not LineKind.MARK)
        items.append(Label(called, stand.name, Lettering.NAME))
    title = f"{', '.join(piece.title for piece in pieces)}, scale {said(laid.scale)}"
    return Drawing(name, title, laid.width, laid.height, laid.scale, tuple(items))
