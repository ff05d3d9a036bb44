"""Owns spacing things along a length: so many evenly, or one every so far, one of them at a given place.

Knows nothing of pieces. All lengths are millimetres along the side, from its beginning.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

SAME: Final = 0.05  # mm; less is not told apart when it is marked
MOST: Final = 500  # fastenings; more is a slip of the unit


@dataclass(frozen=True, slots=True)
class Spread:
    """What is to be spaced on a side `length` long: `count` of it, or one `every` so far.

    `first` and `last` are the places of the outermost two; `last` may lie before `first`. Where they are
    None, these lie half a space from the ends of the side. `at` is where one of them must lie.
    """

    length: float
    count: int | None
    every: float | None
    first: float | None
    last: float | None
    at: float | None


def spread(wanted: Spread) -> tuple[float, ...] | str:
    """The places from the first to the last; or why they cannot be had, in words that complete a sentence."""
    first, last = _ends(wanted)
    if not all(-SAME <= one <= wanted.length + SAME for one in (first, last)):
        return "the first or the last lies beyond the end of its side"
    at = wanted.at
    if wanted.count == 1:
        return (first if at is None else at,)
    if at is not None and not min(first, last) - SAME <= at <= max(first, last) + SAME:
        return "the line does not lie between the first and the last"
    if wanted.every is not None:
        return _every(wanted.every, first, last, at)
    if abs(last - first) <= SAME:
        return "the first and the last lie on each other"
    count = wanted.count or 0
    evenly = tuple(first + (last - first) * index / (count - 1) for index in range(count))
    return evenly if at is None else _through(count, first, last, at)


def _ends(wanted: Spread) -> tuple[float, float]:
    """The places of the first and the last."""
    if wanted.first is not None:
        return wanted.first, wanted.first if wanted.last is None else wanted.last
    space = wanted.length / (wanted.count or 1)
    if wanted.every is not None:
        # As many as there is room for, in the middle of the side.
        most = max(1, int((wanted.length + SAME) // wanted.every))
        space = wanted.length - (most - 1) * wanted.every
    return 0.5 * space, wanted.length - 0.5 * space


def _every(every: float, first: float, last: float, at: float | None) -> tuple[float, ...] | str:
    """One every so far from the first, or from the one that must be met, none beyond the outermost."""
    way = 1.0 if last >= first else -1.0
    reach = abs(last - first)
    if reach / every > MOST:
        return f"there would be more than {MOST}"
    offset = 0.0 if at is None else abs(at - first) % every
    if every - offset <= SAME:
        offset = 0.0
    count = int((reach - offset + SAME) // every) + 1
    return tuple(first + way * (offset + index * every) for index in range(count))


def _through(count: int, first: float, last: float, at: float) -> tuple[float, ...] | str:
    """Evenly spaced before and behind the one that must be met, as much alike on both sides as can be."""
    before, behind = abs(at - first), abs(last - at)
    gaps = count - 1
    if before <= SAME:
        met = 0
    elif behind <= SAME:
        met = gaps
    elif gaps > 1:
        met = min(range(1, gaps), key=lambda index: abs(before / index - behind / (gaps - index)))
    else:
        return "one between the first and the last takes three at least"
    front = tuple(first + (at - first) * index / met for index in range(met))
    rest = gaps - met
    back = tuple(at + (last - at) * index / rest for index in range(1, rest + 1))
    return (*front, at, *back)
