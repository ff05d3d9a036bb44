"""Owns pieces as they were written: points, edges, lines, notches.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.tracing import Along, ArcRun, Graded, Meeting, Near, Outline, Traced
    from specc.syntax.tree.values import Find, Let, When


class Cut(NamedTuple):
    """How many are cut, and on which fold."""

    times: Number
    fold: Word | None
    when: When | None
    span: Span


class At(NamedTuple):
    """Right of and above the origin."""

    across: Expression
    up: Expression
    span: Span


class Step(NamedTuple):
    """A move to one side: left, right, up, down."""

    side: str
    by: Expression
    span: Span


class Going(NamedTuple):
    """A move in a direction."""

    direction: Expression
    by: Expression
    span: Span


class Toward(NamedTuple):
    """A move toward another point."""

    target: Ref
    by: Expression
    span: Span


class Moved(NamedTuple):
    """From a point by moves, one after the other."""

    origin: Ref
    moves: tuple[Step | Going | Toward, ...]
    span: Span


class Turned(NamedTuple):
    """A point turned about another, counter-clockwise."""

    point: Ref
    angle: Expression
    around: Ref
    span: Span


class On(NamedTuple):
    """A place on an edge or line, measured from its start or from a corner."""

    edge: Ref
    at: Expression
    corner: Word | None
    span: Span


class PointStatement(NamedTuple):
    """A named point."""

    name: Word
    position: At | Moved | Turned | On | Meeting | Near
    graded: Graded | None
    when: When | None
    span: Span


class Straight(NamedTuple):
    """A straight run of an edge."""

    to: Word
    when: When | None
    span: Span


class Bearing(NamedTuple):
    """A direction at the end of a curve, with the length of its handle if it was given."""

    direction: Expression
    handle: Expression | None
    span: Span


class Curve(NamedTuple):
    """A curved run of an edge."""

    to: Word
    leaving: Bearing | None
    arriving: Bearing | None
    full: Expression | None
    through: tuple[Ref, ...]
    when: When | None
    span: Span


class DartRun(NamedTuple):
    """A dart in an edge: the edge goes on at `to`."""

    name: Word
    to: Word
    pivot: Word
    short: Expression | None
    when: When | None
    span: Span


class Edge(NamedTuple):
    """An edge from a point through its runs."""

    name: Word
    start: Word
    hidden: bool
    when: When | None
    runs: tuple[Straight | Curve | ArcRun | Along | DartRun | Broken, ...]
    span: Span


class TwoPointed(NamedTuple):
    """A dart inside the piece."""

    name: Word
    top: Word
    bottom: Word
    width: Expression
    middle: Word
    when: When | None
    span: Span


class Line(NamedTuple):
    """A reference line, straight or through points in between."""

    name: Word
    start: Word
    end: Word
    through: tuple[Word, ...]
    when: When | None
    span: Span


class LevelLine(NamedTuple):
    """A reference line straight across the piece, level with a point."""

    name: Word
    point: Word
    when: When | None
    span: Span


class Grain(NamedTuple):
    """The grain line."""

    start: Word
    end: Word
    span: Span


class Notch(NamedTuple):
    """A notch on an edge."""

    edge: Word
    at: Expression
    corner: Word | None
    double: bool
    when: When | None
    span: Span


class NotchAtPoint(NamedTuple):
    """A notch where a point lies on an edge."""

    point: Word
    double: bool
    when: When | None
    span: Span


class Piece(NamedTuple):
    """A piece, of a block or by itself."""

    name: Word
    title: Text | None
    when: When | None
    body: tuple[
        Cut
        | Traced
        | Outline
        | Let
        | Find
        | PointStatement
        | Edge
        | TwoPointed
        | Line
        | LevelLine
        | Grain
        | Notch
        | NotchAtPoint
        | Broken,
        ...,
    ]
    span: Span
