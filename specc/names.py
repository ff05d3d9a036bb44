"""Owns guessing which known name was meant by a misspelt one.

Knows nothing of what the names stand for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

# A longer word is nobody's slip of the pen, and comparing costs length times length.
_LONGEST = 80


def nearest(name: str, known: Iterable[str], *, most: int = 3) -> tuple[str, ...]:
    """Return the names in `known` that `name` may stand for, likeliest first, `most` at the most.

    A name is near when a third of its letters at most must be put in, left out, replaced or swapped with a
    neighbour; letter case and `_` for `-` cost nothing. Names equally near come in alphabetical order.
    """
    if len(name) > _LONGEST:
        return ()
    wanted = _folded(name)
    ranked = []
    for candidate in set(known):
        if candidate == name or len(candidate) > _LONGEST:
            continue
        folded = _folded(candidate)
        allowed = max(len(wanted), len(folded)) // 3 or (1 if len(wanted) > 1 else 0)
        if abs(len(wanted) - len(folded)) <= allowed and (distance := _distance(wanted, folded)) <= allowed:
            ranked.append((distance, candidate))
    return tuple(candidate for _, candidate in sorted(ranked)[:most])


def did_you_mean(name: str, known: Iterable[str], *, most: int = 3) -> str | None:
    """Return the question ``did you mean `a`, `b` or `c`?``, or None when nothing is near."""
    quoted = [f"`{candidate}`" for candidate in nearest(name, known, most=most)]
    if not quoted:
        return None
    listed = " or ".join(part for part in (", ".join(quoted[:-1]), quoted[-1]) if part)
    return f"did you mean {listed}?"


def _folded(name: str) -> str:
    return name.casefold().replace("_", "-")


def _distance(first: str, second: str) -> int:
    """Return the optimal string alignment distance: edits of one letter and swaps of two neighbours."""
    before_last: list[int] = []
    last = list(range(len(second) + 1))
    for row, letter in enumerate(first, start=1):
        current = [row]
        for column, other in enumerate(second, start=1):
            cost = min(last[column] + 1, current[-1] + 1, last[column - 1] + (letter != other))
            swapped = row > 1 and column > 1 and letter == second[column - 2] and first[row - 2] == other
            current.append(min(cost, before_last[column - 2] + 1) if swapped else cost)
        before_last, last = last, current
    return last[-1]
