"""Every kind of diagnostic has a file in tests/errors that provokes it; tests/README.md says how marks work.

The marks on the lines say which code belongs where, and the text file beside it holds what a person reads.
Both are wanted: the second is written by the program, so the first keeps it from being waved through.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.diagnostics import Applicability
from specc.diagnostics.render_text import render_text
from tests.compiling import is_of_output, said

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic, Fix
    from tests.goldens import Golden

ERRORS = Path(__file__).parent / "errors"
CASES = sorted(ERRORS.glob("*.garment"))

_MARK = re.compile(
    r"#!(?P<where>\^|elsewhere)?(?P<rest>(?:\s+SPC\d{3}\s+\"(?:[^\"\\]|\\.)*\")+)\s*$", re.MULTILINE
)
_ITEM = re.compile(r"(SPC\d{3})\s+(\"(?:[^\"\\]|\\.)*\")")

Place = tuple[int, str, str]  # line (0: in no line of this file), code, text under the caret


def marks(text: str) -> Iterator[Place]:
    """What the marks in `text` promise."""
    for number, line in enumerate(text.split("\n"), start=1):
        mark = _MARK.search(line)
        assert mark or "#!" not in line, f"line {number}: a mark that cannot be read"
        if mark:
            at = {"^": number - 1, "elsewhere": 0}.get(mark["where"], number)
            yield from ((at, code, json.loads(quoted)) for code, quoted in _ITEM.findall(mark["rest"]))


def place(diagnostic: Diagnostic, name: str) -> Place:
    span = diagnostic.span
    if span is None:
        return 0, diagnostic.code.id, ""
    return (span.line if span.file.name == name else 0), diagnostic.code.id, span.text


@cache
def _said(data: bytes | str, case: Path) -> tuple[Diagnostic, ...]:
    return said(data, folder=ERRORS, name=case.name, laid=is_of_output(case.stem))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_each_mistake_is_said_once_and_in_its_place(case: Path) -> None:
    data = case.read_bytes()
    diagnostics = _said(data, case)

    assert sorted(place(diagnostic, case.name) for diagnostic in diagnostics) == sorted(
        marks(data.decode("utf-8", errors="replace"))
    )
    assert case.stem[:6] in {diagnostic.code.id for diagnostic in diagnostics}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_the_words_are_those_that_were_read_and_accepted(case: Path, golden: Golden) -> None:
    golden(case.with_suffix(".txt"), render_text(_said(case.read_bytes(), case)))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_a_safe_fix_cures(case: Path) -> None:
    data = case.read_bytes()
    for diagnostic in _said(data, case):
        if diagnostic.fix and diagnostic.fix.applicability is Applicability.SAFE:
            cured = _said(applied(data.decode(), diagnostic.fix), case)
            before = place(diagnostic, case.name)
            assert before not in {place(left, case.name) for left in cured}


def applied(text: str, fix: Fix) -> str:
    """`text` after the edits of `fix`."""
    for edit in sorted(fix.edits, key=lambda edit: edit.span.start, reverse=True):
        text = text[: edit.span.start] + edit.replacement + text[edit.span.end :]
    return text


def test_no_text_file_is_left_without_its_case() -> None:
    assert {path.stem for path in ERRORS.glob("*.txt")} <= {case.stem for case in CASES}
