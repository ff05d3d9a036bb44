"""Owns where figures stand that are drawn side by side at one scale, each with its name below.

Knows nothing of what the figures are.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.document.lettering import Lettering, width_of
from specc.document.view import SCALES
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

EDGE: Final = 1.0  # free round all figures, millimetres of paper
GAP: Final = 8.0  # between two figures
NAME: Final = 4.0  # from a figure down to the middle of its name
FOOT: Final = 2.0  # from there to the lower end of the row
BETWEEN: Final = 3.0  # from row to row


@dataclass(frozen=True, slots=True)
class Figure:
    """What is drawn: its name, its width and height in millimetres of garment."""

    name: str
    wide: float
    high: float


@dataclass(frozen=True, slots=True)
class Stand:
    """Where the left upper corner of a figure and the middle of its name lie on paper."""

    corner: Point
    name: Point


@dataclass(frozen=True, slots=True)
class Arrangement:
    """A scale, the places of all figures, and the paper that they take in millimetres."""

    scale: Fraction
    stands: tuple[Stand, ...]
    width: float
    height: float


def side_by_side(
    figures: Sequence[Figure], *, room: Point, scales: Sequence[Fraction] = SCALES
) -> Arrangement:
    """The figures in rows from the left, at the largest of the scales at which all fit into `room`.

    At the smallest one where none is small enough.
    """
    tried = (_arranged(figures, scale, room.x) for scale in scales)
    found = [each for each in tried if each.width <= room.x and each.height <= room.y]
    return found[0] if found else _arranged(figures, scales[-1], room.x)


def _arranged(figures: Sequence[Figure], scale: Fraction, width: float) -> Arrangement:
    stands: list[Stand] = []
    left = top = EDGE
    deep = reach = 0.0
    for figure in figures:
        wide, high = figure.wide * float(scale), figure.high * float(scale)
        column = max(wide, width_of(figure.name, Lettering.NAME))
        if left > EDGE and left + column + EDGE > width:
            left, top, deep = EDGE, top + deep + BETWEEN, 0.0
        middle = left + column / 2
        stands.append(Stand(Point(middle - wide / 2, top), Point(middle, top + high)))
        deep = max(deep, high + NAME + FOOT)
        reach = max(reach, left + column + EDGE)
        left += column + GAP
    return Arrangement(scale, _names_level(stands), reach, top + deep)


def _names_level(stands: list[Stand]) -> tuple[Stand, ...]:
    """The names of a row stand level, below the highest figure."""
    below: dict[float, float] = {}
    for stand in stands:
        below[stand.corner.y] = max(below.get(stand.corner.y, 0.0), stand.name.y + NAME)
    return tuple(Stand(stand.corner, Point(stand.name.x, below[stand.corner.y])) for stand in stands)
