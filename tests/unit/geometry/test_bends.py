"""How tightly a path bends, and where it has corners."""

from __future__ import annotations

from math import inf, pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.geometry.bends import corners, tightest
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid

ORIGIN = Point(0.0, 0.0)


def quarter(radius: float) -> Path:
    """A quarter of a circle, turning left, that begins at the origin and goes up."""
    return arc(ORIGIN, Point(-radius, 0.0), pi / 2.0)


@given(
    radius=st.floats(5.0, 500.0),
    over=st.floats(2.0, 60.0),
    turned=st.floats(-pi, pi),
)
def test_every_stretch_of_an_arc_has_its_radius(radius: float, over: float, turned: float) -> None:
    path = quarter(radius).transformed(Rigid.turning(ORIGIN, turned))
    left, right = tightest(path, over)

    assert left.radius == pytest.approx(radius, rel=2e-3)
    assert right.radius == pytest.approx(radius, rel=2e-3)  # all of it turns left, the least of it as well
    assert left.length == pytest.approx(min(over, path.length()))
    assert 0.0 <= left.start <= path.length() - left.length + 1e-9


def test_a_mirrored_path_bends_as_much_to_the_other_side() -> None:
    path = quarter(40.0).joined(Path.through(Point(-40.0, 40.0), Point(-140.0, 40.0)))
    mirrored = path.transformed(Rigid.mirroring(ORIGIN, Point(0.0, 1.0)))

    left, right = tightest(path, 10.0)
    other_left, other_right = tightest(mirrored, 10.0)

    assert (other_left.turning, other_right.turning) == pytest.approx((-right.turning, -left.turning))
    assert right.turning == 0.0
    assert right.radius == inf


def test_the_tightest_stretch_lies_on_the_tighter_of_two_arcs() -> None:
    wide = quarter(100.0)
    tight = arc(wide.end, wide.end + Point(0.0, -30.0), pi / 2.0)
    left, _ = tightest(wide.joined(tight), 10.0)

    assert left.radius == pytest.approx(30.0, rel=2e-3)
    assert left.start >= wide.length() - 1e-6


def test_a_curve_shorter_than_the_stretch_is_evened_out_over_it() -> None:
    """A corner rounded by 5 mm turns by a right angle within 7.9 mm; over 20 mm the radius is 12.7 mm."""
    bend = quarter(5.0)
    before, after = (
        Path.through(Point(0.0, -50.0), ORIGIN),
        Path.through(bend.end, bend.end + Point(-50.0, 0.0)),
    )
    left, _ = tightest(before.joined(bend).joined(after), 20.0)

    assert left.turning == pytest.approx(pi / 2.0)
    assert left.radius == pytest.approx(20.0 / (pi / 2.0))


def test_a_straight_path_bends_nowhere() -> None:
    left, right = tightest(Path.through(ORIGIN, Point(30.0, 40.0)), 20.0)

    assert (left.turning, right.turning) == (0.0, 0.0)
    assert left.radius == inf


@pytest.mark.parametrize(("angle", "turned"), [(14.0, radians(14.0)), (16.0, 0.0)])
def test_a_small_kink_bends_a_large_one_is_a_corner(angle: float, turned: float) -> None:
    path = Path.through(Point(-100.0, 0.0), ORIGIN, Point(100.0, 0.0).turned(radians(angle)))
    left, _ = tightest(path, 20.0)
    found = corners(path)

    assert left.turning == pytest.approx(turned)
    assert [corner.along for corner in found] == ([] if turned else [pytest.approx(100.0)])
    assert [corner.turning for corner in found] == ([] if turned else [pytest.approx(radians(angle))])
