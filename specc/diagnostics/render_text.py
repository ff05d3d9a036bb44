"""Owns showing diagnostics to people: message, place, the lines themselves with carets, facts and cures.

Knows nothing of files or terminals beyond whether one wants colour.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from rich.cells import cell_len

from specc.diagnostics.model import Severity

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence
    from typing import TextIO

    from specc.diagnostics.model import Diagnostic, Label
    from specc.source import Span

_TAB = "    "
# A line longer than this is shown from shortly before its label on.
_WIDEST = 160
_BEFORE = 40
_STYLES = {Severity.ERROR: "bold red", Severity.WARNING: "bold yellow", Severity.NOTE: "bold cyan"}
_PLACE = "blue"
_STRONG = "bold"
_CURE = "green"

Segment = tuple[str, str]  # text, style ("" for none)


def wants_colour(stream: TextIO, environment: Mapping[str, str]) -> bool:
    """Whether `stream` is a terminal whose user has not asked for plain text (NO_COLOR, TERM=dumb)."""
    return not environment.get("NO_COLOR") and environment.get("TERM") != "dumb" and stream.isatty()


def render_text(diagnostics: Sequence[Diagnostic], *, colour: bool = False) -> str:
    """The diagnostics one below the other, with a line of totals; empty when there are none.

    With `colour`, ANSI escapes of the sixteen standard colours are put in; texts and names never can.
    """
    if not diagnostics:
        return ""
    lines: list[list[Segment]] = []
    for diagnostic in diagnostics:
        lines.extend(_diagnostic(diagnostic))
        lines.append([])
    lines.append([(_totals(diagnostics), _STRONG)])
    return _coloured(lines) if colour else "".join(_plain(line) for line in lines)


def _plain(line: Sequence[Segment]) -> str:
    return "".join(text for text, _ in line).rstrip() + "\n"


def _coloured(lines: Iterable[Sequence[Segment]]) -> str:
    from rich.console import Console  # noqa: PLC0415 - only a terminal pays for it
    from rich.text import Text  # noqa: PLC0415

    console = Console(color_system="standard", force_terminal=True, highlight=False, no_color=False)
    with console.capture() as captured:
        for line in lines:
            console.print(Text.assemble(*line), soft_wrap=True)
    return captured.get()


def _diagnostic(diagnostic: Diagnostic) -> Iterator[list[Segment]]:
    style = _STYLES[diagnostic.severity]
    yield [
        (f"{diagnostic.severity}[{diagnostic.code.id}]", style),
        (f": {_shown(diagnostic.message)}", _STRONG),
    ]
    marks = [_Mark(label, "-", _PLACE) for label in diagnostic.related]
    if diagnostic.primary:
        marks.insert(0, _Mark(diagnostic.primary, "^", style))
    width = max((len(str(mark.span.line)) for mark in marks), default=0)
    # One excerpt a file: that of the place to blame comes first, the others in order of their names.
    first = diagnostic.span and diagnostic.span.file.name
    marks.sort(key=lambda mark: (mark.span.file.name != first, mark.span.file.name, mark.span.start))
    for _, of_file in groupby(marks, key=lambda mark: mark.span.file):
        yield from _excerpt(tuple(of_file), width)
    margin = " " * (width + 1) if marks else " "
    for kind, texts, text_style in (("note", diagnostic.notes, ""), ("help", _cures(diagnostic), _CURE)):
        for text in texts:
            head, *rest = text.splitlines() or [""]
            yield [(f"{margin}= ", _PLACE), (kind, _STRONG), (f": {_shown(head)}", text_style)]
            yield from ([(f"{margin}        {_shown(line)}", text_style)] for line in rest)


def _cures(diagnostic: Diagnostic) -> tuple[str, ...]:
    return diagnostic.helps if diagnostic.fix is None else (*diagnostic.helps, diagnostic.fix.title)


@dataclass(frozen=True, slots=True)
class _Mark:
    """A label and how it is underlined."""

    label: Label
    stroke: str
    style: str

    @property
    def span(self) -> Span:
        return self.label.span

    @property
    def text(self) -> str:
        more = f"(to line {self.span.end_line})" if self.span.end_line > self.span.line else ""
        return " ".join(part for part in (_shown(self.label.text), more) if part)


def _excerpt(marks: Sequence[_Mark], width: int) -> Iterator[list[Segment]]:
    """The lines of one file that carry `marks`, each above its underlines."""
    blamed = next((mark for mark in marks if mark.stroke == "^"), marks[0])
    yield [(f"{' ' * width}--> ", _PLACE), (_shown(str(blamed.span)), "")]
    yield [(f"{' ' * width} |", _PLACE)]
    before = None
    for number, of_line in groupby(marks, key=lambda mark: mark.span.line):
        if before is not None and number > before + 1:
            yield [("...", _PLACE)]
        before = number
        on_line = tuple(of_line)
        start, line = _window(blamed.span.file.line(number), on_line)
        yield [(f"{number:>{width}} | ", _PLACE), (_shown(line), "")]
        for mark in on_line:
            begin = max(mark.span.column - 1 - start, 0)
            ends_here = mark.span.end_line == number
            end = max(mark.span.end_column - 1 - start if ends_here else len(line), begin)
            strokes = mark.stroke * max(cell_len(_shown(line[begin:end])), 1)
            indent = " " * cell_len(_shown(line[:begin]))
            yield [(f"{' ' * width} | {indent}", _PLACE), (f"{strokes} {mark.text}", mark.style)]


def _window(line: str, marks: Sequence[_Mark]) -> tuple[int, str]:
    """The part of `line` to show and the index in the line at which it starts."""
    if len(line) <= _WIDEST:
        return 0, line
    start = max(marks[0].span.column - 1 - _BEFORE, 0)
    return start, line[start : start + _WIDEST]


def _shown(text: str) -> str:
    """`text` with tabs spread out, and all that could steer a terminal or turn the writing made visible."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_letter(letter) for letter in text)


def _letter(letter: str) -> str:
    if letter == "\t":
        return _TAB
    if letter < " ":
        return chr(0x2400 + ord(letter))  # the control pictures of Unicode
    category = unicodedata.category(letter)
    turns = unicodedata.bidirectional(letter) in _TURNS
    return "\N{REPLACEMENT CHARACTER}" if category in ("Cc", "Cs", "Zl", "Zp") or turns else letter


_TURNS = frozenset(("LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"))


def _totals(diagnostics: Sequence[Diagnostic]) -> str:
    counts = []
    for severity in sorted(Severity, reverse=True):
        count = sum(diagnostic.severity is severity for diagnostic in diagnostics)
        if count:
            counts.append(f"{count} {severity}{'' if count == 1 else 's'}")
    worst = max(diagnostics, key=lambda diagnostic: diagnostic.severity)
    return f"{', '.join(counts)}; specc explain {worst.code.id} says more"
