"""Owns finding the statements that could not be read: they have been reported, and may have said anything.

Knows nothing of what they said beyond the words in them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator


def broken_in(items: Iterable[object]) -> Iterator[tree.Broken]:
    """Those among the items, and in all that stands within them."""
    for item in items:
        if isinstance(item, tree.Broken):
            yield item
        for inner in ("body", "settings", "steps", "runs"):
            yield from broken_in(getattr(item, inner, ()))


def has_broken(items: Iterable[object]) -> bool:
    """Whether there are any."""
    return next(broken_in(items), None) is not None


def broken_words(items: Iterable[object]) -> frozenset[str]:
    """The names that stand in their first lines."""
    return frozenset(word.text for item in broken_in(items) for word in item.words)
