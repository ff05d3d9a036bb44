"""Owns what a piece on paper has beside all others: its size, the grading of its points, its drawing.

Knows nothing of how a shape is graded.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Shift:
    """How far a point moves to the right and up from one size to the next larger one."""

    right: Expression
    up: Expression


@dataclass(frozen=True, slots=True)
class Traced:
    """The size in which a piece was traced, one of `sizes`, which are in their order."""

    size: str
    sizes: tuple[str, ...]


Grading = tuple[Shift | None, ...]
"""The shift of a point for each step of the sizes, from the smallest on: one fewer than there are sizes.

None stands for a step that no size needs that is made.
"""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Where an end of one path of the drawing meets an end of another."""

    first: str
    second: str


@dataclass(frozen=True, slots=True)
class Near:
    """The corner of a path of the drawing that lies nearest to a place."""

    across: Expression
    up: Expression
    path: str


@dataclass(frozen=True, slots=True)
class Along:
    """A run of an edge that follows a path of the drawing to a point."""

    to: str
    path: str
    origin: Span


@dataclass(frozen=True, slots=True)
class DrawnPath:
    """A path of an SVG drawing: its id, its data and the transforms that hold for it as written there.

    The outermost transform comes first. `origin` is where the piece speaks of it, `place` where it is drawn.
    """

    name: str
    data: str
    transforms: tuple[str, ...]
    origin: Span
    place: Span


@dataclass(frozen=True, slots=True)
class Drawing:
    """What a piece is taken from: the paths of a drawing that it speaks of; its unit in millimetres."""

    file: str
    unit: float
    paths: tuple[DrawnPath, ...]
