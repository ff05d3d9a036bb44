"""Owns what the lays of a cloth leave over for strips on the bias: where each lies, how often it is cut.

Knows nothing of what the strips are for.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice, takewhile
from typing import TYPE_CHECKING, Final

from specc.geometry.left_over import slanting_strips
from specc.geometry.point import Point
from specc.laying.bias import SHORTEST
from specc.model.spreading import OPEN

if TYPE_CHECKING:
    from specc.geometry.left_over import Slanting
    from specc.laying.plan import ClothLays, Lay
    from specc.model.material import Cloth

_MOST: Final = 60  # strips of one lay
_FOR_JOINS: Final = 1.3  # so much strip for what is wanted: joins, and what is too short between them


@dataclass(frozen=True, slots=True)
class Offcuts:
    """Strips that a lay leaves over, each cut `times`: outlines as they lie in it, and lengths of strip."""

    outlines: tuple[tuple[Point, ...], ...]
    lengths: tuple[float, ...]
    times: int

    def of_at_least(self, length: float) -> Offcuts:
        """Those that are so long."""
        number = sum(1 for each in self.lengths if each >= length)
        return Offcuts(self.outlines[:number], self.lengths[:number], self.times)


def offcuts(
    cloth: Cloth, lays: ClothLays, taken: tuple[tuple[Offcuts, ...], ...], *, wide: float, enough: float
) -> tuple[Offcuts, ...]:
    """The strips, `wide` across once the cloth has shrunk, that each lay leaves over; the longest first.

    What is `taken` of each lay already is not given again. Cloth that lies double gives each strip twice. No
    more is looked for when there is `enough` strip in all, with a part for joins.
    """
    found: list[Offcuts] = []
    for index, lay in enumerate(lays.lays):
        gone = tuple(outline for each in taken for outline in each[index].outlines)
        there = sum(sum(each.lengths) * each.times for each in found)
        found.append(_of_lay(cloth, lays, lay, gone, (wide, _FOR_JOINS * enough - there)))
    return tuple(found)


def _of_lay(
    cloth: Cloth,
    lays: ClothLays,
    lay: Lay,
    taken: tuple[tuple[Point, ...], ...],
    wanted: tuple[float, float],
) -> Offcuts:
    """What one lay gives; `wanted` is the width of the strips, and how much of them."""
    wide, enough = wanted
    times = lay.plies * lay.times * (1 if lays.spread == OPEN else 2)
    if enough <= 0.0:
        return Offcuts((), (), times)
    # Laid out as it is once it has shrunk: a strip slants by 45 degrees then.
    along, across = 1.0 - float(cloth.shrinks_length), 1.0 - float(cloth.shrinks_width)
    pieces = tuple(_scaled(piece.outline, along, across) for piece in lay.pieces)
    shapes = (*pieces, *(_scaled(outline, along, across) for outline in taken))
    size = Point(max(p.x for piece in pieces for p in piece), lay.width * across)
    strips = slanting_strips(shapes, size, wide=wide, gap=float(cloth.spreading.gap.value))
    found: list[Slanting] = []
    for strip in takewhile(lambda each: each.length >= SHORTEST, islice(strips, _MOST)):
        found.append(strip)
        if sum(each.length for each in found) * times >= enough:
            break
    return Offcuts(
        tuple(_scaled(strip.outline, 1.0 / along, 1.0 / across) for strip in found),
        tuple(strip.length for strip in found),
        times,
    )


def _scaled(outline: tuple[Point, ...], along: float, across: float) -> tuple[Point, ...]:
    return tuple(Point(p.x * along, p.y * across) for p in outline)
