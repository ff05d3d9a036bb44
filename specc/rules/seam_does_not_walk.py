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
    from specc.making.assembly import EdgeLength, Walk
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
    for edge in often:
        if _agrees_as_plies(worst, edge):
            name = f"{edge.piece}.{edge.edge}"
            return told.help(f"if the copies of `{name}` lie on each other as plies, add `with {name}`")
    if worst.worst != worst.difference:
        return told.help("alter all plies alike; only the first side is eased in or gathered")
    if worst.difference > 0:
        return told.help(
            "alter both sides alike, or write `ease` or `gathers` if the first side is to be longer"
        )
    return told.help("alter both sides alike; only the first side is eased in, so name the longer one first")


def _agrees_as_plies(walk: Walk, edge: EdgeLength) -> bool:
    """Whether the seam would walk if the copies of one edge, which stands alone, were a ply each."""
    lengths = [(walk.first, walk.first_length - walk.ease), (walk.second, walk.second_length)]
    alone = [length for side, length in lengths if side == (edge,)]
    others = [length for side, length in lengths if side != (edge,)]
    return any(abs(one / edge.times - other) <= walk.tolerance for one in alone for other in others)
