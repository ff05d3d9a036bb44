"""Owns pieces as they were written: points, edges, lines, notches.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.values import Find, Let, When


@dataclass(frozen=True, slots=True)
class Cut:
    """How many are cut, and on which fold."""

    count: Number
    fold: Word | None
    when: When | None
    span: Span


@dataclass(frozen=True, slots=True)
class At:
    """Right of and above the origin."""

    across: Expression
    up: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Step:
    """A move to one side: left, right, up, down."""

    side: str
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Going:
    """A move in a direction."""

    direction: Expression
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Toward:
    """A move toward another point."""

    target: Ref
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Moved:
    """From a point by moves, one after the other."""

    origin: Ref
    moves: tuple[Step | Going | Toward, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Turned:
    """A point turned about another, counter-clockwise."""

    point: Ref
    angle: Expression
    around: Ref
    span: Span


@dataclass(frozen=True, slots=True)
class On:
    """A place on an edge or line, measured from its start or from a corner."""

    edge: Ref
    at: Expression
    corner: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class PointStatement:
    """A named point."""

    name: Word
    position: At | Moved | Turned | On
    span: Span


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight run of an edge."""

    to: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Bearing:
    """A direction at the end of a curve, with the length of its handle if it was given."""

    direction: Expression
    handle: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Curve:
    """A curved run of an edge."""

    to: Word
    leaving: Bearing
    arriving: Bearing
    full: Expression | None
    through: Ref | None
    span: Span


@dataclass(frozen=True, slots=True)
class DartRun:
    """A dart in an edge: the edge goes on at `to`."""

    name: Word
    to: Word
    pivot: Word
    short: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge from a point through its runs."""

    name: Word
    start: Word
    hidden: bool
    runs: tuple[Straight | Curve | DartRun | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class TwoPointed:
    """A dart inside the piece."""

    name: Word
    top: Word
    bottom: Word
    width: Expression
    middle: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Line:
    """A reference line."""

    name: Word
    start: Word
    end: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Grain:
    """The grain line."""

    start: Word
    end: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Notch:
    """A notch on an edge."""

    edge: Word
    at: Expression
    corner: Word | None
    double: bool
    span: Span


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a block."""

    name: Word
    title: Text | None
    body: tuple[Cut | Let | Find | PointStatement | Edge | TwoPointed | Line | Grain | Notch | Broken, ...]
    span: Span
