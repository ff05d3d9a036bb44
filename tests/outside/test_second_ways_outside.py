"""Geometry a second way: motions, places, turning, parallels, extremes, insides of random shapes."""

from __future__ import annotations

from cmath import exp
from math import hypot, pi
from typing import TYPE_CHECKING

import numpy as np
import pytest
import shapely
from fontTools.misc.bezierTools import calcCubicBounds
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar
from shapely.affinity import affine_transform, rotate
from shapely.ops import substring

from specc.geometry.crossing import crossings
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.region import bounds, centroid, contains, crosses_itself, polygon_area
from specc.pattern.outline import area, notched_outline, transformed
from tests.sources import Known, against
from tests.strategies import cubics, fronts, garment_curves, lines, points

if TYPE_CHECKING:
    from specc.geometry.segment import Cubic, Line
    from specc.pattern.piece import Piece

MANY = settings(max_examples=180)
FINE = 1e-3  # mm; how closely the chains for Shapely follow the curves
angles = st.floats(-2.0 * pi, 2.0 * pi)


def chain(path: Path) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(FINE)])


def xy(point: Point) -> tuple[float, float]:
    return point.x, point.y


# --- motions ---


@against(Known.PROGRAM, "Python's complex numbers: (z - c) exp(i angle) + c")
@MANY
@given(points(), points(), angles)
def test_a_turn_is_a_product_of_complex_numbers(point: Point, about: Point, angle: float) -> None:
    z, c = complex(*xy(point)), complex(*xy(about))
    wanted = (z - c) * exp(1j * angle) + c

    assert xy(Rigid.turning(about, angle)(point)) == pytest.approx((wanted.real, wanted.imag), abs=1e-9)


@against(Known.PROGRAM, "shapely.affinity.rotate")
@given(fronts(), points(), angles)
def test_a_piece_turned_is_the_shape_turned(piece: Piece, about: Point, angle: float) -> None:
    before = shapely.Polygon([xy(p) for p in notched_outline(piece).flattened()])
    wanted = rotate(before, angle, origin=xy(about), use_radians=True)
    turned = transformed(piece, Rigid.turning(about, angle))
    found = shapely.Polygon([xy(p) for p in notched_outline(turned).flattened()])

    assert found.hausdorff_distance(wanted) < 1e-6
    assert area(turned) == pytest.approx(area(piece), rel=1e-12)


@against(Known.PROGRAM, "shapely.affinity.affine_transform, by the matrix of a reflection")
@MANY
@given(cubics(), points(), angles)
def test_a_mirrored_curve_is_the_reflection(cubic: Cubic, on: Point, angle: float) -> None:
    along = Point(1.0, 0.0).turned(angle)
    c, s = np.cos(2.0 * angle), np.sin(2.0 * angle)
    matrix = [c, s, s, -c, on.x - c * on.x - s * on.y, on.y - s * on.x + c * on.y]
    corners = (cubic.start, cubic.leaving, cubic.arriving, cubic.end)
    wanted = affine_transform(shapely.LineString([xy(p) for p in corners]), matrix)
    found = cubic.transformed(Rigid.mirroring(on, along))

    assert [xy(p) for p in (found.start, found.leaving, found.arriving, found.end)] == [
        pytest.approx(point, abs=1e-9) for point in wanted.coords
    ]
    assert found.length() == pytest.approx(cubic.length(), abs=2e-6)


# --- places along a path ---


def two(first: Cubic, second: Cubic) -> Path:
    """A path of two curves, the second moved to the end of the first."""
    return Path((first, second.transformed(Rigid.moving(first.end - second.start))))


@against(Known.PROGRAM, "shapely.line_interpolate_point")
@MANY
@given(garment_curves(), garment_curves(), st.floats(0.0, 1.0))
def test_a_place_on_a_path_is_that_of_its_chain(first: Cubic, second: Cubic, share: float) -> None:
    path = two(first, second)
    found, line = path.point_at(share * path.length()), chain(path)
    wanted = line.interpolate(share * line.length)

    assert found.distance(Point(wanted.x, wanted.y)) < 0.02


