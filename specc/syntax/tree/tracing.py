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


class Outline(NamedTuple):
    """The drawing that the piece is taken from: so many of its units are a length."""

    path: Text
    units: Number
    length: Number
    span: Span


class Meeting(NamedTuple):
    """Where an end of one path of the drawing meets an end of another."""

    first: Text
    second: Text
    span: Span


class Near(NamedTuple):
    """The corner of a path of the drawing that lies nearest to a place."""

    across: Expression
    up: Expression
    path: Text
    span: Span


class Along(NamedTuple):
    """A run of an edge that follows a path of the drawing."""

    path: Text
    to: Word
    when: When | None
    span: Span
