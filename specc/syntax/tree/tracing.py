"""Owns what a piece on paper says beside all others, as it was written: its size, its grading, its drawing.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.values import When


class Traced(NamedTuple):
    """The size in which the piece was traced."""

    size: Word | Text | Number
    span: Span


class Shift(NamedTuple):
    """How far a point moves to the right and up from one size to the next."""

    right: Expression
    up: Expression
    span: Span


class Graded(NamedTuple):
    """How a point is graded: by a shift of its own, or by a rule."""

    by: Shift | Word
    span: Span


class Stretch(NamedTuple):
    """The shift for each step from one size to another."""

    low: Word | Text | Number
    high: Word | Text | Number
    shift: Shift
    span: Span


class Grade(NamedTuple):
    """A grade rule: one shift for every step, or stretches of sizes."""

    name: Word
    alike: Shift | None
    body: tuple[Stretch | Broken, ...]
    span: Span


class ArcRun(NamedTuple):
    """A run of an edge that is an arc of a circle through a point."""

    to: Word
    through: Ref
    when: When | None
    span: Span