@against(Known.PROGRAM, "shapely.ops.substring")
@given(garment_curves(), garment_curves(), st.floats(0.05, 0.45), st.floats(0.55, 0.95))
def test_a_part_of_a_path_is_that_of_its_chain(first: Cubic, second: Cubic, low: float, high: float) -> None:
    path = two(first, second)
    whole = path.length()
    part = path.between(low * whole, high * whole)
    line = chain(path)

    assert part.length() == pytest.approx((high - low) * whole, abs=1e-5)
    assert chain(part).hausdorff_distance(substring(line, low * line.length, high * line.length)) < 0.02


@against(Known.PROGRAM, "scipy.optimize.minimize_scalar")
@given(garment_curves(), points())
def test_the_nearest_place_on_a_curve_is_the_least_distance(cubic: Cubic, point: Point) -> None:
    path = Path((cubic,))

    def away(t: float) -> float:
        return cubic.point_at(t).distance(point)

    steps = np.linspace(0.0, 1.0, 65)
    best = min(range(65), key=lambda i: away(float(steps[i])))
    around = (float(steps[max(0, best - 1)]), float(steps[min(64, best + 1)]))
    least = min(
        float(minimize_scalar(away, bounds=around, method="bounded", options={"xatol": 1e-12}).fun),
        away(around[0]),
        away(around[1]),
    )

    assert path.distance_to(point) == pytest.approx(least, abs=1e-5)
    assert path.point_at(path.length_at(point)).distance(point) == pytest.approx(least, abs=1e-4)


# --- turning, extremes ---


@against(Known.PROGRAM, "numpy.unwrap of the tangent's angle")
@MANY
@given(garment_curves())
def test_the_turning_of_a_curve_is_that_of_its_tangent(cubic: Cubic) -> None:
    shares = np.linspace(0.0, 1.0, 400)
    tangents = [cubic.derivative_at(float(t)) for t in shares]
    heading = np.unwrap(np.arctan2([d.y for d in tangents], [d.x for d in tangents]))

    assert cubic.turning() == pytest.approx(float(heading[-1] - heading[0]), abs=1e-6)


@against(Known.PROGRAM, "fontTools.misc.bezierTools.calcCubicBounds")
@MANY
@given(cubics())
def test_the_box_of_a_curve_is_that_of_fonttools(cubic: Cubic) -> None:
    wanted = calcCubicBounds(*(xy(p) for p in (cubic.start, cubic.leaving, cubic.arriving, cubic.end)))
    low, high = bounds(cubic.extremes())

    assert (*xy(low), *xy(high)) == pytest.approx(wanted, abs=1e-6)


@against(Known.PROGRAM, "shapely.hausdorff_distance to a chain a thousand times as fine")
@given(garment_curves(), st.sampled_from([0.05, 0.5, 5.0]))
def test_a_flattened_curve_lies_within_its_tolerance(cubic: Cubic, tolerance: float) -> None:
    path = Path((cubic,))
    coarse = shapely.LineString([xy(p) for p in path.flattened(tolerance)])

    assert coarse.hausdorff_distance(chain(path)) <= tolerance + FINE


# --- parallels ---


def tightest(cubic: Cubic) -> float:
    """The least radius of the curve, found in a hundred steps."""
    least = np.inf
    for t in np.linspace(0.0, 1.0, 100):
        d, dd = cubic.derivative_at(float(t)), cubic.second_derivative_at(float(t))
        if abs(d.cross(dd)) > 1e-9:
            least = min(least, d.norm() ** 3 / abs(d.cross(dd)))
    return float(least)


@against(Known.DERIVED, "length changes by d times the angle turned, where d is less than every radius")
@MANY
@given(garment_curves(), st.floats(-15.0, 15.0))
def test_a_parallel_grows_by_its_distance_times_the_angle_turned(cubic: Cubic, distance: float) -> None:
    assume(tightest(cubic) > 1.2 * abs(distance))
    path = Path((cubic,))
    grown = parallel(path, distance).length() - path.length()

    assert grown == pytest.approx(-distance * path.turning(), abs=0.01)


