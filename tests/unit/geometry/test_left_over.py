"""Strips at 45 degrees between shapes."""

from __future__ import annotations

from itertools import islice
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box

from specc.geometry.left_over import slanting_strips
from specc.geometry.point import Point
from specc.geometry.region import polygon_area

FEW = 25


def polygon(points: tuple[Point, ...]) -> Polygon:
    return Polygon([(p.x, p.y) for p in points])


def boxed(x: float, y: float, wide: float, high: float) -> tuple[Point, ...]:
    return Point(x, y), Point(x + wide, y), Point(x + wide, y + high), Point(x, y + high)


@settings(max_examples=40)
@given(
    places=st.lists(
        st.tuples(st.floats(0, 900), st.floats(0, 600), st.floats(20, 300), st.floats(20, 300)), max_size=6
    ),
    wide=st.floats(15.0, 60.0),
    gap=st.floats(0.0, 5.0),
)
def test_strips_lie_on_the_cloth_off_the_shapes_and_off_each_other(
    places: list[tuple[float, float, float, float]], wide: float, gap: float
) -> None:
    """Held against shapely: nothing shared with the cloth's outside, a shape or another strip."""
    shapes = [boxed(*place) for place in places]
    size = Point(1000.0, 700.0)
    found = list(islice(slanting_strips(shapes, size, wide=wide, gap=gap), FEW))

    cloth = box(0.0, 0.0, size.x, size.y)
    strips = [polygon(strip.outline) for strip in found]
    for number, (strip, drawn) in enumerate(zip(found, strips, strict=True)):
        assert drawn.difference(cloth.buffer(1e-3)).area < 1e-3
        assert all(drawn.distance(polygon(shape)) >= gap - 1e-3 for shape in shapes)
        assert all(drawn.intersection(other).area < 0.5 for other in strips[:number])
        assert abs(polygon_area(strip.outline)) == pytest.approx(strip.length * wide, rel=1e-6)
    assert [strip.length for strip in found] == sorted((strip.length for strip in found), reverse=True)
    assert all(strip.length >= wide for strip in found)


@given(wide=st.floats(20.0, 60.0))
def test_a_strip_slants_by_a_half_of_a_right_angle_and_its_ends_lie_along_the_cloth(wide: float) -> None:
    (strip,) = islice(slanting_strips([], Point(900.0, 500.0), wide=wide, gap=3.0), 1)
    a, b, c, d = strip.outline
    assert (a.y, c.y) == (b.y, d.y)
    assert abs(d.x - a.x) == pytest.approx(abs(d.y - a.y))
    assert b.x - a.x == pytest.approx(wide * sqrt(2.0))
    assert strip.length == pytest.approx(500.0 * sqrt(2.0))  # from edge to edge


def test_bare_cloth_gives_as_many_full_strips_as_fit() -> None:
    """floor((1500 - 500) / (40 times the root of 2)) is 17, each 500 times the root of 2 long."""
    found = islice(slanting_strips([], Point(1500.0, 500.0), wide=40.0, gap=0.0), 40)
    full = [strip for strip in found if strip.length > 500.0 * sqrt(2.0) - 1e-3]
    assert len(full) == 17


def test_cloth_that_is_covered_leaves_nothing_over() -> None:
    assert (
        list(slanting_strips([boxed(0.0, 0.0, 900.0, 500.0)], Point(900.0, 500.0), wide=20.0, gap=2.0)) == []
    )


def test_the_same_shapes_leave_the_same_strips() -> None:
    shapes = [boxed(100.0, 50.0, 300.0, 200.0), boxed(500.0, 200.0, 250.0, 250.0)]
    once, again = (
        list(islice(slanting_strips(shapes, Point(900.0, 500.0), wide=32.0, gap=3.0), FEW)) for _ in range(2)
    )
    assert once == again
