"""Owns exact values together with the unit they were written in.

Knows nothing of expressions: arithmetic between quantities belongs to whoever evaluates them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.units.printing import format_written

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.units.dimension import Dimension
    from specc.units.unit import Unit


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact value: `value` in base units of its dimension (see `specc.units.unit`), `unit` as written."""

    value: Fraction
    unit: Unit

    @staticmethod
    def of(number: Fraction | int, unit: Unit) -> Quantity:
        """Return `number` of `unit`."""
        return Quantity(number * unit.size, unit)

    @property
    def dimension(self) -> Dimension:
        """The kind of thing that is measured."""
        return self.unit.dimension

    @property
    def number(self) -> Fraction:
        """How many of the written unit."""
        return self.value / self.unit.size

    def __str__(self) -> str:
        """The value as one would write it: `2 1/4 in`, `6%`, `14.50 USD per yd`."""
        return format_written(self.number, self.unit.symbol)
