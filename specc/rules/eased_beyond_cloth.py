"""What is eased into a seam must vanish in it: a tenth is the most that is taught.

A sleeve cap takes 1 to 1 1/2 in of ease in textbooks, on a cap of about 17 in a sixteenth to a tenth
(reported by two practitioners' pages, which find half of it enough). That this is the most anywhere is common
practice, no source. Where the second side is of a cloth that stretches so far, it is stretched instead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import Walk
    from specc.rules.subject import Subject

EASED = declare(
    "SPC564",
    "eased-beyond-cloth",
    Severity.WARNING,
    "seam `{seam}` eases in {share} of its second side; more than {most} gathers or puckers",
)

MOST: Final = 0.10


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, with the size that eases in most."""
    for index, seam in enumerate(subject.garment.seams):
        if seam.gathered or seam.ease is None:
            continue
        walks = [(size.size, size.walks[index]) for size in subject.assembly.sizes]
        size, worst = max(walks, key=lambda one: one[1].first_length / one[1].second_length)
        share = worst.first_length / worst.second_length - 1.0
        if share > max(MOST, _stretch(subject, worst)):
            first, second = subject.lengths(worst.first_length, worst.second_length)
            told = EASED.at(seam.origin, seam=seam.name, share=format_ratio(share), most=format_ratio(MOST))
            told = told.note(f"size {size}: {first} is eased to {second}")
            yield told.help("write `gathers` in place of `ease`, or make the first side shorter")


def _stretch(subject: Subject, walk: Walk) -> float:
    """By how much all of the second side can be stretched."""
    cloths = [subject.cloth(edge.piece) for edge in walk.second]
    return min((float(cloth.stretch) if cloth else 0.0 for cloth in cloths), default=0.0)
