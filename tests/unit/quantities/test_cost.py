"""What a garment costs, reckoned a second way by hand; what is not stated is not guessed."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from specc.backends import write
from specc.pipeline import document, quantities
from tests.made import top

if TYPE_CHECKING:
    from specc.pipeline import Result
    from specc.quantities.quantities import BillLine, Cost

CALICO = 'cloth calico "calico" { width 160 cm, usable 150 cm; is stable; price 5.00 EUR per m }\n'
NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
SOFT = 'trim soft "soft" { kind fold-over elastic; width 20 mm; stretch 60%; price 2.00 USD per m }\n'
COST = "cost { minute 0.50 EUR; sews 2 m; handling 0.4; cutting 6; finishing 5; %s }\n"


def made(rest: str = "", *, neck: str = NECK, cloth: str = CALICO) -> Result:
    return top(neck + rest, head="order S: 4, L: 2; ", cloth=cloth)


def costs(rest: str = "", *, neck: str = NECK, cloth: str = CALICO) -> tuple[Cost, tuple[BillLine, ...]]:
    result = made(rest, neck=neck, cloth=cloth)
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    assert found.cost is not None
    return found.cost, found.bill


def test_materials_are_what_a_garment_takes_at_the_price_of_the_order() -> None:
    cost, bill = costs()
    (cloth,) = (line for line in bill if line.price is not None)
    for size, length in zip(cost.sizes, cloth.per_garment, strict=True):
        assert size.materials is not None
        assert float(size.materials) == pytest.approx(length * 5.0, abs=0.005001)
    assert cost.order == cloth.cost
    assert cost.currency == "EUR"


def test_without_a_statement_of_work_there_is_none() -> None:
    cost, _ = costs()
    for size in cost.sizes:
        assert (size.work, size.total, size.price) == (None, None, None)
        assert size.minutes.total is None


def test_work_is_what_is_stitched_handled_cut_and_finished() -> None:
    cost, _ = costs(COST % "margin 60%")
    amounts = quantities(made(COST % "margin 60%"))
    assert amounts is not None
    for size, taken in zip(cost.sizes, amounts.sizes, strict=True):
        stitched = sum(use.length for use in taken.threads)
        minutes = stitched / 2000.0 + 0.4 * len(taken.threads) + 6.0 + 5.0
        assert size.minutes.total == pytest.approx(minutes)
        assert size.work is not None
        assert size.materials is not None
        assert float(size.work) == pytest.approx(minutes * 0.5, abs=0.005001)
        assert size.total == size.materials + size.work
        assert size.price is not None
        assert float(size.price) == pytest.approx(float(size.total) / 0.4, abs=0.005001)


def test_what_is_not_stated_is_left_out() -> None:
    cost, _ = costs("cost { minute 0.50 EUR; cutting 6 }\n")
    for size in cost.sizes:
        assert (size.minutes.sewing, size.minutes.handling) == (None, None)
        assert size.work == Fraction(3)
        assert size.price is None


def test_two_currencies_are_added_up_only_at_a_stated_rate() -> None:
    bound = NECK.replace("edging", "soft")
    apart, _ = costs(SOFT, neck=bound)
    assert (apart.currency, apart.order) == (None, None)
    assert all(size.materials is None for size in apart.sizes)

    rated, bill = costs(SOFT + "cost { rate 0.90 EUR per USD on 2026-02-01 }\n", neck=bound)
    euros, dollars = (
        sum((line.cost or Fraction(0) for line in bill if line.currency == currency), Fraction(0))
        for currency in ("EUR", "USD")
    )
    assert rated.currency == "EUR"
    assert rated.order is not None
    assert float(rated.order) == pytest.approx(float(euros + dollars * Fraction("0.9")), abs=0.005001)


def test_a_rate_is_good_both_ways() -> None:
    bound = NECK.replace("edging", "soft")
    cost, _ = costs(
        SOFT + "cost { minute 1 USD; cutting 1; rate 0.50 EUR per USD on 2026-02-01 }\n", neck=bound
    )
    assert cost.currency == "USD"
    assert all(size.work == 1 for size in cost.sizes)


def test_a_garment_pays_for_the_thread_that_it_takes_not_for_what_is_left_on_the_cone() -> None:
    thread = "thread core { for all; cone 1000 m; waste 10%; price 5.00 EUR per cone }\n"
    bare, _ = costs()
    cost, bill = costs(thread)
    (line,) = (each for each in bill if each.kind == "thread")
    for index, (size, without) in enumerate(zip(cost.sizes, bare.sizes, strict=True)):
        assert size.materials is not None
        assert without.materials is not None
        metres = line.per_garment[index] * 1.1
        assert float(size.materials - without.materials) == pytest.approx(metres * 0.005, abs=0.005001)
    assert line.cost == 5


def test_what_has_no_price_is_named() -> None:
    cost, _ = costs("thread core { for all }\n")
    assert "core" in cost.unpriced


def test_the_copy_without_prices_has_none_in_any_file() -> None:
    result = made(COST % "margin 60%")
    priced, bare = document(result), document(result, priced=False)
    assert priced is not None
    assert bare is not None
    formats = ("html", "json", "csv", "xlsx")
    assert any(b"EUR" in file.data for file in write(priced, formats))
    for file in write(bare, formats):
        assert b"EUR" not in file.data, file.path
        assert not re.search(rb"(?<![\d.])5\.00(?!\d)", file.data), file.path
    assert "cost" not in {page.kind for page in bare.pages}
