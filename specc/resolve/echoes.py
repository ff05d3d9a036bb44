"""Owns keeping one mistake from being told twice: faults that only follow from another are left out.

Knows nothing of how faults are found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.resolve.alterations import NOTHING_LEFT
from specc.resolve.codes import MISSING, UNKNOWN_NAME
from specc.resolve.parts import GONE
from specc.resolve.settings import NOT_SET
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from specc.diagnostics import Diagnostic

_PARTS = frozenset(("piece", "reference line", "edge", "point", "line", "dart", "corner"))
# What cannot be known once a chart, a block or a file is missing.
_KINDS_OF = {
    "chart": frozenset(("measurement or value", "size")),
    "block": _PARTS,
    "name": frozenset(("cloth", "trim")),
    "file": _PARTS | {"measurement or value", "chart", "block", "method", "cloth", "trim", "finish or hem"},
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
    said: Sequence[Diagnostic], broken: frozenset[str], missing: Iterable[str]
) -> tuple[Diagnostic, ...]:
    """The diagnostics without those that follow from a broken statement or a missing chart, block or file.

    What is said of the same name twice in one line, or twice of one place, is said once.
    """
    silent = frozenset(kind for cause in missing for kind in _KINDS_OF[cause])
    if any(diagnostic.code is NOTHING_LEFT for diagnostic in said):
        said = tuple(diagnostic for diagnostic in said if diagnostic.code is not GONE)
    kept: dict[tuple[object, ...], Diagnostic] = {}
    for diagnostic in said:
        if not _follows(diagnostic, broken, silent):
            kept.setdefault(_place(diagnostic), diagnostic)
    return tuple(kept.values())


def _follows(diagnostic: Diagnostic, broken: frozenset[str], silent: frozenset[str]) -> bool:
    facts = dict(diagnostic.facts)
    if diagnostic.code is UNKNOWN_NAME:
        kinds = str(facts["kind"])
        return facts["name"] in broken or not silent.isdisjoint({kinds, *kinds.split(" or ")})
    return diagnostic.code in (MISSING, NOT_SET) and facts["name"] in broken


def _place(diagnostic: Diagnostic) -> tuple[object, ...]:
    """What tells two diagnostics apart: code, words and line; of the others the very place."""
    span = diagnostic.span
    if span is None:
        return diagnostic.code.id, diagnostic.message
    same_line = diagnostic.code in (UNKNOWN_NAME, GONE)
    return diagnostic.code.id, diagnostic.message, span.file.name, span.line if same_line else span
