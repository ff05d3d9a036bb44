"""Owns the lines of the bill for what is counted by the garment: labels and packing.

Knows nothing of cloth and sewing.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.quantities.bill_sums import Amounts, bought_line, pack

if TYPE_CHECKING:
    from specc.model.garment import Label
    from specc.model.material import Packing
    from specc.quantities.quantities import BillLine

ONE_EACH: Final = "one a garment"


def label_line(label: Label, sizes: int, total: int) -> BillLine:
    """One label for each of `total` garments."""
    used_on = (f"{label.at.piece}.{label.at.name}",)
    amounts = Amounts("piece", (1.0,) * sizes, float(total), pack(label.sold_in))
    return bought_line(label, " · ".join(label.says), used_on, amounts, ONE_EACH)


def packing_line(packing: Packing, sizes: int, total: int) -> BillLine:
    """One packing for every so many of `total` garments, the last perhaps not full."""
    needed = -(-total // packing.holds)
    one = float(Fraction(1, packing.holds))
    basis = ONE_EACH if packing.holds == 1 else f"one for every {packing.holds} garments, the last one too"
    amounts = Amounts("piece", (one,) * sizes, float(needed), pack(packing.sold_in))
    return bought_line(packing, packing.title, (), amounts, basis)
