"""Owns values with names, and what depends on a choice.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Text, Word
    from specc.syntax.tree.expressions import Expression


@dataclass(frozen=True, slots=True)
class Parameter:
    """A value that the user of a block or method may set, with what it is otherwise."""

    name: Word
    title: Text | None
    default: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Choice:
    """A word out of several that the user may set; the first is the default."""

    name: Word
    title: Text | None
    options: tuple[Word, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Let:
    """A named value."""

    name: Word
    value: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Find:
    """A named value between two bounds, such that `left` equals `right`."""

    name: Word
    low: Expression
    high: Expression
    left: Expression
    right: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class When:
    """A condition: a choice has been set to a word."""

    choice: Word
    option: Word
    span: Span
