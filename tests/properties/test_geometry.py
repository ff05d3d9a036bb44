"""What curves, paths and cut lines must keep, whatever their shape."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.crossing import crossings, line_crossings
from specc.geometry.fit import blend, cubic_through, curve
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.region import centroid, contains, crosses_itself, polygon_area, signed_area
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import FLATTEN, GRID
from specc.pattern.outline import area, drawn_outline, flat_outline, mirrored, unfolded_outline
from tests.strategies import cubics, fronts, garment_curves, lengths, lines, points, rigid_motions

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

segments = lines() | garment_curves() | cubics()
smooth = lines() | garment_curves()
share = st.floats(0.01, 0.99)


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """Up to four segments end to end."""
    parts = draw(st.lists(segments, min_size=1, max_size=4))
    path = Path((parts[0],))
    for part in parts[1:]:
        path = path.joined(Path((part.transformed(Rigid.moving(path.end - part.start)),)))
    return path


@given(paths(), share)
def test_split_lengths_sum_to_the_whole(path: Path, at: float) -> None:
    whole = path.length()
    before, after = path.split_at(at * whole)
    assert before.length() == pytest.approx(at * whole, abs=2e-6)
    assert before.length() + after.length() == pytest.approx(whole, abs=4e-6)
    assert before.end == after.start


@given(paths(), rigid_motions())
def test_motions_keep_lengths_turning_and_area(path: Path, motion: Rigid) -> None:
    moved = path.transformed(motion)
    assert moved.length() == pytest.approx(path.length(), abs=4e-6)
    sign = -1.0 if motion.mirrors else 1.0
    assert signed_area(moved) == pytest.approx(sign * signed_area(path), rel=1e-9, abs=1e-5)


@given(rigid_motions(), rigid_motions(), points())
def test_motions_follow_one_another_and_are_undone(first: Rigid, then: Rigid, point: Point) -> None:
    assert then.after(first)(point).distance(then(first(point))) < 1e-6
    assert first.inverse()(first(point)).distance(point) < 1e-6
    assert first.inverse().mirrors == first.mirrors


@given(paths(), rigid_motions())
def test_an_affine_map_takes_every_point_of_a_path(path: Path, motion: Rigid) -> None:
    def wider(point: Point) -> Point:
        return Point(2.0 * point.x + 0.5 * point.y, point.y - 3.0)

    mapped = path.mapped(wider)
    for old, new in zip(path.segments, mapped.segments, strict=True):
        assert all(new.point_at(t).distance(wider(old.point_at(t))) < 1e-6 for t in (0.0, 0.3, 0.8, 1.0))
    assert path.mapped(motion) == path.transformed(motion)


@given(st.lists(smooth, min_size=1, max_size=3), rigid_motions())
def test_motions_keep_turning(parts: list[Cubic | Line], motion: Rigid) -> None:
    sign = -1.0 if motion.mirrors else 1.0
    for part in parts:
        assert part.transformed(motion).turning() == pytest.approx(sign * part.turning(), abs=1e-6)


@given(paths())
def test_reversed_is_the_same_length_and_turns_back(path: Path) -> None:
    assert path.reversed().length() == pytest.approx(path.length(), abs=4e-6)
    assert path.reversed().reversed() == path
    assert signed_area(path.reversed()) == pytest.approx(-signed_area(path), rel=1e-9, abs=1e-6)


@given(paths(), share)
def test_a_point_on_a_path_is_found_again(path: Path, at: float) -> None:
    point = path.point_at(at * path.length())
    assert path.distance_to(point) < 1e-4
    assert path.point_at(path.length_at(point)).distance(point) < 1e-4


@given(segments)
def test_flattening_stays_within_its_tolerance(segment: Cubic | Line) -> None:
    chain = Path.through(*Path((segment,)).flattened())
    for step in range(1, 40):
        assert chain.distance_to(segment.point_at(step / 40)) <= FLATTEN + 1e-9


@given(segments, points(), st.floats(-pi, pi))
def test_crossings_with_a_line_lie_on_both(segment: Cubic | Line, on: Point, angle: float) -> None:
    direction = Point(1.0, 0.0).turned(angle)
    path = Path((segment,))
    met = line_crossings(path, on, direction)
    for crossing in met:
        assert abs(direction.cross(crossing.at - on)) < 1e-5
        assert path.point_at(crossing.along).distance(crossing.at) < 1e-5
        assert (on + direction * crossing.across).distance(crossing.at) < 1e-5
    # The sides of fine samples change an odd number of times only where an odd number of crossings is found.
    start, end = direction.cross(segment.start - on), direction.cross(segment.end - on)
    assume(min(abs(start), abs(end)) > 1e-3)
    assert len(met) % 2 == (start * end < 0.0)


@given(paths(), paths())
def test_crossings_of_paths_lie_on_both(path: Path, other: Path) -> None:
    for crossing in crossings(path, other):
        assert path.point_at(crossing.along).distance(crossing.at) < 1e-4
        assert other.point_at(crossing.across).distance(crossing.at) < 1e-4


@given(garment_curves(), lengths(-60, 60))
def test_a_parallel_copy_is_longer_by_distance_times_turning(cubic: Cubic, distance: float) -> None:
    path = Path((cubic,))
    # While the distance stays below every radius of curvature: elsewhere the copy turns back on itself.
    tightest = max(_curvature(cubic, step / 50) * distance for step in range(51))
    assume(tightest < 0.8)
    copy = parallel(path, distance)
    assert copy.length() == pytest.approx(path.length() - distance * path.turning(), abs=0.02)
    for step in range(11):
        assert path.distance_to(copy.point_at(copy.length() * step / 10)) == pytest.approx(
            abs(distance), abs=0.005
        )


def _curvature(cubic: Cubic, t: float) -> float:
    first, second = cubic.derivative_at(t), cubic.second_derivative_at(t)
    return first.cross(second) / first.norm() ** 3


@given(points(), points(), st.floats(-1.2, 1.2), st.floats(-1.2, 1.2))
def test_a_fitted_curve_has_its_ends_and_directions(
    start: Point, end: Point, first: float, last: float
) -> None:
    assume(start.distance(end) > 5.0)
    chord = (end - start).unit()
    leaving, arriving = chord.turned(first), chord.turned(last)
    for fitted in (Path((curve(start, leaving, end, arriving),)), blend(start, leaving, end, arriving)):
        assert fitted.start == start
        assert fitted.end == end
        assert fitted.start_direction().angle_to(leaving) == pytest.approx(0.0, abs=1e-6)
        assert fitted.end_direction().angle_to(arriving) == pytest.approx(0.0, abs=1e-6)


@given(points(), st.floats(-pi, pi), lengths(50, 400), lengths(50, 400), st.floats(0.2, 0.9), share)
def test_a_curve_is_found_through_its_own_points(
    corner: Point, heading: float, first: float, last: float, fullness: float, at: float
) -> None:
    along = Point(1.0, 0.0).turned(heading)
    start, end = corner - along * first, corner + along.left() * last
    wanted = curve(start, along, end, along.left(), fullness=fullness)
    found = cubic_through(start, along, end, along.left(), through=wanted.point_at(at))
    assert found is not None
    assert found.point_at(at).distance(wanted.point_at(at)) < 1e-3


def ring(radii: list[float], bends: list[float]) -> tuple[Path, ...]:
    """A star-shaped outline of lines and curves round the origin."""
    count = len(radii)
    corners = [Point(r, 0.0).turned(2.0 * pi * i / count) for i, r in enumerate(radii)]
    runs = []
    for index, bend in enumerate(bends):
        a, b = corners[index], corners[(index + 1) % count]
        d = b - a
        run = (
            Line(a, b)
            if abs(bend) < 0.1
            else Cubic(a, a + d.turned(bend) * 0.35, b - d.turned(-bend) * 0.35, b)
        )
        runs.append(Path((run,)))
    return tuple(runs)


@st.composite
def rings(draw: st.DrawFn) -> tuple[Path, ...]:
    count = draw(st.integers(3, 8))
    radii = draw(st.lists(lengths(40, 400), min_size=count, max_size=count))
    bends = draw(st.lists(st.floats(-0.7, 0.7), min_size=count, max_size=count))
    runs = ring(radii, bends)
    net = [point for run in runs for point in run.flattened()[:-1]]
    assume(not crosses_itself(net))
    return runs if draw(st.booleans()) else tuple(run.reversed() for run in reversed(runs))


widths = st.sampled_from([0.0, 0.0, 3.0, 6.0, 10.0, 15.0, 40.0])


@given(rings(), st.lists(widths, min_size=8, max_size=8))
def test_a_cut_line_holds_its_outline_and_never_crosses_itself(
    runs: tuple[Path, ...], allowed: list[float]
) -> None:
    outline = tuple(Allowed(run, width) for run, width in zip(runs, allowed, strict=False))
    net = [point for run in runs for point in run.flattened()[:-1]]
    cut = cut_line(outline)
    assert not crosses_itself(cut)
    around = sum(run.length() for run in runs)
    assert abs(polygon_area(cut)) >= abs(polygon_area(net)) - GRID * around
    assert (polygon_area(cut) > 0.0) == (polygon_area(net) > 0.0)
    # Half way between outline and allowance there is cloth.
    sign = 1.0 if polygon_area(net) > 0.0 else -1.0
    for part in outline:
        chain = part.run.flattened()
        for a, b in pairwise(chain):
            middle = a.toward(b, 0.5)
            out = (b - a).unit().left() * (-sign)
            # Of a shorter run between two without allowance no more may be there than a point.
            if part.width > 0.0 and a.distance(b) > 1.25 * part.width:
                assert contains(cut, middle + out * (0.5 * part.width))
            assert contains(cut, middle - out * 0.01) or min(p.distance(middle) for p in cut) < 1.0


@given(rings())
def test_no_allowance_is_the_outline_itself(runs: tuple[Path, ...]) -> None:
    net = [point for run in runs for point in run.flattened()[:-1]]
    cut = cut_line(tuple(Allowed(run, 0.0) for run in runs))
    assert polygon_area(cut) == pytest.approx(polygon_area(net), abs=1.0)
    assert max(min(q.distance(p) for q in cut) for p in net[:: max(1, len(net) // 8)]) < 40.0
    assert all(min(p.distance(q) for q in net) <= GRID for p in cut)


@given(fronts())
def test_a_mirrored_piece_has_the_same_measures(piece: Piece) -> None:
    other = mirrored(piece)
    assert area(other) == pytest.approx(area(piece), abs=1e-6)
    assert polygon_area(flat_outline(other)) == pytest.approx(-polygon_area(flat_outline(piece)), abs=1e-6)
    assert mirrored(other) == piece


@given(fronts())
def test_a_piece_on_the_fold_unfolds_to_twice_its_area(piece: Piece) -> None:
    whole = unfolded_outline(piece)
    assert whole.closed
    assert signed_area(whole) == pytest.approx(2.0 * signed_area(drawn_outline(piece)), abs=1e-6)
    assert not crosses_itself(whole.flattened()[:-1])
    assert centroid(whole.flattened()[:-1]).x == pytest.approx(0.0, abs=1e-9)
    assert drawn_outline(replace(piece, fold=None)) == unfolded_outline(replace(piece, fold=None))
