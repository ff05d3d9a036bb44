"""Owns keeping one mistake from being told twice: faults that only follow from another are left out.

Knows nothing of how faults are found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.resolve.codes import UNKNOWN_NAME
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.diagnostics import Diagnostic

# What cannot be known once a chart or a block is missing.
_KINDS_OF = {
    "chart": ("measurement or value", "size"),
    "block": ("piece", "reference line", "edge", "point", "line", "dart", "corner", "measurement or value"),
}


def broken_words(declarations: Iterable[object]) -> frozenset[str] | None:
    """The names that stand in statements which could not be read; None when all could be read."""
    found = list(_broken(declarations))
    return frozenset(word.text for item in found for word in item.words) if found else None


def _broken(items: Iterable[object]) -> Iterator[tree.Broken]:
    for item in items:
        if isinstance(item, tree.Broken):
            yield item
        for inner in ("body", "settings", "steps", "runs"):
            yield from _broken(getattr(item, inner, ()))


def without_echoes(
    said: Iterable[Diagnostic], broken: frozenset[str], failed: tuple[str, ...]
) -> tuple[Diagnostic, ...]:
    """The diagnostics without those of names that a statement with a fault, or a missing chart or block, would give."""
    silent = {kind for cause in failed for kind in _KINDS_OF[cause]}
    return tuple(diagnostic for diagnostic in said if not _echo(diagnostic, broken, silent))


def _echo(diagnostic: Diagnostic, broken: frozenset[str], silent: set[str]) -> bool:
    if diagnostic.code is not UNKNOWN_NAME:
        return False
    facts = dict(diagnostic.facts)
    kinds = str(facts["kind"]).split(" or ") + [str(facts["kind"])]
    return facts["name"] in broken or any(kind in silent for kind in kinds)
