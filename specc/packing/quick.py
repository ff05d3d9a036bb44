"""Owns a plan in seconds: bounded in work, so that it is the same each time.

Knows nothing of better plans.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.packing.bottom_left import bottom_left
from specc.packing.search import SearchFailedError, search
from specc.packing.verify import faults

if TYPE_CHECKING:
    from specc.packing.problem import Layout, Strip

SEED: Final = 3
REPORTS: Final = 600  # two to three seconds for a hundred pieces on two cores
PATIENCE: Final = 25  # a few pieces are soon as close as they come; then reports are slow and in vain


def quick(strip: Strip) -> Layout:
    """The shorter of a plain placement and the best that the library finds in so many reports.

    All shapes must fit the width.
    """
    plain = bottom_left(strip)
    try:
        *_, last = search(strip, seed=SEED, reports=REPORTS, patience=PATIENCE)
    except SearchFailedError:
        return plain
    return plain if plain.length <= last.layout.length or faults(strip, last.layout) else last.layout
