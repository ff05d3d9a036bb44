"""The drawing of the tube: as many lines as strips, and numbers that meet one strip off."""

from __future__ import annotations

from math import sqrt

import pytest

from specc.document.drawing import Label, Stroke
from specc.document.lengths import Lengths
from specc.document.line import LineKind
from specc.document.tube_drawing import tube_drawing
from specc.geometry.point import Point

ROOM = Point(186.0, 84.0)


def drawn(inner: float, wide: float) -> tuple[float, list[Stroke], dict[str, list[Point]]]:
    """The scale, the strokes, and where each number stands."""
    drawing = tube_drawing(("tube", "Tube"), inner, wide, Lengths("cm"), room=ROOM)
    assert drawing.scale is not None
    places: dict[str, list[Point]] = {}
    for item in drawing.items:
        if isinstance(item, Label) and item.text.isdigit():
            places.setdefault(item.text, []).append(item.at)
    assert drawing.width <= ROOM.x
    assert drawing.height <= ROOM.y
    return float(drawing.scale), [item for item in drawing.items if isinstance(item, Stroke)], places


@pytest.mark.parametrize(("inner", "wide", "strips"), [(272.0, 24.0, 8), (400.0, 40.0, 7), (900.0, 32.0, 19)])
def test_there_is_a_line_for_each_strip(inner: float, wide: float, strips: int) -> None:
    """floor(inner / (wide times the root of 2)) turns of the tube."""
    scale, strokes, _ = drawn(inner, wide)
    (cuts,) = (stroke.traces for stroke in strokes if stroke.line is LineKind.CUT)
    assert len(cuts) == strips
    for trace in cuts:
        (end,) = trace.runs
        assert isinstance(end, Point)
        assert end.y == pytest.approx(trace.start.y)
        assert end.x - trace.start.x == pytest.approx(inner * sqrt(2.0) * scale)


def test_equal_numbers_meet_one_strip_off() -> None:
    """A number at the right stands a strip lower than at the left: there it is sewn on a strip further."""
    inner, wide = 400.0, 40.0
    scale, _, places = drawn(inner, wide)
    pairs = {number: at for number, at in places.items() if len(at) == 2}
    assert sorted(map(int, pairs)) == [1, 2, 3, 4, 5, 6, 7]
    for at in pairs.values():
        left, right = sorted(at, key=lambda place: place.x)
        assert right.y - left.y == pytest.approx(wide * scale)


def test_what_is_narrower_than_a_strip_is_shaded() -> None:
    """400 mm within the seams are 282.8 mm high: 7 strips of 40 mm and 2.8 mm."""
    scale, strokes, _ = drawn(400.0, 40.0)
    (shade,) = (stroke.traces for stroke in strokes if stroke.line is LineKind.SHADE)
    heights = [point.y for trace in shade for point in (trace.start, *trace.runs) if isinstance(point, Point)]
    assert max(heights) - min(heights) == pytest.approx((400.0 / sqrt(2.0) - 280.0) * scale)
