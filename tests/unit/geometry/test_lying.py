"""What of one polygon lies outside of another."""

from __future__ import annotations

from specc.geometry.lying import beyond
from specc.geometry.point import Point


def square(x: float, y: float, wide: float, high: float) -> tuple[Point, ...]:
    return Point(x, y), Point(x + wide, y), Point(x + wide, y + high), Point(x, y + high)


def test_what_is_outside_is_given_part_by_part_from_left_to_right() -> None:
    parts = beyond(square(0, 0, 100, 10), square(20, -5, 60, 20), least=1.0)
    assert [(min(p.x for p in part), max(p.x for p in part)) for part in parts] == [(0, 20), (80, 100)]


def test_slivers_and_crumbs_are_left_out() -> None:
    assert beyond(square(0, 0, 100, 100.01), square(0, 0, 100, 100), least=0.1) == ()
    assert beyond(square(0, 0, 100, 100), square(1, 0, 99, 100), least=200.0) == ()
    assert beyond(square(0, 0, 100, 100), square(0, 0, 100, 100), least=0.0) == ()
