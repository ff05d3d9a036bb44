"""Owns how what is attached is drawn on the piece that takes it: outline, drill marks, measures.

Knows nothing of pages.
"""

from __future__ import annotations

from itertools import pairwise, product
from typing import TYPE_CHECKING

from specc.document.drawing import Stroke
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import arrow_head, drill_mark, line
from specc.document.piece_labels import upright
from specc.document.piece_lines import on_paper, outward_at
from specc.document.placement import Place
from specc.geometry import region
from specc.geometry.crossing import line_crossings
from specc.making.attached import CaughtAt, Placed
from specc.pattern.lookup import edge_named
from specc.pattern.measure import place_on_edge, stitched_length
from specc.pattern.outline import flat_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Trace
    from specc.document.lengths import Lengths
    from specc.document.placement import Placer
    from specc.document.view import View
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.making.attached import Attached
    from specc.pattern.piece import Piece

_HEADED = 7.0  # a measure at least so long has arrow heads, millimetres of paper
# Shares of the way from the spot to the edge at which measures from a line stand, in turn: off the outline,
# and off each other.
_ASIDE = (0.3, 0.5, 0.7)
_ON_FOLD = 0.2  # mm of garment, as for the cut line
_SEEN = 0.5  # a measure shorter than this on paper is not drawn, millimetres


def attached_lines(piece: Piece, attached: tuple[Attached, ...], view: View) -> tuple[Stroke, ...]:
    """The outline of each piece that is sewn on, its drill marks, and how its place is measured."""
    strokes: list[Stroke] = []
    for number, placed in enumerate(one for one in attached if isinstance(one, Placed)):
        strokes.append(Stroke(LineKind.PLACED, tuple(_seen(placed.outline, piece, view))))
        strokes += (drill_mark(view.point(drill)) for drill in placed.drills if _on_half(piece, drill))
        for start, end, _ in _measures(placed, view, number):
            strokes.append(Stroke(LineKind.THIN, (line(start, end),)))
            if start.distance(end) >= _HEADED:
                along = (end - start).unit()
                strokes.append(Stroke(LineKind.ARROW, (arrow_head(end, along), arrow_head(start, -along))))
    return tuple(strokes)


def _measures(placed: Placed, view: View, number: int) -> Iterator[tuple[Point, Point, float]]:
    """Both ends on paper, and the millimetres, of the measures that lead to the spot of one of several."""
    found = placed.distances
    if found is None:
        return
    aside = (found.at_edge - placed.spot) * _ASIDE[number % len(_ASIDE)]
    for start, end, value in (
        (found.at_edge, placed.spot, found.from_edge),
        (found.at_line + aside, placed.spot + aside, abs(found.below)),
    ):
        if view.point(start).distance(view.point(end)) > _SEEN:
            yield view.point(start), view.point(end), value


def _seen(outline: Path, piece: Piece, view: View) -> Iterator[Trace]:
    """The outline as far as the piece is drawn: up to its fold."""
    fold = edge_named(piece, piece.fold) if piece.fold else None
    cuts = (
        []
        if fold is None
        else line_crossings(outline, fold.parts[0].start, fold.parts[-1].end - fold.parts[0].start)
    )
    stops = [0.0, *(cut.along for cut in cuts), outline.length()]
    for low, high in pairwise(stops):
        if high - low > _ON_FOLD and _on_half(piece, outline.point_at(0.5 * (low + high))):
            yield view.trace(outline.between(low, high))


def _on_half(piece: Piece, point: Point) -> bool:
    """Whether the point lies on the side of the fold that is drawn."""
    fold = edge_named(piece, piece.fold) if piece.fold else None
    if fold is None:
        return True
    start = fold.parts[0].start
    along = fold.parts[-1].end - start
    inside = region.centroid(flat_outline(piece)) - start
    return along.cross(point - start) * along.cross(inside) > 0.0


def label_attached(
    placer: Placer, piece: Piece, attached: tuple[tuple[str, Attached], ...], view: View, lengths: Lengths
) -> None:
    """What is sewn on has its title inside it, what is caught beside it; every measure has its length."""
    for number, placed in enumerate(one for _, one in attached if isinstance(one, Placed)):
        for start, end, value in _measures(placed, view, number):
            along = (end - start).unit()
            places = tuple(
                Place(start.toward(end, share) + along.left() * off, upright(along), 0.05 * order)
                for order, (share, off) in enumerate(product((0.5, 0.35, 0.65, 0.2, 0.8), (2.0, -2.0)))
            )
            placer.place(lengths.near(value), Lettering.VALUE, places)
    for title, one in attached:
        if isinstance(one, Placed):
            placer.place(title, Lettering.SMALL, tuple(_in_outline(one, piece, view)))
    # A left and a right end of one name may have one place.
    ends = {(title, one.edge, one.start): one for title, one in attached if isinstance(one, CaughtAt)}
    for (title, _, _), one in ends.items():
        placer.place(title, Lettering.SMALL, tuple(_beside(one, piece, view)))


def _in_outline(placed: Placed, piece: Piece, view: View) -> Iterator[Place]:
    """Near the middle of what is drawn of it."""
    drawn = [point for point in placed.outline.flattened() if _on_half(piece, point)]
    low, high = region.bounds(drawn or placed.outline.flattened())
    middle = view.point(low.toward(high, 0.5))
    for order, (x, y) in enumerate(((0, 0), (0, 5), (0, -5), (6, 0), (-6, 0), (0, 10), (0, -10))):
        yield Place(type(middle)(middle.x + x, middle.y + y), 0.0, 0.05 * order)


def _beside(one: CaughtAt, piece: Piece, view: View) -> Iterator[Place]:
    edge = edge_named(piece, one.edge)
    if edge is None:
        raise KeyError(one.edge)
    whole = stitched_length(edge)
    spot = place_on_edge(edge, min(whole, max(0.0, 0.5 * (one.start + one.end))))
    outward = on_paper(outward_at(piece, spot.direction))
    for order, off in enumerate((5.5, 7.5, -6.0, -9.0, -12.0)):
        yield Place(view.point(spot.at) + outward * off, upright(on_paper(spot.direction)), 0.1 * order)
