"""Paths from drawings: read, followed, carried to other ends."""

from __future__ import annotations

from math import radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.geometry.along import carried, stretch
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.segment import Cubic, Line
from specc.geometry.svg import UnreadableError, drawn_path
from tests.strategies import garment_curves, points


def path(data: str, *transforms: str) -> Path:
    return drawn_path(data, transforms).path


def xy(point: Point) -> tuple[float, float]:
    return pytest.approx((point.x, point.y), abs=1e-9)  # type: ignore[return-value]


def test_y_is_turned_up() -> None:
    assert path("M 10 20 L 30 5") == Path((Line(Point(10, -20), Point(30, -5)),))


@pytest.mark.parametrize(
    ("data", "same"),
    [
        ("m 10,20 l 5 0 0,5", "M 10 20 L 15 20 L 15 25"),
        ("M10 20h5v5", "M 10 20 L 15 20 L 15 25"),
        ("M10 20H15V25", "M 10 20 L 15 20 L 15 25"),
        ("M10-20.5.5-1e1", "M 10 -20.5 L 0.5 -10"),
        ("M0 0c1 2 3 4 5 6", "M0 0C1 2 3 4 5 6"),
        ("M0 0C0 2 3 4 5 5S8 9 9 9", "M0 0C0 2 3 4 5 5C7 6 8 9 9 9"),
        ("M0 0q3 3 6 0t6 0", "M0 0Q3 3 6 0Q9 -3 12 0"),
        ("M0 0 10 0 10 10z", "M0 0L10 0L10 10L0 0"),
        ("M0 0a5 5 0 0110 0", "M0 0A5 5 0 0 1 10 0"),
        ("M0 0L5 0L5 0L10 0", "M0 0L5 0L10 0"),
        ("M0 0A0 5 0 0 1 10 0", "M0 0L10 0"),
        ("M0 0C3 0 6 0 9 0", "M0 0L9 0"),
    ],
)
def test_every_command_means_what_svg_says(data: str, same: str) -> None:
    assert path(data) == path(same)


def test_a_quadratic_curve_is_the_same_as_a_cubic() -> None:
    (segment,) = path("M 0 0 Q 30 60 90 0").segments

    for t in (0.0, 0.2, 0.5, 0.9, 1.0):
        x, y = 60.0 * t * (1 - t) + 90.0 * t * t, -120.0 * t * (1 - t)
        assert xy(segment.point_at(t)) == (x, y)


@pytest.mark.parametrize(
    ("transform", "x", "y"),
    [
        ("matrix(1 2 3 4 5 6)", 1 * 10 + 3 * 20 + 5, 2 * 10 + 4 * 20 + 6),
        ("translate(5)", 15, 20),
        ("translate(5, -3)", 15, 17),
        ("scale(2)", 20, 40),
        ("scale(2 -1)", 20, -20),
        ("rotate(90)", -20, 10),
        ("rotate(90 10 10)", 0, 10),
        ("skewX(45)", 30, 20),
        ("skewY(45)", 10, 30),
        ("translate(1,2) scale(3)", 31, 62),
        ("scale(3),translate(1,2)", 33, 66),
    ],
)
def test_every_transform_means_what_svg_says(transform: str, x: float, y: float) -> None:
    assert xy(path("M 0 0 L 10 20", transform).end) == (x, -y)


def test_the_outermost_transform_is_done_last() -> None:
    assert xy(path("M 0 0 L 10 20", "translate(1,2)", "scale(3)").end) == (31, -62)


