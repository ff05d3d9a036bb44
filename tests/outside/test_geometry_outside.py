"""Geometry: lengths, crossings, areas, cut lines, darts."""

from __future__ import annotations

import itertools
from dataclasses import replace
from math import asin, hypot, pi, sin, tan
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
import shapely
from fontTools.misc.bezierTools import calcCubicArcLength
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad

from specc.alteration import crop, swing
from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.crossing import crossings
from specc.geometry.fit import arc, curve
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import polygon_area, signed_area
from specc.geometry.segment import Line
from specc.model.alteration import Crop, Form, Level, PieceRef, Place, Swing, SwingTarget
from specc.model.expression import PartRef
from specc.pattern.lookup import edge_named, line_named
from specc.pattern.measure import dart_angle, dart_width, drawn_length, line_length, stitched_length
from specc.pattern.outline import area, capped_outline, notched_outline
from specc.pattern.piece import Dart, Edge, NamedPoint, Piece, ReferenceLine, TwoPointedDart
from tests.sources import Known, against
from tests.strategies import cubics, garment_curves

if TYPE_CHECKING:
    from specc.geometry.segment import Cubic

INCH = 25.4
ORIGIN: Any = SimpleNamespace(line=1)


@against(Known.PROGRAM, "fontTools.misc.bezierTools.calcCubicArcLength")
@given(garment_curves())
def test_lengths_agree_with_fonttools(cubic: Cubic) -> None:
    corners = [(p.x, p.y) for p in (cubic.start, cubic.leaving, cubic.arriving, cubic.end)]
    assert cubic.length() == pytest.approx(calcCubicArcLength(*corners, tolerance=1e-8), abs=2e-5)


@against(Known.PROGRAM, "scipy.integrate.quad of the speed")
@given(cubics())
def test_lengths_agree_with_quadrature(cubic: Cubic) -> None:
    def speed(t: float) -> float:
        d = cubic.derivative_at(t)
        return hypot(d.x, d.y)

    # Divided where the curve is slowest, since the speed has a corner at a cusp.
    slowest = min((step / 400 for step in range(401)), key=speed)
    wanted = sum(
        quad(speed, a, b, limit=400, epsabs=1e-10)[0] for a, b in ((0.0, slowest), (slowest, 1.0)) if a < b
    )
    assert cubic.length() == pytest.approx(wanted, abs=2e-6)


@against(Known.PROGRAM, "numpy.roots")
@given(cubics(), st.floats(-pi, pi), st.floats(-200.0, 200.0))
def test_crossings_agree_with_numpy_roots(cubic: Cubic, angle: float, off: float) -> None:
    along = Point(1.0, 0.0).turned(angle)
    on = along.left() * off
    f = [along.cross(p - on) for p in (cubic.start, cubic.leaving, cubic.arriving, cubic.end)]
    polynomial = [f[3] - 3 * f[2] + 3 * f[1] - f[0], 3 * (f[2] - 2 * f[1] + f[0]), 3 * (f[1] - f[0]), f[0]]
    assume(abs(polynomial[0]) > 1e-6)
    # Roots at the ends or double roots are a matter of tolerance.
    roots = np.roots(polynomial)
    assume(all(abs(abs(r.imag)) > 1e-3 or abs(r.imag) == 0.0 for r in roots))
    real = sorted(r.real for r in roots if r.imag == 0.0)
    assume(all(abs(a - b) > 1e-3 for a, b in itertools.pairwise(real)))
    assume(all(min(abs(r), abs(r - 1.0)) > 1e-3 for r in real))
    wanted = [r for r in real if 0.0 < r < 1.0]
    found = cubic.crossings_of_line(on, along)
    assert len(found) == len(wanted)
    assert list(found) == pytest.approx(wanted, abs=1e-6)


@against(Known.PROGRAM, "shapely.intersection")
@given(garment_curves(), garment_curves())
def test_crossings_of_curves_agree_with_shapely(first: Cubic, second: Cubic) -> None:
    a, b = Path((first,)), Path((second,))
    chains = [shapely.LineString([(p.x, p.y) for p in path.flattened(1e-4)]) for path in (a, b)]
    shared = shapely.intersection(*chains)
    assume(shared.geom_type in {"Point", "MultiPoint"} or shared.is_empty)
    wanted = [] if shared.is_empty else [(p.x, p.y) for p in getattr(shared, "geoms", [shared])]
    found = crossings(a, b)
    # Two chains may touch where the curves do not; away from the ends and from tangents they agree.
    assume(all(abs(_angle_of(a, b, c.along, c.across)) > 0.02 for c in found))
    assume(len(wanted) <= 1 or min(_gaps(wanted)) > 0.1)
    assert len(found) == len(wanted)
    for x, y in wanted:
        assert min(c.at.distance(Point(x, y)) for c in found) < 0.05


