"""Owns gathering the diagnostics of one run, the one thing in the compiler that changes.

Knows nothing of what the stages do.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from specc.diagnostics.model import Diagnostic, Severity

if TYPE_CHECKING:
    from collections.abc import Iterable

Value = TypeVar("Value")


class Collector:
    """Everything said so far."""

    def __init__(self) -> None:
        self._said: list[Diagnostic] = []

    def keep(self, outcome: tuple[Value, Iterable[Diagnostic]]) -> Value:
        """Return the value of a stage's outcome after keeping its diagnostics."""
        value, diagnostics = outcome
        self._said.extend(diagnostics)
        return value

    def add(self, *diagnostics: Diagnostic) -> None:
        """Keep `diagnostics`."""
        self._said.extend(diagnostics)

    @property
    def failed(self) -> bool:
        """Whether anything said so far is an error."""
        return any(diagnostic.severity is Severity.ERROR for diagnostic in self._said)

    @property
    def diagnostics(self) -> tuple[Diagnostic, ...]:
        """Everything said so far, in the order of `Diagnostic.sort_key`."""
        return tuple(sorted(self._said, key=Diagnostic.sort_key))
