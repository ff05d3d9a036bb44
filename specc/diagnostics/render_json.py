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


def as_data(diagnostic: Diagnostic) -> dict[str, object]:
    """One diagnostic as JSON values."""
    return {
        "code": diagnostic.code.id,
        "name": diagnostic.code.name,
        "severity": str(diagnostic.severity),
        "message": diagnostic.message,
        "label": diagnostic.primary and diagnostic.primary.text,
        "span": diagnostic.span and _span(diagnostic.span),
        "related": [_label(label) for label in diagnostic.related],
        "notes": list(diagnostic.notes),
        "helps": list(diagnostic.helps),
        "fix": diagnostic.fix and _fix(diagnostic.fix),
        "facts": {name: _fact(value) for name, value in diagnostic.facts},
    }


def dumped(value: object) -> str:
    """`value` as JSON text in a fixed form; a lone surrogate, which UTF-8 cannot carry, is escaped."""
    text = json.dumps(value, indent=2, ensure_ascii=False, allow_nan=False)
    return text.encode("utf-8", errors="backslashreplace").decode("utf-8") + "\n"


def _span(span: Span) -> dict[str, object]:
    return {
        "file": span.file.shown,
        "start": span.start,
        "end": span.end,
        "line": span.line,
        "column": span.column,
        "end_line": span.end_line,
        "end_column": span.end_column,
    }


def _label(label: Label) -> dict[str, object]:
    return {"text": label.text, "span": _span(label.span)}


def _fix(fix: Fix) -> dict[str, object]:
    return {
        "title": fix.title,
        "applicability": str(fix.applicability),
        "edits": [{"span": _span(edit.span), "replacement": edit.replacement} for edit in fix.edits],
    }


def _fact(value: object) -> object:
    """Numbers stay numbers; what JSON has no word for is written as the message has it."""
    if value is None or isinstance(value, bool | int):
        return value
    if isinstance(value, float):
        return value if math.isfinite(value) else str(value)
    return [_fact(part) for part in value] if isinstance(value, tuple | list) else str(value)
