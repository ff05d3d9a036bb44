"""Owns the body measurements that the library's blocks ask for, and how each is taken; knows no block."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.library.rows import rows

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True, slots=True)
class BodyMeasurement:
    """A measurement by the name that blocks give it, its title in the trade, and how it is taken."""

    name: str
    title: str
    how: str


@cache
def body_measurements() -> Mapping[str, BodyMeasurement]:
    """Every measurement that is known, by name."""
    found = (BodyMeasurement(**row) for row in rows("measurements.toml", "measurement"))
    return MappingProxyType({one.name: one for one in found})
