"""Drawings of pieces: every mark is there, nothing is cut along the fold, labels keep off each other."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import pytest

from specc.document.alteration_drawing import overlay
from specc.document.drawing import Label, Stroke
from specc.document.glance import outline_drawing
from specc.document.lengths import Lengths
from specc.document.line import LINES, LineKind
from specc.document.marks import arrow_head, circle, scale_bar
from specc.document.piece_drawing import Cutting, piece_drawing
from specc.document.piece_labels import upright
from specc.document.placement import box_of, flattened
from specc.document.view import View, said, scale_for
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Cubic, Line
from specc.making.assembly import CutPiece, EdgeUse
from tests.altering import rectangle
from tests.unit.document.values import back, document, front

if TYPE_CHECKING:
    from specc.document.drawing import Drawing

DRAWINGS = {drawing.name: drawing for drawing in document().drawings}
FRONT = DRAWINGS["piece-front"]


def strokes(drawing: Drawing, kind: LineKind) -> list[Stroke]:
    return [item for item in drawing.items if isinstance(item, Stroke) and item.line is kind]


def labels(drawing: Drawing) -> list[Label]:
    return [item for item in drawing.items if isinstance(item, Label)]


@pytest.mark.parametrize(
    ("width", "height", "scale"), [(90, 90, "1:1"), (110, 90, "1:2"), (250, 600, "1:6"), (9000, 1, "1:100")]
)
def test_the_scale_is_the_largest_usual_one_that_fits(width: float, height: float, scale: str) -> None:
    assert said(scale_for(width, height, Point(100, 100))) == scale


def test_what_is_up_on_the_garment_is_up_on_paper() -> None:
    view = View(Fraction(1, 4), Point(0.0, 100.0), Point(10.0, 10.0))

    assert view.point(Point(0.0, 100.0)) == Point(10.0, 10.0)
    assert view.point(Point(40.0, 60.0)) == Point(20.0, 20.0)


def test_curves_stay_curves() -> None:
    view = View(Fraction(1, 2), Point(0.0, 0.0), Point(0.0, 0.0))
    path = Path(
        (Line(Point(0, 0), Point(10, 0)), Cubic(Point(10, 0), Point(20, 0), Point(20, 10), Point(20, 20)))
    )

    trace = view.trace(path)

    assert [type(run).__name__ for run in trace.runs] == ["Point", "Bend"]


def test_texts_read_from_below_or_from_the_right() -> None:
    assert upright(Point(1, 0)) == pytest.approx(0.0)
    assert upright(Point(-1, 0)) == pytest.approx(0.0)
    assert upright(Point(0, 1)) == pytest.approx(upright(Point(0, -1)))
    assert upright(Point(-1, -1)) == pytest.approx(upright(Point(1, 1)))


def test_a_piece_shows_every_mark_it_has() -> None:
    kinds = {item.line for item in FRONT.items if isinstance(item, Stroke)}

    assert kinds >= {
        LineKind.CUT, LineKind.STITCH, LineKind.FOLD, LineKind.GRAIN, LineKind.ARROW, LineKind.DART,
        LineKind.DART_MIDDLE, LineKind.REFERENCE, LineKind.NOTCH, LineKind.MARK, LineKind.SCALE_DARK,
    }  # fmt: skip
    # Front: the waist line at the side; armhole; on the neck its own, a limit of the hold, centre.
    assert sum(len(stroke.traces) for stroke in strokes(FRONT, LineKind.NOTCH)) == 5
    # Back: the waist line at the side; the armhole's own, double; the centre of the neck.
    assert sum(len(stroke.traces) for stroke in strokes(DRAWINGS["piece-back"], LineKind.NOTCH)) == 4


def test_nothing_is_cut_along_the_fold() -> None:
    (fold,) = strokes(FRONT, LineKind.FOLD)
    x = fold.traces[0].start.x
    (cut,) = strokes(FRONT, LineKind.CUT)

    for trace in cut.traces:
        points = flattened(trace)
        assert not any(abs(a.x - x) < 0.05 and abs(b.x - x) < 0.05 for a, b in pairwise(points))


def test_the_cut_line_is_outside_the_stitch_line_where_there_is_an_allowance() -> None:
    (cut,) = strokes(FRONT, LineKind.CUT)
    (stitch,) = strokes(FRONT, LineKind.STITCH)

    assert max(p.x for t in cut.traces for p in flattened(t)) > max(
        p.x for t in stitch.traces for p in flattened(t)
    )


def test_every_edge_has_its_name_and_length() -> None:
    texts = {label.text for label in labels(FRONT)}

    assert {"side 12 1/8", "shoulder 4 1/8", "centre 16 7/8, on the fold"} <= texts
    assert {"bust-dart", "bust-line", "grain", "Front", "4 in"} <= texts


@pytest.mark.parametrize("name", sorted(DRAWINGS))
def test_no_label_lies_on_another_or_off_the_paper(name: str) -> None:
    drawing = DRAWINGS[name]
    boxes = [box_of(label) for label in labels(drawing)]

    assert not [pair for pair in combinations(boxes, 2) if pair[0].touches(pair[1])]
    for box in boxes:
        for corner in box.corners():
            assert -1.0 <= corner.x <= drawing.width + 1.0
            assert -1.0 <= corner.y <= drawing.height + 1.0


@pytest.mark.parametrize("name", sorted(DRAWINGS))
def test_every_line_lies_on_the_paper(name: str) -> None:
    drawing = DRAWINGS[name]
    for item in drawing.items:
        for trace in item.traces if isinstance(item, Stroke) else ():
            for point in flattened(trace):
                assert -0.01 <= point.x <= drawing.width + 0.01
                assert -0.01 <= point.y <= drawing.height + 0.01


# A neckband and a strap: neither holds its own title, which then stands below it or to its right.
@pytest.mark.parametrize(("wide", "high", "below"), [(300.0, 40.0, True), (40.0, 500.0, False)])
def test_the_title_of_a_piece_too_small_for_it_stands_outside(
    wide: float, high: float, *, below: bool
) -> None:
    piece = rectangle(wide, high)
    outline = tuple(edge.parts[0].start for edge in piece.edges)
    cut = CutPiece(piece.name, outline, outline, wide * high, wide * high)
    lines = ("Band", "cut 1, single", "size 12")
    room = Point(118.0, 150.0)

    uses = {edge.name: EdgeUse(piece.name, edge.name, "none", None, 0.0) for edge in piece.edges}
    drawing = piece_drawing(Cutting(piece, cut, (), uses, lines), Lengths("cm"), room=room)

    (line,) = strokes(drawing, LineKind.CUT)
    corners = [point for trace in line.traces for point in flattened(trace)]
    for label in labels(drawing):
        if label.text in lines:
            box = box_of(label)
            if below:
                assert box.middle.y - box.high > max(corner.y for corner in corners)
            else:
                assert box.middle.x - box.wide > max(corner.x for corner in corners)
            assert box.high < box.middle.y < drawing.height - box.high
            assert box.wide < box.middle.x < drawing.width - box.wide


def test_a_scale_bar_is_as_long_as_it_says() -> None:
    dark, light, *names = scale_bar(Point(0, 0), Fraction(1, 4), Lengths("in"))

    assert isinstance(dark, Stroke)
    assert isinstance(light, Stroke)
    right = max(point.x for stroke in (dark, light) for trace in stroke.traces for point in flattened(trace))
    assert right == pytest.approx(4 * 25.4 / 4)
    assert [label.text for label in names if isinstance(label, Label)] == ["0", "4 in"]


def test_marks_have_the_right_size() -> None:
    assert all(
        abs(point.distance(Point(5, 5)) - 2.0) < 0.001 for point in flattened(circle(Point(5, 5), 2.0))
    )
    assert arrow_head(Point(0, 0), Point(1, 0)).start == Point(0, 0)


def test_an_overlay_shows_before_and_after_and_what_is_left_out() -> None:
    drawing = overlay("step", ((front(0.0), front(0.0, dart=False)), (back(0.0), None)), room=Point(120, 80))

    assert len(strokes(drawing, LineKind.BEFORE)) == 2
    assert len(strokes(drawing, LineKind.AFTER)) == 1
    assert [label.text for label in labels(drawing)] == ["Front", "Back, left out"]


def test_a_piece_on_the_fold_is_opened_out_at_a_glance() -> None:
    drawing = outline_drawing("glance", (front(0.0, dart=False),), room=Point(200, 200))
    (outline,) = strokes(drawing, LineKind.OUTLINE)
    points = flattened(outline.traces[0])
    assert drawing.scale is not None

    width = max(p.x for p in points) - min(p.x for p in points)
    assert width == pytest.approx(2 * 258.0 * float(drawing.scale), abs=0.01)


def test_every_kind_of_line_has_a_style_and_none_differs_by_colour_alone() -> None:
    assert set(LINES) == set(LineKind)
    drawn = [LINES[kind] for kind in (LineKind.CUT, LineKind.STITCH, LineKind.FOLD, LineKind.REFERENCE)]
    assert len({(style.width, style.dashes) for style in drawn}) == len(drawn)
