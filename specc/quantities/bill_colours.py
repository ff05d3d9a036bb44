"""Owns the division of a material by colour: which colourways take which, and for how many garments.

Knows nothing of how much a garment takes.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING, Generic, TypeVar

from specc.model.material import Cloth, Thread, Trim

if TYPE_CHECKING:
    from specc.model.garment import Garment
    from specc.quantities.quantities import BillLine

Material = TypeVar("Material", Cloth, Trim, Thread)


@dataclass(frozen=True, slots=True)
class InColour(Generic[Material]):
    """A material in one colour: `counts` garments of each size take it, `share` of all.

    `colourways` are the titles of those that take it; none where all take the same.
    """

    material: Material
    counts: list[int]
    share: Fraction
    colourways: tuple[str, ...]

    def marked(self, line: BillLine) -> BillLine:
        """The line with its colour and what takes it."""
        return replace(line, colour=self.material.colour, share=self.share, colourways=self.colourways)


def in_colours(
    material: Material, garment: Garment, sizes: tuple[str, ...]
) -> tuple[InColour[Material], ...]:
    """The material once for each colour in which it is bought, in the order of the colourways."""
    by_colour: dict[str | None, list[int]] = {}
    colour: str | None
    takes: dict[str | None, tuple[str, ...]] = {}
    for colourway in garment.colourways:
        colour = colourway.colour_of(material.name) or material.colour
        before = by_colour.get(colour, [0] * len(sizes))
        by_colour[colour] = [
            count + colourway.ordered(size) for count, size in zip(before, sizes, strict=True)
        ]
        takes[colour] = (*takes.get(colour, ()), colourway.title)
    if len(by_colour) <= 1:
        ordered = {each.size: each.count for each in garment.header.order}
        counts = [ordered.get(size, 0) for size in sizes]
        only = next(iter(by_colour), material.colour)
        return (InColour(replace(material, colour=only), counts, Fraction(1), ()),)
    total = sum(sum(counts) for counts in by_colour.values())
    return tuple(
        InColour(
            replace(material, colour=colour),
            counts,
            Fraction(sum(counts), total) if total else Fraction(1, len(by_colour)),
            takes[colour],
        )
        for colour, counts in by_colour.items()
    )
