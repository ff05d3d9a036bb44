"""Owns which cloth each piece is cut from.

Knows nothing of amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.garment import Garment
    from specc.model.material import Cloth

SHELL = "shell"


def cloth_of(garment: Garment, piece: str) -> Cloth | None:
    """The cloth that names the piece in its `for`, else the first that is for the shell."""
    for cloth in garment.cloths:
        if piece in cloth.use.split(", "):
            return cloth
    return next((cloth for cloth in garment.cloths if cloth.use == SHELL), None)
