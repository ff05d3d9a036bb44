"""Owns saying what a check is held against, and how that is known; knows nothing of what is checked.

The table of all of them is written from these words: see `tests/structure/test_sources.py`.
"""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, TypeVar

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable

_Test = TypeVar("_Test", bound="Callable[..., object]")


class Known(StrEnum):
    """How what a check is held against is known, from the firmest to the loosest."""

    DERIVED = "worked out"
    PROGRAM = "another program"
    COMPUTED = "computed from public data"
    READ = "source read"
    SECOND_HAND = "second hand"
    MEMORY = "from memory"
    PRACTICE = "common practice, no source"


# Sources that several checks are held against, with their editions.
ANSUR = "ANSUR II (2012), public microdata, NATICK/TR-15/007"
ARMY_REPAIR = "US Army TM 10-8400-201-23, table 3-1"
COSTUME_TEXT = "Central Washington University, costume text, ch. 16"
HEM_DEPTHS = "American Sewing Guild, How deep is that hem (2025)"


def against(known: Known, source: str = "", figures: str = "") -> Callable[[_Test], _Test]:
    """The test is held against a closed form, a program, or a source and what that says, as printed.

    Written once for every source, also where two of them disagree. Common practice has no source to name.
    """

    def marked(test: _Test) -> _Test:
        held: _Test = pytest.mark.against(known, source, figures)(test)
        return held

    return marked
