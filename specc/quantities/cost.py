"""Owns what a garment costs: materials at the prices of the order, work as stated, the price when asked for.

Knows nothing of paper. Money is exact, rounded where it is paid; minutes are floats.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.quantities.bill_sums import money
from specc.quantities.quantities import Cost, SizeCost, Work

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.model.costing import Costing, Money
    from specc.model.garment import Garment
    from specc.quantities.quantities import BillLine, SizeQuantities


def cost(garment: Garment, sizes: tuple[SizeQuantities, ...], bill: tuple[BillLine, ...]) -> Cost | None:
    """The costs of one garment of each size and of the order's materials; None where nothing has a price."""
    currencies = dict.fromkeys(line.currency for line in bill if line.currency is not None)
    if not currencies:
        return None
    costing = garment.costing
    currency = _currency(costing, tuple(currencies))
    of_sizes = tuple(_size(costing, currency, size, index, bill) for index, size in enumerate(sizes))
    order = None
    if currency is not None and any(each.count for each in garment.header.order):
        order = _sum(costing, currency, ((line.cost, line.currency) for line in bill))
    unpriced = tuple(dict.fromkeys(line.title for line in bill if _is_bought(line) and line.price is None))
    return Cost(currency, of_sizes, order, unpriced, tuple(currencies))


def _is_bought(line: BillLine) -> bool:
    return line.kind != "trim" or line.buy is not None


def _currency(costing: Costing | None, currencies: tuple[str, ...]) -> str | None:
    """The currency of all sums: the only one, or one that the others can be changed into; else None."""
    wanted = dict.fromkeys(currencies)
    if costing is not None and costing.minute is not None:
        wanted = {costing.minute.currency: None, **wanted}
    for currency in wanted:
        if all(_worth(costing, currency, other) is not None for other in wanted):
            return currency
    return None


def _worth(costing: Costing | None, currency: str, other: str) -> Fraction | None:
    """One of the other currency in this one; None where no rate says."""
    if other == currency:
        return Fraction(1)
    for rate in costing.rates if costing is not None else ():
        if (rate.of, rate.worth.currency) == (other, currency):
            return rate.worth.amount
        if (rate.of, rate.worth.currency) == (currency, other):
            return 1 / rate.worth.amount
    return None


def _sum(
    costing: Costing | None, currency: str, amounts: Iterable[tuple[Fraction | None, str | None]]
) -> Fraction:
    """The amounts in the currency, each rounded before it is added, as it is printed."""
    total = Fraction(0)
    for amount, own in amounts:
        if amount is not None and own is not None:
            worth = _worth(costing, currency, own)
            assert worth is not None, "the currency of sums is one into which all can be changed"
            total += money(amount * worth, currency)
    return total


def _size(
    costing: Costing | None,
    currency: str | None,
    size: SizeQuantities,
    index: int,
    bill: tuple[BillLine, ...],
) -> SizeCost:
    minutes = _minutes(costing, size)
    if currency is None:
        return SizeCost(size.size, None, minutes, None, None, None)
    materials = _sum(costing, currency, (_of_garment(line, index) for line in bill))
    work = _work(costing, currency, minutes)
    total = None if work is None else materials + work
    price = None
    if total is not None and costing is not None and costing.margin is not None:
        price = money(total / (1 - costing.margin), currency)
    return SizeCost(size.size, materials, minutes, work, total, price)


def _of_garment(line: BillLine, index: int) -> tuple[Fraction | None, str | None]:
    """What one garment takes of it, waste included, at the order's price; of several colours the mean."""
    if line.price is None or not line.per_garment or line.buy is None:
        return None, None
    one = Fraction(line.per_garment[index]) * (1 + Fraction(line.waste)) / Fraction(line.in_one)
    return line.share * one * line.price, line.currency


def _minutes(costing: Costing | None, size: SizeQuantities) -> Work:
    """What is stated of the work on one garment; what is not stays None."""
    if costing is None:
        return Work(None, None, None, None)
    stitched = sum(use.length for use in size.threads)
    return Work(
        None if not costing.sews else stitched / float(costing.sews),
        None if costing.handling is None else float(costing.handling) * len(size.threads),
        None if costing.cutting is None else float(costing.cutting),
        None if costing.finishing is None else float(costing.finishing),
    )


def _work(costing: Costing | None, currency: str, minutes: Work) -> Fraction | None:
    """What the stated minutes cost; None without minutes or without what one costs."""
    stated: Money | None = costing.minute if costing is not None else None
    if stated is None or minutes.total is None:
        return None
    worth = _worth(costing, currency, stated.currency)
    assert worth is not None, "the currency of sums is one into which all can be changed"
    return money(Fraction(minutes.total) * stated.amount * worth, currency)
