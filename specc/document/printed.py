"""Owns texts that have more behind them: the same in another unit, and where a number comes from.

Knows nothing of lengths or of what is computed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a number comes from: the calculation in `words`, and `place`, the line that asks for it.

    `line` is that line of the spec where its text is part of the sheet, else 0.
    """

    words: Text
    place: str
    line: int = 0


@dataclass(frozen=True, slots=True)
class Printed:
    """A text as the sheet has it; `other` is the same in the other unit, empty where it has no unit."""

    text: str
    other: str = ""
    origin: Origin | None = None

    def __str__(self) -> str:
        """The text as the sheet has it."""
        return self.text


Text = str | Printed
"""Whatever stands in a cell or a sentence."""


def traced(text: Text, origin: Origin | None) -> Text:
    """The text with its origin; an empty one has none."""
    if origin is None or not str(text):
        return text
    return replace(text, origin=origin) if isinstance(text, Printed) else Printed(text, origin=origin)
