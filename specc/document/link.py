"""Owns what leads from a text to another place of the sheet. Knows nothing of what stands there."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Link:
    """The letters from `start` up to `end` of the text numbered `of` lead to the place `to`.

    The texts of a row are its cells; those of a heading are its words and the detail behind them.
    """

    of: int
    start: int
    end: int
    to: str
