"""Alterations of edges."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import asin, atan, pi, sin, sqrt, tan

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from specc.alteration import band, round_corner, scallop, sew_as, spread, taper
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import polygon_area
from specc.model.alteration import Form
from specc.model.reshaping import Band, RoundCorner, Scallop, SewAs, Spread, Taper
from specc.pattern.measure import dart_width, run_length
from specc.pattern.outline import area, notched_outline
from specc.pattern.piece import Dart, Edge, Piece
from tests.altering import (
    ORIGIN,
    altered,
    at_share,
    edge,
    evaluate,
    length,
    part,
    polygon,
    rectangle,
    sewn,
    share,
    whole,
)
from tests.sources import Known, against
from tests.strategies import lengths


def spread_open(
    piece: Piece, by: float, and_by: float | None, form: Form, places: tuple[float, float]
) -> Piece:
    step = Spread(
        part("a"),
        at_share(places[0]),
        part("c"),
        at_share(places[1]),
        length(by),
        None if and_by is None else length(and_by),
        form,
        ORIGIN,
    )
    return altered(spread.apply((piece,), step, evaluate))


forms = st.sampled_from([Form.FLARE, Form.GATHERS, Form.EASE, Form.PLEAT, Form.TUCK])


@against(Known.DERIVED, "area grown by height times amount")
@given(lengths(80, 400), lengths(80, 400), lengths(1, 200), st.floats(0.2, 0.8), forms)
def test_a_parallel_spread_of_a_rectangle_adds_height_times_amount(
    width: float, height: float, by: float, place: float, form: Form
) -> None:
    piece = rectangle(width, height)
    wider = spread_open(piece, by, None, form, (place, 1.0 - place))
    assert area(wider) == pytest.approx(width * height + height * by, abs=1e-6)
    for name in "ac":
        assert run_length(edge(wider, name)) == pytest.approx(width + by, abs=1e-9)
        assert sewn(wider, name) == pytest.approx(width + (by if form is Form.FLARE else 0.0), abs=1e-9)
        assert len(edge(wider, name).parts[0].segments) == 1


@against(Known.DERIVED, "angle = 2 asin(w / 2 L); sector of L and the angle")
@given(lengths(150, 400), lengths(80, 400), lengths(1, 50))
def test_a_hinged_spread_turns_by_twice_the_arc_sine(width: float, height: float, by: float) -> None:
    # A chord of w at distance L from the hinge: w = 2 L sin(angle / 2).
    opened = spread_open(rectangle(width, height), by, 0.0, Form.FLARE, (0.5, 0.5))
    right, left = edge(opened, "b").parts[0], edge(opened, "d").parts[0]
    angle = abs(right.start_direction().angle_to(-left.start_direction()))
    assert angle == pytest.approx(2.0 * asin(by / (2.0 * height)), abs=1e-12)
    hinge = edge(opened, "c").parts[0].segments[0].end
    assert hinge.distance(Point(width / 2, height)) < 1e-9
    assert sewn(opened, "c") == pytest.approx(width, abs=1e-9)
    # The edge stood square to the slash: it follows the arc about the hinge, of length height times angle.
    assert sewn(opened, "a") == pytest.approx(width + height * angle, rel=1e-5)
    assert area(opened) == pytest.approx(width * height + 0.5 * height**2 * angle, rel=1e-6)


@against(Known.DERIVED, "isosceles trapezium; sector of a ring")
@given(lengths(300, 500), lengths(150, 400), lengths(10, 60), lengths(1, 9))
def test_an_unequal_spread_opens_by_both_amounts(
    width: float, height: float, by: float, and_by: float
) -> None:
    opened = spread_open(rectangle(width, height), by, and_by, Form.FLARE, (0.5, 0.5))
    # An isosceles trapezium with legs L and parallel sides w, v: its legs meet at 2 asin((w - v) / 2L), and
    # the arcs about that point through the ends of the sides have radii w / (2 sin(angle / 2)) and L less.
    angle = 2.0 * asin((by - and_by) / (2.0 * height))
    right, left = edge(opened, "b").parts[0], edge(opened, "d").parts[0]
    assert abs(right.start_direction().angle_to(-left.start_direction())) == pytest.approx(angle, abs=1e-12)
    far = by / (2.0 * sin(angle / 2.0))
    assert sewn(opened, "a") == pytest.approx(width + far * angle, rel=1e-5)
    assert sewn(opened, "c") == pytest.approx(width + (far - height) * angle, rel=1e-5)
    ring = 0.5 * angle * (far**2 - (far - height) ** 2)
    assert area(opened) == pytest.approx(width * height + ring, rel=1e-6)


@against(Known.DERIVED, "(1 - pi / 4) r^2")
@given(lengths(100, 300), lengths(100, 300), lengths(1, 49))
def test_a_round_corner_takes_what_the_square_has_beyond_the_quarter_circle(
    width: float, height: float, by: float
) -> None:
    # The square r by r less the quarter circle in it: (1 - pi / 4) r^2; two r of edge become pi r / 2.
    piece = rectangle(width, height)
    rounded = altered(round_corner.apply((piece,), RoundCorner(whole(), "B", length(by), ORIGIN), evaluate))
    assert area(piece) - area(rounded) == pytest.approx((1.0 - pi / 4.0) * by**2, rel=1e-4)
    around = sewn(rounded, "a") + sewn(rounded, "b")
    assert around == pytest.approx(width + height - 2.0 * by + pi * by / 2.0, rel=1e-6)
    assert sewn(rounded, "a") == pytest.approx(width - by + pi * by / 4.0, rel=1e-6)


@against(Known.DERIVED, "kite less sector: r t - r^2 (pi - angle) / 2")
@given(st.floats(0.5, 2.6), lengths(5, 40))
def test_a_round_corner_of_any_angle_is_the_circle_that_touches_both_edges(angle: float, by: float) -> None:
    # The touching circle has radius t tan(angle / 2); kite less sector: r t - r^2 (pi - angle) / 2.
    tip = Point(0, 0)
    piece = polygon(tip, Point(100, 0), Point(100, 0).turned(angle))
    rounded = altered(round_corner.apply((piece,), RoundCorner(whole(), "A", length(by), ORIGIN), evaluate))
    radius = by * tan(angle / 2.0)
    taken = radius * by - 0.5 * radius**2 * (pi - angle)
    assert area(piece) - area(rounded) == pytest.approx(taken, rel=2e-4, abs=1e-6)
    middle = edge(rounded, "a").parts[0].start
    assert middle.norm() == pytest.approx(radius / sin(angle / 2.0) - radius, rel=1e-5, abs=1e-6)


@against(Known.DERIVED, "segment of a circle by chord and height")
@given(lengths(200, 600), lengths(20, 90), st.floats(0.05, 0.45))
def test_scallops_are_arcs_by_chord_and_depth(width: float, every: float, deep: float) -> None:
    # A segment of a circle with chord c and height h: r = (c^2 / 4 + h^2) / 2h, half angle 2 atan(2h / c),
    # arc r times the whole angle, area r^2 (angle - sin angle) / 2.
    piece = rectangle(width, 300.0)
    count = max(1, round(width / every))
    chord = width / count
    depth = deep * chord
    cut = altered(scallop.apply((piece,), Scallop(part("a"), length(every), length(depth), ORIGIN), evaluate))
    radius = (chord**2 / 4.0 + depth**2) / (2.0 * depth)
    angle = 4.0 * atan(2.0 * depth / chord)
    assert sewn(cut, "a") == pytest.approx(count * radius * angle, rel=1e-5)
    grown = count * radius**2 * (angle - sin(angle)) / 2.0
    assert area(cut) == pytest.approx(area(piece) + grown, rel=1e-5)
    assert min(p.y for s in edge(cut, "a").parts[0].segments for p in s.extremes()) == pytest.approx(
        -depth, abs=1e-9
    )


@against(Known.DERIVED, "d times the angle turned; area of a spiral")
def test_letting_out_a_round_hem_adds_distance_times_turning() -> None:
    # Parallel curves: the length changes by distance times the angle turned (any shape).
    top, radius = Point(0, 0), 400.0
    hem = arc(Point(0, -radius), top, pi / 2.0)
    edges = (
        Edge("hem", "A", "B", (hem,)),
        Edge("side", "B", "C", (Path.through(Point(radius, 0), Point(100, 0)),)),
        Edge("waist", "C", "D", (arc(Point(100, 0), top, -pi / 2.0),)),
        Edge("centre", "D", "A", (Path.through(Point(0, -100), Point(0, -radius)),)),
    )
    piece = Piece("front", "front", edges, fold="centre")
    step = Taper((part("hem"),), True, length(30.0), None, None, None, ORIGIN)
    longer = altered(taper.apply((piece,), step, evaluate))
    assert sewn(longer, "hem") == pytest.approx(sewn(piece, "hem") + 30.0 * pi / 2.0, abs=1e-2)
    # Tapering evenly from 0 to d along the quarter circle is a spiral r = R + d t / (pi / 2):
    # its area beyond the circle is the integral of (r^2 - R^2) / 2 over t = (R d / 2 + d^2 / 6) pi / 2.
    step = Taper((part("hem"),), True, length(30.0), "B", length(0.0), "A", ORIGIN)
    spiral = altered(taper.apply((piece,), step, evaluate))
    beyond = (radius * 30.0 / 2.0 + 30.0**2 / 6.0) * pi / 2.0
    assert area(spiral) - area(piece) == pytest.approx(beyond, rel=1e-3)


@against(Known.DERIVED, "area of a trapezium")
@given(lengths(100, 400), lengths(100, 400), lengths(0, 30), lengths(0, 30))
def test_taking_in_a_side_takes_a_trapezium(width: float, height: float, first: float, last: float) -> None:
    piece = rectangle(width, height, fold="d")
    step = Taper((part("b"),), False, length(first), "B", length(last), "C", ORIGIN)
    narrower = altered(taper.apply((piece,), step, evaluate))
    assert area(piece) - area(narrower) == pytest.approx(0.5 * (first + last) * height, abs=1e-6)
    assert sewn(narrower, "a") == pytest.approx(width - first, abs=1e-9)
    assert sewn(narrower, "c") == pytest.approx(width - last, abs=1e-9)
    assert sewn(narrower, "b") == pytest.approx(sqrt(height**2 + (first - last) ** 2), abs=1e-9)


@against(Known.DERIVED, "the layer laid over is the mirror image in its fold")
@pytest.mark.parametrize("clockwise", [False, True])
def test_a_folded_pleat_lies_on_its_edge(*, clockwise: bool) -> None:
    """Truing, as the trade does it: lay the fold, cut along the edge, open it again.

    Laid, the upper layer of the fold is the mirror image in the fold line and must end with the edge beneath.
    """
    slanted = (Point(0, 0), Point(300, 40), Point(300, 300), Point(0, 300))
    piece = polygon(*slanted, fold="d")
    if clockwise:
        mirrored = tuple(Point(-p.x, p.y) for p in slanted)
        piece = polygon(mirrored[0], *mirrored[:0:-1], fold="a")
        first, second = "d", "b"
    else:
        first, second = "a", "c"
    step = Spread(
        part(first), at_share(0.5), part(second), at_share(0.5), length(40), None, Form.PLEAT, ORIGIN
    )
    pleated = altered(spread.apply((piece,), step, evaluate))
    corners = [s.start for s in edge(pleated, first).parts[0].segments] + [edge(pleated, first).parts[0].end]
    across = sorted(corners, key=lambda p: abs(p.x))
    # The fold lines stand at 150 and 190, its middle at 170; 20 back from 150 the edge is 8 / 3 lower.
    # The layer beneath is not mirrored: from 170 on the edge goes straight into the run beyond the fold.
    assert [abs(p.x) for p in across] == pytest.approx([0, 150, 170, 340], abs=1e-9)
    assert [p.y for p in across] == pytest.approx([0, 20, 20 - 20 * 40 / 300, 40], abs=1e-9)
    assert sewn(pleated, first) == pytest.approx(sewn(piece, first), abs=1e-9)
    (fold,) = edge(pleated, first).folds
    assert fold.amount == pytest.approx(2.0 * sqrt(20**2 + (20 * 40 / 300) ** 2), abs=1e-9)


@against(Known.DERIVED, "reach times angle; sector")
@given(st.floats(0.05, 0.35), lengths(100, 250))
def test_a_dart_eased_in_takes_the_arc_about_its_pivot(angle: float, reach: float) -> None:
    # Both runs stand square to the legs, as a trued dart has them: opened, the edge is an arc about the
    # pivot, reach times angle long.
    pivot = Point(0, 0)
    first, second = Point(0, -reach).turned(-angle / 2.0), Point(0, -reach).turned(angle / 2.0)
    run = 80.0
    left, right = first - (first - pivot).unit().left() * run, second + (second - pivot).unit().left() * run
    top = (Point(right.x, 50), Point(left.x, 50))
    edges = (
        Edge("hem", "A", "B", (Path.through(left, first), Path.through(second, right)), ("dart",)),
        Edge("b", "B", "C", (Path.through(right, top[0]),)),
        Edge("c", "C", "D", (Path.through(*top),)),
        Edge("d", "D", "A", (Path.through(top[1], left),)),
    )
    piece = Piece("front", "front", edges, darts=(Dart("dart", "hem", first, second, pivot),))
    assert dart_width(piece.darts[0]) == pytest.approx(2.0 * reach * sin(angle / 2.0))
    eased = altered(sew_as.apply((piece,), SewAs((part("dart"),), Form.EASE, ORIGIN), evaluate))
    (gathers,) = edge(eased, "hem").gathers
    assert gathers.eased
    assert gathers.amount == pytest.approx(reach * angle, rel=1e-5)
    assert sewn(eased, "hem") == pytest.approx(2.0 * run, abs=1e-9)
    assert area(eased) == pytest.approx(area(piece) + 0.5 * reach**2 * angle, rel=1e-5)
    pleated = altered(sew_as.apply((piece,), SewAs((part("dart"),), Form.PLEAT, ORIGIN), evaluate))
    # Laid, the fold ends on the edge: both its layers run square to a leg, to where the dart's middle cuts.
    (fold,) = edge(pleated, "hem").folds
    assert fold.amount == pytest.approx(2.0 * reach * tan(angle / 2.0), rel=1e-9)
    assert area(pleated) == pytest.approx(area(piece) + reach**2 * tan(angle / 2.0), rel=1e-9)


@against(Known.DERIVED, "length times share")
@given(lengths(100, 400), lengths(20, 80), st.floats(0.5, 1.0))
def test_a_band_is_as_long_as_what_it_goes_along(width: float, by: float, ratio: float) -> None:
    """A rib band is cut to a share of its opening (arithmetic of ratios); its area is length times width."""
    front, back = (
        rectangle(width, 300.0, fold="d"),
        replace(rectangle(width + 10.0, 300.0, fold="d"), name="back"),
    )
    step = Band((part("c"), part("c", "back")), length(by), share(ratio), "rib", ORIGIN)
    rib = altered(band.apply((front, back), step, evaluate))
    assert sewn(rib, "bottom") == pytest.approx(2.0 * (2.0 * width + 10.0) * ratio, rel=1e-12)
    assert area(rib) == pytest.approx(2.0 * (2.0 * width + 10.0) * ratio * by, rel=1e-12)


@against(Known.PROGRAM, "shapely.Polygon.area")
def test_areas_of_altered_outlines_agree_with_shapely() -> None:
    piece = rectangle(300.0, 200.0)
    cut = altered(scallop.apply((piece,), Scallop(part("c"), length(37.0), length(11.0), ORIGIN), evaluate))
    opened = spread_open(cut, 35.0, 12.0, Form.FLARE, (0.4, 0.43))
    points = notched_outline(opened).flattened(1e-4)
    drawn = shapely.Polygon([(p.x, p.y) for p in points])
    assert drawn.is_valid
    assert drawn.area == pytest.approx(area(opened), rel=1e-6)
    assert drawn.area == pytest.approx(abs(polygon_area(points[:-1])), rel=1e-12)
    assert all(a.distance(b) > 0.0 for a, b in pairwise(points))
