"""Owns showing diagnostics to review sites and editors as SARIF 2.1.0 (OASIS Standard, 27 March 2020).

Knows nothing of where the codes were gathered: they are passed in. Clause numbers are those of the standard.
"""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import quote

from specc.diagnostics.catalog import explanation
from specc.diagnostics.model import Severity
from specc.diagnostics.render_json import dumped

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.diagnostics.model import Code, Diagnostic, Fix, Label
    from specc.source import SourceFile, Span

_LEVELS = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "note"}


def render_sarif(diagnostics: Sequence[Diagnostic], codes: Sequence[Code], *, version: str) -> str:
    """A SARIF log with one run; `codes` is the whole catalogue and `version` that of the program.

    Raises ValueError when a diagnostic's code is not among `codes`.
    """
    rules = sorted(codes, key=lambda code: code.id)
    places = {code.id: place for place, code in enumerate(rules)}
    unknown = sorted({diagnostic.code.id for diagnostic in diagnostics} - places.keys())
    if unknown:
        raise ValueError(f"not in the catalogue: {', '.join(unknown)}")
    driver = {"name": "specc", "version": version, "rules": [_rule(code) for code in rules]}
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",  # 3.14.27
        "results": [_result(diagnostic, places[diagnostic.code.id]) for diagnostic in diagnostics],
    }
    return dumped({"version": "2.1.0", "runs": [run]})


def _rule(code: Code) -> dict[str, object]:
    page = explanation(code.id)
    rule: dict[str, object] = {
        "id": code.id,
        "name": code.name,
        "shortDescription": _message(code.name.replace("-", " ").capitalize() + "."),
        "defaultConfiguration": {"level": _LEVELS[code.severity]},
    }
    if page:
        rule["help"] = _message(page) | {"markdown": _message(page)["text"]}
    return rule


def _result(diagnostic: Diagnostic, rule: int) -> dict[str, object]:
    # SARIF has no place for notes and cures, so they follow the message (3.11.3: plain text may hold line
    # breaks).
    cures = (f"help: {text}" for text in diagnostic.helps)
    lines = (diagnostic.message, *(f"note: {text}" for text in diagnostic.notes), *cures)
    result: dict[str, object] = {
        "ruleId": diagnostic.code.id,
        "ruleIndex": rule,
        "level": _LEVELS[diagnostic.severity],
        "message": _message("\n".join(lines)),
    }
    if diagnostic.primary:
        result["locations"] = [_location(diagnostic.primary)]
    if diagnostic.related:
        result["relatedLocations"] = [_location(label) for label in diagnostic.related]
    if diagnostic.fix:
        result["fixes"] = [_fix(diagnostic.fix)]
    return result


def _location(label: Label) -> dict[str, object]:
    place = {"artifactLocation": _artifact(label.span.file), "region": _region(label.span)}
    location: dict[str, object] = {"physicalLocation": place}
    if label.text:
        location["message"] = _message(label.text)
    return location


def _message(text: str) -> dict[str, str]:
    """`text` as it stands: 3.11.5 doubles braces, and a space keeps 3.11.6 from reading a link into it."""
    return {"text": text.replace("{", "{{").replace("}", "}}").replace("](", "] (")}


def _artifact(file: SourceFile) -> dict[str, object]:
    return {"uri": quote(file.shown, errors="replace"), "uriBaseId": "%SRCROOT%"}


def _region(span: Span) -> dict[str, object]:
    return {
        "startLine": span.line,
        "startColumn": span.column,
        "endLine": span.end_line,
        "endColumn": span.end_column,
        "charOffset": span.start,
        "charLength": span.end - span.start,
    }


def _fix(fix: Fix) -> dict[str, object]:
    files = {edit.span.file.name: edit.span.file for edit in fix.edits}
    changes = []
    for file in files.values():
        replacements = [
            {"deletedRegion": _region(edit.span), "insertedContent": {"text": edit.replacement}}
            for edit in fix.edits
            if edit.span.file is file
        ]
        changes.append({"artifactLocation": _artifact(file), "replacements": replacements})
    return {"description": _message(fix.title), "artifactChanges": changes}
