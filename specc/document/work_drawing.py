"""Owns the small drawing of a step of the work: the garment in thin lines, what is worked on in wide ones.

Knows nothing of pages.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.garment_drawing import garment_strokes, runs_on, standing, thin
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.side_by_side import Figure, side_by_side
from specc.document.view import View, box
from specc.flat.laid import Mark
from specc.geometry.point import Point
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.flat.laid import Chain, Flat, LaidPiece
    from specc.pattern.piece import Piece

Parts = frozenset[tuple[str, str]]
"""Edges, darts and pieces sewn on: each by its piece and its own name."""


# A small drawing is not measured: any reduction will do.
_SCALES = tuple(Fraction(1, reduction) for reduction in range(2, 101))


def work_drawing(
    called: tuple[str, str], flat: Flat, pieces: tuple[Piece, ...], parts: Parts, *, room: Point
) -> Drawing:
    """The garment with the parts that are worked on, else the pieces that they are of.

    `called` are the drawing's name and title.
    """
    stands = standing(flat, room=room, scales=_SCALES)
    if stands is None:
        return _of_pieces(called, pieces, parts, room)
    items: list[Stroke] = []
    worked = 0
    for seen in stands.seen:
        items += (thin(stroke) for stroke in garment_strokes(seen, {}))
        traces = tuple(
            trace
            for piece in seen.side.pieces
            for chain, side in _worked(piece, parts)
            for trace in runs_on(seen, piece, chain, side)
        )
        worked += len(traces)
        if traces:
            items.append(Stroke(LineKind.WORKED, traces))
    if not worked:
        return _of_pieces(called, pieces, parts, room)
    return Drawing(*called, stands.width, stands.height, None, (*items, *stands.names))


def _of_pieces(called: tuple[str, str], pieces: tuple[Piece, ...], parts: Parts, room: Point) -> Drawing:
    """The pieces side by side, as sewn."""
    names = {piece for piece, _ in parts}
    shown = [piece for piece in pieces if piece.name in names]
    boxes = [box(drawn_outline(piece).flattened()) for piece in shown]
    figures = [
        Figure(piece.title, high.x - low.x, high.y - low.y)
        for piece, (low, high) in zip(shown, boxes, strict=True)
    ]
    laid = side_by_side(figures, room=room, scales=_SCALES)
    items: list[Stroke | Label] = []
    for piece, (low, high), stand in zip(shown, boxes, laid.stands, strict=True):
        view = View(laid.scale, Point(low.x, high.y), stand.corner)
        edges = [edge for edge in piece.edges if (piece.name, edge.name) in parts]
        items.append(Stroke(LineKind.SIZE, (view.trace(drawn_outline(piece), closed=True),)))
        items.append(
            Stroke(LineKind.WORKED, tuple(view.trace(part) for edge in edges for part in edge.parts))
        )
        items.append(Label(piece.title, stand.name, Lettering.NAME))
    return Drawing(*called, laid.width, laid.height, None, tuple(items))


def _worked(piece: LaidPiece, parts: Parts) -> Iterator[tuple[Chain, str | None]]:
    """The chains to be drawn wide; `left` or `right` where only that half has it."""
    for edge in piece.edges:
        if (piece.name, edge.name) in parts:
            yield edge.points, None
    for line in piece.lines:
        if line.mark in (Mark.DART, Mark.POCKET) and (piece.name, line.name) in parts:
            yield line.points, line.side
