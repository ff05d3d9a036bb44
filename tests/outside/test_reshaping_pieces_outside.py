"""Alterations that make pieces."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, hypot, pi, sin, tan
from typing import TYPE_CHECKING

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.affinity import affine_transform
from shapely.ops import split as shapely_split

from specc.alteration import face, join, split, unfold
from specc.alteration.bending import without_kinks
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.smooth import smooth_through
from specc.model.reshaping import Face, Join, Split, SplitEnd, Unfold
from specc.pattern.outline import area, drawn_outline, notched_outline, transformed
from specc.pattern.piece import Dart, Edge, NamedPoint, Piece, TwoPointedDart
from tests.altering import ORIGIN, at_share, edge, evaluate, is_whole, length, part, rectangle, sewn, whole
from tests.sources import Known, against
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.alteration.refusal import Refusal

FINE = 0.001  # mm; how closely the polygons for Shapely follow the curves


def shape(piece: Piece) -> shapely.Polygon:
    return shapely.Polygon([(p.x, p.y) for p in notched_outline(piece).flattened(FINE)])


def drawn(piece: Piece) -> shapely.Polygon:
    return shapely.Polygon([(p.x, p.y) for p in drawn_outline(piece).flattened(FINE)])


def seam(piece: Piece, start: SplitEnd, end: SplitEnd, *through: str) -> tuple[Piece, ...] | Refusal:
    names = tuple(part(name) for name in through)
    step = Split(whole(), "seam", start, names, end, ("inner", "outer"), ORIGIN)
    return split.apply((piece,), step, evaluate)


def on(name: str, place: float) -> SplitEnd:
    return SplitEnd(part(name), at_share(place))


# Split: Shapely cuts the same polygon along the same line.


@against(Known.PROGRAM, "shapely.ops.split")
@given(fronts(), st.floats(0.3, 0.7), st.floats(0.3, 0.7), lengths(-60, 60), lengths(-60, 60))
def test_both_parts_are_those_that_shapely_cuts(
    piece: Piece, high: float, low: float, x: float, y: float
) -> None:
    bare = replace(piece, darts=(), edges=tuple(_without_dart(e) for e in piece.edges))
    mark = NamedPoint("mark", Point(130.0 + x, -500.0 + y))
    result = seam(replace(bare, points=(mark,)), on("shoulder", high), on("hem", low), "mark")
    assume(isinstance(result, tuple))
    assert isinstance(result, tuple)
    # Made longer at both ends, so that it certainly crosses the outline there.
    line = edge(result[0], "seam").parts[0].extended(1.0, 1.0).flattened(FINE)
    whole_shape = shape(bare)
    cut = shapely_split(whole_shape, shapely.LineString([(p.x, p.y) for p in line]))
    areas = sorted(part_of.area for part_of in cut.geoms if part_of.area > 1.0)
    assert sorted(area(new) for new in result) == pytest.approx(areas, abs=1.5)
    assert sum(area(new) for new in result) == pytest.approx(whole_shape.area, abs=1.0)


def _without_dart(e: Edge) -> Edge:
    if not e.darts:
        return e
    return replace(e, parts=(Path.through(e.parts[0].start, *(p.end for p in e.parts)),), darts=())


@against(Known.PROGRAM, "shapely: intersection and union")
@given(fronts(waist_dart=True))
def test_the_parts_do_not_lie_on_each_other_but_for_the_turned_one(piece: Piece) -> None:
    """Without the dart at the side nothing turns: both lie in the old outline, the dart in neither."""
    bare = replace(piece, darts=(), edges=tuple(_without_dart(e) for e in piece.edges))
    result = seam(bare, on("shoulder", 0.5), on("hem", 0.5), "waist-dart")
    assume(isinstance(result, tuple))
    assert isinstance(result, tuple)
    first, second = (shape(new) for new in result)
    (inner,) = piece.two_pointed
    fish = shapely.Polygon([(p.x, p.y) for p in (inner.top, inner.first, inner.bottom, inner.second)])
    # Edges drawn over a kink leave it by less than a millimetre or two within 50 mm on either side.
    assert first.intersection(second).area < 150.0
    assert first.union(second).union(fish).symmetric_difference(shape(bare)).area < 150.0
    for new in (first, second):
        assert new.intersection(fish).area < 0.2 * fish.area + 50.0


# A dart of angle a at the end of a seam: the new edges turn by a more in all (from memory: what a dart
# shapes is its angle, the angle that is missing round its tip).


@against(Known.MEMORY, "what a dart shapes is the angle that is missing round its tip")
@given(lengths(10, 70), lengths(60, 150))
def test_the_seam_holds_the_angle_of_the_dart(width: float, deep: float) -> None:
    top = Edge(
        "c",
        "C",
        "D",
        (
            Path.through(Point(200, 300), Point(100 + width / 2, 300)),
            Path.through(Point(100 - width / 2, 300), Point(0, 300)),
        ),
        ("dart",),
    )
    mouth = Point(100 + width / 2, 300), Point(100 - width / 2, 300)
    sides = rectangle(200, 300).edges
    piece = replace(
        rectangle(200, 300),
        edges=(*sides[:2], top, sides[3]),
        darts=(Dart("dart", "c", *mouth, Point(100, 300 - deep)),),
    )
    result = seam(piece, SplitEnd(part("dart"), None), on("a", 0.5))
    assert isinstance(result, tuple)
    angle = 2.0 * atan2(width / 2, deep)
    turned = sum(edge(new, "seam").parts[0].turning() for new in result)
    assert abs(turned) == pytest.approx(angle, abs=1e-9)
    leg = hypot(width / 2, deep)
    for new in result:
        assert sewn(new, "seam") == pytest.approx(leg + 300.0 - deep, abs=1e-9)


@against(Known.DERIVED, "within a quarter of the height of the triangle")
@given(st.floats(0.02, 1.2), lengths(30, 200), lengths(30, 200), st.floats(-0.3, 0.3))
def test_a_kink_is_drawn_over_within_its_triangle_and_keeps_the_length(
    angle: float, before: float, after: float, longer: float
) -> None:
    """Two straight runs: the middle lies under a quarter of the height of the triangle over the zone."""
    corner = Point(0, 0)
    runs = (
        Path.through(Point(-before, 0), corner),
        Path.through(corner, Point(cos(angle), sin(angle)) * after),
    )
    exact = without_kinks(runs, length=before + after)
    assert exact is not None
    assert exact.length() == pytest.approx(before + after, abs=1e-9)
    assert exact.start == runs[0].start
    assert exact.end == runs[1].end
    assert exact.turning() == pytest.approx(angle, abs=1e-9)
    zone = min(50.0, 0.45 * max(before, after))
    assert exact.distance_to(corner) <= 0.25 * zone * tan(angle / 2.0) + 1e-9
    # Lengths that differ a little are made up for.
    other = without_kinks(runs, length=before + after + 0.01 * longer)
    if other is not None:
        assert other.length() == pytest.approx(before + after + 0.01 * longer, abs=1e-9)


# Smooth lines: points on a circle give it. A cubic of an eighth of a turn leaves it by 4e-6 of the radius.


@against(Known.DERIVED, "radius and arc length of the circle")
@given(
    lengths(50, 500),
    st.floats(-pi, pi),
    st.lists(st.floats(0.05, pi / 4.0), min_size=2, max_size=6),
    st.booleans(),
)
def test_points_on_a_circle_give_the_circle(
    radius: float,
    first: float,
    steps: Sequence[float],
    left: bool,  # noqa: FBT001 - hypothesis gives it
) -> None:
    angles = [first]
    for step in steps:
        angles.append(angles[-1] + (step if left else -step))
    points = [Point(radius * cos(a), radius * sin(a)) for a in angles]
    spans = smooth_through(points)
    assert len(spans) == len(steps)
    for span, step in zip(spans, steps, strict=True):
        assert span.length() == pytest.approx(radius * step, rel=1e-5)
        for share in range(9):
            away = span.point_at(span.length() * share / 8.0)
            assert away.norm() == pytest.approx(radius, rel=1e-5)
    for a, b in pairwise(spans):
        assert a.end_direction().angle_to(b.start_direction()) == pytest.approx(0.0, abs=1e-9)


# Join and unfold: Shapely's union.


@against(Known.PROGRAM, "shapely: union")
@given(fronts(), st.floats(0.45, 0.8), st.floats(0.02, 0.12), st.floats(-3.0, 3.0))
def test_joined_pieces_are_the_union(piece: Piece, high: float, low: float, angle: float) -> None:
    parts = seam(piece, on("armhole", high), on("centre", low))
    assert isinstance(parts, tuple)
    moved = transformed(parts[1], Rigid.turning(Point(70.0, 20.0), angle))
    step = Join(part("seam", "inner"), part("seam", "outer"), "front", ORIGIN)
    result = join.apply((parts[0], moved), step, evaluate)
    assert isinstance(result, tuple)
    (front,) = result
    union = shape(parts[0]).buffer(1e-4).union(shape(parts[1]).buffer(1e-4))
    assert shape(front).symmetric_difference(union).area < 2.0
    assert shape(front).symmetric_difference(shape(piece)).area < 2.0


@against(Known.PROGRAM, "shapely: union and affine_transform")
@given(fronts())
def test_an_unfolded_piece_is_the_union_with_its_mirror_image(piece: Piece) -> None:
    result = unfold.apply((piece,), Unfold((whole(),), ORIGIN), evaluate)
    assert isinstance(result, tuple)
    half = drawn(piece)
    twin = affine_transform(half, [-1.0, 0.0, 0.0, 1.0, 0.0, 0.0])  # in the fold, where x is 0
    union = half.buffer(1e-4).union(twin.buffer(1e-4))
    assert drawn(result[0]).symmetric_difference(union).area < 2.0


# Facings: a strip of depth d along a curve of length L that turns by t has area d (L + t d / 2) where it
# turns away and d (L - t d / 2) where it turns round the strip (parallel curves, Steiner); an arc gives a
# sector of a ring.


@against(Known.DERIVED, "sector of a ring")
@given(lengths(60, 300), lengths(5, 55), st.floats(0.3, 2.5), st.booleans())
def test_a_facing_of_an_arc_is_a_sector_of_a_ring(
    radius: float,
    by: float,
    angle: float,
    hollow: bool,  # noqa: FBT001 - hypothesis gives it
) -> None:
    """The ends are radii, so the neighbours stand square to the arc."""
    centre = Point(0, 0)
    start = Point(radius, 0)
    path = arc(start, centre, angle)
    far = 1.0 if hollow else -1.0
    reach = radius + far * min(100.0, 0.95 * radius)
    assume(abs(reach - radius) > by + 1.0)
    outer = arc(Point(reach, 0), centre, angle).reversed()
    ends = [Path.through(path.end, outer.start), Path.through(outer.end, path.start)]
    names = ("neck", "shoulder", "outside", "front")
    paths = (path, ends[0], outer, ends[1])
    edges = tuple(
        Edge(n, n.upper(), m.upper(), (p,))
        for n, m, p in zip(names, (*names[1:], names[0]), paths, strict=True)
    )
    result = face.apply(
        (Piece("front", "front", edges),), Face((part("neck"),), length(by), "facing", ORIGIN), evaluate
    )
    assert isinstance(result, tuple)
    facing = result[1]
    is_whole(facing)
    inner = radius + far * by
    # An arc of two cubics leaves the circle by millionths of the radius, its parallel by a micrometre.
    assert sewn(facing, "neck-inner") == pytest.approx(inner * angle, rel=2e-5, abs=5e-3)
    assert area(facing) == pytest.approx(0.5 * angle * abs(inner**2 - radius**2), rel=2e-4)


@against(Known.PROGRAM, "shapely: buffer of the neck within the piece")
@given(fronts(), lengths(10, 40))
def test_a_facing_is_the_piece_within_its_depth_of_the_edge(piece: Piece, by: float) -> None:
    """Shapely's buffer of the neck, within the piece: the neck stands square at both its ends."""
    result = face.apply((piece,), Face((part("neck"),), length(by), "facing", ORIGIN), evaluate)
    assume(isinstance(result, tuple))
    assert isinstance(result, tuple)
    neck = shapely.LineString([(p.x, p.y) for p in edge(piece, "neck").parts[0].flattened(FINE)])
    within = neck.buffer(by, quad_segs=256).intersection(drawn(piece))
    assert shape(result[1]).symmetric_difference(within).area < 1e-4 * within.area + 2.0


@against(Known.DERIVED, "area of a rhomb")
def test_a_dart_inside_is_what_is_missing() -> None:
    """A rhomb 20 wide and 150 long takes 1500 mm2 out of 60,000; its kinks change less than 1 in 1000."""
    fish = TwoPointedDart("fish", Point(100, 250), Point(100, 100), Point(110, 175), Point(90, 175))
    piece = replace(rectangle(200, 300), two_pointed=(fish,))
    result = seam(piece, on("c", 0.5), on("a", 0.5), "fish")
    assert isinstance(result, tuple)
    assert sum(area(new) for new in result) == pytest.approx(60_000.0 - 1_500.0, abs=60.0)
    assert area(result[0]) == pytest.approx(area(result[1]), abs=1e-6)
