"""Owns which place of one side of a seam meets which place of the other when the seam is sewn.

Knows nothing of edges: a side is a length with places on it. Walked from either end, the two sides meet at
equal lengths. Where one is eased or gathered into the other they no longer do: the fullness is then taken to
lie between the outermost pairs of notches that both sides have, or along the whole seam where there are none,
and to be shared out evenly (common practice, no source).
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

CLOSE: Final = 0.5
"""Places that meet this nearly, in millimetres, are one place whatever a seam's tolerance says."""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Pairs of lengths from the beginning of each side at which the two meet, rising, both ends included."""

    pins: tuple[tuple[float, float], ...]

    def onto(self, along: float) -> float:
        """The place of the second side that meets a place of the first."""
        return _carried(along, self.pins)

    def back(self, along: float) -> float:
        """The place of the first side that meets a place of the second."""
        return _carried(along, tuple((second, first) for first, second in self.pins))

    def eased(self, tolerance: float) -> tuple[tuple[float, float], ...]:
        """The stretches of the second side along which the first is fuller or tighter, end to end as one."""
        found: list[tuple[float, float]] = []
        for (a, p), (b, q) in pairwise(self.pins):
            if abs((b - a) - (q - p)) <= max(tolerance, CLOSE):
                continue
            if found and found[-1][1] == p:
                found[-1] = (found[-1][0], q)
            else:
                found.append((p, q))
        return tuple(found)


def meeting(
    lengths: tuple[float, float],
    joints: Iterable[tuple[float, float]],
    notches: tuple[Sequence[float], Sequence[float]],
    tolerance: float,
) -> Meeting:
    """How two sides meet: at their ends, at `joints`, and at notches equally far from one of those."""
    near = max(tolerance, CLOSE)
    pins = _kept([(0.0, 0.0), lengths, *joints])
    found = [
        (a, b) for a in notches[0] for b in notches[1] if any(abs((a - p) - (b - q)) <= near for p, q in pins)
    ]
    # Of several that would do, the pair that agrees best.
    found.sort(key=lambda pair: min(abs((pair[0] - p) - (pair[1] - q)) for p, q in pins))
    return Meeting(tuple(sorted(_kept([*pins, *found]))))


def _kept(pairs: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    """The pairs, those left out that would let one side run back against the other."""
    kept: list[tuple[float, float]] = []
    for a, b in pairs:
        if all((a - p) * (b - q) > 0.0 for p, q in kept):
            kept.append((a, b))
    return kept


def _carried(along: float, pins: tuple[tuple[float, float], ...]) -> float:
    index = min(max(bisect_right(pins, along, key=lambda pin: pin[0]), 1), len(pins) - 1)
    (a, p), (b, q) = pins[index - 1], pins[index]
    return p + (q - p) * (along - a) / (b - a)
