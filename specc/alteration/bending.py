"""Owns how kinks in a new seam edge are drawn over without changing its length; knows no verb."""

from __future__ import annotations

from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING, Final

from specc.alteration.runs import linked
from specc.geometry.fit import curve
from specc.geometry.path import Path

if TYPE_CHECKING:
    from collections.abc import Sequence

# How far to either side of a kink the edge is drawn anew, in mm. Common practice, no source.
ZONE: Final = 50.0
SHARE: Final = 0.45  # of a run at most, so that two zones on it do not meet
KINK: Final = 1e-3  # radians; below that nobody sees a kink
SHARPEST: Final = pi / 2.0  # no seam runs smoothly round a sharper one
CLOSE: Final = 1e-10  # mm by which a length may be missed
LEAST, MOST, STEP = 0.6, 1.9, 0.05  # lengths of handles that are tried, as shares of the way to the kink


def without_kinks(runs: Sequence[Path], *, length: float) -> Path | None:
    """One path through the runs, exactly so long, smooth where they met at an angle; None if it cannot be.

    Within ZONE of a kink the edge cuts the corner and lies outside the runs before and after it, so that what
    is sewn to it stays as long. A difference between `length` and the runs is shared among the kinks.
    """
    turns = [abs(a.end_direction().angle_to(b.start_direction())) for a, b in pairwise(runs)]
    if any(turn > SHARPEST for turn in turns):
        return None
    kinks = [index for index, turn in enumerate(turns) if turn > KINK]
    missing = length - sum(run.length() for run in runs)
    if not kinks:
        return linked(runs) if abs(missing) <= CLOSE * 1e4 else None
    left = list(runs)
    bends: dict[int, Path] = {}
    for index in kinks:
        before, after = runs[index], runs[index + 1]
        reach, ahead = (min(ZONE, SHARE * run.length()) for run in (before, after))
        kept, stub = left[index].split_at(left[index].length() - reach)
        rest, remaining = left[index + 1].split_at(ahead)
        bend = _bend(stub, rest, stub.length() + rest.length() + missing / len(kinks))
        if bend is None:
            return None
        left[index], left[index + 1], bends[index] = kept, remaining, bend
    ordered: list[Path] = []
    for index, run in enumerate(left):
        ordered += (run, bends[index]) if index in bends else (run,)
    return linked(ordered)


def _bend(before: Path, after: Path, length: float) -> Path | None:
    """The cubic of a length in place of two stubs that meet at an angle, with their outer directions."""

    def bent(share: float) -> Path:
        handles = (share * before.length(), share * after.length())
        return Path(
            (
                curve(
                    before.start, before.start_direction(), after.end, after.end_direction(), handles=handles
                ),
            )
        )

    low, high = LEAST, LEAST + STEP
    if bent(low).length() > length:
        return None
    while bent(high).length() < length:
        low, high = high, high + STEP
        if high > MOST:
            return None
    while high - low > 1e-15:
        middle = 0.5 * (low + high)
        if middle in {low, high} or abs(bent(middle).length() - length) <= CLOSE:
            return bent(middle)
        if bent(middle).length() < length:
            low = middle
        else:
            high = middle
    return bent(high)
