"""Owns what is wrong with a text before it is read: its size, and letters that cannot be seen.

Knows nothing of the language.
"""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile

CHARACTER = declare("SPC102", "unknown-character", Severity.ERROR, "{character} has no place in {where}")
TOO_LARGE = declare("SPC107", "too-large", Severity.ERROR, "{what} has more than {most} {of}")

# Far above any garment; they bound the time and the memory that a text from a stranger can cost.
MOST_LETTERS = 500_000
MOST_LINES = 20_000

# Controls but tab, line feed and form feed; separators of lines; what turns the direction of writing (Unicode
# Standard Annex 9, explicit formatting characters: a line would not read as it is shown); lone surrogates.
HIDDEN = re.compile(
    "[\x00-\x08\x0b\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]|\r(?!\n)"
)

# Blanks that a word processor or a web page brings along: of other widths, of no width, hidden hyphens.
BLANK = re.compile("[\xa0\xad\u1680\u2000-\u200d\u202f\u205f\u2060\u3000\ufeff]")


def too_large(source: SourceFile) -> Diagnostic | None:
    """Return what is to be said when `source` is too large to be read; None when it is not."""
    counts = ((len(source.text), MOST_LETTERS, "characters"), (source.line_count, MOST_LINES, "lines"))
    for count, most, of in counts:
        if count > most:
            said = TOO_LARGE.at(source.span(0, 0), what="the file", most=most, of=of)
            return said.help("split it into files and take them in with `use`")
    return None


def hidden_letters(source: SourceFile, *, most: int) -> Iterator[Diagnostic]:
    """Say where letters stand that cannot be seen: the first on each line, on `most` lines at the most."""
    line_end = -1
    for found in HIDDEN.finditer(source.text):
        if found.start() < line_end:
            continue
        line_end = source.text.find("\n", found.start()) + 1 or len(source.text)
        yield (
            CHARACTER.at(
                source.span(found.start(), found.end()),
                character=character(found[0]),
                where="the text of a garment",
            )
            .note("it cannot be seen, so the line may not be what it looks like")
            .with_fix(
                "take out what cannot be seen in this line",
                *_without(source, HIDDEN, found.start(), line_end),
                applicability=Applicability.SAFE,
            )
        )
        most -= 1
        if not most:
            return


def foreign_blanks(source: SourceFile, start: int) -> tuple[Edit, ...]:
    """Return the edits that turn blanks of other kinds into plain ones, from `start` to its line's end."""
    line_end = source.text.find("\n", start) + 1 or len(source.text)
    return tuple(_without(source, BLANK, start, line_end))


def _without(source: SourceFile, letters: re.Pattern[str], start: int, end: int) -> Iterator[Edit]:
    for found in letters.finditer(source.text, start, end):
        between = " " if found[0].isspace() else ""
        yield Edit(source.span(found.start(), found.end()), between)


def character(letter: str) -> str:
    """A letter as a message names it: itself if it can be seen, else its number and name in Unicode."""
    if letter.isprintable() and not letter.isspace():
        return f"`{letter}`"
    name = unicodedata.name(letter, "").lower()
    return f"U+{ord(letter):04X}{f' ({name})' if name else ''}"
