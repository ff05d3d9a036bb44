"""Button stands and grown-on strips, on a piece that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

from specc.alteration import extend
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Extend
from specc.pattern.lookup import corner_named, line_named
from specc.pattern.piece import ReferenceLine
from tests.altering import ORIGIN, altered, evaluate, length, part, polygon, rectangle, refused

FRONT = rectangle(200.0, 300.0)


def test_a_button_stand() -> None:
    """The waist line reaches to the new edge; the old one stays as a line to fold or to button along."""
    waist = ReferenceLine("waist-line", (Path.through(Point(0, 150), Point(200, 150)),))
    front = replace(FRONT, lines=(waist,))
    wider = altered(extend.apply((front,), Extend(part("d"), length(15.0), ORIGIN), evaluate))
    assert corner_named(wider, "A") == Point(-15, 0)
    assert corner_named(wider, "D") == Point(-15, 300)
    centre, across = line_named(wider, "d-line"), line_named(wider, "waist-line")
    assert centre == ReferenceLine("d-line", (Path.through(Point(0, 300), Point(0, 0)),))
    assert across is not None
    assert across.parts[0].start == Point(-15, 150)


def test_slanted_neighbours_go_straight_on() -> None:
    front = polygon(Point(0, 0), Point(100, 0), Point(100, 100), Point(40, 100))
    longer = altered(extend.apply((front,), Extend(part("c"), length(50.0), ORIGIN), evaluate))
    assert corner_named(longer, "C") == Point(100, 150)
    assert corner_named(longer, "D") == Point(60, 150)


def test_refusals() -> None:
    def why(name: str, by: float) -> str:
        folded = replace(FRONT, fold="d")
        return refused(extend.apply((folded,), Extend(part(name), length(by), ORIGIN), evaluate))

    assert why("d", 10.0) == "edge-on-fold"
    assert why("b", -10.0) == "amount-not-positive"
    assert why("collar", 10.0) == "part-gone"
