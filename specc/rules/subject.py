"""Owns what a rule looks at: the garment, its assembly, its measures, and questions that many rules ask.

Knows no rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypedDict

from specc.making.cloths import cloth_of
from specc.model.expression import PartRef
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from specc.alteration.shape import Shaped
    from specc.making.assembly import Assembly
    from specc.model.construction import Making
    from specc.model.expression import Expression
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.pattern.piece import Piece
    from specc.quantities.quantities import Measures
    from specc.source import Span


class _Steps(TypedDict, total=False):
    """How finely `format_length` prints."""

    denominator: int
    decimals: int


SEEN_THROUGH = ("open", "sheer")

_DECIMALS_OF_MM = 2
_FINER: Final[Mapping[str, tuple[_Steps, ...]]] = {
    "in": ({"denominator": 8}, {"denominator": 16}, {"denominator": 32}, {"denominator": 64}),
    "cm": ({"decimals": 1}, {"decimals": 2}, {"decimals": 3}),
    "mm": ({"decimals": 0}, {"decimals": 1}, {"decimals": 2}),
}


@dataclass(frozen=True, slots=True)
class Subject:
    """What is judged."""

    garment: Garment
    shaped: tuple[Shaped, ...]
    assembly: Assembly
    measures: Measures

    def measurement(self, name: str, size: str) -> float | None:
        """A body measurement in millimetres; None where the chart lacks it."""
        return next((one.measurements.get(name) for one in self.shaped if one.size == size), None)

    def evaluate(self, expression: Expression) -> float:
        """The value of an expression that is the same in every size."""
        return self.shaped[0].evaluator().value(expression)

    def length(self, mm: float) -> str:
        """A length as the garment's sheet prints it."""
        return format_length(mm, self.garment.header.unit)

    def lengths(self, *mm: float) -> tuple[str, ...]:
        """Lengths in the garment's unit, as coarse as on the sheet but told apart where they differ."""
        unit = self.garment.header.unit
        differ = len({round(one, _DECIMALS_OF_MM) for one in mm})
        printed: tuple[str, ...] = ()
        for steps in _FINER[unit]:
            printed = tuple(format_length(one, unit, **steps) for one in mm)
            if len(set(printed)) == differ:
                break
        return printed

    def difference(self, mm: float) -> str:
        """A length that is something: never printed as nothing."""
        return self.lengths(0.0, mm)[1]

    def sizes(self, sizes: Iterable[str]) -> str:
        """Sizes in words: `every size`, `size 8`, `sizes 8, 10 and 12`."""
        listed = list(sizes)
        if len(listed) == len(self.assembly.sizes) > 1:
            return "every size"
        if len(listed) == 1:
            return f"size {listed[0]}"
        return f"sizes {', '.join(listed[:-1])} and {listed[-1]}"

    def cloth(self, piece: str) -> Cloth | None:
        """The cloth that a piece is cut from."""
        return cloth_of(self.garment, piece)

    def seen_through(self, piece: str) -> str | None:
        """The trait (`open`, `sheer`) by which the piece's cloth shows what lies behind it."""
        cloth = self.cloth(piece)
        return next((trait for trait in SEEN_THROUGH if cloth and trait in cloth.traits), None)

    def place_of(self, edges: tuple[str, ...], piece: str) -> Span:
        """The smallest place where the text speaks of the edges (`piece.edge`): the finish that goes there.

        Else the seam, else where the block of the piece is used, else the garment's head.
        """
        made = [(finish.along, finish.origin) for finish in self.garment.finishes]
        made += [(side, seam.origin) for seam in self.garment.seams for side in seam.sides]
        places = (origin for refs, origin in made for ref in refs if f"{ref.piece}.{ref.name}" in edges)
        return next(places, self.place_of_piece(piece))

    def opened_further(self, edges: tuple[str, ...]) -> str:
        """How an opening along these edges (`piece.edge`) can be made to open further, as a cure."""
        for finish in self.garment.finishes:
            if finish.closing and any(f"{ref.piece}.{ref.name}" in edges for ref in finish.along):
                return f"make the opening of closure `{finish.name}` longer"
        return "divide a seam and give the garment a `closure`"

    def place_of_piece(self, piece: str) -> Span:
        """Where the block that the piece comes from is used, or a piece of its own begins.

        The garment's head for a piece made later.
        """
        for block in self.garment.blocks:
            for draft in block.pieces:
                if draft.name == piece:
                    return block.origin if block.name else draft.origin
        return self.garment.header.origin

    def attached(self) -> Iterator[tuple[str, Making, tuple[PartRef, ...], Span]]:
        """What is attached by a way of its own: the name, the way, the edges that are sewn, the place."""
        for asked in self.garment.attachments:
            if asked.making is not None:
                edges = (use for use in self.assembly.sizes[0].uses if use.by == asked.name)
                refs = tuple(PartRef(use.piece, use.edge, asked.origin) for use in edges)
                yield asked.name, asked.making, refs, asked.origin

    def pieces(self) -> tuple[Piece, ...]:
        """The pieces of the first size: what does not differ from size to size is asked of them."""
        return self.assembly.sizes[0].pieces
