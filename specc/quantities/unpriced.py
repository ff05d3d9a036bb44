"""Owns amounts without what they cost, for those who need not know. Knows nothing of paper."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.quantities.quantities import Quantities


def unpriced(amounts: Quantities) -> Quantities:
    """The same amounts; no price, no cost, no currency."""
    bill = tuple(replace(line, price=None, currency=None, cost=None) for line in amounts.bill)
    return replace(amounts, bill=bill, cost=None, priced=False)
