"""Owns what a lay is: pieces placed on a length of cloth, spread so many plies high. Lengths in millimetres.

Knows nothing of how a lay is found.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.making.assembly import CutPiece


@dataclass(frozen=True, slots=True)
class Ratio:
    """How many garments of a size lie in a lay."""

    size: str
    count: int


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece as it lies: its cut outline, allowances and shrinkage added, x along the cloth, y across it.

    `mirrored`: cut as the other of a pair. `folded`: its fold edge lies on the fold of the cloth. `grain`
    are the ends of its grain line, where one is drawn.
    """

    size: str
    piece: str
    mirrored: bool
    folded: bool
    outline: tuple[Point, ...]
    grain: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Lay:
    """Garments of `ratio` on cloth `plies` high, cut `times` over.

    `length` is of one ply, ends included; `width` is what is laid out, half the cloth where it is folded.
    `share` is how much of length and width the pieces cover. `searched`: from the lay file, else planned in
    a hurry.
    """

    ratio: tuple[Ratio, ...]
    plies: int
    times: int
    width: float
    length: float
    share: float
    searched: bool
    pieces: tuple[LaidPiece, ...]

    @property
    def garments(self) -> int:
        """How many garments it gives in all."""
        return sum(each.count for each in self.ratio) * self.plies * self.times


@dataclass(frozen=True, slots=True)
class Way:
    """A way of cutting the order and the length of cloth it takes; None where it was not searched."""

    cutting: str
    length: float | None


@dataclass(frozen=True, slots=True)
class ClothLays:
    """How one cloth is cut: `cutting` is the way chosen, `lays` its lays in the order of the work.

    `per_garment` is the length that one garment of each size takes: its share of the lays, by area. `order`
    is the length for all that is ordered, None without an order. `ways` compares what is known of all ways.
    """

    cloth: str
    cutting: str
    spread: str
    lays: tuple[Lay, ...]
    per_garment: tuple[float, ...]
    order: float | None
    ways: tuple[Way, ...]


@dataclass(frozen=True, slots=True)
class CutOut:
    """The garment cut out: the cut pieces of each size, and the lays of each cloth where any were made."""

    pieces: tuple[tuple[CutPiece, ...], ...]
    lays: tuple[ClothLays, ...] = ()