@against(Known.PROGRAM, "shapely.offset_curve")
@given(garment_curves(), st.sampled_from([-12.0, -6.0, 6.0, 12.0]))
def test_a_parallel_is_the_offset_that_shapely_draws(cubic: Cubic, distance: float) -> None:
    assume(tightest(cubic) > 1.5 * abs(distance))
    path = Path((cubic,))
    wanted = shapely.offset_curve(chain(path), distance, quad_segs=64)
    found = chain(parallel(path, distance))
    assume(wanted.geom_type == "LineString")

    # What Shapely leaves out where its own chain turns is less than the length of a step of the chain.
    assert shapely.hausdorff_distance(found, wanted) < 0.3
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        at = cubic.point_at(share) + cubic.direction_at(share).left() * distance
        assert found.distance(shapely.Point(*xy(at))) < 2e-3


# --- areas, insides ---


def stars() -> st.SearchStrategy[list[Point]]:
    """Polygons about the origin that do not cross themselves, most of them not convex."""
    radii = st.lists(st.floats(20.0, 300.0), min_size=3, max_size=14)
    return radii.map(
        lambda found: [Point(r, 0.0).turned(2.0 * pi * i / len(found)) for i, r in enumerate(found)]
    )


@against(Known.PROGRAM, "shapely.Polygon: area, centroid, is_valid")
@MANY
@given(stars())
def test_area_and_centroid_of_polygons(corners: list[Point]) -> None:
    wanted = shapely.Polygon([xy(p) for p in corners])
    assume(wanted.area > 1.0)

    assert abs(polygon_area(corners)) == pytest.approx(wanted.area, rel=1e-9)
    assert xy(centroid(corners)) == pytest.approx((wanted.centroid.x, wanted.centroid.y), abs=1e-6)


@against(Known.PROGRAM, "numpy: half the sum of cross products")
@MANY
@given(st.lists(points(), min_size=3, max_size=30))
def test_the_signed_area_is_the_sum_of_cross_products(corners: list[Point]) -> None:
    x, y = (np.array([getattr(p, axis) for p in corners]) for axis in "xy")
    wanted = 0.5 * float(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)))

    assert polygon_area(corners) == pytest.approx(wanted, abs=1e-6)


@against(Known.PROGRAM, "shapely.Polygon.contains")
@MANY
@given(stars(), points(350.0))
def test_inside_is_what_shapely_calls_inside(corners: list[Point], point: Point) -> None:
    shape = shapely.Polygon([xy(p) for p in corners])
    assume(shape.boundary.distance(shapely.Point(*xy(point))) > 1e-3)

    assert contains(corners, point) == shape.contains(shapely.Point(*xy(point)))


@against(Known.PROGRAM, "shapely.LinearRing.is_simple")
@MANY
@given(st.lists(points(), min_size=4, max_size=8))
def test_an_outline_crosses_itself_when_shapely_says_so(corners: list[Point]) -> None:
    assume(min(a.distance(b) for i, a in enumerate(corners) for b in corners[:i]) > 1.0)

    assert crosses_itself((*corners, corners[0])) != shapely.LinearRing([xy(p) for p in corners]).is_simple


@against(Known.PROGRAM, "numpy.linalg.solve")
@MANY
@given(lines(), lines())
def test_two_lines_meet_where_their_equations_do(first: Line, second: Line) -> None:
    d, e = first.end - first.start, second.end - second.start
    assume(abs(d.unit().cross(e.unit())) > 1e-2)
    off = second.start - first.start
    s, t = np.linalg.solve([[d.x, -e.x], [d.y, -e.y]], [off.x, off.y])
    assume(all(abs(share) > 1e-6 and abs(share - 1.0) > 1e-6 for share in (s, t)))
    found = crossings(Path((first,)), Path((second,)))

    assert len(found) == (0.0 < s < 1.0 and 0.0 < t < 1.0)
    for crossing in found:
        assert crossing.along == pytest.approx(s * hypot(d.x, d.y), abs=1e-6)
        assert crossing.across == pytest.approx(t * hypot(e.x, e.y), abs=1e-6)
