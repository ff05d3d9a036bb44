"""Owns the lines of the bill for cloth: its lays, the bias strips cut from it, what is only known by area.

Knows nothing of how lays and strips are found.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.quantities.bias import cloth_of_plans
from specc.quantities.bill_sums import QUARTER, Amounts, bought_line, paid, unit_of
from specc.quantities.quantities import BillLine
from specc.units import UNITS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying import ClothLays
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.quantities.bill_colours import InColour
    from specc.quantities.quantities import BiasPlan, SizeQuantities

BY_LAYS: Final = "the lays, added up; for one garment, its share of them"
BY_BIAS: Final = "the strips cut on the bias; for one garment, its share of them"
ALL_COLOURS: Final = "; the lays hold all colours, a ply or more of each"
BY_AREA: Final = "area of what is cut, shrinkage added, over the usable width; a lay takes more"
_NOTHING = 1e-6  # mm
NO_WIDTH: Final = "the cloth does not say its width"


def cloth_line(
    part: InColour[Cloth],
    garment: Garment,
    sizes: tuple[SizeQuantities, ...],
    lays: tuple[ClothLays, ...],
    plans: tuple[BiasPlan, ...],
) -> BillLine:
    """What a cloth in one colour takes for one garment of each size and for those ordered in it."""
    cloth = part.material
    unit, used_on = unit_of(cloth.price, garment), _used_on(garment, cloth)
    if cloth.usable is None:
        amount, currency = paid(cloth.price)
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
            amount,
            currency,
            None,
            NO_WIDTH,
            supplier=cloth.supplier,
            reference=cloth.buying.reference,
            colour=cloth.colour,
        )
    parts = tuple(_parts(part, garment, sizes, lays, plans))
    one = float(UNITS[unit].size)
    lengths = tuple(sum(both) / one for both in zip(*(each.per_garment for each in parts), strict=True))
    step = QUARTER if cloth.sold_in is None else cloth.sold_in.value / UNITS[unit].size
    amounts = Amounts(unit, lengths, sum(each.order for each in parts) / one, step)
    return bought_line(cloth, cloth.title, used_on, amounts, "; and ".join(each.basis for each in parts))


@dataclass(frozen=True, slots=True)
class _Part:
    """A length of the cloth, in millimetres: for one garment of each size, for the order, how it is known."""

    per_garment: tuple[float, ...]
    order: float
    basis: str


def _parts(
    part: InColour[Cloth],
    garment: Garment,
    sizes: tuple[SizeQuantities, ...],
    lays: tuple[ClothLays, ...],
    plans: tuple[BiasPlan, ...],
) -> Iterator[_Part]:
    cloth, counts = part.material, part.counts
    whole = [_ordered(garment, size) for size in sizes]
    laid = next((each for each in lays if each.cloth == cloth.name), None)
    planned = [plan for plan in plans if plan.cloth == cloth.name]
    if laid is not None:
        order = (laid.order or 0.0) * _share(laid.per_garment, counts, whole)
        yield _Part(laid.per_garment, order, BY_LAYS if counts == whole else BY_LAYS + ALL_COLOURS)
    if planned:
        total, shares = cloth_of_plans(cloth, plans)
        yield _Part(shares, total * _share(shares, counts, whole), BY_BIAS)
    areas = [_left(cloth, size, planned, laid=laid is not None) for size in sizes]
    lengths = tuple(_over_width(area, cloth) for area in areas)
    if any(length > _NOTHING for length in lengths) or not (laid or planned):
        yield _Part(lengths, _sum(lengths, counts), BY_AREA)


def _sum(lengths: tuple[float, ...], counts: list[int]) -> float:
    return sum(length * count for length, count in zip(lengths, counts, strict=True))


def _share(lengths: tuple[float, ...], counts: list[int], whole: list[int]) -> float:
    """What these garments take of the length of all; nothing where nothing is ordered."""
    return _sum(lengths, counts) / _sum(lengths, whole) if any(whole) and _sum(lengths, whole) else 0.0


def _ordered(garment: Garment, size: SizeQuantities) -> int:
    return next((each.count for each in garment.header.order if each.size == size.size), 0)


def _left(cloth: Cloth, size: SizeQuantities, planned: list[BiasPlan], *, laid: bool) -> float:
    """The area of what is cut from the cloth for one garment and neither laid nor planned on the bias."""
    known = {(plan.name, plan.wide) for plan in planned}
    strips = [strip for strip in size.strips if strip.cloth == cloth.name]
    areas = [strip.wide * strip.length * strip.count for strip in strips]
    left = sum(
        area for strip, area in zip(strips, areas, strict=True) if (strip.name, strip.wide) not in known
    )
    if laid:
        return left
    whole = sum(use.area for use in size.cloths if use.cloth == cloth.name)
    return whole - sum(areas) + left


def _over_width(area: float, cloth: Cloth) -> float:
    """The length of cloth that has the area, before it shrinks."""
    assert cloth.usable is not None
    grown = 1.0 / ((1.0 - float(cloth.shrinks_length)) * (1.0 - float(cloth.shrinks_width)))
    return area * grown / float(cloth.usable.value)


def _used_on(garment: Garment, cloth: Cloth) -> tuple[str, ...]:
    strips = [trim.title for trim in garment.trims if trim.cut_from == cloth.name]
    return (cloth.use, *(strip for strip in strips if strip != cloth.use))
