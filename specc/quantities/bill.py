"""Owns the bill of materials: what one garment and the order take, in units of sale, and what it costs.

Knows nothing of how lays are made. Without lays cloth is reckoned by area, the least that any lay can take.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from specc.quantities.bill_thread import thread_line
from specc.quantities.quantities import BillLine
from specc.units import UNITS, Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.laying import ClothLays
    from specc.model.garment import Garment
    from specc.model.material import Cloth, Price, Trim
    from specc.quantities.quantities import SizeQuantities

_SQUARE = 1e-9
BY_AREA = "area of the cut pieces, shrinkage added, over the usable width; a lay takes more"
BY_LAYS = "the lays, added up; for one garment, its share of them"
AND_STRIPS = "; and strips by area, shrinkage added, over the usable width"
BY_LENGTH = "lengths to cut, added up"
BY_COUNT = "counted"
TO_OPENINGS = "counted, one to an opening, in the length in which it is sold"
FROM_CLOTH = "lengths to cut, added up; the strips are cut from `{cloth}`, whose line counts their area"


def bill(
    garment: Garment, sizes: tuple[SizeQuantities, ...], lays: tuple[ClothLays, ...]
) -> tuple[BillLine, ...]:
    """A line for each cloth, trim, thread and label, in the order of the text."""
    counts = [next((o.count for o in garment.header.order if o.size == size.size), 0) for size in sizes]
    lines = [_cloth(cloth, garment, sizes, counts, lays) for cloth in garment.cloths]
    lines += [line for trim in garment.trims for line in _trims(trim, garment, sizes, counts)]
    lines += [thread_line(thread, garment, sizes, counts) for thread in garment.threads]
    ones = tuple(1.0 for _ in sizes)
    total = float(sum(counts))
    lines += [
        BillLine(
            "label", label.name, " · ".join(label.says), (f"{label.at.piece}.{label.at.name}",),
            "piece", ones, total, total, "piece", None, None, None, "one a garment",
        )
        for label in garment.labels
    ]  # fmt: skip
    return tuple(lines)


def _unit(price: Price | None, garment: Garment) -> str:
    """The unit of sale: that of the price, else yards or metres as the sheet's unit suggests."""
    if price is not None and price.per != "piece":
        return price.per
    return "yd" if garment.header.unit == "in" else "m"


def _cloth(
    cloth: Cloth,
    garment: Garment,
    sizes: tuple[SizeQuantities, ...],
    counts: list[int],
    lays: tuple[ClothLays, ...],
) -> BillLine:
    """What is laid by its lays, what is cut from strips by area; all by area where nothing was laid."""
    unit = _unit(cloth.price, garment)
    used_on = _used_on(garment, cloth)
    if cloth.usable is None:
        basis = "the cloth does not say its width"
        return BillLine(
            "cloth",
            cloth.name,
            cloth.title,
            used_on,
            unit,
            (),
            None,
            None,
            unit,
            *_price(cloth.price),
            None,
            basis,
        )
    laid = next((each for each in lays if each.cloth == cloth.name), None)
    strips = tuple(_over_width(_strips(garment, cloth, size), cloth, unit) for size in sizes)
    if laid is None:
        areas = (sum(use.area for use in size.cloths if use.cloth == cloth.name) for size in sizes)
        lengths = [_over_width(area, cloth, unit) for area in areas]
        order, basis = _sum(lengths, counts), BY_AREA
    else:
        one = float(UNITS[unit].size)
        lengths = [own / one + strip for own, strip in zip(laid.per_garment, strips, strict=True)]
        order = (laid.order or 0.0) / one + _sum(strips, counts)
        basis = BY_LAYS + (AND_STRIPS if any(strips) else "")
    buy = _rounded_up(order)
    return _line("cloth", cloth.name, cloth.title, used_on, unit, lengths, order, buy, cloth.price, basis)


def _over_width(area: float, cloth: Cloth, unit: str) -> float:
    """The length of cloth that has the area, before it shrinks."""
    assert cloth.usable is not None
    grown = 1.0 / ((1.0 - float(cloth.shrinks_length)) * (1.0 - float(cloth.shrinks_width)))
    return area * grown / float(cloth.usable.value) / float(UNITS[unit].size)


