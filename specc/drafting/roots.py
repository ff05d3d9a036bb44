"""Owns finding where a function of one number is zero between bounds; knows nothing of its meaning."""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable

TOLERANCE: Final = 1e-9
"""How closely the unknown is found, in millimetres or radians."""


SPACING: Final = 4e-16
"""The distance of neighbouring floats as a share of their size: no bracket is narrower."""


def root(function: Callable[[float], float], low: float, high: float) -> float | tuple[float, float]:
    """The place between `low` and `high` where the function is 0, to TOLERANCE or as floats allow.

    Where its values at the bounds have the same sign there is no telling, and they are returned instead.
    Method: T. R. Chandrupatla, Advances in Engineering Software 28 (1997), 145-149 (from memory): inverse
    quadratic steps where three points allow them, halving elsewhere, never much worse than halving.
    """
    a, b = high, low
    fa, fb = function(a), function(b)
    if fa == 0.0 or fb == 0.0:
        return a if fa == 0.0 else b
    if (fa > 0.0) == (fb > 0.0):
        return fb, fa
    c, fc, t = a, fa, 0.5
    while True:
        x = a + t * (b - a)
        fx = function(x)
        if (fx > 0.0) == (fa > 0.0):
            c, fc = a, fa
        else:
            c, b, fc, fb = b, a, fb, fa
        a, fa = x, fx
        best, value = (a, fa) if abs(fa) < abs(fb) else (b, fb)
        least = (TOLERANCE + SPACING * abs(best)) / abs(b - c) if b != c else 1.0
        if value == 0.0 or least > 0.5:
            return best
        t = max(least, min(1.0 - least, _share(a, b, c, fa=fa, fb=fb, fc=fc)))


def _share(a: float, b: float, c: float, *, fa: float, fb: float, fc: float) -> float:  # noqa: PLR0913 three points
    """The share of the way from a to b to try next: by inverse parabola if it can be trusted, else half."""
    xi, phi = (a - b) / (c - b), (fa - fb) / (fc - fb)
    if 1.0 - sqrt(1.0 - xi) < phi < sqrt(xi):
        return fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    return 0.5
