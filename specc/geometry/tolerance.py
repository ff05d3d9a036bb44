"""Owns the named tolerances of geometry, in millimetres; knows nothing of what is measured."""

from __future__ import annotations

from typing import Final

FLATTEN: Final = 0.05
"""How far a chain of straight runs may leave the curve that it stands for."""

ARC: Final = 1e-6
"""How closely two estimates of an arc length must agree."""

SAME: Final = 1e-6
"""Two points closer than this are one point."""

GRID: Final = 1e-4
"""Coordinates of a cut line are multiples of this."""
