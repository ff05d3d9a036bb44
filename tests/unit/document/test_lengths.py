"""Lengths are printed in the garment's unit, to the nearest step, or up where a trim is cut."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.document.lengths import Lengths, millimetres, range_of
from specc.document.printed import Printed
from specc.units import parse_number

if TYPE_CHECKING:
    from specc.document.printed import Text

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


@given(st.sampled_from(("in", "cm", "mm")), st.floats(-20_000.0, 20_000.0))
def test_both_writings_come_from_the_same_length_each_to_half_a_step_of_its_own(unit: str, mm: float) -> None:
    """Not one from the other: 1/16 in is 0.16 cm, while 1/8 in, to which it is printed, would be 0.3 cm."""
    own, other = Lengths(unit), Lengths(unit).other
    texts = written(own.near_in_both(mm))

    for lengths, text in zip((own, other), texts, strict=True):
        off = abs(parse_number(text) * SIZES[lengths.unit] - Fraction(mm))
        assert off <= STEPS[lengths.unit] / 2 + Fraction(1, 10**6)


@given(st.sampled_from(("in", "cm", "mm")), st.floats(0.0, 20_000.0))
def test_a_cut_is_long_enough_in_both_units(unit: str, mm: float) -> None:
    own, other = Lengths(unit), Lengths(unit).other

    for lengths, text in zip((own, other), written(own.up_in_both(mm)), strict=True):
        over = parse_number(text) * SIZES[lengths.unit] - Fraction(mm)
        assert -Fraction(1, 10**6) <= over < STEPS[lengths.unit] + Fraction(1, 10**6)


def test_the_other_unit_is_not_converted_from_what_is_printed() -> None:
    near = Lengths("in").near_in_both(25.4 / 16)

    assert near == Printed("1/8", "0.2")
    assert Lengths("cm").near_in_both(1.6) == Printed("0.2", "1/8")
    assert Lengths("in").near_in_both(26.9) == Printed("1", "2.7")  # an inch would be 2.5


def test_a_text_that_is_alike_in_both_units_has_one_writing() -> None:
    assert Lengths("in").near_in_both(0.0) == Printed("0", "0.0")
    assert Lengths("mm").both(lambda _: "none") == "none"


def written(text: Text) -> tuple[str, str]:
    return (text.text, text.other) if isinstance(text, Printed) else (text, text)