def _angle_of(a: Path, b: Path, along: float, across: float) -> float:
    return a.direction_at(along).cross(b.direction_at(across))


def _gaps(found: list[tuple[float, float]]) -> list[float]:
    return [hypot(p[0] - q[0], p[1] - q[1]) for i, p in enumerate(found) for q in found[:i]]


@against(Known.PROGRAM, "shapely.Polygon.area")
@given(garment_curves(), st.floats(-100.0, 100.0))
def test_areas_agree_with_shapely(cubic: Cubic, off: float) -> None:
    third = cubic.end + (cubic.end - cubic.start).left() * (off / 100.0 + 2.0)
    outline = Path((cubic, Line(cubic.end, third), Line(third, cubic.start)))
    polygon = shapely.Polygon([(p.x, p.y) for p in outline.flattened(1e-6)])
    assume(polygon.is_valid)
    # The chain lies within 1e-6 mm of the curve.
    assert abs(signed_area(outline)) == pytest.approx(polygon.area, abs=1e-6 * outline.length() + 1e-6)


@against(Known.PROGRAM, "shapely.buffer with mitred corners")
@given(st.lists(st.floats(60.0, 300.0), min_size=4, max_size=9), st.sampled_from([3.0, 10.0, 15.0]))
def test_cut_lines_agree_with_shapely_for_one_width(radii: list[float], width: float) -> None:
    corners = [Point(r, 0.0).turned(2.0 * pi * i / len(radii)) for i, r in enumerate(radii)]
    outline = tuple(
        Allowed(Path.through(a, b), width) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
    )
    net = shapely.Polygon([(p.x, p.y) for p in corners])
    turns = [
        (b - a).angle_to(c - b)
        for a, b, c in zip(corners[-1:] + corners[:-1], corners, corners[1:] + corners[:1], strict=True)
    ]
    # Shapely squares a mitre off by another rule than at two and a half times the width.
    assume(all(1.0 / np.cos(turn / 2.0) < 2.4 for turn in turns))
    wanted = net.buffer(width, join_style="mitre", mitre_limit=2.5)
    cut = shapely.Polygon([(p.x, p.y) for p in cut_line(outline)])
    assert cut.symmetric_difference(wanted).area == pytest.approx(0.0, abs=1.0)


@against(Known.DERIVED, "(a + l + r)(b + t + u); perimeter grown by 8 s")
def test_the_allowance_of_a_rectangle() -> None:
    a, b = 100.0, 50.0
    corners = (Point(0, 0), Point(a, 0), Point(a, b), Point(0, b))
    widths = (10.0, 6.0, 0.0, 20.0)
    outline = tuple(
        Allowed(Path.through(p, q), w)
        for p, q, w in zip(corners, corners[1:] + corners[:1], widths, strict=True)
    )
    assert polygon_area(cut_line(outline)) == pytest.approx((a + 6.0 + 20.0) * (b + 10.0), abs=1e-6)
    same = tuple(replace(allowed, width=10.0) for allowed in outline)
    cut = cut_line(same)
    around = Path.through(*cut, cut[0]).length()
    assert around == pytest.approx(2 * (a + b) + 8 * 10.0, abs=1e-6)


@against(Known.DERIVED, "area grown by P s + s^2 sum tan(phi / 2), phi the exterior angles")
def test_the_allowance_of_a_convex_polygon() -> None:
    corners = [Point(100.0, 0.0).turned(2.0 * pi * i / 7) for i in range(7)]
    outline = tuple(
        Allowed(Path.through(p, q), 12.0) for p, q in zip(corners, corners[1:] + corners[:1], strict=True)
    )
    around = sum(allowed.run.length() for allowed in outline)
    grown = around * 12.0 + 12.0**2 * 7 * tan(pi / 7)
    assert polygon_area(cut_line(outline)) == pytest.approx(polygon_area(corners) + grown, abs=0.05)


