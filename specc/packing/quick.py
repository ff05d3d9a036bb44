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
REPORTS: Final = 550  # two to three seconds for a hundred pieces on two cores
PATIENCE: Final = 12  # a few pieces are soon as close as they come; then reports are slow and in vain
_FEW: Final = 20  # pieces; each more is worth a report more of patience


def quick(strip: Strip) -> Layout:
    """The best that the library finds in so many reports; of few pieces, a plain layout if that is shorter.

    All shapes must fit the width.
    """
    few = sum(shape.count for shape in strip.shapes) <= _FEW
    plain = bottom_left(strip) if few else None
    if plain is not None and strip.is_shortest(plain.length):
        return plain
    try:
        found = _bounded(strip)
    except SearchFailedError:
        return plain or bottom_left(strip)
    if faults(strip, found):
        return plain or bottom_left(strip)
    return plain if plain is not None and plain.length <= found.length else found


def _bounded(strip: Strip) -> Layout:
    """The best of so many reports. Raises SearchFailedError when there is none."""
    best: Layout | None = None
    last = 0
    patience = max(PATIENCE, sum(shape.count for shape in strip.shapes) - _FEW)
    for report in search(strip, seed=SEED):
        if report.layout is not None:
            last = report.number
            if best is None or report.layout.length < best.length:
                best = report.layout
            if strip.is_shortest(best.length):
                break
        if report.number >= REPORTS or report.number - last >= patience:
            break
    if best is None:
        raise SearchFailedError
    return best
