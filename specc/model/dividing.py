"""Owns the alteration that makes two edges of one: what is divided where, with amounts still unevaluated.

Knows nothing of how it is carried out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.alteration import Level, Place
    from specc.model.expression import PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Divide:
    """Each edge becomes two that follow one another; the outline stays as it is.

    `into[0]` is the part at the corner from which the place is measured, or the part above a level, and
    `into[1]` the other one. The old name may be one of the two. The corner between them is called
    `corner_between(*into)`.
    """

    edges: tuple[PartRef, ...]
    at: Place | Level
    into: tuple[str, str]
    origin: Span


def corner_between(first: str, second: str) -> str:
    """The name of the corner at which an edge was divided into two of these names."""
    return f"{first}-{second}"
