"""Owns size charts as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Property, Text, Word
    from specc.syntax.tree.expressions import Expression


class Measurement(NamedTuple):
    """A body measurement: one number a size, or derived by an expression."""

    name: Word
    title: Text | None
    source: Text | None
    column: tuple[Number, ...]
    derived: Expression | None
    span: Span


class Chart(NamedTuple):
    """A size chart."""

    name: Word
    title: Text | None
    body: tuple[Property | Measurement | Broken, ...]
    span: Span
