"""Owns the alteration that makes two edges of one, as it was written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.alterations import Level, Place
    from specc.syntax.tree.atoms import Ref, Word


class Divide(NamedTuple):
    """Edges made two each, at a place on them or where a level meets them."""

    edges: tuple[Ref, ...]
    at: Place | Level
    into: tuple[Word, Word]
    span: Span
