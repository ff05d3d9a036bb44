"""Owns what all statements are made of: words, texts, numbers, dates, refs, properties.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.source import Span
    from specc.syntax.tree.expressions import Expression


class Word(NamedTuple):
    """A name or a plain word."""

    text: str
    span: Span


class Text(NamedTuple):
    """A quoted text; `text` is what stands between the quotes."""

    text: str
    span: Span


class Number(NamedTuple):
    """A number with its unit, if it has one; `unit` is as written (`in`, `%`, `USD`)."""

    value: Fraction
    unit: str | None
    span: Span


class Date(NamedTuple):
    """A date as written, year-month-day."""

    text: str
    span: Span


class Pair(NamedTuple):
    """Two things with a colon between them: `8: 4`."""

    left: Number | Word
    right: Number | Word
    span: Span


class Ref(NamedTuple):
    """A name, alone or with the piece it belongs to: `hem`, `front.hem`."""

    first: Word
    second: Word | None
    span: Span


class Reckoned(NamedTuple):
    """A value that is reckoned, where otherwise a number stands."""

    value: Expression
    span: Span


Atom = Word | Text | Number | Date | Pair | Reckoned


class Property(NamedTuple):
    """A line of a sheet: a name and its values; the values are separated by commas, each a run of atoms."""

    name: Word
    values: tuple[tuple[Atom, ...], ...]
    span: Span


class Broken(NamedTuple):
    """A statement that could not be read and has been reported; `words` are the names in its first line."""

    words: tuple[Word, ...]
    span: Span
