"""Owns alterations as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Ref, Word
    from specc.syntax.tree.expressions import Expression


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """Pieces that are not made."""

    pieces: tuple[Word, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Place:
    """A place on an edge."""

    at: Expression
    corner: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class Swing:
    """A dart swung to another place; `share` None means all of it."""

    share: Number | None
    dart: Ref
    target: Ref
    place: Place | None
    form: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class Release:
    """Darts left unsewn."""

    darts: tuple[Ref, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Level:
    """A line (or edge), or a distance `side` (above, below) of it."""

    line: Word
    offset: Expression | None
    side: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Crop:
    """Pieces cut off at a level."""

    pieces: tuple[Word, ...]
    at: Level
    span: Span


@dataclass(frozen=True, slots=True)
class Lengthen:
    """`verb`: lengthen or shorten."""

    verb: Word
    pieces: tuple[Word, ...]
    by: Expression
    at: Level
    span: Span


@dataclass(frozen=True, slots=True)
class MoveCorner:
    """`verb`: lower, raise or widen."""

    verb: Word
    edges: tuple[Ref, ...]
    corner: Word
    by: Expression
    span: Span


AlterStep = LeaveOut | Swing | Release | Crop | Lengthen | MoveCorner


@dataclass(frozen=True, slots=True)
class Alter:
    """The alterations, in order."""

    steps: tuple[AlterStep | Broken, ...]
    span: Span
