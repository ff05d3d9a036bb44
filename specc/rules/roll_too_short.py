"""A trim is cut in whole lengths: a roll must hold the longest that any size takes.

What is left of every roll would be joined, and nothing says where. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.making.inside import pieces_inside
from specc.quantities.points import openings_of
from specc.quantities.trims import trim_cuts
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.quantities.quantities import TrimCut
    from specc.rules.subject import Subject

ROLL_TOO_SHORT = declare(
    "SPC621",
    "roll-too-short",
    Severity.ERROR,
    "a roll of `{trim}` is {roll} long, and `{used_on}` takes {length} in one length in size {size}",
)
_NEAR = 1e-6  # mm


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a trim, for the longest of its lengths."""
    in_rolls = [
        (trim, trim.sold_in)
        for trim in subject.garment.trims
        if trim.sold_in is not None and trim.sold_in.dimension == Dimension.LENGTH
    ]
    cuts = _cuts(subject) if in_rolls else ()
    for trim, roll in in_rolls:
        found = [(size, cut) for size, cut in cuts if cut.trim == trim.name]
        size, cut = max(found, key=lambda one: one[1].cut_length, default=("", None))
        if cut is not None and cut.cut_length > float(roll.value) + _NEAR:
            told = ROLL_TOO_SHORT.at(
                trim.origin,
                trim=trim.name,
                roll=str(roll),
                used_on=cut.used_on,
                length=subject.length(cut.cut_length),
                size=size,
            )
            yield told.help("say the length of the rolls it is really sold in, or another trim")


def _cuts(subject: Subject) -> tuple[tuple[str, TrimCut], ...]:
    """Every length of trim with its size."""
    inside = pieces_inside(subject.garment.seams)
    return tuple(
        (size.size, cut)
        for one, size in zip(subject.shaped, subject.assembly.sizes, strict=True)
        for cut in trim_cuts(
            subject.garment, size, one.evaluator(openings_of(subject.garment, size), inside).value
        )
    )
