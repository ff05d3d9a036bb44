"""What is measured on a small piece whose figures can be worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from math import atan

import pytest

from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.pattern.lookup import (
    corner_named,
    dart_named,
    edge_named,
    edges_at,
    line_named,
    names_of,
    piece_named,
    point_named,
)
from specc.pattern.measure import (
    dart_angle,
    dart_depth,
    dart_tip,
    dart_width,
    drawn_length,
    line_length,
    place_on_edge,
    run_length,
    stitched_at,
    stitched_length,
    taken_in,
)
from specc.pattern.outline import (
    area,
    bounds,
    capped_outline,
    drawn_outline,
    fold_mirror,
    grain_direction,
    notched_outline,
    transformed,
    unfolded_outline,
)
from specc.pattern.piece import Dart, Edge, Gathers, NamedPoint, Piece, ReferenceLine, TwoPointedDart

# A skirt front on the fold: 200 wide, 600 long, a waist dart 20 wide and 100 deep in the middle of the waist.
BOTTOM, CORNER, TOP, CENTRE = Point(0, 0), Point(200, 0), Point(200, 600), Point(0, 600)
DART = Dart("waist-dart", "waist", Point(110, 600), Point(90, 600), Point(100, 500), short=10)
SKIRT = Piece(
    "front",
    "Skirt front",
    (
        Edge("hem", "hem-centre", "hem-side", (Path.through(BOTTOM, CORNER),)),
        Edge("side", "hem-side", "waist-side", (Path.through(CORNER, TOP),)),
        Edge(
            "waist",
            "waist-side",
            "waist-centre",
            (Path.through(TOP, DART.first), Path.through(DART.second, CENTRE)),
            ("waist-dart",),
        ),
        Edge("centre", "waist-centre", "hem-centre", (Path.through(CENTRE, BOTTOM),)),
    ),
    darts=(DART,),
    two_pointed=(TwoPointedDart("small", Point(50, 450), Point(50, 350), Point(45, 400), Point(55, 400)),),
    lines=(ReferenceLine("hip-line", (Path.through(Point(0, 400), Point(200, 400)),)),),
    points=(NamedPoint("mark", Point(150, 300)),),
    grain=Path.through(Point(20, 500), Point(20, 100)),
    fold="centre",
)


def waist(piece: Piece = SKIRT) -> Edge:
    found = edge_named(piece, "waist")
    assert found is not None
    return found


def test_an_edge_as_sewn_and_as_drawn() -> None:
    assert run_length(waist()) == stitched_length(waist()) == 180.0
    assert drawn_length(waist()) == 200.0


def test_the_dart() -> None:
    assert dart_width(DART) == 20.0
    assert dart_depth(DART) == 100.0
    assert dart_angle(DART) == pytest.approx(2 * atan(0.1))
    assert dart_tip(DART) == Point(100, 510)
    assert dart_depth(SKIRT.two_pointed[0]) == 100.0


def test_places_on_an_edge_pass_over_the_dart() -> None:
    assert place_on_edge(waist(), 60).at == Point(140, 600)
    assert place_on_edge(waist(), 90).at == Point(110, 600)  # where the dart opens, the part before it
    assert place_on_edge(waist(), 100).at == Point(80, 600)
    assert place_on_edge(waist(), 100).direction == Point(-1, 0)
    assert place_on_edge(waist(), 999).at == CENTRE
    assert stitched_at(waist(), 1, 10.0) == 100.0


def test_places_on_a_gathered_edge_spread_over_the_gathers() -> None:
    """100 mm of 600 are drawn in between 150 and 250 as sewn: there 200 mm of cloth become 100."""
    side = replace(SKIRT.edges[1], gathers=(Gathers(150, 250, 100),))
    assert stitched_length(side) == 500.0
    assert place_on_edge(side, 100).at == Point(200, 100)
    assert place_on_edge(side, 200).at == Point(200, 250)
    assert place_on_edge(side, 300).at == Point(200, 400)
    assert stitched_at(side, 0, 250.0) == 200.0


def test_areas_and_outlines() -> None:
    assert area(SKIRT) == 200 * 600 - 20 * 100 / 2
    assert drawn_outline(SKIRT).length() == pytest.approx(1600.0)
    assert notched_outline(SKIRT).length() == pytest.approx(1580.0 + 2 * DART.first.distance(DART.pivot))
    assert bounds(SKIRT) == (BOTTOM, TOP)
    assert unfolded_outline(SKIRT).length() == pytest.approx(2 * (200 + 600 + 200))
    mirror = fold_mirror(SKIRT)
    assert mirror is not None
    assert mirror(CORNER).distance(Point(-200, 0)) < 1e-9
    assert fold_mirror(replace(SKIRT, fold=None)) is None


def test_the_cap_of_an_upright_dart() -> None:
    """The leg at x = 90 mirrors the straight waist; the cap's corner lies on the dart's middle line.

    Mirrored in the leg, which leans by atan(0.1), the waist rises by tan(2 atan(0.1)) over 10 mm.
    """
    rise = 10 * 0.2 / (1 - 0.01)
    corners = capped_outline(SKIRT).flattened()
    assert min(p.distance(Point(100, 600 + rise)) for p in corners) < 1e-9


def test_a_line_is_measured_less_what_darts_take_in() -> None:
    line = line_named(SKIRT, "hip-line")
    assert line is not None
    assert taken_in(line.parts[0], SKIRT.two_pointed[0]) == pytest.approx(10.0)
    assert line_length(SKIRT, line) == pytest.approx(190.0)
    half_way = Path.through(Point(0, 425), Point(200, 425))
    assert taken_in(half_way, SKIRT.two_pointed[0]) == pytest.approx(5.0)
    assert taken_in(Path.through(Point(0, 460), Point(200, 460)), SKIRT.two_pointed[0]) == 0.0
    assert taken_in(Path.through(Point(50, 425), Point(200, 425)), SKIRT.two_pointed[0]) == pytest.approx(2.5)


def test_names() -> None:
    assert corner_named(SKIRT, "waist-side") == TOP
    assert point_named(SKIRT, "waist-centre") == CENTRE
    assert point_named(SKIRT, "mark") == Point(150, 300)
    assert point_named(SKIRT, "waist-dart-tip") == Point(100, 510)
    assert point_named(SKIRT, "other-tip") is None
    assert dart_named(SKIRT, "small") is SKIRT.two_pointed[0]
    assert dart_named(SKIRT, "waist-dart") is DART
    assert piece_named((SKIRT,), "front") is SKIRT
    assert piece_named((SKIRT,), "back") is None
    ending, starting = edges_at(SKIRT, "waist-side")
    assert (ending, starting) == (SKIRT.edges[1], SKIRT.edges[2])
    assert names_of(SKIRT)[:5] == ("hem", "side", "waist", "centre", "hem-centre")


def test_the_grain_points_up_however_it_was_drawn() -> None:
    assert grain_direction(SKIRT) == Point(0, 1)
    assert grain_direction(replace(SKIRT, grain=None)) == Point(0, 1)


def test_a_moved_piece_keeps_its_measures() -> None:
    from specc.geometry.point import Rigid

    moved = transformed(SKIRT, Rigid.turning(Point(3, 4), 0.7))
    assert area(moved) == pytest.approx(area(SKIRT))
    assert stitched_length(waist(moved)) == pytest.approx(180.0)
    assert dart_angle(moved.darts[0]) == pytest.approx(dart_angle(DART))
