"""Owns the units that can be written and their exact sizes.

Knows nothing of values. Base units: millimetre, degree, microgram, piece, and one of each currency. The
microgram makes weight per area come out in g/m2 (1 g/m2 is 1 microgram per square millimetre), so that
products of base units need no factors.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from specc.units.currencies import CURRENCIES
from specc.units.dimension import Dimension


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit by the symbol it is written with; `size` is one of it in base units of its dimension."""

    symbol: str
    dimension: Dimension
    size: Fraction

    def per(self, other: Unit) -> Unit | None:
        """Return the unit `A per B`, such as `USD per yd`; None where that has no dimension."""
        dimension = self.dimension.over(other.dimension)
        if dimension is None:
            return None
        return Unit(f"{self.symbol} per {other.symbol}", dimension, self.size / other.size)


_INCH = Fraction(254, 10)  # international inch: 25.4 mm exactly (NIST Handbook 44, appendix C; from memory)
_OUNCE = Fraction("28349523.125")  # avoirdupois ounce: 28.349523125 g exactly (same)
_GRAM = Fraction(10**6)

_LENGTHS = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": _INCH,
    "ft": 12 * _INCH,
    "yd": 36 * _INCH,
}

_WRITTEN = (
    *(Unit(symbol, Dimension.LENGTH, size) for symbol, size in _LENGTHS.items()),
    *(Unit(f"{symbol}2", Dimension.AREA, size**2) for symbol, size in _LENGTHS.items()),
    Unit("", Dimension.NUMBER, Fraction(1)),
    Unit("%", Dimension.RATIO, Fraction(1, 100)),
    Unit("deg", Dimension.ANGLE, Fraction(1)),
    Unit("g", Dimension.MASS, _GRAM),
    Unit("kg", Dimension.MASS, 1000 * _GRAM),
    Unit("oz", Dimension.MASS, _OUNCE),
    Unit("g/m2", Dimension.AREA_WEIGHT, _GRAM / Fraction(1000) ** 2),
    Unit("oz/yd2", Dimension.AREA_WEIGHT, _OUNCE / (36 * _INCH) ** 2),
    Unit("piece", Dimension.PIECES, Fraction(1)),
    *(Unit(code, Dimension.money(code), Fraction(1)) for code in CURRENCIES),
)

UNITS = MappingProxyType({unit.symbol: unit for unit in _WRITTEN})
_OTHER_SPELLINGS = MappingProxyType({"°": "deg", "g/m²": "g/m2", "oz/yd²": "oz/yd2"})


def unit(symbol: str) -> Unit | None:
    """Return the unit written `symbol`: `in`, `g/m2`, `USD` or `USD per yd`; None when there is none."""
    known = UNITS.get(_OTHER_SPELLINGS.get(symbol, symbol))
    if known is not None:
        return known
    over, per, under = symbol.partition(" per ")
    if not per or over not in UNITS or under not in UNITS:
        return None
    return UNITS[over].per(UNITS[under])
