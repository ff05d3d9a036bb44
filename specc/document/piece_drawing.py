"""Owns the drawings of pattern pieces.

One piece with all its marks, the nest of its sizes.

Knows nothing of pages.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import chain
from typing import TYPE_CHECKING

from specc.document.attached_lines import attached_lines, label_attached
from specc.document.closure_lines import closure_lines, label_places
from specc.document.drawing import Drawing, Stroke
from specc.document.fullness_lines import fullness_lines, label_fullness
from specc.document.line import LineKind
from specc.document.marks import scale_bar
from specc.document.piece_labels import (
    label_darts,
    label_edges,
    label_grain,
    label_lines,
    label_piece,
    room_beside,
)
from specc.document.piece_lines import (
    cut_line,
    dart_lines,
    fold_lines,
    grain_lines,
    notch_lines,
    reference_lines,
    stitch_lines,
    turned_lines,
)
from specc.document.placement import Placer
from specc.document.view import View, box, said, scale_for
from specc.geometry.point import Point
from specc.pattern.outline import bounds, drawn_outline

if TYPE_CHECKING:
    from specc.document.drawing import Label
    from specc.document.lengths import Lengths
    from specc.making.assembly import CutPiece, EdgeUse, NotchMark
    from specc.making.attached import Attached
    from specc.making.closed import FasteningPlace
    from specc.pattern.piece import Piece

_MARGIN = 9.0  # for labels outside the piece, millimetres of paper
_FOOT = 8.0  # for the scale bar
_WEIGHTS = {LineKind.REFERENCE: 0.4, LineKind.GRAIN: 1.2, LineKind.DART_MIDDLE: 0.5}


@dataclass(frozen=True, slots=True)
class Cutting:
    """A piece and how it is cut.

    `notches` are those of the piece, `uses` those of its edges by name, `lines` what is said inside it, the
    title first; `attached` is what it takes, with titles, and `places` where it is fastened.
    """

    piece: Piece
    cut: CutPiece
    notches: tuple[NotchMark, ...]
    uses: dict[str, EdgeUse]
    lines: tuple[str, ...]
    attached: tuple[tuple[str, Attached], ...] = ()
    places: tuple[FasteningPlace, ...] = ()


def piece_drawing(cutting: Cutting, lengths: Lengths, *, room: Point) -> Drawing:
    """The piece at the largest usual scale that fits into `room`, with all its marks."""
    piece, polygon, attached = cutting.piece, cutting.cut.cut, tuple(one for _, one in cutting.attached)
    low, high = box(chain(polygon, bounds(piece)))
    scale = scale_for(
        high.x - low.x, high.y - low.y, Point(room.x - 2 * _MARGIN, room.y - 2 * _MARGIN - _FOOT)
    )
    view = View(scale, Point(low.x, high.y), Point(_MARGIN, _MARGIN))
    far = view.point(Point(high.x, low.y))
    beside = room_beside(far - view.at, cutting.lines)
    width, foot = far.x + _MARGIN + beside.x, far.y + _MARGIN + beside.y
    strokes = (
        *reference_lines(piece, view),
        *stitch_lines(piece, view, cutting.uses),
        *turned_lines(piece, view, cutting.uses, polygon),
        *fold_lines(piece, view),
        cut_line(piece, polygon, view),
        *dart_lines(piece, view),
        *fullness_lines(piece, view),
        *grain_lines(piece, view),
        *notch_lines(piece, view, cutting.notches, cutting.uses),
        *attached_lines(piece, attached, view),
        *closure_lines(cutting.places, view),
    )
    placer = Placer(width, foot)
    for stroke in strokes:
        placer.avoid(stroke.traces, _WEIGHTS.get(stroke.line, 2.0))
    label_grain(placer, piece, view)
    label_lines(placer, piece, view)
    label_edges(placer, piece, view, lengths)
    label_darts(placer, piece, view)
    label_fullness(placer, piece, view, lengths)
    label_attached(placer, piece, cutting.attached, view, lengths)
    label_places(placer, cutting.places, view)
    label_piece(placer, piece, view, cutting.lines, outside=_outside(view.at, far, beside))
    bar = scale_bar(Point(_MARGIN, foot + 1.5), scale, lengths)
    title = f"{piece.title}, scale {said(scale)}"
    return Drawing(f"piece-{piece.name}", title, width, foot + _FOOT, scale, (*strokes, *placer.labels, *bar))


def _outside(near: Point, far: Point, beside: Point) -> Point | None:
    """The middle of the title's first line below or right of a piece that lies between two corners."""
    if beside.y:
        return Point((near.x + far.x) / 2, far.y + _MARGIN)
    return Point(far.x + _MARGIN + beside.x / 2, (near.y + far.y) / 2) if beside.x else None


def nest_drawing(
    sizes: tuple[tuple[str, Piece], ...], sample: str, lengths: Lengths, *, room: Point
) -> Drawing:
    """The stitch lines of a piece in every size, laid on each other as drafted, the sample size wider."""
    pieces = [piece for _, piece in sizes]
    low, high = box(corner for piece in pieces for corner in bounds(piece))
    scale = scale_for(high.x - low.x, high.y - low.y, Point(room.x - 2, room.y - 2 - _FOOT))
    view = View(scale, Point(low.x, high.y), Point(1.0, 1.0))
    far = view.point(Point(high.x, low.y))
    width, height = max(far.x + 1.0, 34.0), far.y + 2.5 + _FOOT
    traces = {size: view.trace(drawn_outline(piece), closed=True) for size, piece in sizes}
    others = tuple(trace for size, trace in traces.items() if size != sample)
    items: tuple[Stroke | Label, ...] = (
        Stroke(LineKind.SIZE, others),
        Stroke(LineKind.SAMPLE_SIZE, (traces[sample],)),
        *scale_bar(Point(1.5, height - _FOOT + 1.5), scale, lengths),
    )
    title = f"{pieces[0].title}, all sizes, scale {said(scale)}"
    return Drawing(f"nest-{pieces[0].name}", title, width, height, scale, items)
