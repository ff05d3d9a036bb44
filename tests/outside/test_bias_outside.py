"""Bias strips."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from shapely.affinity import rotate

from specc.laying.bias import ALLOWANCE, CLEAR, bias_cuts, lost_by_join, strips_of, tube_length, tube_side
from specc.model.spreading import JOINED, TUBED, WHOLE
from tests.sources import Known, against

INCH = 25.4
LEWIS = "M. Lewis, on bias binding (2006)"

# Cloth in inches, then full strips straight through, inches of bias for strips of 1, 1 1/4, 1 1/2 and 2 in.
YIELDS = (
    (9, 36, (241.8, 190.9, 152.7, 114.6)),
    (9, 45, (318.2, 254.6, 203.6, 152.7)),
    (18, 36, (305.5, 254.6, 203.6, 152.7)),
    (18, 45, (483.7, 381.8, 305.5, 229.1)),
    (27, 45, (458.2, 381.8, 305.5, 229.1)),
    (36, 45, (305.5, 254.6, 203.6, 152.7)),
)


@against(
    Known.DERIVED,
    "floor((a - b) / (w sqrt 2)) strips, each b sqrt 2 long",
    "1/4 yd of 45 in at 1 in: 318.2 in",
)
@pytest.mark.parametrize(("length", "width", "full"), YIELDS)
def test_full_strips_are_as_many_as_the_table_says(
    length: float, width: float, full: tuple[float, ...]
) -> None:
    for wide, inches in zip((1.0, 1.25, 1.5, 2.0), full, strict=True):
        strips = strips_of(width * INCH, length * INCH, wide * INCH)
        through = [strip for strip in strips if strip == max(strips)]
        assert sum(through) / INCH == pytest.approx(inches, abs=0.05)
        assert sum(strips) <= width * length * INCH / wide


@against(Known.DERIVED, "a strip of bias length B takes B / sqrt 2 of cloth", "46 in: 32.53 in")
def test_a_strip_takes_its_length_over_the_root_of_two() -> None:
    (longest, *_) = strips_of(60 * INCH, 32.53 * INCH, 2 * INCH)
    assert longest / INCH == pytest.approx(46.0, abs=0.01)


@against(Known.DERIVED, "2 sqrt 2 s of strip a join", "s = 1/4 in: 0.707 in; s = 6 mm: 17.0 mm")
@pytest.mark.parametrize(("allowance", "lost"), [(6.35, 17.96), (6.0, 16.97)])
def test_a_join_takes_both_allowances_on_the_slant(allowance: float, lost: float) -> None:
    assert lost_by_join(allowance) == pytest.approx(lost, abs=0.01)


@against(
    Known.DERIVED, "whole turns of a tube", "a square of 36 in, strips of 1 1/2 in, seams of 1/4 in: 803.3 in"
)
def test_a_tube_gives_its_whole_turns() -> None:
    assert tube_length(36 * INCH, 1.5 * INCH, 0.25 * INCH) / INCH == pytest.approx(803.3, abs=0.05)


@against(Known.SECOND_HAND, "quiltersquestiontime.com (2021)", "100 in of 3 1/2 in: 18.71 in, so 19")
@against(Known.SECOND_HAND, "mydecozo.co.uk", "250 in of 2 in: 22.36 in, so 23")
@pytest.mark.parametrize(("total", "wide", "root", "said"), [(100, 3.5, 18.71, 19), (250, 2, 22.36, 23)])
def test_the_side_of_a_square_is_near_the_root(total: float, wide: float, root: float, said: float) -> None:
    """The books take the root of the area and round up; whole turns ask for up to half a turn more."""
    side = tube_side(total * INCH, wide * INCH, 0.0) / INCH
    assert root - 1e-9 <= side <= said * 1.06


@against(Known.READ, LEWIS, "a square of 36 in, strips of 2 in: 648 in; 20 in: 200 in; 12 in: 72 in")
@pytest.mark.parametrize(("side", "inches"), [(36, 648), (20, 200), (12, 72)])
def test_a_tube_never_gives_more_than_its_area_and_little_less(side: float, inches: float) -> None:
    found = tube_length(side * INCH, 2 * INCH, 0.0) / INCH
    assert found <= inches + 1e-9
    assert found > inches - 2.0 * sqrt(2.0) * side


@against(
    Known.SECOND_HAND,
    "a leaflet at swampcrone.net",
    "1/4 yd of 40 in gives 10 yd of 1 1/4 in: impossible, area 8 yd",
)
def test_a_yield_beyond_the_area_is_not_believed() -> None:
    assert sum(strips_of(40 * INCH, 9 * INCH, 1.25 * INCH)) / INCH <= 288.0


@against(Known.PROGRAM, "shapely", "strips as polygons on the cloth: inside of it, not on each other")
@given(st.floats(300.0, 1600.0), st.floats(100.0, 3000.0), st.floats(15.0, 90.0))
@settings(deadline=None, max_examples=90)
def test_strips_lie_on_the_cloth_side_by_side(width: float, length: float, wide: float) -> None:
    """Seen along the bias, each strip of that length has room: the cloth's extent there is longer."""
    turned = rotate(box(0.0, 0.0, length, width), -45.0, origin=(0.0, 0.0))
    low, high = turned.bounds[1], turned.bounds[3]
    strips = strips_of(width, length, wide)
    assert len(strips) * wide <= high - low + 1e-6
    short, long = sorted((width, length))
    full = [strip for strip in strips if strip == short * sqrt(2.0)]
    assert len(full) * wide * sqrt(2.0) <= long - short + 1e-6
    assert all(strip <= short * sqrt(2.0) + 1e-6 for strip in strips)
    # The corner is a triangle of that leg; strips beside its long side lie in it, long as their short edges.
    corner = Polygon([(0.0, 0.0), (short * sqrt(2.0), 0.0), (short / sqrt(2.0), short / sqrt(2.0))])
    for number, strip in enumerate([strip for strip in strips if strip not in full][::2]):
        middle = short / sqrt(2.0)
        placed = box(middle - strip / 2.0, number * wide, middle + strip / 2.0, (number + 1) * wide)
        assert placed.difference(corner).area < 1e-6 * placed.area + 1e-6