@given(
    st.integers(5, 90), st.integers(5, 90), st.integers(0, 179), st.sampled_from(("0 0", "0 1", "1 0", "1 1"))
)
def test_an_elliptic_arc_lies_on_its_ellipse(across: int, up: int, turned: int, flags: str) -> None:
    drawn = path(f"M 0 0 A {across} {up} {turned} {flags} 8 5")
    back = Point(1.0, 0.0).turned(radians(turned))

    def pressed(point: Point) -> Point:
        down = Point(point.x, -point.y)
        return Point(down.dot(back) / across, down.dot(back.left()) / up)

    # The ellipse pressed to a circle: three points determine it, and all others lie on it.
    on = [pressed(segment.point_at(k / 7)) for segment in drawn.segments for k in range(8)]
    a, b, c = on[0], on[len(on) // 2], on[-1]
    twice = 2.0 * (b - a).cross(c - a)
    u, v = (b - a).dot(b - a), (c - a).dot(c - a)
    centre = a + Point((c - a).y * u - (b - a).y * v, (b - a).x * v - (c - a).x * u) * (1.0 / twice)
    assert max(abs(p.distance(centre) - 1.0) for p in on) < 1e-4
    assert xy(drawn.end) == (8.0, -5.0)


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        ("", "nothing is drawn"),
        ("M 3 4", "nothing is drawn"),
        ("L 3 4", "break off"),
        ("M 0 0 L 3", "break off"),
        ("M 0 0 A 3 4 0 1", "break off"),
        ("M 0 0 A 3 4 0 2 0 5 5", "break off"),
        ("M 0 0 L 3,4px", "neither a command nor a number"),
        ("M 0 0 H 3 M 5 5 H 8", "it has 2 parts"),
        ("M 0 0 H 1e400", "beyond all bounds"),
        ("M 0 0 " + "h 1 v 1 " * 1_500, "more than 2,000 parts"),
    ],
)
def test_what_cannot_be_followed_is_refused(data: str, reason: str) -> None:
    with pytest.raises(UnreadableError, match=reason):
        path(data)


@pytest.mark.parametrize(
    "transform", ["turn(3)", "scale()", "scale(1 2 3)", "rotate(1 2)", "matrix(1)", "scale(2"]
)
def test_a_transform_that_says_nothing_is_refused(transform: str) -> None:
    with pytest.raises(UnreadableError, match="transform"):
        path("M 0 0 H 3", transform)


SQUARE = path("M 0 0 H 100 V -100 H 0 Z")
A, B, C, D = Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)


def test_a_closed_path_is_followed_past_no_other_corner() -> None:
    assert stretch(SQUARE, A, B, (C, D)) == Path((Line(A, B),))
    assert stretch(SQUARE, B, A, (C, D)) == Path((Line(B, A),))
    assert stretch(SQUARE, D, B, (A,)).length() == pytest.approx(200.0)
    assert stretch(SQUARE, D, B, (A,)).distance_to(C) < 1e-9
    assert stretch(SQUARE, D, B, (C,)).distance_to(A) < 1e-9


def test_two_corners_share_a_closed_path_in_the_direction_in_which_it_was_drawn() -> None:
    assert stretch(SQUARE, A, C, ()).distance_to(B) < 1e-9
    assert stretch(SQUARE, C, A, ()).distance_to(D) < 1e-9
    assert stretch(SQUARE, C, C, ()).length() == pytest.approx(400.0)


def test_an_open_path_is_followed_either_way() -> None:
    line = path("M 0 0 H 100")

    assert stretch(line, Point(80, 0), Point(30, 0), ()) == Path((Line(Point(80, 0), Point(30, 0)),))


@given(garment_curves(), points(20.0), points(20.0))
def test_a_carried_curve_keeps_its_directions_and_comes_to_its_ends(
    cubic: Cubic, first: Point, last: Point
) -> None:
    old = Path(cubic.split(0.4))
    new = carried(old, old.start + first, old.end + last)

    assert new.start == old.start + first
    assert new.end == old.end + last
    assert new.start_direction().distance(old.start_direction()) < 1e-9
    assert new.end_direction().distance(old.end_direction()) < 1e-9
    joint = new.segments[0].end_direction().angle_to(new.segments[1].start_direction())
    assert abs(joint) < 1e-6
    share = old.segments[0].length() / old.length()
    assert new.segments[0].end.distance(old.segments[0].end + first.toward(last, share)) < 1e-9


def test_a_path_that_is_moved_as_a_whole_is_moved_as_it_is() -> None:
    old = path("M 0 0 H 50 C 80 0 100 -20 100 -60 V -90")
    new = carried(old, old.start + Point(7, 3), old.end + Point(7, 3))

    assert new == Path(tuple(segment.transformed(Rigid.moving(Point(7, 3))) for segment in old.segments))


def test_lines_stay_lines_and_curves_go_on_into_them_smoothly() -> None:
    old = path("M 0 0 H 50 C 80 0 100 -20 100 -60 V -90")
    new = carried(old, old.start + Point(0, 5), old.end + Point(10, 0))

    assert [type(segment) for segment in new.segments] == [Line, Cubic, Line]
    for before, after in zip(new.segments, new.segments[1:], strict=False):
        assert abs(before.end_direction().angle_to(after.start_direction())) < 1e-9
