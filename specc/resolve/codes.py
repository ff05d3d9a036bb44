"""Owns the codes that several parts of this stage raise, and how a wrong name or value is told.

Knows nothing of any one declaration.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.names import did_you_mean
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Diagnostic
    from specc.source import Span

UNKNOWN_NAME = declare("SPC201", "unknown-name", Severity.ERROR, "there is no {kind} `{name}`{where}")
NAME_TAKEN = declare("SPC202", "name-taken", Severity.ERROR, "there is already {kind} `{name}`{where}")
UNKNOWN_PROPERTY = declare("SPC206", "unknown-property", Severity.ERROR, "{owner} has no {what} `{name}`")
WRONG_VALUE = declare("SPC207", "wrong-value", Severity.ERROR, "`{name}` takes {wanted}, not {found}")
MORE_THAN_ONE = declare(
    "SPC208", "more-than-one", Severity.ERROR, "{owner} takes one {what}, and this is another"
)
NOT_HERE = declare("SPC209", "not-known-here", Severity.ERROR, "`{asked}` is not known here: {reason}")
UNKNOWN_WORD = declare("SPC210", "unknown-word", Severity.ERROR, "`{word}` is not {kind}")
OUT_OF_RANGE = declare("SPC211", "out-of-range", Severity.ERROR, "{what} must be {bounds}, not {found}")
NAMED_TWICE = declare("SPC221", "named-twice", Severity.ERROR, "`{name}` stands twice in one list")
MISSING = declare("SPC302", "missing-property", Severity.ERROR, "{owner} does not say its `{name}`")
EMPTY = declare("SPC304", "empty-body", Severity.ERROR, "{owner} has no {parts}")

_MOST_LISTED = 20


def unknown_name(span: Span, kind: str, name: str, *, known: Iterable[str], where: str = "") -> Diagnostic:
    """Return the diagnostic for a name that nothing bears; its cure is what is near, else what there is."""
    names = tuple(dict.fromkeys(known))
    # Figures are not misspelt letter by letter: size 11 is as far from 10 as from 21.
    near = None if name.isdigit() else did_you_mean(name, names)
    return UNKNOWN_NAME.at(span, kind=kind, name=name, where=where).help(near or there_are(names))


def name_taken(span: Span, kind: str, name: str, *, first: Span | None, where: str = "") -> Diagnostic:
    """Return the diagnostic for a second thing of one name; `kind`, with its article, bears it already."""
    return NAME_TAKEN.at(span, kind=kind, name=name, where=where).see(first, "first here")


def unknown_word(span: Span, word: str, kind: str, *, known: Iterable[str]) -> Diagnostic:
    """Return the diagnostic for a word that is not one of those that may stand there."""
    words = tuple(dict.fromkeys(known))
    return UNKNOWN_WORD.at(span, word=word, kind=kind).help(did_you_mean(word, words) or one_of(words))


def wrong_value(span: Span, name: str, wanted: str) -> Diagnostic:
    """Return the diagnostic for a property whose value has another shape."""
    found = " ".join(span.text.split())
    return WRONG_VALUE.at(span, name=name, wanted=wanted, found=f"`{found}`" if found else "nothing")


def out_of_range(span: Span, what: str, bounds: str, *, found: object) -> Diagnostic:
    """Return the diagnostic for a value of the right kind that is too small or too large."""
    return OUT_OF_RANGE.at(span, what=what, bounds=bounds, found=found)


def there_are(names: Iterable[str]) -> str | None:
    """The names as a cure (``there are `a`, `b` and `c` ``), or None when there are none."""
    quoted = _quoted(names)
    if len(quoted) == 1:
        return f"there is only {quoted[0]}"
    return f"there are {enumerated(quoted, 'and')}" if quoted else None


def one_of(words: Iterable[str]) -> str | None:
    """The words as a cure (``write `a`, `b` or `c` ``), or None when there are none."""
    quoted = _quoted(words)
    return f"write {enumerated(quoted, 'or')}" if quoted else None


def enumerated(items: Iterable[str], joined: str) -> str:
    """The items as a sentence lists them: `a`, `a and b`, `a, b and c`."""
    *before, last = items
    return f"{', '.join(before)} {joined} {last}" if before else last


def unit_missing(text: str, dimension: Dimension) -> str | None:
    """The cure for a bare number where a dimension is wanted; None where no unit would cure it."""
    units = {
        Dimension.LENGTH: f"`{text} in`, `{text} cm` or `{text} mm`",
        Dimension.ANGLE: f"`{text} deg`",
        Dimension.RATIO: f"`{text}%`",
        Dimension.AREA_WEIGHT: f"`{text} g/m2` or `{text} oz/yd2`",
    }
    return f"write a unit: {units[dimension]}" if dimension in units else None


def _quoted(names: Iterable[str]) -> tuple[str, ...]:
    quoted = tuple(f"`{name}`" for name in names)
    if len(quoted) <= _MOST_LISTED:
        return quoted
    return (*quoted[:_MOST_LISTED], f"{len(quoted) - _MOST_LISTED} more")
