"""Owns the alterations that put cloth in along an edge, as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.alterations import Place
    from specc.syntax.tree.atoms import Number, Ref, Word
    from specc.syntax.tree.expressions import Expression


class Slashed(NamedTuple):
    """Hinged at the far end, or slashed through; to an edge, or along the grain."""

    hinged: bool
    to: Ref | None
    span: Span


class Lay(NamedTuple):
    """`kind`: box, inverted, or toward a corner."""

    kind: str
    toward: Word | None
    span: Span


class Pleat(NamedTuple):
    """`verb`: pleat or tuck; `times` and `end` None for a single one."""

    verb: Word
    edge: Ref
    times: Number | None
    start: Place
    end: Place | None
    deep: Expression
    lay: Lay | None
    slashed: Slashed | None
    span: Span


class Gather(NamedTuple):
    """An edge gathered between two places."""

    edge: Ref
    start: Place
    end: Place
    by: Expression
    slashed: Slashed | None
    span: Span


Fullness = Pleat | Gather
