"""Hems drawn anew as a curve, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import shape_edge
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Cubic
from specc.model.recutting import EndShift, Shape
from specc.pattern.lookup import corner_named
from specc.pattern.outline import area
from specc.pattern.piece import Gathers, NamedPoint, Notch, ReferenceLine
from tests.altering import (
    ORIGIN,
    altered,
    edge,
    evaluate,
    length,
    part,
    polygon,
    rectangle,
    refused,
    sewn,
    share,
)

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

SKIRT = rectangle(200.0, 300.0, fold="d")  # the hem is `a`, from A at the fold to B at the side
UP = Shape((part("a"),), (EndShift("B", up=True, by=length(60.0)),), None, ORIGIN)
DOWN = replace(UP, shifts=(EndShift("A", up=False, by=length(100.0)),))


def shaped(step: Shape, piece: Piece = SKIRT) -> Piece:
    return altered(shape_edge.apply((piece,), step, evaluate))


def test_a_shirt_tail_rises_to_the_side() -> None:
    """Square to fold and side, and alike on both halves of its way: it takes off half of 200 by 60."""
    tail = shaped(UP)
    assert corner_named(tail, "A") == Point(0, 0)
    assert corner_named(tail, "B") == Point(200, 60)
    assert sewn(tail, "b") == pytest.approx(240.0)
    assert area(tail) == pytest.approx(200.0 * 300.0 - 0.5 * 200.0 * 60.0)
    (curve,) = edge(tail, "a").parts[0].segments
    assert isinstance(curve, Cubic)
    assert curve.start_direction() == Point(1, 0)
    assert curve.end_direction().distance(Point(1, 0)) < 1e-12


def test_a_hem_dropped_at_the_centre() -> None:
    dropped = shaped(DOWN)
    assert corner_named(dropped, "A") == Point(0, -100)
    assert sewn(dropped, "d") == pytest.approx(400.0)
    assert area(dropped) == pytest.approx(200.0 * 300.0 + 0.5 * 200.0 * 100.0)
    both = shaped(replace(UP, shifts=(*UP.shifts, *DOWN.shifts)))
    assert area(both) == pytest.approx(200.0 * 300.0 + 0.5 * 200.0 * (100.0 - 60.0))


def test_a_fuller_curve_stays_level_for_longer() -> None:
    flat, full = shaped(replace(UP, full=share(0.2))), shaped(replace(UP, full=share(0.7)))
    heights = [edge(piece, "a").parts[0].segments[0].point_at(0.25).y for piece in (flat, full)]
    assert heights == pytest.approx([60.0 * (3 * 0.0625 - 2 * 0.015625)] * 2)
    ways = [edge(piece, "a").parts[0].segments[0].point_at(0.25).x for piece in (flat, full)]
    assert ways[1] > ways[0]
    assert area(full) == pytest.approx(area(flat))


def test_square_to_a_slanted_side() -> None:
    corners = (Point(0, 0), Point(240, 0), Point(200, 300), Point(0, 300))
    flared = shaped(UP, polygon(*corners, fold="d"))
    hem, side = edge(flared, "a").parts[0], edge(flared, "b").parts[0]
    assert abs(hem.end_direction().dot(side.start_direction())) < 1e-12
    assert hem.start_direction() == Point(1, 0)


def test_what_lies_on_the_piece_follows() -> None:
    marked = replace(
        SKIRT,
        notches=(Notch("a", 50.0), Notch("b", 100.0), Notch("b", 20.0), Notch("d", 100.0)),
        lines=(ReferenceLine("knee", (Path.through(Point(0, 30), Point(200, 30)),)),),
        points=(NamedPoint("low", Point(190, 10)),),
    )
    tail = shaped(UP, marked)
    whole = sewn(tail, "a")
    assert [n.edge for n in tail.notches] == ["a", "b", "d"]
    assert [n.at for n in tail.notches] == pytest.approx([0.25 * whole, 40.0, 100.0])
    # The knee line ends on the new hem, half way.
    assert tail.lines[0].parts[0].end.distance(Point(100, 30)) < 1e-6
    assert not tail.points
    assert [gone.name for gone in tail.gone] == ["low"]


def test_front_and_back_at_once_or_nothing() -> None:
    other = replace(SKIRT, name="back")
    step = replace(UP, edges=(part("a"), part("a", "back")))
    result = shape_edge.apply((SKIRT, other), step, evaluate)
    assert isinstance(result, tuple)
    assert [sewn(piece, "b") for piece in result] == pytest.approx([240.0, 240.0])


def test_refusals() -> None:
    def why(step: Shape, piece: Piece = SKIRT) -> str:
        return refused(shape_edge.apply((piece,), step, evaluate))

    assert why(replace(UP, edges=(part("d"),))) == "edge-on-fold"
    assert why(replace(UP, edges=(part("yoke"),))) == "part-gone"
    assert why(replace(UP, edges=(part("a", "sleeve"),))) == "piece-gone"
    assert why(replace(UP, shifts=(EndShift("C", up=True, by=length(10.0)),))) == "not-a-corner-of-edge"
    assert why(replace(UP, shifts=(EndShift("B", up=True, by=length(300.0)),))) == "trim-too-long"
    assert why(replace(UP, shifts=(EndShift("B", up=True, by=length(-5.0)),))) == "amount-not-positive"
    assert why(replace(UP, full=share(0.95))) == "curve-too-full"
    assert why(replace(UP, edges=(part("b"),))) == "moves-level"
    gathered = replace(SKIRT.edges[0], gathers=(Gathers(20.0, 80.0, 30.0),))
    assert why(UP, replace(SKIRT, edges=(gathered, *SKIRT.edges[1:]))) == "edge-not-plain"
