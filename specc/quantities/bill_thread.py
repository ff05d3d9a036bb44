"""Owns the lines of the bill for thread: lengths, and cones to buy.

Knows nothing of stitches.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from specc.library.threads import usual_waste
from specc.quantities.bill_sums import SQUARE, money
from specc.quantities.quantities import BillLine
from specc.units import UNITS, format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.model.garment import Garment
    from specc.model.material import Thread
    from specc.quantities.quantities import SizeQuantities

NOT_RECKONED = "nothing that is sewn has a stitch whose thread is known"


def thread_line(
    thread: Thread, garment: Garment, sizes: tuple[SizeQuantities, ...], counts: list[int]
) -> BillLine:
    """The thread's line: lengths in yards or metres as the sheet's unit suggests, bought by the cone."""
    unit = "yd" if garment.header.unit == "in" else "m"
    title = " ".join(word for word in (thread.title, thread.size) if word)
    used_on = (thread.use,) if thread.use else ()
    price = thread.price
    amount, currency = (None, None) if price is None else (price.amount, price.currency)
    waste = waste_of(thread)
    one = float(UNITS[unit].size)
    lengths = tuple(length_of(thread.name, size) / one for size in sizes)
    order = sum(length * count for length, count in zip(lengths, counts, strict=True))
    basis = f"pass by pass, see the page of thread; {format_ratio(waste)} more for what is lost"
    gross, in_one = order * (1.0 + waste), 1.0
    buy = cost = None
    if not any(lengths):
        basis = NOT_RECKONED
    elif thread.cone is None:
        basis += "; how much is on a cone is not said"
    else:
        basis += f"; whole cones of {thread.cone}"
        in_one = float(thread.cone.value) / one
        buy = Fraction(ceil(gross / in_one - SQUARE))
        if price is not None and price.per in ("cone", "piece"):
            amount = price.of(buy)
            cost = money(amount * buy, price.currency)
    return BillLine(
        "thread",
        thread.name,
        title,
        used_on,
        unit,
        lengths if any(lengths) else (),
        order if any(lengths) else None,
        None if buy is None else float(buy),
        "cone",
        amount,
        currency,
        cost,
        basis,
        waste,
        gross if any(lengths) else None,
        thread.supplier,
        None,
        thread.colour,
        in_one=in_one,
    )


def waste_of(thread: Thread) -> float:
    """The share added for what is lost: the thread's own, else the usual one."""
    return usual_waste() if thread.waste is None else float(thread.waste)


def length_of(thread: str, size: SizeQuantities) -> float:
    """Millimetres of the thread in one garment of the size, nothing lost."""
    return sum(_lengths(thread, size))


def _lengths(thread: str, size: SizeQuantities) -> Iterable[float]:
    for use in size.threads:
        if use.needle == thread:
            yield use.needle_length or 0.0
        if use.other == thread:
            yield use.other_length or 0.0
