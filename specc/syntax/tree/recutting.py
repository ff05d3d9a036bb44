"""Owns the alterations that draw edges anew, as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Ref, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.reshaping import Tapering


class EndShift(NamedTuple):
    """An end of an edge moved `way`: up or down."""

    corner: Word
    way: str
    by: Expression
    span: Span


class Shape(NamedTuple):
    """Edges drawn anew between ends that move."""

    edges: tuple[Ref, ...]
    shifts: tuple[EndShift, ...]
    full: Expression | None
    span: Span


class MoveSeam(NamedTuple):
    """A seam line moved toward one of its pieces."""

    first: Ref
    second: Ref
    by: Expression
    tapering: Tapering | None
    toward: Word
    span: Span


Recutting = Shape | MoveSeam