def _strips(garment: Garment, cloth: Cloth, size: SizeQuantities) -> float:
    """The area of the strips that are cut from a cloth for one garment."""
    own = {trim.name for trim in garment.trims if trim.cut_from == cloth.name}
    return sum(cut.cut_length * (cut.cut_width or 0.0) * cut.count for cut in size.trims if cut.trim in own)


def _sum(lengths: Iterable[float], counts: list[int]) -> float:
    return sum(length * count for length, count in zip(lengths, counts, strict=True))


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
        numbers = [
            sum(one.count for one in size.pieces if (one.trim, one.length) == (trim.name, length))
            for size in sizes
        ]
        order = sum(number * count for number, count in zip(numbers, counts, strict=True))
        title = trim.title if length is None else f"{trim.title}, {length}"
        basis = BY_COUNT if length is None else TO_OPENINGS
        buy = Fraction(order)
        if trim.sold_in is not None and trim.sold_in.dimension == Dimension.NUMBER:
            buy = ceil(buy / trim.sold_in.value) * trim.sold_in.value
        amounts = ([float(number) for number in numbers], float(order), buy)
        yield _line("trim", trim.name, title, used_on, "piece", *amounts, trim.price, basis)


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
    unit = _unit(trim.price, garment)
    one = float(UNITS[unit].size)
    lengths = [
        sum(piece.count * piece.opening for piece in size.pieces if piece.trim == trim.name) / one
        for size in sizes
    ]
    order = sum(length * count for length, count in zip(lengths, counts, strict=True))
    amounts = (lengths, order, _rounded_up(order))
    return _line("trim", trim.name, trim.title, used_on, unit, *amounts, trim.price, BY_LENGTH)


def _trim(trim: Trim, garment: Garment, sizes: tuple[SizeQuantities, ...], counts: list[int]) -> BillLine:
    unit = _unit(trim.price, garment)
    lengths = [
        sum(cut.cut_length * cut.count for cut in size.trims if cut.trim == trim.name)
        / float(UNITS[unit].size)
        for size in sizes
    ]
    order = sum(length * count for length, count in zip(lengths, counts, strict=True))
    used_on = tuple(
        dict.fromkeys(cut.used_on for size in sizes for cut in size.trims if cut.trim == trim.name)
    )
    if trim.cut_from:
        basis = FROM_CLOTH.format(cloth=trim.cut_from)
        amounts = (tuple(lengths), order, None)
        return BillLine("trim", trim.name, trim.title, used_on, unit, *amounts, unit, None, None, None, basis)
    if trim.sold_in is not None and trim.sold_in.dimension == Dimension.LENGTH:
        roll = trim.sold_in.value / UNITS[unit].size
        buy = ceil(order / float(roll) - _SQUARE) * roll
    else:
        buy = _rounded_up(order)
    return _line("trim", trim.name, trim.title, used_on, unit, lengths, order, buy, trim.price, BY_LENGTH)


def _line(  # noqa: PLR0913, PLR0917 a row has as many columns
    kind: str,
    name: str,
    title: str,
    used_on: tuple[str, ...],
    unit: str,
    lengths: Iterable[float],
    order: float,
    buy: Fraction,
    price: Price | None,
    basis: str,
) -> BillLine:
    # A price by the piece says nothing about a length, nor one by length about a piece.
    cost = None if price is None or price.per != unit else price.amount * buy
    amounts = (tuple(lengths), order, float(buy))
    return BillLine(kind, name, title, used_on, unit, *amounts, unit, *_price(price), cost, basis)


def _price(price: Price | None) -> tuple[Fraction | None, str | None]:
    return (None, None) if price is None else (price.amount, price.currency)


def _rounded_up(amount: float) -> Fraction:
    """To the next quarter: shops cut to a quarter of a yard or metre (common practice, no source)."""
    return Fraction(ceil(amount * 4 - _SQUARE), 4)


def _used_on(garment: Garment, cloth: Cloth) -> tuple[str, ...]:
    strips = [trim.title for trim in garment.trims if trim.cut_from == cloth.name]
    return (cloth.use, *(strip for strip in strips if strip != cloth.use))
