"""Owns the seam and stitching classes of ASTM D6193 that the trade uses most; knows nothing of stitches."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from specc.library.rows import rows


@dataclass(frozen=True, slots=True)
class SeamClass:
    """A class by its letters in ASTM D6193, in words, with its number in ISO 4916:1991 where known.

    `kind` is `seam` (it joins plies) or `stitching` (it finishes or adorns one). `source` is where the use
    was read, None when it is from memory, as letters and numbers are.
    """

    letters: str
    words: str
    iso: str | None
    kind: str
    source: str | None


@cache
def seam_classes() -> tuple[SeamClass, ...]:
    """Every class known, in the order of the file."""
    return tuple(
        SeamClass(row["letters"], row["words"], row["iso"] or None, row["kind"], row["source"] or None)
        for row in rows("seam_classes.toml", "seam")
    )
