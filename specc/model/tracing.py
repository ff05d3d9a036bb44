"""Owns what a piece on paper has beside all others: its size, the grading of its points, its drawing.

Knows nothing of how a shape is graded.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression


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
