"""Take in and let out, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specc.alteration import taper
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Taper
from specc.pattern.lookup import corner_named
from specc.pattern.measure import dart_angle
from specc.pattern.piece import Dart, Gathers, Notch
from tests.altering import ORIGIN, altered, edge, evaluate, length, part, polygon, rectangle, refused, sewn

SKIRT = rectangle(200.0, 300.0, fold="d")


def step(
    by: float,
    at: str | None = None,
    and_by: float | None = None,
    and_at: str | None = None,
    *,
    out: bool = False,
    edges: tuple[str, ...] = ("b",),
) -> Taper:
    second = None if and_by is None else length(and_by)
    return Taper(tuple(part(name) for name in edges), out, length(by), at, second, and_at, ORIGIN)


def corners(taken: Taper) -> tuple[Point | None, Point | None]:
    moved = altered(taper.apply((SKIRT,), taken, evaluate))
    return corner_named(moved, "B"), corner_named(moved, "C")


def test_a_side_by_the_same_everywhere() -> None:
    assert corners(step(20.0)) == (Point(180, 0), Point(180, 300))
    assert corners(step(20.0, out=True)) == (Point(220, 0), Point(220, 300))


def test_a_side_by_an_amount_at_one_end_going_to_nothing() -> None:
    assert corners(step(20.0, "C")) == (Point(200, 0), Point(180, 300))
    assert corners(step(20.0, "B", out=True)) == (Point(220, 0), Point(200, 300))


def test_a_side_by_two_amounts() -> None:
    there = corners(step(20.0, "C", 5.0, "B"))
    assert there == (Point(195, 0), Point(180, 300))
    assert corners(step(20.0, "C", 5.0)) == there
    assert corners(step(5.0, "B", 20.0)) == there


def test_several_edges_each_on_its_own() -> None:
    smaller = altered(taper.apply((SKIRT,), step(10.0, edges=("b", "c")), evaluate))
    assert corner_named(smaller, "C") == Point(190, 290)
    assert sewn(smaller, "a") == 190.0


def test_a_neighbour_is_trimmed_along_its_own_course_and_goes_on_straight() -> None:
    quarter = arc(Point(100, 0), Point(0, 0), 1.5707963267948966)
    bodice = polygon(Point(100, 0), Point(0, 100), Point(0, 0))
    bodice = replace(bodice, edges=(replace(bodice.edges[0], parts=(quarter,)), *bodice.edges[1:]))
    inner = altered(taper.apply((bodice,), step(10.0), evaluate))
    assert corner_named(inner, "B") is not None
    at = corner_named(inner, "B")
    assert at is not None
    # On the circle, at 10 from the edge.
    assert at.x == pytest.approx(10.0, abs=1e-6)
    assert at.norm() == pytest.approx(100.0, abs=1e-3)
    assert corner_named(altered(taper.apply((bodice,), step(10.0, out=True), evaluate)), "B") == Point(
        -10, 100
    )


def test_an_edge_with_a_dart_keeps_it() -> None:
    """The legs are cut off, or go on, by the same length; the place where they meet stays."""
    dart = Dart("dart", "b", Point(200, 140), Point(210, 160), Point(80, 150))
    second = dart.pivot + (dart.first - dart.pivot).turned(dart_angle(dart))
    dart = replace(dart, second=second)
    parts = (Path.through(Point(200, 0), dart.first), Path.through(dart.second, Point(205, 300)))
    edges = (
        SKIRT.edges[0],
        replace(SKIRT.edges[1], parts=parts, darts=("dart",)),
        replace(SKIRT.edges[2], parts=(Path.through(Point(205, 300), Point(0, 300)),)),
        SKIRT.edges[3],
    )
    piece = replace(SKIRT, edges=edges, darts=(dart,))
    for out in (False, True):
        moved = altered(taper.apply((piece,), step(15.0, "B", 5.0, out=out), evaluate))
        (after,) = moved.darts
        legs = after.first.distance(after.pivot), after.second.distance(after.pivot)
        assert legs[0] == pytest.approx(legs[1], abs=1e-5)
        assert (legs[0] > dart.first.distance(dart.pivot)) == out
        assert dart_angle(after) == pytest.approx(dart_angle(dart), abs=1e-9)


def test_marks_of_the_trimmed_neighbour_keep_their_places() -> None:
    top = replace(SKIRT.edges[2], gathers=(Gathers(10.0, 110.0, 20.0),))
    piece = replace(
        SKIRT, edges=(*SKIRT.edges[:2], top, SKIRT.edges[3]), notches=(Notch("c", 120.0), Notch("c", 5.0))
    )
    narrow = altered(taper.apply((piece,), step(20.0), evaluate))
    # 20 off the start of the top: the gathers lose the first 10 of their 100, and a tenth of what they take.
    (gathers,) = edge(narrow, "c").gathers
    assert (gathers.start, gathers.end, gathers.amount) == pytest.approx((0.0, 90.0, 18.0))
    assert [n.at for n in narrow.notches] == [100.0]


def test_a_fold_moves_by_the_same_at_both_ends_only() -> None:
    wider = altered(taper.apply((SKIRT,), step(10.0, out=True, edges=("d",)), evaluate))
    assert corner_named(wider, "A") == Point(-10, 0)
    tapered = step(10.0, "A", out=True, edges=("d",))
    assert refused(taper.apply((SKIRT,), tapered, evaluate)) == "edge-on-fold"


def test_refusals() -> None:
    def why(taken: Taper) -> str:
        return refused(taper.apply((SKIRT,), taken, evaluate))

    assert why(step(-3.0)) == "amount-not-positive"
    assert why(step(3.0, "A")) == "not-a-corner-of-edge"
    assert why(step(3.0, "B", 2.0, "D")) == "not-a-corner-of-edge"
    assert why(step(3.0, edges=("hem",))) == "part-gone"
    assert why(step(250.0)) == "edge-cannot-move"
