"""Gathering an edge, on pieces that can be followed with a pencil."""

from __future__ import annotations

import itertools
from dataclasses import replace
from math import hypot
from typing import TYPE_CHECKING

import pytest

from specc.alteration import gather
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.fullness import Gather, Slashed
from specc.pattern.lookup import corner_named
from specc.pattern.measure import run_length
from specc.pattern.outline import area
from specc.pattern.piece import (
    Fold,
    FoldKind,
    NamedPoint,
    Notch,
    ReferenceLine,
    TwoPointedDart,
)
from tests.altering import (
    ORIGIN,
    altered,
    at_length,
    at_share,
    edge,
    evaluate,
    length,
    part,
    polygon,
    rectangle,
    refused,
    sewn,
)

if TYPE_CHECKING:
    from specc.pattern.piece import (
        Piece,
    )

SKIRT = rectangle(200.0, 300.0, fold="d")  # the waist is `c`, from C at the side to D at the centre
STEP = Gather(part("c"), at_share(0.2), at_share(0.8), length(60.0), Slashed(), ORIGIN)


def gathered(piece: Piece, step: Gather = STEP) -> Piece:
    return altered(gather.apply((piece,), step, evaluate))


def drawn_in(piece: Piece) -> list[float]:
    return [figure for g in edge(piece, "c").gathers for figure in (g.start, g.end, g.amount)]


def test_cloth_is_put_in_evenly_between_the_places() -> None:
    """From 40 to 160 of the width everything is half as wide again; what lies beyond moves by 60."""
    marked = replace(
        SKIRT,
        notches=(Notch("a", 20.0), Notch("a", 100.0), Notch("a", 190.0), Notch("c", 100.0), Notch("b", 50.0)),
        lines=(ReferenceLine("hip-line", (Path.through(Point(0, 200), Point(200, 200)),)),),
        points=(NamedPoint("pocket", Point(100, 250)),),
        two_pointed=(TwoPointedDart("dart", Point(20, 250), Point(20, 150), Point(15, 200), Point(25, 200)),),
        grain=Path.through(Point(70, 50), Point(70, 250)),
    )
    wider = gathered(marked)
    assert drawn_in(wider) == pytest.approx([40.0, 160.0, 60.0])
    assert sewn(wider, "c") == pytest.approx(200.0)
    assert sewn(wider, "a") == pytest.approx(260.0)
    assert area(wider) == pytest.approx(260.0 * 300.0)
    assert corner_named(wider, "B") == Point(260, 0)
    assert [notch.at for notch in wider.notches] == pytest.approx([20.0, 130.0, 250.0, 100.0, 50.0])
    assert wider.lines[0].parts[0].length() == pytest.approx(260.0)
    assert wider.points[0].at.distance(Point(130, 250)) < 1e-9
    assert wider.two_pointed == marked.two_pointed
    assert wider.grain is not None
    assert wider.grain.start.distance(Point(85, 50)) < 1e-9


def test_on_a_slant_the_edge_keeps_its_rise() -> None:
    """A waist that rises by 50 over 200 still rises by 50; between the places it is 15 flatter a hundred."""
    corners = (Point(0, 0), Point(200, 0), Point(200, 350), Point(0, 300))
    slanted = gathered(replace(polygon(*corners, fold="d"), grain=None))
    waist = edge(slanted, "c")
    assert waist.parts[0].start.distance(Point(260, 350)) < 1e-9
    assert waist.parts[0].end.distance(Point(0, 300)) < 1e-9
    (gathers,) = waist.gathers
    inner = hypot(180.0, 30.0)
    assert gathers.amount == pytest.approx(inner - hypot(120.0, 30.0))
    assert sewn(slanted, "c") == pytest.approx(hypot(200.0, 50.0))
    # Smooth where the slope changes, at both ends of the stretch.
    segments = waist.parts[0].segments
    for a, b in itertools.pairwise(segments):
        assert abs(a.end_direction().angle_to(b.start_direction())) < 1e-6
    assert area(slanted) == pytest.approx(325.0 * 200.0 + 60.0 * 325.0, rel=1e-3)


