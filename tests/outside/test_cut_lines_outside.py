"""Cut lines against shapely and against closed forms; the mathematics stands beside each check."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, pi, radians, sin, tan
from typing import TYPE_CHECKING

import pytest
import shapely

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.corner import MITRE_LIMIT
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.region import polygon_area
from specc.geometry.segment import Cubic, Line
from specc.geometry.turned import MOST_SLANT
from tests.sources import Known, against

if TYPE_CHECKING:
    from collections.abc import Sequence

ACROSS = Point(1.0, 0.0)


def outline(corners: Sequence[Point], *allowed: Allowed) -> tuple[Allowed, ...]:
    """The allowances along straight runs from corner to corner."""
    around = pairwise((*corners, corners[0]))
    return tuple(replace(one, run=Path.through(a, b)) for one, (a, b) in zip(allowed, around, strict=True))


def wide(width: float, *turned: float) -> Allowed:
    """An allowance whose run is still to be given."""
    return Allowed(Path.through(Point(0, 0), ACROSS), width, turned)


def polygon(points: Sequence[Point]) -> shapely.Polygon:
    return shapely.Polygon([(p.x, p.y) for p in points])


def panel(slant: float, *, high: float = 200.0, half: float = 150.0) -> tuple[Point, ...]:
    """A panel whose hem is straight below and whose two sides lean outward by `slant` degrees downward."""
    lean = high * tan(radians(slant))
    return Point(-half, 0), Point(half, 0), Point(half - lean, high), Point(lean - half, high)


# Hems turned once. Geometry: a reflection keeps what lies on the line of the fold and turns the rest over.


@pytest.mark.parametrize("slant", [-25.0, -8.0, 0.0, 3.0, 12.0, 30.0])
@pytest.mark.parametrize("seam", [0.0, 10.0])
@against(Known.DERIVED, "plane geometry")
def test_a_turned_hem_lies_on_the_piece(slant: float, seam: float) -> None:
    """Turned up along its line, the hem covers the piece with its allowances and reaches their edge."""
    deep = 30.0
    corners = panel(slant)
    cut = polygon(cut_line(outline(corners, wide(deep, deep), wide(seam), wide(0), wide(seam))))
    hem = cut.intersection(shapely.box(-1000, -1000, 1000, 0))
    piece = cut.intersection(shapely.box(-1000, 0, 1000, deep))
    turned_up = shapely.affinity.scale(hem, 1.0, -1.0, origin=(0, 0))
    assert turned_up.symmetric_difference(piece).area == pytest.approx(0.0, abs=0.1)
    # In closed form: a trapezium whose upper side is the lower one less twice the lean at the depth.
    below = 2 * (150.0 + seam / cos(radians(slant)))
    assert hem.area == pytest.approx(deep * (below - deep * tan(radians(slant))), abs=0.1)


@pytest.mark.parametrize("slant", [-20.0, 0.0, 15.0])
@pytest.mark.parametrize(("deep", "under"), [(25.0, 10.0), (40.0, 15.0), (3.0, 3.0)])
@against(Known.DERIVED, "plane geometry")
def test_a_hem_turned_twice_lies_on_the_piece_in_both_layers(slant: float, deep: float, under: float) -> None:
    seam = 12.0
    corners = panel(slant)
    cut = polygon(
        cut_line(outline(corners, wide(deep + under, deep, under), wide(seam), wide(0), wide(seam)))
    )
    first = cut.intersection(shapely.box(-1000, -deep, 1000, 0))
    second = cut.intersection(shapely.box(-1000, -1000, 1000, -deep))
    turned_under = shapely.affinity.scale(second, 1.0, -1.0, origin=(0, -deep))
    layers = [shapely.affinity.scale(each, 1.0, -1.0, origin=(0, 0)) for each in (first, turned_under)]
    for layer, low, high in ((layers[0], 0.0, deep), (layers[1], deep - under, deep)):
        piece = cut.intersection(shapely.box(-1000, low, 1000, high))
        assert layer.symmetric_difference(piece).area == pytest.approx(0.0, abs=0.1)


@against(Known.DERIVED, "plane geometry")
def test_a_hem_mirrors_a_seam_that_curves() -> None:
    """The mirror image of each corner of the seam's cut edge lies on the cut edge of the hem."""
    low, high = Point(180, 0), Point(140, 260)
    side = Path((Cubic(low, Point(176, 60), Point(120, 120), high),))
    deep = 60.0
    runs = (
        Allowed(Path.through(Point(0, 0), low), deep, (deep,)),
        Allowed(side, 10.0),
        Allowed(Path.through(high, Point(0, 260)), 0.0),
        Allowed(Path.through(Point(0, 260), Point(0, 0)), 0.0, on_fold=True),
    )
    cut = cut_line(runs)
    ring = polygon(cut).exterior
    mirror = Rigid.mirroring(Point(0, 0), ACROSS)
    edge = [p for p in cut if 0.0 <= p.y <= deep and p.x > 100]
    assert len(edge) > 3
    for place in edge:
        image = mirror(place)
        assert ring.distance(shapely.Point(image.x, image.y)) < 0.01


