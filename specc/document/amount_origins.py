"""Owns the words that say where amounts come from: of cloth, of thread, of all that is bought.

Knows nothing of pages; every figure in the words was computed by the stages before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.colourways import amount_in
from specc.quantities.bill_thread import length_of, waste_of
from specc.quantities.thread import DARTS
from specc.units import UNITS, format_money, format_number, format_ratio

if TYPE_CHECKING:
    from specc.document.lengths import Lengths
    from specc.document.printed import Origin
    from specc.document.sheet import Sheet
    from specc.laying import Lay
    from specc.model.material import Thread
    from specc.quantities.quantities import BillLine, ThreadUse


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