@against(Known.DERIVED, "length changes by d times the angle turned")
@pytest.mark.parametrize(
    ("distance", "quarter", "closed"),
    [
        (0.25 * INCH, 0.393 * INCH, 1.571 * INCH),
        (0.375 * INCH, None, 2.356 * INCH),
        (0.5 * INCH, None, 3.142 * INCH),
        (6.0, None, 37.7),
        (10.0, 15.71, 62.8),
        (12.0, None, 75.4),
    ],
)
def test_an_offset_neckline_changes_by_distance_times_turning(
    distance: float, quarter: float | None, closed: float
) -> None:
    """The values are worked out from d * pi / 2 and d * 2 pi, to the digits given."""
    quarter_neck = curve(Point(80.0, 0.0), Point(0.0, -1.0), Point(0.0, -110.0), Point(-1.0, 0.0))
    path = Path((quarter_neck,))
    assert abs(path.turning()) == pytest.approx(pi / 2, abs=1e-9)
    # The curve turns to the right; its copy on the left is outside it.
    change = parallel(path, distance).length() - path.length()
    assert 4 * change == pytest.approx(closed, abs=0.06)
    if quarter is not None:
        assert change == pytest.approx(quarter, abs=0.02)


@against(Known.DERIVED, "r = W / (2 pi f), hem = W + 2 pi f L")
@pytest.mark.parametrize(("share", "radius"), [(1.0, 4.218), (0.75, 5.623), (0.5, 8.435), (0.25, 16.870)])
def test_circle_skirts_drawn_with_cubics(share: float, radius: float) -> None:
    waist, length = 26.5, 24.0
    r = waist / (2.0 * pi * share)
    assert r == pytest.approx(radius, abs=0.0005)
    edge = arc(Point(r, 0.0), Point(0.0, 0.0), 2.0 * pi * share)
    # A cubic of an eighth of a turn is longer than the circle by less than 3 parts in a million.
    assert edge.length() == pytest.approx(waist, rel=3e-6)
    hem = arc(Point(r + length, 0.0), Point(0.0, 0.0), 2.0 * pi * share)
    assert hem.length() == pytest.approx(waist + 2.0 * pi * share * length, rel=3e-6)
    if share == 1.0:
        assert hem.length() == pytest.approx(177.30, abs=0.01)


@against(Known.MEMORY, "a cubic of an eighth of a turn is off by 4e-6 of the radius")
def test_an_arc_in_cubics_stays_on_its_circle() -> None:
    path = arc(Point(100.0, 0.0), Point(0.0, 0.0), pi / 2)
    for point in path.flattened(1e-5):
        assert point.norm() == pytest.approx(100.0, abs=100.0 * 5e-6)


@against(Known.DERIVED, "angle = 2 asin(width / (2 leg)); taken in at r: 2 r sin(angle / 2)")
def test_the_angle_of_a_dart() -> None:
    leg, width = 7.25, 1.0
    half = asin(width / (2.0 * leg))
    dart = Dart(
        "d",
        "e",
        Point(-leg * sin(half), leg * np.cos(half)),
        Point(leg * sin(half), leg * np.cos(half)),
        Point(0, 0),
    )
    assert np.degrees(dart_angle(dart)) == pytest.approx(7.909, abs=0.0005)
    assert dart_width(dart) == pytest.approx(1.0, abs=1e-12)
    for radius, chord in ((2.0, 0.2759), (4.0, 0.5517), (5.0, 0.6897), (7.25, 1.0000)):
        a, b = (end.unit() * radius for end in (dart.first, dart.second))
        assert a.distance(b) == pytest.approx(chord, abs=0.00005)


# A front, worked through by hand: half 260 wide, 1000 long, straight sides, all corners square but the neck
# and the armhole. The dart opens on the side, 20 mm wide, its pivot 100 mm from the fold and 250 below the
# neck point.


