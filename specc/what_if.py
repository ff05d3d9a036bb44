"""Owns another order, or another cloth width, for a garment that is left as it is.

Knows nothing of how the question was asked.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.model.garment import Ordered
from specc.units import Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.model.material import Cloth
    from specc.pipeline import Result


def with_order(result: Result, order: Mapping[str, int]) -> Result:
    """The same garment ordered otherwise, in one colour. Raises KeyError with a size it does not have."""
    if result.garment is None:
        return result
    header = result.garment.header
    for size in order:
        if size not in header.sizes:
            raise KeyError(size)
    ordered = tuple(Ordered(size, order[size]) for size in header.sizes if size in order)
    return replace(
        result, garment=replace(result.garment, header=replace(header, order=ordered), colourways=())
    )


def with_width(result: Result, name: str | None, usable: Quantity) -> Result:
    """The same garment from a cloth of another usable width: that of the name, or the first.

    Raises KeyError with a name that no cloth has.
    """
    if result.garment is None:
        return result
    cloths = result.garment.cloths
    names = [cloth.name for cloth in cloths]
    if name is not None and name not in names:
        raise KeyError(name)
    other = tuple(_widened(cloth, usable) if cloth.name == (name or names[0]) else cloth for cloth in cloths)
    return replace(result, garment=replace(result.garment, cloths=other))


def _widened(cloth: Cloth, usable: Quantity) -> Cloth:
    """The cloth with another usable width, and as much selvage as before."""
    selvage = cloth.width.value - cloth.usable.value if cloth.width and cloth.usable else Fraction(0)
    return replace(cloth, width=Quantity(usable.value + selvage, usable.unit), usable=usable)