@against(Known.DERIVED, "plane geometry")
def test_a_hem_on_a_curve_meets_the_seam_where_the_paper_is_folded_along_its_end() -> None:
    """A quarter of a round skirt: the seams stand square on the hem, so the hem ends square on both."""
    inner, outer, deep = 100.0, 700.0, 12.0
    handle = 4.0 / 3.0 * tan(pi / 8)

    def arc(radius: float) -> Path:
        a, b = Point(radius, 0), Point(0, radius)
        return Path((Cubic(a, a + Point(0, radius * handle), b + Point(radius * handle, 0), b),))

    runs = (
        Allowed(Path((Line(Point(inner, 0), Point(outer, 0)),)), 10.0),
        Allowed(arc(outer), deep, (deep,)),
        Allowed(Path((Line(Point(0, outer), Point(0, inner)),)), 10.0),
        Allowed(arc(inner).reversed(), 0.0),
    )
    cut = cut_line(runs)
    for corner in (Point(outer + deep, -10), Point(-10, outer + deep)):
        assert min(p.distance(corner) for p in cut) < 0.05


@against(Known.DERIVED, "plane geometry")
def test_a_seam_that_leans_over_too_far_is_mitred() -> None:
    leaning = panel(61.0, high=80.0, half=300.0)
    assert radians(61.0) > MOST_SLANT
    turned = cut_line(outline(leaning, wide(30, 30), wide(10), wide(0), wide(10)))
    plain = cut_line(outline(leaning, wide(30), wide(10), wide(0), wide(10)))
    assert turned == plain


@against(Known.DERIVED, "plane geometry")
def test_the_hem_goes_on_to_the_fold() -> None:
    """Nothing is mirrored in the fold of the cloth: both halves are one."""
    corners = (Point(0, 10), Point(100, 0), Point(100, 80), Point(0, 80))
    hem, side, waist, fold = outline(corners, wide(20, 20), wide(10), wide(0), wide(0))
    cut = cut_line((hem, side, waist, replace(fold, on_fold=True)))
    assert min(p.x for p in cut) == pytest.approx(0.0, abs=1e-3)
    lowest = min((p for p in cut if p.x < 1e-3), key=lambda p: p.y)
    assert lowest.y == pytest.approx(10 - 20 / cos(atan2(10, 100)), abs=1e-3)


# Corners in closed form.


@pytest.mark.parametrize("sharp", [50.0, 75.0, 90.0, 120.0, 130.0])
@against(Known.DERIVED, "plane geometry")
def test_a_mitre_adds_a_kite(sharp: float) -> None:
    """Mathematics: at a corner of inner angle a the mitre adds s^2 / tan(a / 2) to the two strips."""
    s, leg = 10.0, 400.0
    angle = radians(sharp)
    a, b, c = Point(leg, 0), Point(0, 0), Point(leg * cos(angle), leg * sin(angle))
    closing = outline((a, c, b), wide(0), wide(s), wide(s))
    grown = polygon_area(cut_line(closing)) - polygon_area((a, c, b))
    # At the two far corners each strip ends on the line of the side without allowance.
    far = (pi - angle) / 2
    assert grown == pytest.approx(2 * leg * s + s * s / tan(angle / 2) + 2 * _end(s, far), abs=0.05)