def front() -> Piece:
    hem_centre, hem_side = Point(0, -1000), Point(260, -1000)
    pivot = Point(100, -250)
    # Legs of equal length on a straight side: 10 mm above and below the pivot's height.
    upper, lower = Point(260, -240), Point(260, -260)
    underarm, shoulder_point = Point(260, -200), Point(190, -40)
    neck_point, centre_neck = Point(75, 0), Point(0, -85)
    slope = (neck_point - shoulder_point).unit()
    armhole = curve(underarm, Point(-1, 0), shoulder_point, slope.left() * -1.0)
    neck = curve(neck_point, slope.left(), centre_neck, Point(-1, 0))
    edges = (
        Edge("hem", "hem-centre", "hem-side", (Path.through(hem_centre, hem_side),)),
        Edge(
            "side",
            "hem-side",
            "underarm",
            (Path.through(hem_side, lower), Path.through(upper, underarm)),
            ("bust-dart",),
        ),
        Edge("armhole", "underarm", "shoulder-point", (Path((armhole,)),)),
        Edge("shoulder", "shoulder-point", "neck-point", (Path.through(shoulder_point, neck_point),)),
        Edge("neck", "neck-point", "centre-neck", (Path((neck,)),)),
        Edge("centre", "centre-neck", "hem-centre", (Path.through(centre_neck, hem_centre),)),
    )
    return Piece(
        "front",
        "Front",
        edges,
        darts=(Dart("bust-dart", "side", lower, upper, pivot, short=20.0),),
        lines=(
            ReferenceLine("waist-line", (Path.through(Point(0, -420), Point(260, -420)),)),
            ReferenceLine("hip-line", (Path.through(Point(0, -650), Point(260, -650)),)),
        ),
        points=(NamedPoint("bust-point", pivot),),
        grain=Path.through(Point(40, -900), Point(40, -500)),
        fold="centre",
    )


ANGLE = 2.0 * asin(20.0 / (2.0 * hypot(160.0, 10.0)))  # of the front's dart


def ref(name: str) -> PartRef:
    return PartRef("front", name, ORIGIN)


def swung(
    piece: Piece, form: Form, share: float = 1.0, *, dart: str = "bust-dart", place: Place | None = None
) -> Piece:
    step = Swing(ref(dart), (SwingTarget(ref("hem"), place, form, _number(share)),), ORIGIN)
    result = swing.apply((piece,), step, lambda expression: expression.number)  # type: ignore[union-attr]
    assert isinstance(result, tuple), result
    return result[0]


def _number(value: float, *, length: int = 0) -> Any:
    return SimpleNamespace(number=value, dimension=SimpleNamespace(length=length))


def hem_of(piece: Piece) -> Edge:
    edge = edge_named(piece, "hem")
    assert edge is not None
    return edge


@against(Known.DERIVED, "the angle stays; width = 2 leg sin(angle / 2)")
def test_the_front_swung_into_the_hem_as_a_dart() -> None:
    """The mouth lies on the leg of 750 mm."""
    altered = swung(front(), Form.DART)
    (dart,) = altered.darts
    assert (dart.name, dart.edge, dart.short) == ("bust-dart", "hem", 20.0)
    assert dart_angle(dart) == pytest.approx(ANGLE, abs=1e-12)
    assert dart_width(dart) == pytest.approx(2.0 * 750.0 * sin(ANGLE / 2.0), abs=1e-9)
    assert stitched_length(hem_of(altered)) == pytest.approx(260.0, abs=1e-9)
    assert drawn_length(hem_of(altered)) == pytest.approx(260.0 + dart_width(dart), abs=1e-9)
    # The side is one straight run again: 1000 - 200 - 20.
    side = edge_named(altered, "side")
    assert side is not None
    assert stitched_length(side) == pytest.approx(780.0, abs=1e-9)
    assert len(side.parts) == 1
    assert area(altered) == pytest.approx(area(front()), abs=1e-6)


@against(Known.DERIVED, "the hem grows by leg times angle, the girth by the chord")
def test_the_front_swung_into_the_hem_as_flare() -> None:
    """The hem is square to the line from the pivot, 750 mm away."""
    altered = swung(front(), Form.FLARE)
    assert altered.darts == ()
    # One cubic for an arc of 7 degrees leaves it by far less than a thousandth of a millimetre.
    assert stitched_length(hem_of(altered)) == pytest.approx(260.0 + 750.0 * ANGLE, abs=1e-4)
    assert area(altered) == pytest.approx(area(front()) + 0.5 * 750.0**2 * ANGLE, abs=0.1)
    # The waist, 170 below the pivot, opens by a chord; the girth counts it.
    for name, below in (("waist-line", 170.0), ("hip-line", 400.0)):
        line = line_named(altered, name)
        assert line is not None
        assert line_length(altered, line) == pytest.approx(260.0 + 2.0 * below * sin(ANGLE / 2.0), abs=1e-9)
    (gone,) = altered.gone
    assert (gone.name, gone.how) == ("bust-dart", "swung into `front.hem` on line 1")


