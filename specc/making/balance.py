"""Owns where a seam gets notches of its own so that it can be sewn without drifting; knows nothing of pieces.

The figures are common practice, no source: short seams need none, since their ends guide them; a seam gets
one in its middle; no stretch between two places that meet is left longer than three spans of a hand.
"""

from __future__ import annotations

from itertools import pairwise
from math import ceil
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

SHORTEST: Final = 150.0
"""A seam or a gathered stretch shorter than this, in millimetres, has no balance notch."""

LONGEST: Final = 600.0
"""A longer stretch between two places that meet, in millimetres, is divided evenly."""


def balance_points(length: float, places: Iterable[float], *, gathered: bool) -> Iterator[float]:
    """Where balance notches go along a seam of a length on which places are marked already.

    Gathers are drawn up stretch by stretch between notches: every stretch is halved.
    """
    stops = sorted({0.0, length, *places})
    bare = len(stops) == len((0.0, length))
    for low, high in pairwise(stops):
        stretch = high - low
        parts = ceil(stretch / LONGEST)
        if stretch >= SHORTEST and (bare or gathered):
            parts = max(2, parts)
        yield from (low + stretch * part / parts for part in range(1, parts))
