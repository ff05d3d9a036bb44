"""Owns the stitch types of ISO 4915 that the trade uses most; knows nothing of seams."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from specc.library.rows import rows


@dataclass(frozen=True, slots=True)
class Stitch:
    """A stitch type: its number in ISO 4915:1981, needles and threads, what it is used for.

    `source` is where the use was read, None when it is from memory, as all else is.
    """

    number: str
    name: str
    needles: int
    threads: int
    use: str
    source: str | None


@cache
def stitches() -> tuple[Stitch, ...]:
    """Every stitch type known, by number."""
    return tuple(
        Stitch(row["number"], row["name"], row["needles"], row["threads"], row["use"], row["source"] or None)
        for row in rows("stitches.toml", "stitch")
    )
