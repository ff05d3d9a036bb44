"""Owns the sides of a seam as its cross-section needs them: names, allowances, which are of one piece.

Knows nothing of how they lie.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.making.section import Node
from specc.making.section_rows import length

if TYPE_CHECKING:
    from specc.model.construction import Making, Seam, Takes
    from specc.model.expression import PartRef

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth")


@dataclass(frozen=True, slots=True)
class Plies:
    """The sides of a seam: their names and allowances, in the order of the text.

    `wide` are the allowances as cut, `declared` is the widest that the way of making asks for, from which it
    measures its rows. `doubled` is whether the third side is another edge of the piece of the second, a band;
    `alone` whether both sides are edges of one piece, which closes to a tube.
    """

    making: Making
    names: tuple[str, ...]
    wide: tuple[float, ...]
    declared: float
    doubled: bool = False
    alone: bool = False

    @property
    def outside(self) -> bool:
        """Whether the allowances stand on the outside."""
        return self.making.faces == "wrong sides together"


def plies_of(seam: Seam) -> Plies | None:
    """The sides of a seam; None where their allowances are not known, or they are more than can be drawn."""
    making, sides = seam.making, seam.sides
    first, second = length(making.allowance), length(making.second or making.allowance)
    if first is None or second is None or len(sides) > len(_ORDINALS):
        return None
    wanted = (first, *(second for _ in sides[1:]))
    wide = tuple(_cut(seam, side, width) for side, width in zip(sides, wanted, strict=True))
    doubled = len(sides) == 3 and _one_piece(sides[1], sides[2])
    alone = len(sides) == 2 and _one_piece(*sides)
    return Plies(making, _ORDINALS[: len(sides)], wide, max(wanted), doubled, alone)


def _cut(seam: Seam, side: tuple[PartRef, ...], wanted: float) -> float:
    """The allowance of a side: its own, where all its edges have one, else what is wanted."""
    own = {(each.edge.piece, each.edge.name): length(each.width) for each in seam.allowances}
    found = [own.get((ref.piece, ref.name)) for ref in side]
    known = [width for width in found if width is not None]
    return max(known) if known and len(known) == len(found) else wanted


def _one_piece(side: tuple[PartRef, ...], other: tuple[PartRef, ...]) -> bool:
    """Whether two sides are different edges of one piece; the same edges are those of two copies."""
    edges, others = ({(ref.piece, ref.name) for ref in each} for each in (side, other))
    return {piece for piece, _ in edges} == {piece for piece, _ in others} and not edges & others


def path(*places: tuple[float, float]) -> tuple[Node, ...]:
    """Nodes from pairs of x and layer."""
    return tuple(Node(x, layer) for x, layer in places)


def taken(making: Making, lies: str) -> Takes | None:
    """The first trim that lies so."""
    return next((each for each in making.takes if each.lies == lies), None)
