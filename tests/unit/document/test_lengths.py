"""Lengths are printed in the garment's unit, to the nearest step, or up where a trim is cut."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.document.lengths import Lengths, millimetres, range_of
from specc.units import parse_number

STEPS = {"in": Fraction(254, 80), "cm": Fraction(1), "mm": Fraction(1)}
SIZES = {"in": Fraction(254, 10), "cm": Fraction(10), "mm": Fraction(1)}


@pytest.mark.parametrize(
    ("unit", "mm", "near", "up"),
    [
        ("in", 25.4, "1", "1"),
        ("in", 26.0, "1", "1 1/8"),
        ("in", 28.575, "1 1/8", "1 1/8"),
        ("cm", 101.0, "10.1", "10.1"),
        ("cm", 101.2, "10.1", "10.2"),
        ("mm", 99.5, "100", "100"),
        ("mm", 99.4, "99", "100"),
    ],
)
def test_near_and_up(unit: str, mm: float, near: str, up: str) -> None:
    assert Lengths(unit).near(mm) == near
    assert Lengths(unit).up(mm) == up


def test_the_last_bits_of_a_float_do_not_lengthen_a_cut() -> None:
    assert Lengths("in").up(25.4 * 3 * (1 + 1e-15)) == "3"


@given(st.sampled_from(("in", "cm", "mm")), st.floats(0.0, 20_000.0))
def test_a_cut_is_never_too_short_nor_a_whole_step_too_long(unit: str, mm: float) -> None:
    printed = parse_number(Lengths(unit).up(mm))

    assert printed is not None
    over = printed * SIZES[unit] - Fraction(mm)
    assert -Fraction(1, 10**6) <= over < STEPS[unit] + Fraction(1, 10**6)


def test_small_lengths_keep_their_digits() -> None:
    assert Lengths("in").fine(9.525) == "3/8 in"
    assert Lengths("in").fine(25.4 / 16) == "1/16 in"
    assert Lengths("cm").fine(9.5) == "0.95 cm"
    assert Lengths("cm").fine(15.0) == "1.5 cm"
    assert Lengths("mm").fine(10.0) == "10 mm"
    assert millimetres(-0.04) == "0.0"
    assert millimetres(-3.44) == "-3.4"


def test_a_range_is_said_once_where_it_is_none() -> None:
    assert range_of(("1 mm", "1 mm")) == "1 mm"
    assert range_of(("1 mm", "1.5 mm", "2 mm")) == "1 mm to 2 mm"
