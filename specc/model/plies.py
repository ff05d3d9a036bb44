"""Owns pieces that are cut again from another cloth: linings, interfacings, facings of a second cloth.

Knows nothing of what is sewn to what.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class CutAgain:
    """A piece that is also cut from `cloth`: `count` times, or as often as from its own (None).

    `bare` says that no allowance is cut on, as of interfacing that ends at the seam line.
    """

    piece: str
    cloth: str
    count: int | None
    bare: bool
    origin: Span
