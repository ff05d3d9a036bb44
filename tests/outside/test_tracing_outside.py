"""Traced curves and graded pieces against numpy, scipy and shapely, and against closed forms."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from shapely.geometry import Polygon

from specc.geometry.fit import arc_through
from specc.geometry.point import Point
from specc.geometry.region import signed_area
from specc.geometry.segment import Cubic, Line
from specc.geometry.smooth import smooth_through
from specc.geometry.svg import drawn_path
from specc.pattern.outline import area, drawn_outline
from tests.drafting import drafted, garment, named
from tests.sources import Known, against
from tests.strategies import points


def circle_fit(xs: np.ndarray, ys: np.ndarray) -> tuple[float, float, float]:
    """Centre and radius of the circle that fits points best: x2 + y2 = 2 ax + 2 by + c, least squares."""
    system = np.column_stack((2 * xs, 2 * ys, np.ones_like(xs)))
    (a, b, c), *_ = np.linalg.lstsq(system, xs**2 + ys**2, rcond=None)
    return float(a), float(b), sqrt(c + a * a + b * b)


@against(Known.PROGRAM, "numpy.linalg.lstsq, a circle fitted to the points")
@given(points(), points(), points())
def test_an_arc_through_three_points_lies_on_the_circle_that_numpy_fits(a: Point, b: Point, c: Point) -> None:
    path = arc_through(a, b, c)
    if path is None or any(isinstance(segment, Line) for segment in path.segments):
        return
    x, y, radius = circle_fit(np.array([a.x, b.x, c.x]), np.array([a.y, b.y, c.y]))
    if radius > 1e5:  # mm: three points that a person would call a line
        return
    ts = np.linspace(0.0, 1.0, 33)
    on = [segment.point_at(float(t)) for segment in path.segments for t in ts]

    assert path.start == a
    assert path.end == c
    assert path.distance_to(b) < 2e-3
    assert max(abs(np.hypot(p.x - x, p.y - y) - radius) for p in on) < 1e-3 + 1e-9 * radius


@against(Known.DERIVED, "half of the way round a circle, pi r")
@pytest.mark.parametrize(
    ("through", "length"),
    [
        (Point(0.0, 250.0), 250.0 * pi),  # half a circle
        (Point(0.0, -250.0), 250.0 * pi),  # the other half
        (Point(250.0 * sqrt(0.5), 250.0 * sqrt(0.5)), 250.0 * pi),
    ],
)
def test_an_arc_is_as_long_as_a_circle_is_round(through: Point, length: float) -> None:
    path = arc_through(Point(-250.0, 0.0), through, Point(250.0, 0.0))

    assert path is not None
    assert path.length() == pytest.approx(length, abs=2e-3)


@against(Known.DERIVED, "what smooth means: through each point, in one direction")
@given(st.lists(points(), min_size=3, max_size=7, unique=True))
def test_a_curve_through_points_passes_them_and_has_no_kink(through: list[Point]) -> None:
    paths = smooth_through(through)

    for path, start, end in zip(paths, through, through[1:], strict=False):
        assert path.start.distance(start) <= 1e-9
        assert path.end.distance(end) <= 1e-9
    for before, after in pairwise(paths):
        assert abs(before.end_direction().angle_to(after.start_direction())) < 1e-7


@against(Known.PROGRAM, "scipy.integrate.quad of the speed")
@given(points(), points(), points(), points())
def test_a_traced_curve_is_as_long_as_scipy_reckons(a: Point, b: Point, c: Point, d: Point) -> None:
    if min(p.distance(q) for p, q in ((a, b), (b, c), (c, d))) < 1.0:
        return
    for path in smooth_through((a, b, c, d)):
        for segment in path.segments:
            assert isinstance(segment, Cubic | Line)
            reckoned, _ = quad(
                lambda t, s=segment: s.derivative_at(t).norm(), 0.0, 1.0, limit=200, epsabs=1e-8, epsrel=1e-10
            )
            assert segment.length() == pytest.approx(reckoned, abs=1e-4)


@against(Known.DERIVED, "the area and the way round of a circle, an ellipse, a sector and its chord")
@pytest.mark.parametrize(
    ("data", "area", "way_round"),
    [
        ("M 100 0 A 100 100 0 1 0 -100 0 A 100 100 0 1 0 100 0 Z", pi * 100**2, 2 * pi * 100),
        ("M 60 0 A 60 30 0 1 0 -60 0 A 60 30 0 1 0 60 0 Z", pi * 60 * 30, None),
        ("M 0 -100 A 100 100 0 1 0 100 0 Z", 0.75 * pi * 100**2 + 100**2 / 2, 150 * pi + 100 * sqrt(2)),
        # Radii that are too small for the ends are made as large as they must be (SVG 1.1, F.6.6).
        ("M 100 0 A 1 1 0 1 0 -100 0 A 1 1 0 1 0 100 0 Z", pi * 100**2, 2 * pi * 100),
    ],
)
def test_outlines_of_a_drawing_are_as_large_as_closed_forms_say(
    data: str, area: float, way_round: float | None
) -> None:
    drawn = drawn_path(data, ()).path

    assert drawn.closed
    assert signed_area(drawn) == pytest.approx(area, rel=1e-5)
    if way_round is not None:
        assert drawn.length() == pytest.approx(way_round, rel=5e-6)


TABARD = """garment tabard "Tabard" {
  style "T"; sizes S, M, L, XL; sample M; units cm
}
piece front "front" {
  traced in M
  point neck at 5 cm, 60 cm graded 0 mm, 4 mm
  point shoulder at 19 cm, 57 cm graded 5 mm, 4 mm
  point scye at 17 cm, 47 cm
  point arm at 25 cm, 38 cm graded 9 mm, 0 mm
  point corner at 25 cm, 2 cm graded 9 mm, - 3 mm
  point low at 5 cm, 2 cm graded 0 mm, - 3 mm
  edge shoulder-edge from neck { line to shoulder }
  edge armhole from shoulder { curve to arm, arriving right, through scye }
  edge side from arm { line to corner }
  edge hem from corner { line to low }
  edge centre from low { line to neck }
}
cloth sheeting { fibre 100% cotton; width 150 cm; weight 150 g/m2 }
"""


@against(Known.PROGRAM, "shapely.Polygon.area")
@pytest.mark.parametrize(("size", "steps"), [("S", -1), ("M", 0), ("L", 1), ("XL", 2)])
def test_the_area_of_every_size_is_that_of_shapely(size: str, steps: int) -> None:
    piece = named(drafted(garment(TABARD), size))["front"]
    flat = Polygon([(p.x, p.y) for p in drawn_outline(piece).flattened(0.001)])
    # The straight part below the armhole, by hand: a rectangle from the underarm down.
    body = (200.0 + 9.0 * steps) * (360.0 + 3.0 * steps)

    assert flat.is_valid
    assert area(piece) == pytest.approx(flat.area, abs=1.0)
    assert area(piece) > body
