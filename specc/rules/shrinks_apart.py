"""Two cloths in one seam that shrink differently: after a wash the one that shrinks less hangs out.

Or it puckers. More than 2 percentage points apart is told; each is washed before it is cut. Cloths that say
nothing of shrinking are not judged: nobody has said that they do not. Common practice, no source.
"""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.making.cloths import cut_again
from specc.rules.makings import all_sewn
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.material import Cloth
    from specc.rules.makings import Sewn
    from specc.rules.subject import Subject

APART = declare(
    "SPC585",
    "shrinks-apart",
    Severity.NOTE,
    "`{first}` and `{second}` are sewn together at `{made}` and shrink differently: {how}",
)
MOST: Final = 0.02  # of the length: 2 percentage points
_EXACT = 1e-9


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One note a pair of cloths, at the first place where they meet."""
    told_of: set[frozenset[str]] = set()
    for sewn in all_sewn(subject):
        cloths = {cloth.name: cloth for cloth in _cloths(subject, sewn)}
        for first, second in combinations(cloths.values(), 2):
            pair = frozenset((first.name, second.name))
            if pair not in told_of and (how := _differ(first, second)):
                told_of.add(pair)
                told = APART.at(sewn.origin, first=first.name, second=second.name, made=sewn.name, how=how)
                told = told.see(first.origin, "declared here").see(second.origin, "declared here")
                yield told.help("wash each before it is cut, until it shrinks no more, and wash the sample")


def _cloths(subject: Subject, sewn: Sewn) -> Iterator[Cloth]:
    """What comes together: cloths of pieces, what is cut once more of them, trims that are cut from cloth."""
    cloths = {cloth.name: cloth for cloth in subject.garment.cloths}
    trims = {trim.name: trim for trim in subject.garment.trims}
    for piece in sewn.pieces:
        if (cloth := subject.cloth(piece)) is not None:
            yield cloth
        yield from (cloths[ply.cloth] for ply in cut_again(subject.garment, piece))
    for takes in sewn.making.takes:
        if source := trims[takes.trim].cut_from:
            yield cloths[source]


def _differ(first: Cloth, second: Cloth) -> str:
    """How two cloths differ in words; nothing where they do not, or one says nothing."""
    if not all(cloth.shrinks_length or cloth.shrinks_width for cloth in (first, second)):
        return ""
    ways = (
        ("length", first.shrinks_length, second.shrinks_length),
        ("width", first.shrinks_width, second.shrinks_width),
    )
    return ", ".join(
        f"{format_ratio(one)} and {format_ratio(other)} in {way}"
        for way, one, other in ways
        if abs(float(one) - float(other)) > MOST + _EXACT
    )
