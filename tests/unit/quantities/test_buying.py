"""What is bought of what is needed: waste, steps, least amounts, prices of larger amounts, exact money."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.model.material import Buying, Price, PriceFrom, Trim
from specc.pipeline import quantities
from specc.quantities.bill_sums import Amounts, bought_line, money
from specc.source import SourceFile
from specc.units import UNITS, Quantity
from tests.made import top

if TYPE_CHECKING:
    from specc.quantities.quantities import BillLine

HERE = SourceFile("test.garment", "x").span(0, 1)
NECK = "finish neck along front.neck, back.neck by elastic-bound { binding soft }\n"


def trim(price: Price | None = None, *, waste: str = "0", least: Quantity | None = None) -> Trim:
    buying = Buying(Fraction(waste), least, 0, None)
    nothing = (None, None, None)
    return Trim(
        "soft",
        "soft",
        "elastic",
        (),
        None,
        Fraction(0),
        None,
        None,
        price,
        None,
        (),
        buying,
        *nothing,
        None,
        HERE,
    )


def line(order: float, of: Trim, step: str = "1/4", unit: str = "m") -> BillLine:
    return bought_line(of, "soft", (), Amounts(unit, (order,), order, Fraction(step)), "")


@given(
    st.floats(0.0, 5000.0),
    st.floats(0.0, 500.0),
    st.fractions(0, 1, max_denominator=100),
    st.sampled_from(["1/4", "1", "25", "12/7"]),
    st.fractions(0, 40, max_denominator=4),
)
def test_what_is_bought_is_enough_and_grows_with_the_order(
    order: float, more: float, waste: Fraction, step: str, least: Fraction
) -> None:
    of = trim(waste=str(waste), least=Quantity.of(least, UNITS["m"]) if least else None)
    one, other = line(order, of, step), line(order + more, of, step)
    assert one.gross == pytest.approx(order * (1.0 + float(waste)))
    assert (one.buy or 0.0) >= (one.gross or 0.0) - 1e-6
    assert (one.buy or 0.0) <= max(one.gross or 0.0, float(least)) + float(Fraction(step)) + 1e-6
    rolls = (one.buy or 0.0) / float(Fraction(step))
    assert rolls == pytest.approx(round(rolls)), "whole rolls, also where the least amount is none"
    assert (other.buy or 0.0) >= (one.buy or 0.0)


@pytest.mark.parametrize(
    ("order", "price", "cost"),
    [
        (10.0, "2.00", "20.00"),
        (99.75, "2.00", "199.50"),
        (100.0, "1.50", "150.00"),
        (120.0, "1.50", "180.00"),
        (400.0, "1.25", "500.00"),
    ],
)
def test_a_larger_amount_has_its_own_price(order: float, price: str, cost: str) -> None:
    breaks = (
        PriceFrom(Fraction(100), Fraction("1.50")),
        PriceFrom(Fraction(300), Fraction("1.25")),
    )
    found = line(order, trim(Price(Fraction(2), "EUR", "m", breaks)))
    assert (found.price, found.cost) == (Fraction(price), Fraction(cost))


@pytest.mark.parametrize(
    ("currency", "amount", "coins"),
    [("EUR", "1.005", "1.00"), ("EUR", "1.015", "1.02"), ("JPY", "100.5", "100"), ("KWD", "1.0005", "1.000")],
)
def test_money_is_what_can_be_paid(currency: str, amount: str, coins: str) -> None:
    """Half to even; yen have no smaller coin, dinars have thousandths (ISO 4217, from memory)."""
    assert money(Fraction(amount), currency) == Fraction(coins)


@given(st.lists(st.fractions(0, 1000, max_denominator=1000), max_size=20))
def test_the_sum_of_what_is_printed_is_the_sum_that_is_printed(amounts: list[Fraction]) -> None:
    paid = [money(amount, "EUR") for amount in amounts]
    printed = [f"{float(each):.2f}" for each in paid]
    assert sum(map(Fraction, printed)) == sum(paid)


@pytest.mark.parametrize(
    ("lines", "buy"),
    [("", 1.5), ("waste 100%", 2.75), ("at-least 10 m", 10.0), ("at-least 10 m; waste 100%", 10.0)],
)
def test_a_trim_says_how_it_is_bought(lines: str, buy: float) -> None:
    """Two necks of about 0.65 m: 1.3 m, to the next quarter; with as much again, 2.6 m."""
    text = f'trim soft "soft" {{ kind fold-over elastic; width 20 mm; stretch 60%; {lines} }}\n'
    found = quantities(top(NECK + text, head="order S: 1, L: 1; "))
    assert found is not None
    (bought,) = (each for each in found.bill if each.name == "soft")
    assert bought.order == pytest.approx(1.3, abs=0.02)
    assert bought.buy == buy


def test_spare_buttons_come_with_every_garment() -> None:
    text = (
        'trim button "button" { kind button; diameter 15 mm; thickness 3 mm; spare 1; sold in packs of 6 }\n'
        "closure side along front.flank to back.flank by buttoned { button button; places 3 }\n"
    )
    result = top(text, head="order S: 2; ", seams="")
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    (bought,) = (each for each in found.bill if each.name == "button")
    each_garment = bought.per_garment[0]
    assert each_garment in {4.0, 7.0}, "three to an opening, and one"
    assert bought.buy == -(-2 * each_garment // 6) * 6
    assert "1 to spare" in bought.basis
