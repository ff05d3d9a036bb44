"""Rounded corners, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from math import pi, sqrt

import pytest

from specc.alteration import round_corner
from specc.geometry.fit import curve
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import RoundCorner
from specc.pattern.lookup import corner_named
from specc.pattern.piece import Notch
from tests.altering import ORIGIN, altered, edge, evaluate, length, polygon, rectangle, refused, sewn, whole

POCKET = rectangle(150.0, 160.0)


def step(corner: str, by: float) -> RoundCorner:
    return RoundCorner(whole(), corner, length(by), ORIGIN)


def test_the_corner_lies_at_the_middle_of_its_arc() -> None:
    rounded = altered(round_corner.apply((POCKET,), step("B", 20.0), evaluate))
    middle = corner_named(rounded, "B")
    assert middle is not None
    out = 20.0 / sqrt(2.0)
    assert middle.distance(Point(130 + out, 20 - out)) < 1e-3
    assert sewn(rounded, "a") == pytest.approx(130.0 + 5.0 * pi, rel=1e-6)
    assert edge(rounded, "c") == edge(POCKET, "c")


def test_marks_keep_their_places_and_those_at_the_corner_go_onto_the_arc() -> None:
    marked = replace(
        POCKET, notches=(Notch("a", 100.0), Notch("a", 150.0), Notch("b", 60.0), Notch("b", 0.0))
    )
    rounded = altered(round_corner.apply((marked,), step("B", 20.0), evaluate))
    half = 5.0 * pi
    assert [n.at for n in rounded.notches] == pytest.approx([100.0, 130.0 + half, 40.0 + half, 0.0], rel=1e-6)


def test_a_corner_between_curves() -> None:
    """A curve near an arc, smooth from edge to edge."""
    bent = Path((curve(Point(0, 0), Point(1, -0.4), Point(150, 0), Point(1, 0.2)),))
    piece = replace(POCKET, edges=(replace(POCKET.edges[0], parts=(bent,)), *POCKET.edges[1:]))
    rounded = altered(round_corner.apply((piece,), step("B", 30.0), evaluate))
    one, two = edge(rounded, "a").parts[0], edge(rounded, "b").parts[0]
    assert abs(one.end_direction().angle_to(two.start_direction())) < 1e-9
    for path in (one, two):
        for before, after in zip(path.segments, path.segments[1:], strict=False):
            assert abs(before.end_direction().angle_to(after.start_direction())) < 1e-9


def test_a_hollow_corner_is_filled() -> None:
    hollow = polygon(Point(0, 0), Point(100, 0), Point(100, 50), Point(50, 50), Point(50, 100), Point(0, 100))
    rounded = altered(round_corner.apply((hollow,), step("D", 20.0), evaluate))
    middle = corner_named(rounded, "D")
    assert middle is not None
    assert middle.x == pytest.approx(50.0 + 20.0 * (1.0 - 1.0 / sqrt(2.0)), abs=1e-3)


def test_refusals() -> None:
    def why(corner: str, by: float) -> str:
        smooth = polygon(Point(0, 0), Point(50, 0), Point(100, 0), Point(100, 100), Point(0, 100), fold="e")
        return refused(round_corner.apply((smooth,), step(corner, by), evaluate))

    assert why("B", 10.0) == "corner-is-smooth"
    assert why("E", 10.0) == "edge-on-fold"
    assert why("C", 50.0) == "trim-too-long"
    assert why("C", -1.0) == "amount-not-positive"
    assert why("Z", 1.0) == "part-gone"
