"""Edges sewn together must be equally long as sewn, but for the ease or gathers that the seam states.

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
    "the {sides} of seam `{seam}` differ by up to {difference} in {sizes}",
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, with both lengths in every size."""
    for index, seam in enumerate(subject.garment.seams):
        walks = [(size.size, size.walks[index]) for size in subject.assembly.sizes]
        bad = [(size, walk) for size, walk in walks if abs(walk.worst) > walk.tolerance]
        if bad:
            yield _told(subject, seam, walks, bad)


def _told(
    subject: Subject, seam: Seam, walks: list[tuple[str, Walk]], bad: list[tuple[str, Walk]]
) -> Diagnostic:
    worst = max((walk for _, walk in bad), key=lambda walk: abs(walk.worst))
    told = DOES_NOT_WALK.at(
        seam.origin,
        sides="plies" if worst.others else "two sides",
        seam=seam.name,
        difference=subject.difference(abs(worst.worst)),
        sizes=subject.sizes(size for size, _ in bad),
    )
    for size, walk in walks:
        ease = f", ease {subject.difference(walk.ease)}" if walk.ease else ""
        plies = (ply.length for ply in walk.others)
        first, *others = subject.lengths(walk.first_length, walk.second_length, *plies)
        told = told.note(f"size {size}: {first} to {' and '.join(others)}{ease}")
    often = [edge for side in worst.sides for edge in side if edge.times > 1]
    if often:
        counted = " and ".join(f"{edge.times} × `{edge.piece}.{edge.edge}`" for edge in often)
        told = told.note(f"counted as they lie in the garment: {counted}")
    copies = _copies_as_plies(worst)
    if copies is not None:
        return told.help(f"if its copies lie on each other as plies, add `with {copies}`")
    if worst.worst != worst.difference:
        return told.help("alter all plies alike; only the first side is eased in or gathered")
    if worst.difference > 0:
        return told.help(
            "alter both sides alike, or write `ease` or `gathers` if the first side is to be longer"
        )
    return told.help("alter both sides alike; only the first side is eased in, so name the longer one first")


def _copies_as_plies(walk: Walk) -> str | None:
    """The edge, alone on its side, with which the seam would walk if its two copies were a ply each."""
    first, second = walk.first_length - walk.ease, walk.second_length
    for side, length, other in ((walk.first, first, second), (walk.second, second, first)):
        if len(side) == 1 and walk.count * abs(0.5 * length - other) <= walk.tolerance:
            return f"{side[0].piece}.{side[0].edge}"
    return None
