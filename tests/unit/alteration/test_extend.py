"""Button stands and grown-on strips, on a piece that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

from specc.alteration import divide, extend
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.dividing import Divide
from specc.model.reshaping import Extend
from specc.pattern.lookup import corner_named, line_named
from specc.pattern.outline import area
from specc.pattern.piece import Notch, ReferenceLine
from tests.altering import (
    ORIGIN,
    altered,
    at_length,
    edge,
    evaluate,
    length,
    part,
    polygon,
    rectangle,
    refused,
    sewn,
)

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


def test_a_vent_has_a_step_where_the_seam_goes_on_above_it() -> None:
    """d runs down from D at (0, 300); its lowest 120 become the vent, which grows by 40 to the left."""
    asked = Divide((part("d"),), at_length(120.0, "A"), ("vent", "d"), ORIGIN)
    skirt = altered(divide.apply((FRONT,), asked, evaluate))
    vented = altered(extend.apply((skirt,), Extend(part("vent"), length(40.0), ORIGIN), evaluate))
    assert [e.name for e in vented.edges] == ["a", "b", "c", "d", "vent-step", "vent"]
    assert corner_named(vented, "vent-d") == Point(0, 120)
    assert corner_named(vented, "vent-out") == Point(-40, 120)
    assert corner_named(vented, "A") == Point(-40, 0)
    assert (sewn(vented, "d"), sewn(vented, "vent-step"), sewn(vented, "vent")) == (180.0, 40.0, 120.0)
    assert sewn(vented, "a") == 240.0
    assert area(vented) == area(skirt) + 40.0 * 120.0
    assert line_named(vented, "vent-line") == ReferenceLine("vent-line", edge(skirt, "vent").parts)


def test_a_step_may_slant() -> None:
    """Its outer end lies 30 lower; so much shorter is the vent, and notches on it keep their place."""
    asked = Divide((part("d"),), at_length(120.0, "A"), ("vent", "d"), ORIGIN)
    skirt = altered(divide.apply((FRONT,), asked, evaluate))
    skirt = replace(skirt, notches=(Notch("vent", 50.0),))
    step = Extend(part("vent"), length(40.0), ORIGIN, length(30.0))
    vented = altered(extend.apply((skirt,), step, evaluate))
    assert corner_named(vented, "vent-out") == Point(-40, 90)
    assert (sewn(vented, "vent-step"), sewn(vented, "vent")) == (50.0, 90.0)
    assert area(vented) == area(skirt) + 40.0 * 120.0 - 0.5 * 40.0 * 30.0
    assert vented.notches == (Notch("vent", 20.0),)


def test_between_two_seams_there_are_two_steps() -> None:
    first = Divide((part("d"),), at_length(100.0), ("upper", "rest"), ORIGIN)
    second = Divide((part("rest"),), at_length(80.0), ("flap", "lower"), ORIGIN)
    pieces = divide.apply((FRONT,), first, evaluate)
    assert isinstance(pieces, tuple)
    parted = altered(divide.apply(pieces, second, evaluate))
    flapped = altered(extend.apply((parted,), Extend(part("flap"), length(25.0), ORIGIN), evaluate))
    assert [e.name for e in flapped.edges[3:]] == ["upper", "flap-step", "flap", "flap-step-2", "lower"]
    assert corner_named(flapped, "flap-out") == Point(-25, 200)
    assert corner_named(flapped, "flap-out-2") == Point(-25, 120)


def test_refusals() -> None:
    def why(name: str, by: float) -> str:
        folded = replace(FRONT, fold="d")
        return refused(extend.apply((folded,), Extend(part(name), length(by), ORIGIN), evaluate))

    assert why("d", 10.0) == "edge-on-fold"
    assert why("b", -10.0) == "amount-not-positive"
    assert why("collar", 10.0) == "part-gone"
    slanting = Extend(part("b"), length(10.0), ORIGIN, length(5.0))
    assert refused(extend.apply((FRONT,), slanting, evaluate)) == "no-step-to-slant"
