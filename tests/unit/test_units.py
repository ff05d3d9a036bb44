"""Exact values: reading numbers, units, what may be joined to what, and printing with one rounding."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.units import (
    CURRENCIES,
    UNITS,
    Dimension,
    Quantity,
    format_angle,
    format_area_weight,
    format_length,
    format_money,
    format_number,
    format_ratio,
    parse_number,
    unit,
)

if TYPE_CHECKING:
    from specc.units.unit import Unit

FRACTIONS = st.builds(Fraction, st.integers(-(10**6), 10**6), st.integers(1, 999))
DIMENSIONS = st.sampled_from(
    [
        Dimension.NUMBER,
        Dimension.LENGTH,
        Dimension.ANGLE,
        Dimension.AREA,
        Dimension.MASS,
        Dimension.AREA_WEIGHT,
        Dimension.PIECES,
        Dimension.money("EUR"),
    ]
)


def known(symbol: str) -> Unit:
    found = unit(symbol)
    assert found is not None
    return found


# --- reading ---


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("12", Fraction(12)),
        ("1.5", Fraction(3, 2)),
        (".5", Fraction(1, 2)),
        ("1/2", Fraction(1, 2)),
        ("2 1/4", Fraction(9, 4)),
        ("2-1/4", Fraction(9, 4)),
        ("½", Fraction(1, 2)),
        ("2¼", Fraction(9, 4)),
        ("2 ⅞", Fraction(23, 8)),
        ("1⁄8", Fraction(1, 8)),
        ("-1/8", Fraction(-1, 8)),
        ("-2 1/4", Fraction(-9, 4)),
        ("007", Fraction(7)),
    ],
)
def test_numbers_are_read_as_people_write_them(written: str, value: Fraction) -> None:
    assert parse_number(written) == value


@pytest.mark.parametrize(
    ("written", "reason"),
    [
        ("1,5", "not a number"),
        ("1.", "not a number"),
        ("1-2", "not a number"),
        ("2 1/4 1/4", "not a number"),
        ("", "not a number"),
        ("1e3", "not a number"),
        ("٣", "not a number"),
        ("1/0", "divided by 0"),
        ("2 5/4", "less than 1, not 5/4"),
        ("1234567890123", "at most 12 digits"),
        ("1/1234567890123", "at most 12 digits"),
    ],
)
def test_what_is_not_a_number_is_refused_with_the_reason(written: str, reason: str) -> None:
    with pytest.raises(ValueError, match=reason):
        parse_number(written)


@given(FRACTIONS)
def test_a_number_printed_exactly_is_read_back_as_itself(value: Fraction) -> None:
    assert parse_number(format_number(value)) == value


@given(st.integers(-(10**6), 10**6), st.sampled_from([2, 4, 8, 16, 32]))
def test_inches_on_the_tape_are_read_back_as_themselves(count: int, denominator: int) -> None:
    value = Fraction(count, denominator)
    printed = format_length(value * Fraction(254, 10), "in", denominator=denominator, with_unit=False)

    assert parse_number(printed) == value


# --- units ---


def test_an_inch_is_25_4_mm_and_a_yard_0_9144_m_exactly() -> None:
    """International yard and pound agreement, 1959 (from memory)."""
    assert known("in").size == Fraction(254, 10)
    assert known("yd").size == Fraction(9144, 10)
    assert known("ft").size * 3 == known("yd").size


def test_an_ounce_per_square_yard_is_33_906_g_per_square_metre() -> None:
    """28.349523125 g over (0.9144 m) squared; the usual factor is 33.906 (from memory)."""
    exact = Fraction("28.349523125") / Fraction("0.9144") ** 2

    assert known("oz/yd2").size == exact
    assert round(float(exact), 3) == 33.906


def test_a_weight_per_area_in_base_units_is_its_grams_per_square_metre() -> None:
    assert Quantity.of(140, UNITS["g/m2"]).value == 140
    # A square metre of it weighs 140 g.
    assert Quantity.of(140, UNITS["g/m2"]).value * UNITS["m2"].size == Quantity.of(140, UNITS["g"]).value


def test_a_price_per_yard_times_a_metre_is_a_sum_of_money() -> None:
    price = Quantity.of(Fraction("14.50"), known("USD per yd"))
    length = Quantity.of(Fraction("0.9144"), UNITS["m"])

    assert price.dimension.times(length.dimension) == Dimension.money("USD")
    assert price.value * length.value == Fraction("14.50")


@pytest.mark.parametrize("symbol", ["inch", "UDS", "USD per", "USD per UDS", "per yd", "in per USD", "usd"])
def test_what_is_no_unit_is_not_found(symbol: str) -> None:
    assert unit(symbol) is None


def test_other_spellings_lead_to_the_same_unit() -> None:
    assert (unit("°"), unit("g/m²"), unit("oz/yd²")) == (UNITS["deg"], UNITS["g/m2"], UNITS["oz/yd2"])


def test_currencies_are_three_capital_letters_with_their_decimals() -> None:
    assert all(len(code) == 3 and code.isascii() and code.isupper() for code in CURRENCIES)
    assert (CURRENCIES["USD"], CURRENCIES["JPY"], CURRENCIES["KWD"]) == (2, 0, 3)  # ISO 4217, from memory


@given(FRACTIONS, st.sampled_from(["mm", "cm", "m", "in", "yd", "%", "g/m2", "EUR per yd"]))
def test_a_quantity_keeps_the_number_as_written(number: Fraction, symbol: str) -> None:
    assert Quantity.of(number, known(symbol)).number == number


def test_millimetres_and_inches_for_one_length_have_one_value() -> None:
    assert Quantity.of(Fraction("57.15"), UNITS["mm"]).value == Quantity.of(Fraction(9, 4), UNITS["in"]).value


# --- dimensions ---


def test_lengths_add_and_a_length_and_a_ratio_do_not() -> None:
    assert Dimension.LENGTH.plus(Dimension.LENGTH) == Dimension.LENGTH
    assert Dimension.LENGTH.plus(Dimension.RATIO) is None
    assert Dimension.LENGTH.plus(Dimension.NUMBER) is None
    assert Dimension.money("EUR").plus(Dimension.money("USD")) is None


def test_products_and_quotients_of_lengths() -> None:
    assert Dimension.LENGTH.times(Dimension.LENGTH) == Dimension.AREA
    assert Dimension.LENGTH.over(Dimension.LENGTH) == Dimension.NUMBER
    assert Dimension.AREA.over(Dimension.LENGTH) == Dimension.LENGTH
    assert Dimension.AREA.root() == Dimension.LENGTH
    assert Dimension.LENGTH.root() is None
    assert Dimension.AREA_WEIGHT.times(Dimension.AREA) == Dimension.MASS


@given(DIMENSIONS)
def test_a_ratio_of_anything_is_that_thing(dimension: Dimension) -> None:
    assert Dimension.RATIO.times(dimension) == dimension
    assert dimension.times(Dimension.RATIO) == dimension
    assert dimension.over(Dimension.RATIO) == dimension


def test_a_ratio_and_a_number_add_to_a_number() -> None:
    assert Dimension.NUMBER.plus(Dimension.RATIO) == Dimension.NUMBER
    assert Dimension.RATIO.plus(Dimension.RATIO) == Dimension.RATIO


@given(DIMENSIONS, DIMENSIONS)
def test_dividing_undoes_multiplying(first: Dimension, second: Dimension) -> None:
    product = first.times(second)

    if product is not None:
        assert product.over(second) == first
        assert product == second.times(first)


def test_money_is_neither_squared_nor_exchanged_nor_a_divisor() -> None:
    euro, dollar = Dimension.money("EUR"), Dimension.money("USD")

    assert euro.times(euro) is None
    assert euro.times(dollar) is None
    assert euro.over(dollar) is None
    assert Dimension.LENGTH.over(euro) is None
    assert euro.over(euro) == Dimension.NUMBER


def test_powers_are_bounded() -> None:
    volume = Dimension.AREA.times(Dimension.LENGTH)

    assert volume is not None
    assert volume.times(Dimension.LENGTH) is None


@pytest.mark.parametrize(
    ("dimension", "words"),
    [
        (Dimension.NUMBER, "a number"),
        (Dimension.RATIO, "a ratio"),
        (Dimension.LENGTH, "a length"),
        (Dimension.AREA, "an area"),
        (Dimension.ANGLE, "an angle"),
        (Dimension.AREA_WEIGHT, "a weight per area"),
        (Dimension.money("USD"), "money in USD"),
        (known("USD per yd").dimension, "money in USD per length"),
        (known("USD per piece").dimension, "money in USD per piece"),
        (Dimension(length=-1), "a number per length"),
        (Dimension(length=1, angle=1), "a length times angle"),
    ],
)
def test_a_dimension_is_named_in_words(dimension: Dimension, words: str) -> None:
    assert dimension.with_article == words


# --- printing ---


@pytest.mark.parametrize(
    ("mm", "symbol", "options", "printed"),
    [
        (57.15, "in", {}, "2 1/4 in"),
        (-3.175, "in", {}, "-1/8 in"),
        (0.0, "in", {}, "0 in"),
        (-1.0, "in", {}, "0 in"),
        (25.4, "in", {}, "1 in"),
        (1.5875, "in", {}, "1/8 in"),  # 1/16: halves go away from zero
        (-1.5875, "in", {}, "-1/8 in"),
        (1.5875, "in", {"denominator": 16}, "1/16 in"),
        (25.4, "in", {"decimals": 2}, "1.00 in"),
        (1270, "cm", {}, "127.0 cm"),
        (0.5, "cm", {}, "0.1 cm"),
        (12.5, "mm", {}, "13 mm"),
        (-12.5, "mm", {}, "-13 mm"),
        (12.25, "mm", {"decimals": 1}, "12.3 mm"),
        (914.4, "yd", {}, "1.00 yd"),
        (57.15, "in", {"with_unit": False}, "2 1/4"),
    ],
)
def test_lengths_are_printed_as_the_trade_writes_them(
    mm: float, symbol: str, options: dict[str, Any], printed: str
) -> None:
    assert format_length(mm, symbol, **options) == printed


def test_a_half_that_a_float_misses_by_its_last_bits_still_rounds_away() -> None:
    below_half = 12.5 - 2e-12

    assert format_length(below_half, "mm") == "13 mm"


@given(st.fractions(-5000, 5000, max_denominator=1000), st.sampled_from([2, 4, 8, 16]))
def test_a_printed_length_is_within_half_a_step(mm: Fraction, denominator: int) -> None:
    printed = parse_number(format_length(mm, "in", denominator=denominator, with_unit=False))

    assert abs(printed * Fraction(254, 10) - mm) <= Fraction(254, 10) / denominator / 2


@given(st.fractions(-5000, 5000, max_denominator=1000), st.sampled_from(["in", "cm", "mm"]))
def test_a_length_and_its_opposite_print_alike(mm: Fraction, symbol: str) -> None:
    assert format_length(-mm, symbol).removeprefix("-") == format_length(mm, symbol).removeprefix("-")


@pytest.mark.parametrize(
    ("amount", "currency", "printed"),
    [
        (Fraction("14.5"), "USD", "14.50 USD"),
        (Fraction("2.345"), "USD", "2.34 USD"),  # halves go to the even digit
        (Fraction("2.355"), "USD", "2.36 USD"),
        (Fraction("-0.005"), "EUR", "0.00 EUR"),
        (Fraction(7, 2), "JPY", "4 JPY"),
        (Fraction("0.0625"), "KWD", "0.062 KWD"),
    ],
)
def test_money_is_printed_with_the_decimals_of_its_currency(
    amount: Fraction, currency: str, printed: str
) -> None:
    assert format_money(amount, currency) == printed


def test_ratios_angles_weights_and_numbers() -> None:
    assert (format_ratio(0.06), format_ratio(Fraction(5, 8)), format_ratio(1.0)) == ("6%", "62.5%", "100%")
    assert format_angle(12.46) == "12.5°"
    assert format_area_weight(Fraction(140), "g/m2") == "140 g/m2"
    assert format_area_weight(Fraction(140), "oz/yd2") == "4.1 oz/yd2"
    assert (format_number(Fraction(7, 3)), format_number(Fraction(1, 8))) == ("2 1/3", "0.125")
    assert format_number(2.675, decimals=2) == "2.68"


@pytest.mark.parametrize(
    ("number", "symbol", "written"),
    [
        (Fraction(9, 4), "in", "2 1/4 in"),
        (Fraction("0.1"), "in", "0.1 in"),
        (Fraction(6), "%", "6%"),
        (Fraction("14.5"), "USD per yd", "14.50 USD per yd"),
        (Fraction("0.1234"), "USD", "0.1234 USD"),
        (Fraction(140), "g/m2", "140 g/m2"),
        (Fraction(2), "", "2"),
    ],
)
def test_a_quantity_reads_as_one_would_write_it(number: Fraction, symbol: str, written: str) -> None:
    assert str(Quantity.of(number, known(symbol))) == written
