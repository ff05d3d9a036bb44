"""Owns expressions as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.syntax.tree.atoms import Number

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Ref, Word


@dataclass(frozen=True, slots=True)
class Named:
    """A name in an expression."""

    name: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Compass:
    """`left`, `right`, `up` or `down` as a direction."""

    side: str
    span: Span


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """`left operator right`, the operator one of `+ - * /`."""

    operator: str
    left: Expression
    right: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Signed:
    """`- value` or `+ value`."""

    sign: str
    value: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Asked:
    """A question to the pieces.

    `what`: length, drawn length, width, depth, opening, girth (one ref); distance, across, height, direction
    (two refs).
    """

    what: str
    refs: tuple[Ref, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Applied:
    """A function of numbers.

    `function`: larger, smaller (two values); half, root, sine, cosine, tangent, arc-sine, arc-tangent, size
    (one).
    """

    function: str
    values: tuple[Expression, ...]
    span: Span


Expression = Number | Named | Compass | Arithmetic | Signed | Asked | Applied
