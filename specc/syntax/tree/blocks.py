"""Owns blocks as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Property, Text, Word
    from specc.syntax.tree.pieces import Piece
    from specc.syntax.tree.values import Choice, Find, Let, Parameter


@dataclass(frozen=True, slots=True)
class Block:
    """A block."""

    name: Word
    title: Text | None
    body: tuple[Property | Parameter | Choice | Let | Find | Piece | Broken, ...]
    span: Span
