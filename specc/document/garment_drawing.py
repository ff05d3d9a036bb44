"""Owns the drawing of the garment: front and back, laid flat, from the pieces as altered and sewn.

Knows nothing of pages, nor of how the pieces come to lie so.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.document.drawing import Drawing, Label, Stroke, Trace
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import circle
from specc.document.side_by_side import Figure, side_by_side
from specc.document.view import SCALES, View, box, said
from specc.flat.laid import Mark, Role
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import polygon_area
from specc.geometry.within import within

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from fractions import Fraction

    from specc.flat.laid import Chain, Flat, LaidEdge, LaidLine, LaidPiece, Side

_BUTTON: Final = 0.55  # radius, millimetres of paper
_SLIDER: Final = (0.5, 1.6)  # of a zip: half its width and its length, millimetres of paper
_LINES: Final = {
    Role.OPEN: LineKind.GARMENT,
    Role.TURN: LineKind.GARMENT,
    Role.SEAM: LineKind.SEAM,
    Role.MIDDLE: LineKind.SEAM,
    Role.CLOSED: LineKind.SEAM,
}


@dataclass(frozen=True, slots=True)
class Band:
    """A line that runs so far inside an edge of a piece: where a binding ends, a row of stitches."""

    inside: float
    line: LineKind


Bands = dict[tuple[str, str], tuple[Band, ...]]
"""By piece and edge."""


@dataclass(frozen=True, slots=True)
class Seen:
    """A side of the garment, and where it stands on paper."""

    side: Side
    view: View

    def moved(self, by: Point) -> Seen:
        """The same side, so far off on paper."""
        return Seen(self.side, View(self.view.scale, self.view.corner, self.view.at + by))

    def at(self, point: Point, *, mirrored: bool = False) -> Point:
        """Where a point of the laid half, or its mirror image, lands."""
        return self.view.point(Point(-point.x, point.y) if mirrored else point)


@dataclass(frozen=True, slots=True)
class Standing:
    """The sides of a garment on paper: each with its view, and the paper that they take."""

    seen: tuple[Seen, ...]
    names: tuple[Label, ...]
    scale: View
    width: float
    height: float


def standing(flat: Flat, *, room: Point, scales: Sequence[Fraction] = SCALES) -> Standing | None:
    """The sides side by side at the largest scale that fits into `room`; None where nothing is laid."""
    boxes = [_box(side) for side in flat.sides]
    if not boxes:
        return None
    titles = [side.name.capitalize() or "As worn" for side in flat.sides]
    figures = [
        Figure(title, high.x - low.x, high.y - low.y)
        for title, (low, high) in zip(titles, boxes, strict=True)
    ]
    laid = side_by_side(figures, room=room, scales=scales)
    seen = tuple(
        Seen(side, View(laid.scale, Point(low.x, high.y), stand.corner))
        for side, (low, high), stand in zip(flat.sides, boxes, laid.stands, strict=True)
    )
    names = tuple(
        Label(title, stand.name, Lettering.NAME) for title, stand in zip(titles, laid.stands, strict=True)
    )
    return Standing(seen, names, seen[0].view, laid.width, laid.height)


def garment_drawing(name: str, title: str, flat: Flat, bands: Bands, *, room: Point) -> Drawing | None:
    """The garment by itself; None where nothing of it can be laid flat."""
    stands = standing(flat, room=room)
    if stands is None:
        return None
    items = [item for seen in stands.seen for item in garment_strokes(seen, bands)]
    scale = stands.scale.scale
    return Drawing(
        name, f"{title}, scale {said(scale)}", stands.width, stands.height, scale, (*items, *stands.names)
    )


def garment_strokes(seen: Seen, bands: Bands) -> Iterator[Stroke]:
    """One side of the garment: what lies behind first, the half that laps over the other last."""
    here = tuple(seen.view.polygon(each.outline) for each in seen.side.beyond)
    other = tuple(_mirrored(seen, each.outline, closed=True) for each in seen.side.beyond)
    if here:
        yield Stroke(LineKind.SHADE, (*here, *other))
        edges = tuple(
            _run(seen, each.edge, mirrored=mirrored)
            for each in seen.side.beyond
            for mirrored in (False, True)
        )
        yield Stroke(LineKind.SEAM, edges)
    # As worn, the left lies on the right: at greater x from the front, at lesser x from the back.
    on_top = seen.side.name == "back"
    for under in (True, False):
        pieces = [piece for piece in seen.side.pieces if piece.under is under]
        for mirrored in (not on_top, on_top):
            half = [piece for piece in pieces if not (piece.whole and mirrored)]
            yield from _half(seen, half, bands, mirrored=mirrored)


def _half(seen: Seen, pieces: list[LaidPiece], bands: Bands, *, mirrored: bool) -> Iterator[Stroke]:
    if not pieces:
        return
    fills = tuple(
        _mirrored(seen, piece.outline, closed=True) if mirrored else seen.view.polygon(piece.outline)
        for piece in pieces
    )
    yield Stroke(LineKind.CLOTH, fills)
    lines: dict[LineKind, list[Trace]] = {}
    for piece in pieces:
        for kind, trace in _lines(seen, piece, bands, mirrored=mirrored):
            lines.setdefault(kind, []).append(trace)
    # Thin lines first, so that the outline is whole.
    for kind in (LineKind.ROW, LineKind.PLACED, LineKind.SEAM, LineKind.FASTENING, LineKind.GARMENT):
        if kind in lines:
            yield Stroke(kind, tuple(lines[kind]))


def _lines(seen: Seen, piece: LaidPiece, bands: Bands, *, mirrored: bool) -> Iterator[tuple[LineKind, Trace]]:
    for edge in piece.edges:
        if edge.role in _LINES:
            yield _LINES[edge.role], _run(seen, edge.points, mirrored=mirrored)
        for band in bands.get((piece.name, edge.name), ()):
            for chain in inside(piece, edge, band.inside):
                yield band.line, _run(seen, chain, mirrored=mirrored)
    for one in piece.lines:
        if one.mark is Mark.LINE or not _on_half(one, seen.side.name, mirrored=mirrored):
            continue
        if one.mark is Mark.FASTENING:
            yield LineKind.FASTENING, circle(seen.at(one.points[0], mirrored=mirrored), _BUTTON)
        else:
            yield LineKind.SEAM, _run(seen, one.points, mirrored=mirrored)


def inside(piece: LaidPiece, edge: LaidEdge, by: float) -> Iterator[Chain]:
    """The line that runs so far inside an edge, from the outline to the outline."""
    outline = piece.outline
    away = by if polygon_area(outline) > 0.0 else -by
    off = parallel(Path.through(*edge.points), away)
    yield from (found.flattened() for found in within(off, Path.through(*outline, outline[0])))


def _on_half(one: LaidLine, side: str, *, mirrored: bool) -> bool:
    """Whether a line is on this half: the left as worn is drawn at greater x from the front."""
    if one.side is None:
        return True
    return (one.side == "left") is ((side == "back") is mirrored)


def thin(stroke: Stroke) -> Stroke:
    """A stroke of the garment in a thin line, where something else is to stand out."""
    lines = {LineKind.GARMENT, LineKind.SEAM, LineKind.FASTENING}
    return replace(stroke, line=LineKind.SIZE) if stroke.line in lines else stroke


def runs_on(seen: Seen, piece: LaidPiece, chain: Chain, side: str | None) -> Iterator[Trace]:
    """A chain on both halves of the garment; on one where only the left or the right as worn has it."""
    for mirrored in (False,) if piece.whole else (False, True):
        if side is None or (side == "left") is ((seen.side.name == "back") is mirrored):
            yield _run(seen, chain, mirrored=mirrored)


def _run(seen: Seen, chain: Chain, *, mirrored: bool) -> Trace:
    return _mirrored(seen, chain) if mirrored else _trace(tuple(map(seen.view.point, chain)))


def _mirrored(seen: Seen, chain: Chain, *, closed: bool = False) -> Trace:
    return _trace(tuple(seen.at(point, mirrored=True) for point in chain), closed=closed)


def _trace(points: tuple[Point, ...], *, closed: bool = False) -> Trace:
    return Trace(points[0], points[1:], closed)


def _box(side: Side) -> tuple[Point, Point]:
    """The upright box round a side, both halves and what is seen beyond."""
    outlines = [piece.outline for piece in side.pieces] + [each.outline for each in side.beyond]
    low, high = box(point for outline in outlines for point in outline)
    wide = max(high.x, -low.x)
    return Point(-wide, low.y), Point(wide, high.y)
