"""Owns values with names, and what depends on a choice.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Text, Word
    from specc.syntax.tree.expressions import Expression


class Parameter(NamedTuple):
    """A value that the user of a block or method may set, with what it is otherwise."""

    name: Word
    title: Text | None
    default: Expression
    span: Span


class Choice(NamedTuple):
    """A word out of several that the user may set; the first is the default."""

    name: Word
    title: Text | None
    options: tuple[Word, ...]
    span: Span


class Let(NamedTuple):
    """A named value."""

    name: Word
    value: Expression
    when: When | None
    span: Span


class Find(NamedTuple):
    """A named value between two bounds, such that `left` equals `right`."""

    name: Word
    low: Expression
    high: Expression
    left: Expression
    right: Expression
    when: When | None
    span: Span


class When(NamedTuple):
    """A condition: a choice has been set to a word."""

    choice: Word
    option: Word
    span: Span
