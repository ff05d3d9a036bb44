"""Owns closures and what fastens them, as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Number, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.makings import Setting
    from specc.syntax.tree.values import When


class FromCorner(NamedTuple):
    """A distance from a corner."""

    by: Expression
    corner: Word
    span: Span


class Spacing(NamedTuple):
    """How fastenings are spaced: so many, or one `every` so far; one of them at `line`."""

    number: Number | None
    every: Expression | None
    first: FromCorner | None
    last: FromCorner | None
    line: Word | None
    span: Span


class Closure(NamedTuple):
    """Edges that are closed by a method: on each other, or on themselves where `to` is empty."""

    name: Word
    title: Text | None
    along: tuple[Ref, ...]
    to: tuple[Ref, ...]
    method: Word
    settings: tuple[Setting, ...]
    span: Span


class Laps(NamedTuple):
    """How far one side lies over the other when it is closed."""

    by: Expression
    span: Span


class TakesPieces(NamedTuple):
    """Fastenings used by the piece; `rounding`, `shorter` or `longer`, of a length that is sold."""

    material: Word
    number: Number
    each_place: bool
    rounding: Word | None
    when: When | None
    span: Span


class Lies(NamedTuple):
    """How far from the edge, and from that of the `other` side, fastenings lie, and the hole of each.

    The hole lies `across` or `along` the edge.
    """

    inset: Expression
    other: Expression | None
    hole: Expression | None
    way: Word | None
    when: When | None
    span: Span
