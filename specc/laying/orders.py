"""Owns dividing an order into lays: which sizes lie together, how many plies high, how often.

Knows nothing of outlines: whether a lay is too long for the table is asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.laying.plan import Ratio
from specc.model.spreading import GARMENT, SET, STACKED

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    Fits = Callable[[tuple[Ratio, ...]], bool]


_FEW, _SHARES = 200, 1 << 30  # garments that are tried one by one; shares of an order that are tried


@dataclass(frozen=True, slots=True)
class Spread:
    """A lay to be made: garments of `ratio`, `plies` high, `times` over."""

    ratio: tuple[Ratio, ...]
    plies: int
    times: int


def spreads(cutting: str, order: tuple[Ratio, ...], fits: Fits, *, plies: int) -> tuple[Spread, ...]:
    """Lays that give exactly the order; none higher than `plies`, none of several garments that does not fit.

    Raises KeyError for a way that is not one of CUTTINGS.
    """
    left = {each.size: each.count for each in order if each.count > 0}
    divide = {GARMENT: _garments, SET: _sets, STACKED: _stacks}[cutting]
    return tuple(divide(left, fits, plies))


def _garments(left: dict[str, int], _fits: Fits, _plies: int) -> Iterable[Spread]:
    for size, count in left.items():
        yield Spread((Ratio(size, 1),), 1, count)


def _sets(left: dict[str, int], fits: Fits, _plies: int) -> Iterable[Spread]:
    """All sizes still wanted, once each, as often as the scarcest of them; what does not fit waits."""
    while left:
        ratio = _trimmed(dict.fromkeys(left, 1), fits)
        times = min(left[each.size] for each in ratio)
        yield Spread(ratio, 1, times)
        left = _less(left, ratio, times)


def _stacks(left: dict[str, int], fits: Fits, plies: int) -> Iterable[Spread]:
    """The lay that takes most garments off the order, the highest of equals; again for what is left."""
    while left:
        found = []
        for high in range(1, min(plies, max(left.values())) + 1):
            ratio = _trimmed({size: count // high for size, count in left.items() if count >= high}, fits)
            found.append((high * sum(each.count for each in ratio), high, ratio))
        _, high, ratio = max(found, key=lambda each: each[:2])
        times = min(left[each.size] // (each.count * high) for each in ratio)
        yield Spread(ratio, high, times)
        left = _less(left, ratio, high * times)


def _trimmed(wanted: dict[str, int], fits: Fits) -> tuple[Ratio, ...]:
    """The ratio, with one garment after the other taken out of the most frequent size until it fits.

    What is far too long is first made shorter in proportion.
    """
    counts = _in_proportion(wanted, fits)
    while True:
        ratio = _ratio(counts)
        if sum(counts.values()) <= 1 or fits(ratio):
            return ratio
        most = max(counts.values())
        size = next(size for size in reversed(counts) if counts[size] == most)
        counts[size] -= 1


def _in_proportion(wanted: dict[str, int], fits: Fits) -> dict[str, int]:
    """The counts themselves where garments are few or all fit; else a share of each, a little too long."""
    low, high = 0, _SHARES
    while sum(wanted.values()) > _FEW and high - low > 1:
        middle = (low + high) // 2
        part = {size: count * middle // _SHARES for size, count in wanted.items()}
        low, high = (middle, high) if fits(_ratio(part)) else (low, middle)
    return {size: -(-count * high // _SHARES) for size, count in wanted.items()}


def _ratio(counts: dict[str, int]) -> tuple[Ratio, ...]:
    return tuple(Ratio(size, count) for size, count in counts.items() if count)


def _less(left: dict[str, int], ratio: tuple[Ratio, ...], times: int) -> dict[str, int]:
    cut = {each.size: each.count * times for each in ratio}
    return {size: rest for size, count in left.items() if (rest := count - cut.get(size, 0)) > 0}