def _end(s: float, angle: float) -> float:
    """A strip that ends on the line of a side without allowance: a right triangle more, or less."""
    return 0.5 * s * s / tan(angle)


@against(Known.DERIVED, "plane geometry")
def test_a_rounded_corner_adds_a_sector() -> None:
    """Mathematics: the allowance along an arc of angle t and radius r is s (r t) + s^2 t / 2."""
    r, s, t = 80.0, 15.0, pi / 2
    handle = r * 4.0 / 3.0 * tan(t / 4)
    a, b = Point(r, 0), Point(0, r)
    arc = Path((Cubic(a, a + Point(0, handle), b + Point(handle, 0), b),))
    origin = Point(0, 0)
    runs = (
        Allowed(arc, s),
        Allowed(Path.through(b, origin), 0.0),
        Allowed(Path.through(origin, a), 0.0),
    )
    net = polygon_area([*arc.flattened(), origin])
    assert polygon_area(cut_line(runs)) - net == pytest.approx(s * r * t + s * s * t / 2, rel=2e-3)


@against(Known.DERIVED, "plane geometry")
def test_a_cut_edge_along_a_curve_is_longer_by_width_times_turning() -> None:
    """Mathematics: a parallel curve at distance s is longer by s times the angle by which the curve turns."""
    s = 12.0
    curve = Path((Cubic(Point(200, 0), Point(200, 120), Point(120, 220), Point(0, 220)),))
    runs = (
        Allowed(curve, s),
        Allowed(Path.through(Point(0, 220), Point(0, 0)), 0.0),
        Allowed(Path.through(Point(0, 0), Point(200, 0)), 0.0),
    )
    cut = cut_line(runs)
    edge = [p for p in cut if abs(curve.distance_to(p) - s) < 0.2]
    first = min(range(len(edge)), key=lambda i: edge[i].y)
    edge = edge[first:] + edge[:first]
    assert Path.through(*edge).length() == pytest.approx(curve.length() + s * curve.turning(), abs=0.3)


@pytest.mark.parametrize("sharp", [60.0, 75.0, 90.0, 110.0, 125.0])
@against(Known.DERIVED, "plane geometry")
def test_squared_ends_of_two_pieces_lie_on_each_other(sharp: float) -> None:
    """A seam whose corners are sharp on one piece and blunt on the other, both squared: raw edges even.

    Geometry: both allowances end square to the seam, at the seam's length plus the other allowance over the
    sine of the angle, and supplementary angles have one sine.
    """
    seam, other, s, q = 300.0, 200.0, 10.0, 15.0
    ends = []
    for degrees in (sharp, 180.0 - sharp):
        angle = radians(degrees)
        top, bottom = Point(0, seam), Point(0, 0)
        far = top + Point(-sin(angle), -cos(angle)) * other
        runs = outline((bottom, top, far), wide(s), wide(q), wide(0))
        cut = cut_line((replace(runs[0], square_end=True), *runs[1:]))
        ends.append(max((p for p in cut if p.x > s - 1e-3), key=lambda p: p.y))
    assert ends[0].distance(ends[1]) < 1e-3
    assert ends[0].y == pytest.approx(seam + q / sin(radians(sharp)), abs=1e-3)


@against(Known.DERIVED, "plane geometry")
def test_a_sharp_point_is_cut_off_at_the_limit() -> None:
    s = 8.0
    spike = (Point(0, -15), Point(200, 0), Point(0, 15))
    cut = cut_line(outline(spike, wide(s), wide(s), wide(0)))
    assert max(p.x for p in cut) == pytest.approx(200 + MITRE_LIMIT * s, abs=1e-3)
