"""Owns what a colourway is: the colours of what a garment is made of, and how many are made so.

Knows nothing of how much of each is used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.garment import Ordered
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Coloured:
    """The colour of one material: the name of a cloth, trim or thread, and the colour in words."""

    material: str
    colour: str


@dataclass(frozen=True, slots=True)
class Colourway:
    """A colourway; materials that it does not name keep the colour they have themselves."""

    name: str
    title: str
    order: tuple[Ordered, ...]
    colours: tuple[Coloured, ...]
    origin: Span

    def colour_of(self, material: str) -> str | None:
        """The colour it gives to a material; None where it says nothing of it."""
        return next((each.colour for each in self.colours if each.material == material), None)

    def ordered(self, size: str) -> int:
        """How many are made of a size."""
        return next((each.count for each in self.order if each.size == size), 0)
