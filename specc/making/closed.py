"""Owns what a closure is in one size: how long its sides are, where its fastenings lie.

Knows nothing of how they are found.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.geometry.point import Point


@dataclass(frozen=True, slots=True)
class FasteningPlace:
    """Where a fastening lies on a piece: so far `along` the stitched side, `at` a point inside of the edge.

    `number` counts from the first, from 1; on both sides the same number meets when it is closed. `hole` is
    where the buttonhole begins and ends, on the side that lies on top.
    """

    number: int
    piece: str
    edge: str
    along: float
    at: Point
    hole: tuple[Point, Point] | None


@dataclass(frozen=True, slots=True)
class Closed:
    """A closure in one size, `count` times a garment: the stitched lengths of its sides, its lap, its places.

    A closure on itself has one side and places on that only; the other is its mirror image. Places are
    counted along the side from `corner`, or from the corner that meets it.
    """

    closure: str
    count: int
    first: float
    second: float
    laps: float
    corner: str
    places: tuple[FasteningPlace, ...]
