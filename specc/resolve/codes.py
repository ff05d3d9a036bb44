"""Owns the codes that several parts of this stage raise, and how a wrong value or name is told.

Knows nothing of any one declaration.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.names import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Diagnostic
    from specc.source import Span

UNKNOWN_NAME = declare("SPC201", "unknown-name", Severity.ERROR, "there is no {kind} `{name}`{where}")
NAME_TAKEN = declare("SPC202", "name-taken", Severity.ERROR, "{kind} `{name}` is declared twice")
UNKNOWN_PROPERTY = declare("SPC206", "unknown-property", Severity.ERROR, "{kind} has no property `{name}`")
WRONG_VALUE = declare("SPC207", "wrong-value", Severity.ERROR, "`{name}` takes {wanted}, not {found}")
UNKNOWN_WORD = declare("SPC210", "unknown-word", Severity.ERROR, "`{word}` is not {kind}")
OUT_OF_RANGE = declare("SPC211", "out-of-range", Severity.ERROR, "{what} must be {bounds}, not {found}")
MISSING = declare("SPC302", "missing-property", Severity.ERROR, "{owner} does not say its `{name}`")


def unknown_name(span: Span, kind: str, name: str, *, known: Iterable[str], where: str = "") -> Diagnostic:
    """Return the diagnostic for a name that nothing bears, with the nearest names or all of them if they are few."""
    names = sorted(set(known))
    said = UNKNOWN_NAME.at(span, kind=kind, name=name, where=where)
    near = did_you_mean(name, names)
    return said.help(near) if near else said.help(listed(names))


def unknown_word(span: Span, word: str, kind: str, *, known: Iterable[str]) -> Diagnostic:
    """Return the diagnostic for a word that is not one of those that may stand there."""
    words = sorted(set(known))
    return UNKNOWN_WORD.at(span, word=word, kind=kind).help(did_you_mean(word, words) or listed(words))


def wrong_value(span: Span, name: str, wanted: str) -> Diagnostic:
    """Return the diagnostic for a property whose value has another shape."""
    found = span.text.strip()
    return WRONG_VALUE.at(span, name=name, wanted=wanted, found=f"`{found}`" if found else "nothing")


def listed(names: Iterable[str]) -> str | None:
    """The names as a cure (``there are `a`, `b` and `c` ``), or None when there are none or too many to read."""
    quoted = [f"`{name}`" for name in names]
    most = 12
    if not quoted or len(quoted) > most:
        return None
    if len(quoted) == 1:
        return f"there is {quoted[0]}"
    return f"there are {', '.join(quoted[:-1])} and {quoted[-1]}"
