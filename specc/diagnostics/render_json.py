"""Owns showing diagnostics to programs as JSON of our own shape, version 1.

Knows nothing of SARIF.
"""

from __future__ import annotations

import json
import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics.model import Diagnostic, Fix, Label
    from specc.source import Span

VERSION = 1


def render_json(diagnostics: Iterable[Diagnostic]) -> str:
    """`{"version": 1, "diagnostics": [...]}`; places count code points, lines and columns from 1."""
    return dumped({"version": VERSION, "diagnostics": [as_data(diagnostic) for diagnostic in diagnostics]})


def as_data(diagnostic: Diagnostic, *, as_called: bool = True) -> dict[str, object]:
    """One diagnostic as JSON values.

    Files go by the names that the user called them, or else by their paths in the project.
    """
    return {
        "code": diagnostic.code.id,
        "name": diagnostic.code.name,
        "severity": str(diagnostic.severity),
        "message": diagnostic.message,
        "label": diagnostic.primary and diagnostic.primary.text,
        "span": diagnostic.span and _span(diagnostic.span, as_called=as_called),
        "related": [_label(label, as_called=as_called) for label in diagnostic.related],
        "notes": list(diagnostic.notes),
        "helps": list(diagnostic.helps),
        "fix": diagnostic.fix and _fix(diagnostic.fix, as_called=as_called),
        "facts": {name: _fact(value) for name, value in diagnostic.facts},
    }


def dumped(value: object) -> str:
    """`value` as JSON text in a fixed form; a lone surrogate, which UTF-8 cannot carry, is escaped."""
    text = json.dumps(value, indent=2, ensure_ascii=False, allow_nan=False)
    return text.encode("utf-8", errors="backslashreplace").decode("utf-8") + "\n"


def _span(span: Span, *, as_called: bool) -> dict[str, object]:
    return {
        "file": span.file.shown if as_called else span.file.name,
        "start": span.start,
        "end": span.end,
        "line": span.line,
        "column": span.column,
        "end_line": span.end_line,
        "end_column": span.end_column,
    }


def _label(label: Label, *, as_called: bool) -> dict[str, object]:
    return {"text": label.text, "span": _span(label.span, as_called=as_called)}


def _fix(fix: Fix, *, as_called: bool) -> dict[str, object]:
    return {
        "title": fix.title,
        "applicability": str(fix.applicability),
        "edits": [
            {"span": _span(edit.span, as_called=as_called), "replacement": edit.replacement}
            for edit in fix.edits
        ],
    }


def _fact(value: object) -> object:
    """Numbers stay numbers; what JSON has no word for is written as the message has it."""
    if value is None or isinstance(value, bool | int):
        return value
    if isinstance(value, float):
        return value if math.isfinite(value) else str(value)
    return [_fact(part) for part in value] if isinstance(value, tuple | list) else str(value)
