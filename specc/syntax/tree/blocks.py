"""Owns blocks as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Property, Text, Word
    from specc.syntax.tree.pieces import Piece
    from specc.syntax.tree.values import Choice, Find, Let, Parameter


class Block(NamedTuple):
    """A block."""

    name: Word
    title: Text | None
    body: tuple[Property | Parameter | Choice | Let | Find | Piece | Broken, ...]
    span: Span
