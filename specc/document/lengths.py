"""Owns how the sheet prints lengths: in the garment's unit, to a step that it names.

Knows nothing of garments.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from types import MappingProxyType
from typing import TYPE_CHECKING, Concatenate, ParamSpec

from specc.document.printed import Printed
from specc.units import UNITS, Dimension, format_angle, format_length, format_number, format_ratio

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.document.printed import Text

Asked = ParamSpec("Asked")

_STEPS = MappingProxyType({"in": Fraction(1, 8), "cm": Fraction(1, 10), "mm": Fraction(1)})
_WORDS = MappingProxyType({"in": "inches", "cm": "centimetres", "mm": "millimetres"})
_GRID = (
    10**6
)  # a float of geometry is read on this grid, so that its last bits never turn a cut into the next step


@dataclass(frozen=True, slots=True)
class Lengths:
    """Printing in `unit`, which is in, cm or mm; every function takes millimetres."""

    unit: str

    @property
    def word(self) -> str:
        """The unit as a word, for `All lengths in inches`."""
        return _WORDS[self.unit]

    @property
    def other(self) -> Lengths:
        """Lengths in the other system: centimetres beside inches, inches beside both others."""
        return Lengths("cm" if self.unit == "in" else "in")

    def both(
        self, say: Callable[Concatenate[Lengths, Asked], str], *asked: Asked.args, **named: Asked.kwargs
    ) -> Text:
        """What `say` makes of this unit and of the other one, each of the exact lengths it is given.

        `lengths.both(Lengths.near, 25.4)` is `1`, or `2.5` in centimetres.
        """
        own, other = say(self, *asked, **named), say(self.other, *asked, **named)
        return own if own == other else Printed(own, other)

    def near_in_both(self, mm: Fraction | float) -> Text:
        """The nearest step in both units, without them."""
        return self.both(Lengths.near, mm)

    def up_in_both(self, mm: float) -> Text:
        """The step at or above in both units, without them."""
        return self.both(Lengths.up, mm)

    @property
    def step(self) -> str:
        """The step to which lengths are printed, with the unit."""
        return self.said(_STEPS[self.unit] * UNITS[self.unit].size)

    def near(self, mm: Fraction | float) -> str:
        """The nearest step, without the unit."""
        return format_length(mm, self.unit, with_unit=False)

    def up(self, mm: float) -> str:
        """The step at or above, without the unit: what is cut shorter than it must be cannot be sewn."""
        step = _STEPS[self.unit] * UNITS[self.unit].size
        exact = Fraction(round(Fraction(mm) * _GRID), _GRID)
        return format_length(ceil(exact / step) * step, self.unit, with_unit=False)

    @property
    def cloth_unit(self) -> str:
        """The unit of lengths of cloth: yd beside inches, else m."""
        return "yd" if self.unit == "in" else "m"

    def of_cloth(self, mm: float) -> str:
        """A length of cloth, up to the next hundredth of a yard or metre, with the unit."""
        exact = Fraction(round(Fraction(mm) * _GRID), _GRID) / UNITS[self.cloth_unit].size
        return f"{format_number(Fraction(ceil(exact * 100), 100), decimals=2)} {self.cloth_unit}"

    def said(self, mm: Fraction | float) -> str:
        """The nearest step, with the unit."""
        return format_length(mm, self.unit)

    def figure(self, value: float, dimension: Dimension) -> str:
        """A value of the garment in the way of its dimension; a length without its unit."""
        if dimension == Dimension.LENGTH:
            return self.near(value)
        if dimension == Dimension.ANGLE:
            return format_angle(value)
        if dimension == Dimension.RATIO:
            return format_ratio(value)
        return millimetres(value) if dimension == Dimension.AREA else format_number(value, decimals=2)

    def fine(self, mm: Fraction | float) -> str:
        """To a finer step, with the unit: for what is small, such as an allowance or an inset."""
        if self.unit == "in":
            return format_length(mm, "in", denominator=32)
        decimals = 2 if self.unit == "cm" else 1
        printed = format_length(mm, self.unit, decimals=decimals, with_unit=False)
        return f"{printed.rstrip('0').rstrip('.')} {self.unit}"


def millimetres(mm: Fraction | float, *, decimals: int = 1) -> str:
    """A small length, such as a stitch or a difference, in millimetres whatever the garment's unit.

    No unit.
    """
    text = format_number(mm, decimals=decimals)
    return text.removeprefix("-") if not float(text) else text


def range_of(texts: tuple[str, ...]) -> str:
    """The one text where all are alike, else the first and the last."""
    return texts[0] if len(set(texts)) == 1 else f"{texts[0]} to {texts[-1]}"