@against(Known.DERIVED, "angles add")
def test_half_as_a_dart_and_half_as_flare() -> None:
    half = swung(front(), Form.FLARE, 0.5)
    (left,) = half.darts
    assert dart_angle(left) == pytest.approx(ANGLE / 2.0, abs=1e-12)
    assert left.edge == "side"
    assert stitched_length(hem_of(half)) == pytest.approx(260.0 + 750.0 * ANGLE / 2.0, abs=1e-4)
    both = swung(half, Form.FLARE, place=None)
    assert stitched_length(hem_of(both)) == pytest.approx(260.0 + 750.0 * ANGLE, abs=1e-3)
    mixed = swung(half, Form.DART, place=Place(_number(220.0, length=1), ORIGIN))
    (dart,) = mixed.darts
    assert dart.edge == "hem"
    assert dart_angle(dart) == pytest.approx(ANGLE / 2.0, abs=1e-12)
    assert stitched_length(hem_of(mixed)) == pytest.approx(stitched_length(hem_of(half)), abs=1e-6)


@against(Known.DERIVED, "half way from top to widest a dart is half as wide")
def test_the_front_cropped_opens_the_waist_dart() -> None:
    inner = TwoPointedDart(
        "waist-dart", Point(120, -320), Point(120, -540), Point(110, -420), Point(130, -420)
    )
    piece = replace(front(), two_pointed=(inner,))
    waist = line_named(piece, "waist-line")
    assert waist is not None
    assert line_length(piece, waist) == pytest.approx(240.0, abs=1e-9)
    step = Crop((PieceRef("front", ORIGIN),), Level("waist-line", _number(50.0, length=1), ORIGIN), ORIGIN)
    result = crop.apply((piece,), step, lambda expression: expression.number)  # type: ignore[union-attr]
    assert isinstance(result, tuple), result
    hem = hem_of(result[0])
    assert hem.darts == ("waist-dart",)
    assert stitched_length(hem) == pytest.approx(250.0, abs=1e-6)
    assert drawn_length(hem) == pytest.approx(260.0, abs=1e-6)
    opened = next(dart for dart in result[0].darts if dart.name == "waist-dart")
    assert dart_width(opened) == pytest.approx(10.0, abs=1e-6)
    assert dart_angle(opened) == pytest.approx(2.0 * np.arctan(10.0 / 100.0), abs=1e-9)


@against(Known.DERIVED, "mirrored in the leg that the dart is folded over, the cap's corner lies on the seam")
def test_notches_and_caps_of_the_front() -> None:
    piece = front()
    triangle = 0.5 * 20.0 * 160.0
    from specc.pattern.outline import drawn_outline

    assert signed_area(notched_outline(piece)) == pytest.approx(
        signed_area(drawn_outline(piece)) - triangle, abs=1e-6
    )
    capped = capped_outline(piece)
    corner = next(s.end for s in capped.segments if s.start == Point(260, -260))
    # The folded half lies on the lower side: mirrored in the lower leg, the corner falls on the side seam x =
    # 260.
    leg = Point(260, -260) - Point(100, -250)
    away = corner - Point(100, -250)
    u = leg.unit()
    image = u * (2.0 * away.dot(u)) - away + Point(100, -250)
    assert image.x == pytest.approx(260.0, abs=1e-9)
    assert corner.y == pytest.approx(-250.0, abs=1e-9)
    assert corner.x > 260.0


@against(Known.DERIVED, "a turn about the pivot keeps every distance")
@pytest.mark.parametrize("form", list(Form))
def test_a_notch_stays_where_the_cloth_is(form: Form) -> None:
    from specc.pattern.measure import place_on_edge
    from specc.pattern.piece import Notch

    piece = replace(front(), notches=(Notch("hem", 240.0), Notch("hem", 30.0)))
    altered = swung(piece, form)
    corner = altered.edges[0].parts[-1].end
    place = place_on_edge(hem_of(altered), altered.notches[0].at)
    if form is not Form.GATHERS:
        assert place.at.distance(corner) == pytest.approx(20.0, abs=1e-6)
    assert altered.notches[1].at == 30.0
