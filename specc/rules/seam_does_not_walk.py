"""Two edges sewn together must be equally long as sewn, but for the ease or gathers that the seam states.

A longer side has to go somewhere: it puckers, or is stretched, or the next seam is forced. Walking the seam,
edge along edge with darts closed, is how a pattern is proved before it is cut. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import Walk
    from specc.model.construction import Seam
    from specc.rules.subject import Subject

DOES_NOT_WALK = declare(
    "SPC501",
    "seam-does-not-walk",
    Severity.ERROR,
    "the two sides of seam `{seam}` differ by up to {difference} in {sizes}",
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, with both lengths in every size."""
    for index, seam in enumerate(subject.garment.seams):
        walks = [(size.size, size.walks[index]) for size in subject.assembly.sizes]
        bad = [(size, walk) for size, walk in walks if abs(walk.difference) > walk.tolerance]
        if bad:
            yield _told(subject, seam, walks, bad)


def _told(
    subject: Subject, seam: Seam, walks: list[tuple[str, Walk]], bad: list[tuple[str, Walk]]
) -> Diagnostic:
    worst = max((walk for _, walk in bad), key=lambda walk: abs(walk.difference))
    told = DOES_NOT_WALK.at(
        seam.origin,
        seam=seam.name,
        difference=subject.difference(abs(worst.difference)),
        sizes=subject.sizes(size for size, _ in bad),
    )
    for size, walk in walks:
        ease = f", ease {subject.difference(walk.ease)}" if walk.ease else ""
        first, second = subject.lengths(walk.first_length, walk.second_length)
        told = told.note(f"size {size}: {first} to {second}{ease}")
    if worst.difference > 0:
        return told.help(
            "alter both sides alike, or write `ease` or `gathers` if the first side is to be longer"
        )
    return told.help("alter both sides alike; only the first side is eased in, so name the longer one first")
