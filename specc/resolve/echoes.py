"""Owns keeping one mistake from being told twice: faults that only follow from another are left out.

Knows nothing of how faults are found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.resolve.alterations import NOTHING_LEFT
from specc.resolve.codes import MISSING, UNKNOWN_NAME
from specc.resolve.parts import GONE
from specc.resolve.settings import NOT_SET

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from specc.diagnostics import Diagnostic

_MOST_PLACES = 5
_PARTS = frozenset(("piece", "reference line", "edge", "point", "line", "dart", "corner"))
# What cannot be known once a chart, a block or a file is missing.
_KINDS_OF = {
    "chart": frozenset(("measurement or value", "size")),
    "block": _PARTS,
    "name": frozenset(("cloth", "trim")),
    "file": _PARTS | {"measurement or value", "chart", "block", "method", "cloth", "trim", "finish or hem"},
}


def without_echoes(
    said: Sequence[Diagnostic], broken: frozenset[str], missing: Iterable[str]
) -> tuple[Diagnostic, ...]:
    """The diagnostics without those that follow from a broken statement or a missing chart, block or file.

    A name that is spoken of in many places and is not there is said once, with all the places.
    """
    silent = frozenset(kind for cause in missing for kind in _KINDS_OF[cause])
    if any(diagnostic.code is NOTHING_LEFT for diagnostic in said):
        said = tuple(diagnostic for diagnostic in said if diagnostic.code is not GONE)
    groups: dict[tuple[object, ...], list[Diagnostic]] = {}
    for diagnostic in said:
        if not _follows(diagnostic, broken, silent):
            groups.setdefault(_sameness(diagnostic), []).append(diagnostic)
    return tuple(_together(first, others) for first, *others in groups.values())


def _follows(diagnostic: Diagnostic, broken: frozenset[str], silent: frozenset[str]) -> bool:
    facts = dict(diagnostic.facts)
    if diagnostic.code is UNKNOWN_NAME:
        kinds = str(facts["kind"])
        return facts["name"] in broken or not silent.isdisjoint({kinds, *kinds.split(" or ")})
    return diagnostic.code in (MISSING, NOT_SET) and facts["name"] in broken


def _sameness(diagnostic: Diagnostic) -> tuple[object, ...]:
    """What tells two diagnostics apart: code and words; but for names also the very place."""
    span = diagnostic.span
    if span is None:
        return diagnostic.code.id, diagnostic.message
    of_name = diagnostic.code in (UNKNOWN_NAME, GONE)
    return diagnostic.code.id, diagnostic.message, span.file.name, None if of_name else span


def _together(first: Diagnostic, others: Sequence[Diagnostic]) -> Diagnostic:
    """The first, with the places of the others."""
    places = {other.span: None for other in others if other.span != first.span}
    told = first
    for place in tuple(places)[:_MOST_PLACES]:
        told = told.see(place, "and here")
    left = len(places) - _MOST_PLACES
    return told.note(f"and in {left} more place{'' if left == 1 else 's'}") if left > 0 else told
