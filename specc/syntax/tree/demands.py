"""Owns what is measured, demanded and accepted.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression


class Measure(NamedTuple):
    """A point of measure; tolerance `plus`, `minus` or neither."""

    name: Word
    title: Text | None
    value: Expression
    plus: Expression | None
    minus: Expression | None
    span: Span


class Expect(NamedTuple):
    """What the designer demands; `compare` is `>=` or `<=`."""

    left: Expression
    compare: str
    right: Expression
    because: Text | None
    span: Span


class Limit(NamedTuple):
    """What a limit of a chart holds for on this garment."""

    name: Word
    value: Expression
    span: Span


class Without(NamedTuple):
    """The limits of a chart for whose parts the garment has none."""

    names: tuple[Word, ...]
    span: Span


class ExpectWithin(NamedTuple):
    """The demand that the garment stays within a chart of limits."""

    chart: Word
    body: tuple[Limit | Without | Broken, ...]
    span: Span


class Accept(NamedTuple):
    """A code that the designer accepts, everywhere or on one part, with the reason."""

    code: Word
    on: Ref | None
    because: Text
    span: Span
