"""Owns diagnostics as data: what is wrong, where, why, and what to change.

Knows nothing of how they are shown.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import IntEnum, StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span


class Severity(IntEnum):
    """How bad it is; an ERROR keeps the sheet from being made."""

    NOTE = 0
    WARNING = 1
    ERROR = 2

    def __str__(self) -> str:
        """The word that is shown."""
        return self.name.lower()


class Applicability(StrEnum):
    """How far a fix can be trusted."""

    SAFE = "safe"  # what was meant, beyond doubt
    UNSAFE = "unsafe"  # probably what was meant; applied on request only
    DISPLAY = "display"  # shown, never applied


@dataclass(frozen=True, slots=True)
class Label:
    """A place and a few words about it."""

    span: Span
    text: str = ""


@dataclass(frozen=True, slots=True)
class Edit:
    """The characters of `span` become `replacement`; an empty span inserts."""

    span: Span
    replacement: str


@dataclass(frozen=True, slots=True)
class Fix:
    """Edits that cure a diagnostic together; their spans do not overlap."""

    title: str
    edits: tuple[Edit, ...]
    applicability: Applicability


@dataclass(frozen=True, slots=True)
class Code:
    """One kind of problem.

    `id` is never reused or renamed. `name` says the bad thing, not the cure. `message` is a template over
    facts, in the manner of `str.format`.
    """

    id: str
    name: str
    severity: Severity
    message: str

    def at(self, span: Span | None, label: str = "", **facts: object) -> Diagnostic:
        """Return a diagnostic of this kind at `span` (None when no place in a text is to blame).

        The message is filled from `facts`; raises KeyError when one that it names is not given.
        """
        return Diagnostic(
            self,
            self.message.format_map(facts),
            primary=None if span is None else Label(span, label),
            facts=tuple(facts.items()),
        )


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """One mistake: its place, other places that matter, facts about it (`notes`) and cures (`helps`)."""

    code: Code
    message: str
    primary: Label | None = None
    related: tuple[Label, ...] = ()
    notes: tuple[str, ...] = ()
    helps: tuple[str, ...] = ()
    fix: Fix | None = None
    facts: tuple[tuple[str, object], ...] = ()

    @property
    def severity(self) -> Severity:
        """How bad it is."""
        return self.code.severity

    @property
    def span(self) -> Span | None:
        """The place to blame."""
        return self.primary.span if self.primary else None

    def see(self, span: Span | None, text: str = "") -> Diagnostic:
        """Return the same with another place that matters; unchanged when that place is None."""
        return self if span is None else replace(self, related=(*self.related, Label(span, text)))

    def note(self, text: str) -> Diagnostic:
        """Return the same with another fact."""
        return replace(self, notes=(*self.notes, text))

    def help(self, text: str | None) -> Diagnostic:
        """Return the same with another cure; unchanged when `text` is None, as `did_you_mean` may return."""
        return self if text is None else replace(self, helps=(*self.helps, text))

    def with_fix(
        self, title: str, *edits: Edit, applicability: Applicability = Applicability.UNSAFE
    ) -> Diagnostic:
        """Return the same with a fix made of `edits`."""
        return replace(self, fix=Fix(title, edits, applicability))

    def sort_key(self) -> tuple[str, int, int, str, str]:
        """A total order that no order of checks can disturb: file, place, worst first, id, message."""
        span = self.span
        file, start = (span.file.name, span.start) if span else ("", -1)
        return file, start, -self.severity, self.code.id, self.message
