"""Laws of a layout: everything is there, nothing overlaps, nothing lies beyond the cloth."""

from __future__ import annotations

from itertools import takewhile
from math import cos, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from specc.geometry.point import Point
from specc.packing import Layout, Placed, Shape, Strip, bottom_left, faults, outline_of, search
from specc.packing.problem import turned


@st.composite
def shapes(draw: st.DrawFn) -> Shape:
    """A star-shaped polygon: as hollow as garment pieces are, and never crossing itself."""
    corners = draw(st.integers(3, 9))
    reach = [draw(st.integers(20, 200)) for _ in range(corners)]
    outline = tuple(
        Point(r * cos(2 * pi * k / corners), r * sin(2 * pi * k / corners)) for k, r in enumerate(reach)
    )
    angles = draw(st.sampled_from([(0.0,), (0.0, 180.0), (45.0,), (0.0, 90.0, 180.0, 270.0)]))
    return Shape("", outline, draw(st.integers(1, 3)), angles)


@st.composite
def strips(draw: st.DrawFn) -> Strip:
    found = draw(st.lists(shapes(), min_size=1, max_size=5))
    named = tuple(Shape(f"piece-{k}", s.outline, s.count, s.angles) for k, s in enumerate(found))
    return Strip(draw(st.sampled_from([450.0, 700.0])), draw(st.sampled_from([0.0, 5.0])), named)


def _sound(strip: Strip, layout: Layout) -> None:
    """The same as the program's own check, by another way: areas of unions."""
    laid = [Polygon([(p.x, p.y) for p in outline_of(strip, placed)]) for placed in layout.placed]
    assert len(laid) == sum(shape.count for shape in strip.shapes)
    covered = sum(shape.area for shape in laid)
    assert covered == pytest.approx(strip.area)
    for index, one in enumerate(laid):
        left, low, right, high = one.bounds
        assert left >= strip.gap - 0.1
        assert low >= strip.gap - 0.1
        assert right <= layout.length - strip.gap + 0.1
        assert high <= strip.width - strip.gap + 0.1
        for other in laid[:index]:
            assert one.intersection(other).area < 0.1 * 0.1 * 100
            assert one.distance(other) >= strip.gap - 0.1
    assert 0.0 < layout.share(strip) <= 1.0


@given(strips())
@settings(deadline=None, max_examples=36)
def test_the_plain_placement_is_sound(strip: Strip) -> None:
    layout = bottom_left(strip, squares=60)
    assert faults(strip, layout) == ()
    _sound(strip, layout)


@given(strips())
@settings(deadline=None, max_examples=5)
def test_what_the_library_finds_is_sound_and_gets_shorter(strip: Strip) -> None:
    reports = takewhile(lambda report: report.number <= 20, search(strip, seed=1))
    found = [report.layout for report in reports if report.layout is not None]
    for one in found:
        assert faults(strip, one) == ()
    _sound(strip, found[-1])
    lengths = [one.length for one in found]
    assert lengths == sorted(lengths, reverse=True)


@given(strips(), st.data())
@settings(deadline=None, max_examples=36)
def test_a_layout_that_was_tampered_with_is_not_believed(strip: Strip, data: st.DataObject) -> None:
    layout = bottom_left(strip, squares=60)
    index = data.draw(st.integers(0, len(layout.placed) - 1))
    one = layout.placed[index]
    others = layout.placed[:index] + layout.placed[index + 1 :]
    assert faults(strip, Layout(layout.length, others))
    for wrong in (
        Placed(one.shape, one.angle + 17.0, one.at),
        Placed(one.shape, one.angle, one.at + Point(0.0, strip.width)),
        Placed(one.shape, one.angle, one.at + Point(layout.length, 0.0)),
        Placed("nobody", one.angle, one.at),
    ):
        assert faults(strip, Layout(layout.length, (*others, wrong)))
    assert faults(strip, Layout(layout.length * 0.5, layout.placed))


@given(shapes(), st.floats(-360.0, 720.0, allow_nan=False))
def test_turning_agrees_with_a_general_library(shape: Shape, angle: float) -> None:
    expected = affinity.rotate(Polygon([(p.x, p.y) for p in shape.outline]), angle, origin=(0, 0))
    for point, (x, y) in zip(turned(shape.outline, angle), expected.exterior.coords, strict=False):
        assert point.x == pytest.approx(x, abs=1e-9)
        assert point.y == pytest.approx(y, abs=1e-9)
