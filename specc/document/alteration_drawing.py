"""Owns the drawings of alterations: pieces before, dashed, and after, solid, laid on each other.

Knows no verb.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.document.drawing import Drawing, Label, Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import line
from specc.document.side_by_side import Figure, side_by_side
from specc.document.view import View, box
from specc.geometry.lying import beyond
from specc.geometry.point import Point
from specc.pattern.measure import dart_tip
from specc.pattern.outline import bounds, drawn_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Trace
    from specc.pattern.piece import Piece

_COARSE: Final = 0.5  # mm of garment: shades are drawn by straight runs this near to the outline
_LEAST: Final = 100.0  # mm2: less cloth than that is not shaded

Change = tuple["Piece | None", "Piece | None"]
"""A piece before and after; None where it is not made."""


def overlay(name: str, changes: tuple[Change, ...], *, room: Point) -> Drawing:
    """The changed pieces side by side at one scale, the largest usual one that fits into `room`."""
    pairs = tuple(pair for pair in changes if pair != (None, None))
    boxes = tuple(box(corner for piece in pair if piece for corner in bounds(piece)) for pair in pairs)
    figures = [
        Figure(_title(*pair), high.x - low.x, high.y - low.y)
        for pair, (low, high) in zip(pairs, boxes, strict=True)
    ]
    laid = side_by_side(figures, room=room)
    items: list[Stroke | Label] = []
    for (before, after), (low, high), figure, stand in zip(pairs, boxes, figures, laid.stands, strict=True):
        view = View(laid.scale, Point(low.x, high.y), stand.corner)
        if before is not None and after is not None:
            items += _gained(before, after, view)
        if before is not None:
            items.append(Stroke(LineKind.BEFORE, _outline(before, view)))
        if after is not None:
            items.append(Stroke(LineKind.AFTER, _outline(after, view)[:1]))
            items.append(Stroke(LineKind.DART, _outline(after, view)[1:]))
        items.append(Label(figure.name, stand.name, Lettering.NAME))
    title = ", ".join(figure.name for figure in figures)
    return Drawing(name, title, laid.width, laid.height, laid.scale, tuple(items))


def _gained(before: Piece, after: Piece, view: View) -> Iterator[Stroke]:
    """The cloth where there was none before."""
    corners = (drawn_outline(piece).flattened(_COARSE)[:-1] for piece in (after, before))
    parts = beyond(*corners, least=_LEAST)
    if parts:
        yield Stroke(LineKind.SHADE, tuple(view.polygon(part) for part in parts))


def _outline(piece: Piece, view: View) -> tuple[Trace, ...]:
    """The outline, then the darts."""
    darts = tuple(
        line(view.point(dart.first), view.point(dart_tip(dart)), view.point(dart.second))
        for dart in piece.darts
    )
    inner = tuple(
        line(
            *(view.point(corner) for corner in (dart.top, dart.first, dart.bottom, dart.second)), closed=True
        )
        for dart in piece.two_pointed
    )
    return (view.trace(drawn_outline(piece), closed=True), *darts, *inner)


def _title(before: Piece | None, after: Piece | None) -> str:
    piece = after or before
    assert piece is not None
    title = piece.title[:1].upper() + piece.title[1:]
    return title if after else f"{title}, left out"
