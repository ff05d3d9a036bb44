"""Owns pieces sewn onto pieces, and ends caught at an edge, as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.alterations import Level, Place
    from specc.syntax.tree.atoms import Broken, Property, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.sheets import Hold


class AtPoint(NamedTuple):
    """A spot on a piece: one of its points."""

    point: Word
    span: Span


class OnLevel(NamedTuple):
    """A spot on a piece: on a level, so far from an edge."""

    level: Level
    distance: Expression
    edge: Word
    span: Span


class Turn(NamedTuple):
    """How a piece is turned on another: by an angle, or square to an edge. One of the two is None."""

    by: Expression | None
    square_to: Word | None
    span: Span


class SewOn(NamedTuple):
    """A piece sewn onto another: `corner` of it lies at `at`. `side`: left, right or None."""

    what: tuple[Ref, ...]
    title: Text | None
    side: str | None
    on: Word
    corner: Word
    at: AtPoint | OnLevel
    turn: Turn | None
    along: tuple[Ref, ...]
    method: Word
    settings: tuple[Property | Hold | Broken, ...]
    span: Span


class Catch(NamedTuple):
    """Ends caught at a place of an edge; `method` None where what is sewn along that edge catches them.

    `side`: left, right or None.
    """

    what: tuple[Ref, ...]
    title: Text | None
    side: str | None
    to: Ref
    at: Place
    method: Word | None
    settings: tuple[Property | Hold | Broken, ...]
    span: Span
