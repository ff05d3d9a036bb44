"""Owns what the garment is when it is drawn flat: pieces side by side, seen from the front or the back.

Knows nothing of how they come to lie there, nor of paper. The middle of the garment is x = 0, y runs up; only
the half of it is kept that is drawn at x > 0, the other one is its mirror image. Millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point

Chain = tuple["Point", ...]
"""Points of straight runs, end to end."""


class Role(StrEnum):
    """What an edge is in a drawing of the garment."""

    OPEN = "open"  # an edge of the garment
    TURN = "turn"  # the cloth goes on round the body from here, or a seam joins it to what is not seen
    SEAM = "seam"  # sewn to what lies beside it
    MIDDLE = "middle"  # sewn to its mirror image
    CLOSED = "closed"  # closes on its mirror image
    NOTHING = "nothing"  # the fold of the cloth, or an edge hidden under another


class Mark(StrEnum):
    """What else is seen on a piece."""

    DART = "dart"
    POCKET = "pocket"
    FASTENING = "fastening"
    LINE = "line"  # a reference line, not seen on the garment: it carries measures


@dataclass(frozen=True, slots=True)
class LaidEdge:
    """An edge of a piece as it lies."""

    name: str
    points: Chain
    role: Role = Role.OPEN


@dataclass(frozen=True, slots=True)
class LaidLine:
    """A line on a piece as it lies; `side` is `left` or `right` (as worn) where only one half has it."""

    mark: Mark
    name: str
    points: Chain
    side: str | None = None


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece, or what is seen of it: its edges in the order of its outline, and the lines on it.

    `under` says that it lies beneath the pieces beside it, as a sleeve beneath the armhole; `whole`, that it
    is there once and lies across the middle, without a mirror image.
    """

    name: str
    edges: tuple[LaidEdge, ...]
    lines: tuple[LaidLine, ...] = ()
    under: bool = False
    whole: bool = False

    @property
    def outline(self) -> Chain:
        """The closed outline, its first point not repeated."""
        return tuple(point for edge in self.edges for point in edge.points[:-1])

    def edge(self, name: str) -> LaidEdge | None:
        """The edge of that name."""
        return next((edge for edge in self.edges if edge.name == name), None)

    def mapped(self, move: Callable[[Point], Point]) -> LaidPiece:
        """The piece where a map takes its points."""
        return replace(
            self,
            edges=tuple(replace(edge, points=tuple(map(move, edge.points))) for edge in self.edges),
            lines=tuple(replace(line, points=tuple(map(move, line.points))) for line in self.lines),
        )


@dataclass(frozen=True, slots=True)
class Beyond:
    """What is seen of the inside of the other side through an opening: its outline, and its own edge."""

    outline: Chain
    edge: Chain


@dataclass(frozen=True, slots=True)
class Side:
    """The garment seen from one side: its pieces, those beneath first, and what is seen `beyond` them."""

    name: str
    pieces: tuple[LaidPiece, ...]
    beyond: tuple[Beyond, ...] = ()

    def piece(self, name: str) -> LaidPiece | None:
        """The piece of that name."""
        return next((piece for piece in self.pieces if piece.name == name), None)


@dataclass(frozen=True, slots=True)
class Flat:
    """The garment drawn flat, from one or two sides; `left_out` are pieces that have no place there."""

    sides: tuple[Side, ...]
    left_out: tuple[str, ...]
