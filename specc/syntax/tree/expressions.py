"""Owns expressions as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.syntax.tree.atoms import Number

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Ref, Word


class Named(NamedTuple):
    """A name in an expression."""

    name: Word
    span: Span


class Compass(NamedTuple):
    """`left`, `right`, `up` or `down` as a direction."""

    side: str
    span: Span


class Arithmetic(NamedTuple):
    """`left operator right`, the operator one of `+ - * /`."""

    operator: str
    left: Expression
    right: Expression
    span: Span


class Signed(NamedTuple):
    """`- value` or `+ value`."""

    sign: str
    value: Expression
    span: Span


class Asked(NamedTuple):
    """A question to the pieces.

    `what`: length, drawn length, width, depth, opening, girth (one ref); distance, across, height, direction
    (two refs).
    """

    what: str
    refs: tuple[Ref, ...]
    span: Span


class Applied(NamedTuple):
    """A function of numbers.

    `function`: larger, smaller (two values); half, root, sine, cosine, tangent, arc-sine, arc-tangent, size,
    radius, circumference (one).
    """

    function: str
    values: tuple[Expression, ...]
    span: Span


Expression = Number | Named | Compass | Arithmetic | Signed | Asked | Applied
