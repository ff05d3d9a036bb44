"""Owns what a size chart is: body measurements, each a column of values by size or a formula.

Knows nothing of which garment uses it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression
    from specc.source import Span
    from specc.units import Dimension, Quantity


@dataclass(frozen=True, slots=True)
class Measurement:
    """A body measurement: `values` in the order of the chart's sizes, or `derived` from others."""

    name: str
    title: str
    source: str | None
    dimension: Dimension
    values: tuple[Quantity, ...]
    derived: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Chart:
    """A size chart."""

    name: str
    title: str
    source: str | None
    sizes: tuple[str, ...]
    measurements: tuple[Measurement, ...]
    origin: Span
