"""Owns where what is attached comes to lie in one size: outlines and marks on the pieces that take it.

Knows nothing of how that is found, nor of paper. Lengths are millimetres, angles radians.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.diagnostics import Code
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Distances:
    """How a spot was measured out.

    `from_edge` along the level, from where it meets the edge (`at_edge`); `below` the reference line
    (negative above it), from its nearest point (`at_line`).
    """

    from_edge: float
    at_edge: Point
    below: float
    at_line: Point


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece as it lies on another, both as drawn; of a piece on the fold, opened out.

    `outline` is its closed net outline, `spot` where its corner lies, `edges` are those that are sewn down.
    `drills` lie inside the outline's corners. `places` is how often a garment has it; `across_fold` says that
    it lies across the fold of the piece beneath. `distances` is None where the spot is a point of that piece.
    """

    attachment: str
    piece: str
    on: str
    outline: Path
    spot: Point
    turned: float
    edges: tuple[str, ...]
    drills: tuple[Point, ...]
    distances: Distances | None
    places: int
    across_fold: bool


@dataclass(frozen=True, slots=True)
class CaughtAt:
    """Ends at their place on the edge of a piece: from `start` to `end` along the stitched edge.

    `ends` are edges, `piece.edge`. `places` is how often a garment has it; `across_fold` says that the place
    lies in equal parts on both sides of the fold: what is outside 0 and the edge's length lies beyond it.
    """

    attachment: str
    ends: tuple[str, ...]
    piece: str
    edge: str
    start: float
    end: float
    places: int
    across_fold: bool


Attached = Placed | CaughtAt


@dataclass(frozen=True, slots=True)
class Misplaced:
    """Why something cannot be attached in one size: a code and what it says; floats are millimetres."""

    code: Code
    origin: Span
    facts: tuple[tuple[str, str | float], ...]
    help: str
