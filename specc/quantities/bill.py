"""Owns the bill of materials: what one garment and the order take, in units of sale, and what it costs.

Knows nothing of how lays are made. Without lays cloth is reckoned by area, the least that any lay can take.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.quantities.bill_cloth import cloth_line
from specc.quantities.bill_colours import in_colours
from specc.quantities.bill_packing import label_line, packing_line
from specc.quantities.bill_sums import QUARTER, Amounts, bought_line, pack, unit_of
from specc.quantities.bill_thread import thread_line
from specc.quantities.quantities import BillLine
from specc.units import UNITS, Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying import ClothLays
    from specc.model.garment import Garment
    from specc.model.material import Trim
    from specc.quantities.quantities import BiasPlan, SizeQuantities

BY_LENGTH = "lengths to cut, added up"
BY_COUNT = "counted"
TO_OPENINGS = "counted, one to an opening, in the length in which it is sold"
FROM_CLOTH = "lengths to cut, added up; the strips are cut from `{cloth}`, whose line counts their area"


def bill(
    garment: Garment,
    sizes: tuple[SizeQuantities, ...],
    lays: tuple[ClothLays, ...],
    plans: tuple[BiasPlan, ...],
) -> tuple[BillLine, ...]:
    """A line for each colour of each cloth, trim and thread, then for labels and packing, as in the text."""
    named = tuple(size.size for size in sizes)
    lines: list[BillLine] = []
    for cloth in garment.cloths:
        for part in in_colours(cloth, garment, named):
            line = cloth_line(part, garment, sizes, lays, plans)
            lines.append(part.marked(line))
    for trim in garment.trims:
        for of_trim in in_colours(trim, garment, named):
            found = _trims(of_trim.material, garment, sizes, of_trim.counts)
            lines += [of_trim.marked(line) for line in found]
    for thread in garment.threads:
        for of_thread in in_colours(thread, garment, named):
            lines.append(of_thread.marked(thread_line(of_thread.material, garment, sizes, of_thread.counts)))
    total = sum(each.count for each in garment.header.order)
    lines += [label_line(label, len(sizes), total) for label in garment.labels]
    lines += [packing_line(packing, len(sizes), total) for packing in garment.packing]
    return tuple(lines)


def _trims(
    trim: Trim, garment: Garment, sizes: tuple[SizeQuantities, ...], counts: list[int]
) -> Iterator[BillLine]:
    """A line for what is used by length, and one for the pieces of each length that is bought."""
    pieces = [piece for size in sizes for piece in size.pieces if piece.trim == trim.name]
    if not pieces or any(cut.trim == trim.name for size in sizes for cut in size.trims):
        yield _trim(trim, garment, sizes, counts)
    used_on = tuple(dict.fromkeys(piece.used_on for piece in pieces))
    if pieces and _by_the_metre(trim):
        yield _chain(trim, garment, sizes, counts, used_on)
        return
    lengths = {piece.length for piece in pieces}
    for length in sorted(lengths, key=lambda one: Fraction(0) if one is None else one.value):
        found = (
            sum(one.count for one in size.pieces if (one.trim, one.length) == (trim.name, length))
            for size in sizes
        )
        numbers = tuple(number + trim.buying.spare if number else 0 for number in found)
        order = sum(number * count for number, count in zip(numbers, counts, strict=True))
        title = trim.title if length is None else f"{trim.title}, {length}"
        basis = BY_COUNT if length is None else TO_OPENINGS
        if trim.buying.spare:
            basis += f"; {trim.buying.spare} to spare in each garment"
        amounts = Amounts("piece", tuple(map(float, numbers)), float(order), pack(trim.sold_in))
        yield bought_line(trim, title, used_on, amounts, basis)


def _by_the_metre(trim: Trim) -> bool:
    """Whether a zip is cut from a chain that is sold by length."""
    return trim.kind == "zip" and not trim.lengths and trim.price is not None and trim.price.per != "piece"


def _chain(
    trim: Trim,
    garment: Garment,
    sizes: tuple[SizeQuantities, ...],
    counts: list[int],
    used_on: tuple[str, ...],
) -> BillLine:
    """A line for zips cut as long as their openings."""
    unit = unit_of(trim.price, garment)
    one = float(UNITS[unit].size)
    lengths = tuple(
        sum(piece.count * piece.opening for piece in size.pieces if piece.trim == trim.name) / one
        for size in sizes
    )
    order = sum(length * count for length, count in zip(lengths, counts, strict=True))
    amounts = Amounts(unit, lengths, order, QUARTER)
    return bought_line(trim, trim.title, used_on, amounts, BY_LENGTH)


def _trim(trim: Trim, garment: Garment, sizes: tuple[SizeQuantities, ...], counts: list[int]) -> BillLine:
    unit = unit_of(trim.price, garment)
    lengths = tuple(
        sum(cut.cut_length * cut.count for cut in size.trims if cut.trim == trim.name)
        / float(UNITS[unit].size)
        for size in sizes
    )
    order = sum(length * count for length, count in zip(lengths, counts, strict=True))
    used_on = tuple(
        dict.fromkeys(cut.used_on for size in sizes for cut in size.trims if cut.trim == trim.name)
    )
    if trim.cut_from:
        basis = FROM_CLOTH.format(cloth=trim.cut_from)
        return BillLine(
            "trim", trim.name, trim.title, used_on, unit, lengths, order, None, unit, None, None, None, basis
        )
    in_rolls = trim.sold_in is not None and trim.sold_in.dimension == Dimension.LENGTH
    step = trim.sold_in.value / UNITS[unit].size if trim.sold_in is not None and in_rolls else QUARTER
    amounts = Amounts(unit, lengths, order, step)
    return bought_line(trim, trim.title, used_on, amounts, BY_LENGTH)
