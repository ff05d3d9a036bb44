"""Owns exact values with a dimension and the unit they were written in; reads and prints them.

Knows nothing of places in a text, nor of garments.
"""

from specc.units.currencies import CURRENCIES
from specc.units.dimension import Dimension
from specc.units.numbers import parse_number
from specc.units.printing import (
    format_angle,
    format_area_weight,
    format_length,
    format_money,
    format_number,
    format_ratio,
)
from specc.units.quantity import Quantity
from specc.units.unit import UNITS, Unit, unit

__all__ = [
    "CURRENCIES",
    "UNITS",
    "Dimension",
    "Quantity",
    "Unit",
    "format_angle",
    "format_area_weight",
    "format_length",
    "format_money",
    "format_number",
    "format_ratio",
    "parse_number",
    "unit",
]
