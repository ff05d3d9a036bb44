"""Owns the words that say where amounts come from: of cloth, of thread, of all that is bought.

Knows nothing of pages; every figure in the words was computed by the stages before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.colourways import amount_in
from specc.document.sheet import plural
from specc.quantities.bill_thread import length_of, waste_of
from specc.quantities.thread import DARTS
from specc.units import UNITS, format_money, format_number, format_ratio

if TYPE_CHECKING:
    from specc.document.lengths import Lengths
    from specc.document.printed import Origin
    from specc.document.sheet import Sheet
    from specc.laying import Lay
    from specc.model.material import Thread
    from specc.quantities.quantities import BillLine, SizeCost, ThreadUse


def of_line(sheet: Sheet, line: BillLine) -> Origin | None:
    """An amount of the bill: how it was found, in the words of its line."""
    return _told(sheet, line, line.basis.replace("`", ""))


def of_gross(sheet: Sheet, line: BillLine) -> Origin | None:
    """An amount with what is lost."""
    if line.order is None or not line.waste:
        return None
    words = f"{amount_in(line.order, line.unit)} {line.unit} and {format_ratio(line.waste)} for what is lost"
    return _told(sheet, line, words)


def of_bought(sheet: Sheet, line: BillLine) -> Origin | None:
    """What is bought: the amount with what is lost, up to what is sold."""
    if line.gross is None or line.buy is None:
        return None
    lost = f", {format_ratio(line.waste)} for what is lost in it" if line.waste else ""
    words = f"needed: {amount_in(line.gross, line.unit)} {line.unit}{lost}; bought: up to what is sold"
    return _told(sheet, line, words)


def of_cost(sheet: Sheet, line: BillLine) -> Origin | None:
    """What is bought at its price."""
    if line.cost is None or line.buy is None or line.price is None or line.currency is None:
        return None
    amount = f"{amount_in(line.buy, line.buy_unit)} {line.buy_unit}"
    return _told(sheet, line, f"{amount} at {format_money(line.price, line.currency)}")


def _told(sheet: Sheet, line: BillLine, words: str) -> Origin | None:
    return sheet.origin(words, sheet.declared(line.kind, line.name)) if words else None


def of_stitching(sheet: Sheet, use: ThreadUse) -> Origin | None:
    """The thread of a pass: what is stitched, and how much thread goes to it; darts have no line."""
    if use.on == DARTS or use.ratio is None:
        return None
    return sheet.origin(sheet.lengths.both(_stitched, use), sheet.asked(use.on))


def _stitched(lengths: Lengths, use: ThreadUse) -> str:
    whole = (use.needle_length or 0.0) + (use.other_length or 0.0)
    assert use.ratio is not None
    return (
        f"{_cloth(lengths, use.length)} stitched × {format_number(use.ratio, decimals=2)} make"
        f" {_cloth(lengths, whole)} in all, by {use.by}"
    )


def _cloth(lengths: Lengths, mm: float) -> str:
    unit = lengths.cloth_unit
    return f"{format_number(mm / float(UNITS[unit].size), decimals=2)} {unit}"


def of_thread(sheet: Sheet, thread: Thread, size: int) -> Origin:
    """The thread of one garment: its passes, and what is lost."""
    net = length_of(thread.name, sheet.quantities.sizes[size])
    return sheet.origin(sheet.lengths.both(_thread, net, waste_of(thread)), thread.origin)


def _thread(lengths: Lengths, net: float, waste: float) -> str:
    return f"{_cloth(lengths, net)} in all passes sewn with it and {format_ratio(waste)} for what is lost"


def of_lay(sheet: Sheet, cloth: str, lay: Lay) -> Origin:
    """The cloth of a lay: its plies."""
    return sheet.origin(sheet.lengths.both(_lay, lay), sheet.declared("cloth", cloth))


def _lay(lengths: Lengths, lay: Lay) -> str:
    times = f" × {lay.times} times" if lay.times > 1 else ""
    plies = "1 ply" if lay.plies == 1 else f"{lay.plies} plies"
    return f"{plies} of {lengths.up(lay.length)} {lengths.unit}{times}"


def of_stitching_minutes(sheet: Sheet, size: int) -> Origin | None:
    """The minutes of stitching: all rows at the speed that is stated."""
    costing = sheet.garment.costing
    if costing is None or not costing.sews:
        return None
    stitched = sum(use.length for use in sheet.quantities.sizes[size].threads)
    words = sheet.lengths.both(_at_speed, stitched, float(costing.sews))
    return sheet.origin(words, costing.origin)


def _at_speed(lengths: Lengths, stitched: float, speed: float) -> str:
    return f"{_cloth(lengths, stitched)} stitched, {_cloth(lengths, speed)} in a minute"


def of_handling_minutes(sheet: Sheet, size: int) -> Origin | None:
    """The minutes of handling: as many as are stated for each row of stitches."""
    costing = sheet.garment.costing
    if costing is None or costing.handling is None:
        return None
    rows = plural(len(sheet.quantities.sizes[size].threads), "row")
    words = f"{rows} of stitches, {format_number(costing.handling)} minutes each"
    return sheet.origin(words, costing.origin)


def of_work(sheet: Sheet, size: SizeCost) -> Origin | None:
    """What the minutes cost."""
    costing = sheet.garment.costing
    if costing is None or costing.minute is None or size.minutes.total is None:
        return None
    minute = f"{format_number(costing.minute.amount)} {costing.minute.currency}"
    words = f"{format_number(size.minutes.total, decimals=1)} minutes at {minute}"
    return sheet.origin(words, costing.origin)


def of_total(sheet: Sheet, size: SizeCost) -> Origin | None:
    """Materials and work together."""
    costing, currency = sheet.garment.costing, _currency(sheet)
    if costing is None or currency is None or size.materials is None or size.work is None:
        return None
    words = f"materials {format_money(size.materials, currency)} + work {format_money(size.work, currency)}"
    return sheet.origin(words, costing.origin)


def of_price(sheet: Sheet, size: SizeCost) -> Origin | None:
    """What leaves the margin when all is paid."""
    costing, currency = sheet.garment.costing, _currency(sheet)
    if costing is None or currency is None or costing.margin is None or size.total is None:
        return None
    left = format_ratio(1 - costing.margin)
    margin = format_ratio(costing.margin)
    words = f"{format_money(size.total, currency)} are the {left} that a margin of {margin} leaves"
    return sheet.origin(words, costing.origin)


def _currency(sheet: Sheet) -> str | None:
    return None if sheet.quantities.cost is None else sheet.quantities.cost.currency
