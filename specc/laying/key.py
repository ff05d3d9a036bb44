"""Owns what a layout is known by: a hash of the strip's width, gap, outlines, counts and angles.

Knows nothing of files.
"""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.packing import Shape, Strip


def key(strip: Strip) -> str:
    """The first 32 hexadecimal digits of the SHA-256 of the strip as text, in thousandths of a millimetre."""
    lines = [f"{_said(strip.width)} {_said(strip.gap)}", *(_line(shape) for shape in strip.shapes)]
    return sha256("\n".join(lines).encode()).hexdigest()[:32]


def _line(shape: Shape) -> str:
    angles = ",".join(_said(angle) for angle in shape.angles)
    points = " ".join(f"{_said(p.x)},{_said(p.y)}" for p in shape.outline)
    return f"{shape.name}|{shape.count}|{angles}|{int(shape.pinned)}|{points}"


def _said(value: float) -> str:
    """Three decimals; what rounds to nothing has no sign."""
    return f"{round(value, 3) + 0.0:.3f}"
