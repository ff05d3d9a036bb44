"""Owns in what two sheets differ: in their values, and on their pages.

Knows nothing of why.
"""

from __future__ import annotations

from itertools import zip_longest
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_ABSENT = "nothing"
_LONGEST = 60  # letters of a value that are shown


class Difference(NamedTuple):
    """A value that two results have otherwise: where it stands, as members with dots between."""

    path: str
    one: str
    other: str


def values(one: object, other: object, *, added: bool = True, path: str = "") -> Iterator[Difference]:
    """The values that differ between two trees as JSON has them, in the order of the first.

    `added`: whether members that only the other has are a difference.
    """
    if isinstance(one, dict) and isinstance(other, dict):
        for name in dict.fromkeys((*one, *(other if added else ()))):
            below = f"{path}.{name}" if path else str(name)
            yield from values(one.get(name), other.get(name), added=added, path=below)
    elif isinstance(one, list) and isinstance(other, list):
        for number, (left, right) in enumerate(zip_longest(one, other), start=1):
            yield from values(left, right, added=added, path=f"{path}.{number}")
    elif one != other:
        yield Difference(path, _shown(one), _shown(other))


def count(tree: object) -> int:
    """How many plain values there are in a tree."""
    if isinstance(tree, dict):
        return sum(map(count, tree.values()))
    if isinstance(tree, list):
        return sum(map(count, tree))
    return 1


def pages(one: Sequence[str], other: Sequence[str]) -> tuple[int, ...]:
    """The numbers of the pages, from 1, whose texts differ."""
    both = enumerate(zip_longest(one, other), start=1)
    return tuple(number for number, (left, right) in both if left != right)


def _shown(value: object) -> str:
    text = (
        _ABSENT
        if value is None
        else f"{value}"
        if isinstance(value, str | int | float)
        else "more than one value"
    )
    return text if len(text) <= _LONGEST else f"{text[:_LONGEST]}…"
