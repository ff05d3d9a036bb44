"""Owns pieces that are cut again from another cloth.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Number, Word


class AlsoCut(NamedTuple):
    """Pieces cut from one more cloth: all their copies or `times` of each; `bare`: without allowance."""

    times: Number | None
    pieces: tuple[Word, ...]
    cloth: Word
    bare: bool
    span: Span
