"""Curves, paths and regions by cases that can be worked out by hand."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.crossing import crossings, line_crossings
from specc.geometry.fit import QUARTER, blend, corner, cubic_through, curve
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.region import bounds, centroid, contains, crosses_itself, polygon_area, signed_area
from specc.geometry.roots import quadratic_roots, unit_roots
from specc.geometry.segment import Cubic, Line

ORIGIN, RIGHT, UP = Point(0, 0), Point(1, 0), Point(0, 1)
SQUARE = (Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10))


def near(point: Point, x: float, y: float) -> bool:
    return point.distance(Point(x, y)) < 1e-9


def test_motions() -> None:
    assert near(Rigid.turning(Point(1, 1), pi / 2)(Point(2, 1)), 1, 2)
    assert near(Rigid.moving(Point(3, -1))(ORIGIN), 3, -1)
    assert near(Rigid.mirroring(Point(0, 5), RIGHT)(Point(2, 7)), 2, 3)
    assert Rigid.mirroring(ORIGIN, UP).mirrors
    assert not Rigid.turning(ORIGIN, 1.0).mirrors


def test_angles_are_positive_to_the_left() -> None:
    assert RIGHT.angle_to(UP) == pytest.approx(pi / 2)
    assert UP.angle_to(RIGHT) == pytest.approx(-pi / 2)
    assert near(RIGHT.left(), 0, 1)


def test_roots() -> None:
    assert quadratic_roots(1.0, -3.0, 2.0) == pytest.approx((1.0, 2.0))
    assert quadratic_roots(0.0, 2.0, -1.0) == (0.5,)
    assert quadratic_roots(1.0, 0.0, 1.0) == ()
    # The product of t less 1/4, t less 1/2 and t less 3/4.
    assert unit_roots(1.0, -1.5, 0.6875, -0.09375, zero=1e-12) == pytest.approx((0.25, 0.5, 0.75))
    assert unit_roots(0.0, 0.0, 0.0, 0.0, zero=1e-9) == ()


def test_a_straight_cubic_is_as_long_as_its_line() -> None:
    cubic = Cubic(ORIGIN, Point(10, 0), Point(20, 0), Point(30, 0))
    assert cubic.length() == pytest.approx(30.0, abs=1e-9)
    assert cubic.parameter_at(10.0) == pytest.approx(1 / 3, abs=1e-9)
    assert cubic.turning() == 0.0


def test_the_length_of_a_parabola() -> None:
    """Mathematics: y = x^2 from 0 to 1 is (2 sqrt 5 + asinh 2) / 4 long; as a cubic its handles are known."""
    cubic = Cubic(ORIGIN, Point(1 / 3, 0), Point(2 / 3, 1 / 3), Point(1, 1))
    assert cubic.length() == pytest.approx(1.4789428575445975, abs=1e-9)
    # The area between chord and parabola is 1/6, on the right of the way back.
    outline = Path((cubic, Line(Point(1, 1), ORIGIN)))
    assert signed_area(outline) == pytest.approx(1 / 6, abs=1e-12)


def test_a_curve_with_a_cusp_is_measured() -> None:
    """Mathematics: the handles cross so that the speed is zero half way."""
    cubic = Cubic(ORIGIN, Point(100, 100), Point(0, 100), Point(100, 0))
    # x' = 300 (1 - 2t)^2 and y' = 300 (1 - 2t): the speed is 300 |u| sqrt(u^2 + 1) for u = 1 - 2t.
    assert cubic.length() == pytest.approx(100.0 * (2.0 * sqrt(2.0) - 1.0), abs=1e-6)
    assert cubic.derivative_at(0.5).norm() == pytest.approx(0.0, abs=1e-9)


def test_a_loop_turns_all_the_way() -> None:
    loop = Cubic(ORIGIN, Point(300, 200), Point(-200, 200), Point(100, 0))
    first, last = loop.start_direction(), loop.end_direction()
    assert loop.turning() == pytest.approx(first.angle_to(last) + 2.0 * pi, abs=1e-9)


def test_splitting_and_joining_a_path() -> None:
    path = Path.through(ORIGIN, Point(10, 0), Point(10, 10))
    before, after = path.split_at(10.0)
    assert (len(before.segments), len(after.segments)) == (1, 1)
    assert before.joined(after) == path
    left, right = path.split_at(4.0)
    assert left.joined(right) == path  # two runs straight on are one
    with pytest.raises(ValueError, match="cannot be split"):
        path.split_at(20.0)
    assert path.between(5.0, 12.0).length() == pytest.approx(7.0)
    assert path.turning() == pytest.approx(pi / 2)


def test_places_along_a_path() -> None:
    path = Path.through(ORIGIN, Point(10, 0), Point(10, 10))
    assert near(path.point_at(15.0), 10, 5)
    assert near(path.direction_at(10.0), 0, 1)  # at a corner, the direction after it
    assert path.length_at(Point(12, 4)) == pytest.approx(14.0)
    assert path.distance_to(Point(5, -3)) == pytest.approx(3.0)
    assert near(path.extended(2.0, 3.0).end, 10, 13)


def test_a_point_of_a_curve_lies_on_it_where_the_curve_barely_moves() -> None:
    """At its start this curve has a short handle, and between the first two samples lies a long way."""
    hem = Cubic(Point(0.0, -980.3), Point(1.8, -980.3), Point(150.2, -977.1), Point(331.5, -973.1))
    path = Path((hem,))
    for share in range(1, 200):
        assert path.distance_to(hem.point_at(share / 4000)) < 1e-6


def test_crossings_at_a_joint_count_once() -> None:
    path = Path.through(Point(-5, -5), ORIGIN, Point(5, 5))
    (met,) = line_crossings(path, ORIGIN, RIGHT)
    assert near(met.at, 0, 0)
    (met,) = crossings(path, Path.through(Point(-5, 5), Point(5, -5)))
    assert met.along == pytest.approx(5 * sqrt(2))
    assert crossings(path, path) == ()  # a shared stretch is no crossing
    assert line_crossings(path, Point(0, 20), RIGHT) == ()


def test_curves_cross_curves() -> None:
    up = Path((Cubic(ORIGIN, Point(30, 60), Point(70, 60), Point(100, 0)),))
    down = up.transformed(Rigid.mirroring(Point(0, 22.5), RIGHT))
    met = crossings(up, down)
    assert [c.at.y for c in met] == pytest.approx([22.5, 22.5])
    assert met[0].at.x + met[1].at.x == pytest.approx(100.0)


def test_regions() -> None:
    assert polygon_area(SQUARE) == 100.0
    assert near(centroid(SQUARE), 5, 5)
    assert contains(SQUARE, Point(1, 9))
    assert not contains(SQUARE, Point(11, 5))
    assert not crosses_itself(SQUARE)
    assert crosses_itself((SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]))
    assert bounds(SQUARE) == (SQUARE[0], SQUARE[2])


def test_a_quarter_curve_by_its_directions() -> None:
    quarter = curve(Point(80, 0), -UP, Point(0, -110), -RIGHT)
    assert near(quarter.leaving, 80, -110 * QUARTER)
    assert near(quarter.arriving, 80 * QUARTER, -110)
    assert corner(Point(80, 0), -UP, Point(0, -110), -RIGHT) == pytest.approx((110.0, 80.0))
    # Tangents that do not meet ahead: a third of the chord.
    other = curve(ORIGIN, RIGHT, Point(90, 30), RIGHT)
    assert near(other.leaving, ORIGIN.distance(Point(90, 30)) / 3, 0)
    given = curve(ORIGIN, RIGHT, Point(90, 30), RIGHT, handles=(20, 40))
    assert near(given.arriving, 50, 30)


def test_a_curve_through_a_point() -> None:
    """A circle of 100: the point half way on it asks for the fullness of a quarter circle."""
    half = 100 / sqrt(2)
    found = cubic_through(Point(100, 0), UP, Point(0, 100), -RIGHT, through=Point(half, half))
    assert found is not None
    assert found.leaving.y == pytest.approx(100 * QUARTER, abs=1e-9)
    # Beyond the corner of the tangents there is no such curve.
    assert cubic_through(Point(100, 0), UP, Point(0, 100), -RIGHT, through=Point(150, 150)) is None


def test_a_blend_is_straight_where_it_can_be() -> None:
    assert blend(ORIGIN, RIGHT, Point(10, 0), RIGHT).segments == (Line(ORIGIN, Point(10, 0)),)
    arc_like = blend(Point(100, 0), UP, Point(0, 100), -RIGHT)
    assert arc_like.segments == (curve(Point(100, 0), UP, Point(0, 100), -RIGHT),)


def test_a_parallel_copy_of_a_corner_is_joined_straight() -> None:
    path = Path.through(ORIGIN, Point(10, 0), Point(10, 10))
    outside = parallel(path, -2.0)
    assert [(p.x, p.y) for p in outside.flattened()] == [(0, -2), (10, -2), (12, 0), (12, 10)]


def allowed(corners: tuple[Point, ...], widths: tuple[float, ...]) -> tuple[Allowed, ...]:
    around = zip(corners, corners[1:] + corners[:1], widths, strict=True)
    return tuple(Allowed(Path.through(a, b), width) for a, b, width in around)


def test_the_cut_line_of_a_square_with_four_widths() -> None:
    cut = cut_line(allowed(SQUARE, (1, 0, 2, 3)))
    assert [(p.x, p.y) for p in cut] == [(-3, -1), (10, -1), (10, 12), (-3, 12)]


def test_the_cut_line_at_a_hollow_corner() -> None:
    """An L: at the inner corner the two allowances meet where both are kept."""
    ell = (Point(0, 0), Point(20, 0), Point(20, 10), Point(10, 10), Point(10, 20), Point(0, 20))
    cut = cut_line(allowed(ell, (0, 0, 1, 2, 0, 0)))
    assert Point(12, 11) in cut
    assert Point(10, 10) not in cut


def test_a_hollow_narrower_than_the_allowance_is_filled() -> None:
    notched = (
        Point(0, 0),
        Point(30, 0),
        Point(30, 20),
        Point(16, 20),
        Point(15, 10),
        Point(14, 20),
        Point(0, 20),
    )
    cut = cut_line(allowed(notched, (5,) * 7))
    assert not crosses_itself(cut)
    assert contains(cut, Point(15, 19))


def test_a_sharp_corner_is_squared_off_at_two_and_a_half_widths() -> None:
    spike = (Point(0, 0), Point(100, 5), Point(0, 10))
    cut = cut_line(allowed(spike, (4, 4, 0)))
    assert max(p.x for p in cut) == pytest.approx(100 + 2.5 * 4, abs=1e-3)


def test_a_corner_between_a_wide_and_a_missing_allowance() -> None:
    """The wide one ends on the line of the edge that has none, not beyond it."""
    slanted = (Point(0, 0), Point(100, 0), Point(130, 60), Point(0, 60))
    cut = cut_line(allowed(slanted, (10, 0, 0, 0)))
    # The line from (130, 60) through (100, 0) goes on to (95, -10).
    assert min(p.distance(Point(95, -10)) for p in cut) < 1e-3
    assert max(p.x for p in cut if p.y < -1) <= 100.0
