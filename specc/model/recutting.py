"""Owns the alterations that draw edges anew: shaped hems, seams that are moved; amounts are unevaluated.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class EndShift:
    """An end of an edge moves along the edge beside it: up (or down) by `by`, measured along that edge."""

    corner: str
    up: bool
    by: Expression


@dataclass(frozen=True, slots=True)
class Shape:
    """Edges drawn anew as one smooth curve that is square to its neighbours at both ends.

    `shifts` are one or two ends that move before; `full` is how far the curve keeps its direction at either
    end, as a share of the straight way between them (None: a third).
    """

    edges: tuple[PartRef, ...]
    shifts: tuple[EndShift, ...]
    full: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class MoveSeam:
    """A seam line moves onto one of its two pieces, `toward`: what that one loses the other gains.

    By `by` everywhere, or by `by` at corner `at` of the piece that loses, going over evenly to `and_by` at
    `and_at`; amounts are measured square to the straight way between the ends of the seam.
    """

    first: PartRef
    second: PartRef
    by: Expression
    at: str | None
    and_by: Expression | None
    and_at: str | None
    toward: str
    origin: Span


Recutting = Shape | MoveSeam