def test_without_a_fold_what_holds_the_grain_stays() -> None:
    free = replace(SKIRT, fold=None, grain=Path.through(Point(180, 50), Point(180, 250)))
    wider = gathered(free)
    assert corner_named(wider, "B") == Point(200, 0)
    assert corner_named(wider, "A") == Point(-60, 0)


def test_hinged_at_the_hem_only_the_waist_opens() -> None:
    marked = replace(SKIRT, notches=(Notch("c", 30.0), Notch("c", 100.0), Notch("c", 170.0)))
    hinged = gathered(marked, replace(STEP, slashed=Slashed(hinged=True)))
    assert run_length(edge(hinged, "a")) == pytest.approx(200.0)
    assert sewn(hinged, "c") == pytest.approx(200.0)
    (gathers,) = edge(hinged, "c").gathers
    assert (gathers.start, gathers.end) == (40.0, 160.0)
    assert [n.at for n in hinged.notches] == pytest.approx([30.0, 100.0, 170.0], abs=0.05)
    assert gathers.amount == pytest.approx(60.0, rel=2e-3)  # arcs are longer than their chords
    assert edge(hinged, "b").parts[0].length() == pytest.approx(300.0)
    fan = area(hinged) - area(SKIRT)
    assert fan == pytest.approx(0.5 * 60.0 * 300.0, rel=2e-3)


def test_slashed_to_the_other_side_the_cloth_is_put_in_across_the_grain() -> None:
    free = rectangle(200.0, 300.0)
    along = replace(STEP, edge=part("b"))
    assert refused(gather.apply((free,), along, evaluate)) == "edge-along-grain"
    across = gathered(free, replace(along, slashed=Slashed(part("d"))))
    assert sewn(across, "b") == pytest.approx(300.0)
    assert sewn(across, "d") == pytest.approx(360.0)
    assert area(across) == pytest.approx(200.0 * 360.0)


def test_gathered_twice() -> None:
    """The second stretch is measured along the edge as sewn; the first keeps what it takes up."""
    once = gathered(SKIRT, replace(STEP, end=at_share(0.4)))
    twice = gathered(once, replace(STEP, start=at_share(0.6), end=at_share(0.9)))
    assert drawn_in(twice) == pytest.approx([40.0, 80.0, 60.0, 120.0, 180.0, 60.0])
    assert sewn(twice, "c") == pytest.approx(200.0)
    assert sewn(twice, "a") == pytest.approx(320.0)


def test_refusals() -> None:
    def why(step: Gather, piece: Piece = SKIRT) -> str:
        return refused(gather.apply((piece,), step, evaluate))

    assert why(replace(STEP, by=length(0.0))) == "amount-not-positive"
    assert why(replace(STEP, edge=part("d"))) == "edge-on-fold"
    assert why(replace(STEP, edge=part("yoke"))) == "part-gone"
    assert why(replace(STEP, edge=part("c", "sleeve"))) == "piece-gone"
    assert why(replace(STEP, end=at_length(40.5))) == "stretch-too-short"
    inner = TwoPointedDart("dart", Point(100, 250), Point(100, 150), Point(95, 200), Point(105, 200))
    assert why(STEP, replace(SKIRT, two_pointed=(inner,))) == "slash-crosses-dart"
    pleated = replace(SKIRT.edges[0], folds=(Fold(80.0, 20.0, FoldKind.PLEAT),))
    assert why(STEP, replace(SKIRT, edges=(pleated, *SKIRT.edges[1:]))) == "edge-not-plain"
    corners = (Point(0, 0), Point(200, 0), Point(200, 300), Point(60, 300))
    below_fold = replace(STEP, edge=part("a"), start=at_share(0.05))
    assert why(below_fold, polygon(*corners, fold="d")) == "slash-into-fold"
