"""Placing shapes whose best layout is known, and what is said of bad ones."""

from __future__ import annotations

import sys
from itertools import takewhile
from typing import TYPE_CHECKING

import pytest

from specc.geometry.point import Point
from specc.packing import (
    Layout,
    Placed,
    SearchFailedError,
    Shape,
    Strip,
    bottom_left,
    faults,
    quick,
    search,
    too_large,
)

if TYPE_CHECKING:
    from specc.packing import Report


def _box(name: str, wide: float, high: float, count: int, *angles: float) -> Shape:
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    return Shape(name, tuple(Point(x, y) for x, y in corners), count, angles or (0.0, 180.0))


def test_two_rows_that_fit_exactly_fill_the_cloth() -> None:
    strip = Strip(200.0, 0.0, (_box("a", 50.0, 100.0, 8),))
    assert bottom_left(strip).length == pytest.approx(200.0)
    assert quick(strip).length == pytest.approx(200.0, abs=0.1)


def test_a_gap_is_kept_between_shapes_and_to_every_side() -> None:
    strip = Strip(210.0 + 3 * 4.0, 4.0, (_box("a", 100.0, 105.0, 4),))
    layout = bottom_left(strip)
    assert layout.length == pytest.approx(200.0 + 3 * 4.0, abs=1.0)
    assert faults(strip, layout) == ()


def test_a_shape_as_wide_as_the_cloth_is_placed() -> None:
    strip = Strip(200.0, 0.0, (_box("a", 50.0, 200.0, 2),))
    assert quick(strip).length == pytest.approx(100.0, abs=0.1)
    assert too_large(strip) == ()


def test_a_shape_wider_than_the_cloth_is_named_with_the_width_it_needs() -> None:
    strip = Strip(200.0, 2.0, (_box("a", 50.0, 100.0, 2), _box("b", 50.0, 198.0, 1)))
    assert [(shape.name, needed) for shape, needed in too_large(strip)] == [("b", 202.0)]


def test_a_shape_that_fits_only_turned_is_not_too_large() -> None:
    assert too_large(Strip(60.0, 0.0, (_box("a", 50.0, 100.0, 1, 0.0, 90.0),))) == ()


def _layouts(strip: Strip, most: int) -> list[Report]:
    reports = takewhile(lambda report: report.number <= most, search(strip, seed=3))
    return [report for report in reports if report.layout is not None]


def test_the_same_search_gives_the_same_layouts() -> None:
    many = (_box("a", 50.0, 70.0, 12), _box("b", 33.0, 41.0, 15), _box("c", 20.0, 90.0, 10))
    first, second = (_layouts(Strip(200.0, 1.0, many), 30) for _ in range(2))
    assert first
    assert first == second


def test_a_search_that_is_left_ends_its_process() -> None:
    layouts = search(Strip(200.0, 1.0, (_box("a", 50.0, 70.0, 3),)), seed=1)
    assert next(report for report in layouts if report.layout is not None).number >= 1
    layouts.close()  # type: ignore[attr-defined]


def test_without_the_library_the_plain_placement_serves(monkeypatch: pytest.MonkeyPatch) -> None:
    strip = Strip(200.0, 1.0, (_box("a", 50.0, 70.0, 3),))
    monkeypatch.setattr(sys, "executable", "/nowhere/python")
    with pytest.raises(SearchFailedError):
        next(search(strip, seed=1))
    assert quick(strip) == bottom_left(strip)


A, ON_A, BESIDE_A = (Placed("a", 0.0, Point(x, 0.0)) for x in (0.0, 0.0, 51.0))
TURNED, HIGH, FAR = (
    Placed("a", 90.0, Point(150.0, 0.0)),
    Placed("a", 0.0, Point(90.0, 40.0)),
    Placed("a", 0.0, Point(160.0, 0.0)),
)


@pytest.mark.parametrize(
    ("placed", "said"),
    [
        ((), "it has `a` 0 times instead of 2"),
        ((A, ON_A), "`a` and `a` overlap"),
        ((A, BESIDE_A), "`a` and `a` are nearer than 5 mm"),
        ((A, TURNED), "`a` is turned by 90 degrees, which its grain does not allow"),
        ((A, HIGH), "`a` lies beyond an edge of the cloth"),
        ((A, FAR), "`a` lies beyond an end of the lay"),
        ((Placed("b", 0.0, Point(0.0, 0.0)),), "it places `b`, which is not among the pieces"),
    ],
)
def test_what_is_wrong_with_a_layout_is_said(placed: tuple[Placed, ...], said: str) -> None:
    assert said in faults(Strip(120.0, 5.0, (_box("a", 50.0, 100.0, 2),)), Layout(200.0, placed))
