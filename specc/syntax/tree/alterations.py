"""Owns alterations as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.syntax.tree.fullness import Fullness
from specc.syntax.tree.recutting import Recutting
from specc.syntax.tree.reshaping import Reshaping

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Number, Ref, Word
    from specc.syntax.tree.expressions import Expression


class LeaveOut(NamedTuple):
    """Pieces that are not made."""

    pieces: tuple[Word, ...]
    span: Span


class Place(NamedTuple):
    """A place on an edge."""

    at: Expression
    corner: Word | None
    span: Span


class Rest(NamedTuple):
    """What the other shares leave."""

    span: Span


class SwingTarget(NamedTuple):
    """Where a share of a dart goes; `share` None means all of it."""

    share: Number | Rest | None
    part: Ref
    place: Place | None
    form: Word | None
    span: Span


class Swing(NamedTuple):
    """A dart swung to other places."""

    dart: Ref
    into: tuple[SwingTarget, ...]
    span: Span


class Release(NamedTuple):
    """Darts left unsewn."""

    darts: tuple[Ref, ...]
    span: Span


class Level(NamedTuple):
    """A line (or edge), or a distance `side` (above, below) of it."""

    line: Word
    offset: Expression | None
    side: str | None
    span: Span


class Crop(NamedTuple):
    """Pieces cut off at a level."""

    pieces: tuple[Word, ...]
    at: Level
    span: Span


class Lengthen(NamedTuple):
    """`verb`: lengthen or shorten."""

    verb: Word
    pieces: tuple[Word, ...]
    by: Expression
    at: Level
    span: Span


class MoveCorner(NamedTuple):
    """`verb`: lower, raise or widen."""

    verb: Word
    edges: tuple[Ref, ...]
    corner: Word
    by: Expression
    span: Span


AlterStep = LeaveOut | Swing | Release | Crop | Lengthen | MoveCorner | Reshaping | Fullness | Recutting


class Alter(NamedTuple):
    """The alterations, in order."""

    steps: tuple[AlterStep | Broken, ...]
    span: Span