@against(Known.DERIVED, "length times width of the strips is at most the area of the cloth")
@given(
    st.lists(st.floats(120.0, 2600.0), min_size=1, max_size=40),
    st.floats(600.0, 1600.0),
    st.floats(20.0, 80.0),
)
@settings(deadline=None, max_examples=48)
def test_no_way_gives_more_than_there_is_and_each_gives_enough(
    pieces: list[float], width: float, wide: float
) -> None:
    assume(width > 4 * wide)
    wanted = sum(pieces)
    for cut in bias_cuts(tuple(pieces), width, wide):
        assert wanted * wide <= cut.length * width + 1e-6
        assert wanted <= sum(cut.strips) + 1e-6
        assert len(cut.joins) == len(pieces)
        if cut.way == WHOLE:
            assert not any(cut.joins)
        if cut.way == JOINED:
            for piece, joins in zip(pieces, cut.joins, strict=True):
                assert all(CLEAR - 1e-6 <= join <= piece - CLEAR + 1e-6 for join in joins)
            assert sum(map(len, cut.joins)) < len(cut.strips)
        if cut.way == TUBED:
            assert cut.side <= width
            assert cut.side > 2 * ALLOWANCE
            # One join after every half of a turn, wherever pieces begin and end.
            apart = (cut.side - 2.0 * ALLOWANCE) * sqrt(2.0) / 2.0
            for piece, joins in zip(pieces, cut.joins, strict=True):
                assert abs(len(joins) - piece / apart) <= 1.0 + 1e-9
                assert all(0.0 < join < piece for join in joins)
            if cut.squares == 1:
                # All joins of the run but those on which one piece ends and the next begins.
                within = sum(map(len, cut.joins))
                assert wanted / apart - 1.0 - len(pieces) <= within <= wanted / apart + 1e-6


@against(Known.DERIVED, "more pieces never take less cloth by whole strips")
def test_more_pieces_take_more_cloth() -> None:
    lengths = [
        next(cut.length for cut in bias_cuts((480.0,) * number, 1100.0, 32.0) if cut.way == WHOLE)
        for number in range(4, 60, 4)
    ]
    assert lengths == sorted(lengths)
