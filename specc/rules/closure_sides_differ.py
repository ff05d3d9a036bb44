"""The two sides of a closure lie on each other when it is closed, and must be equally long.

A zip sewn to two lengths ripples; buttons meet buttonholes that are elsewhere. An edge that closes on
itself always agrees. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

DIFFER = declare(
    "SPC525",
    "closure-sides-differ",
    Severity.ERROR,
    "the two sides of closure `{name}` differ by up to {difference} in {sizes}",
)

NEAR = 1.0  # mm: what cutting and sewing lose, as for a seam


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a closure, with both lengths in every size."""
    for finish in subject.garment.finishes:
        found = [(size.size, one) for size in subject.assembly.sizes for one in size.closures]
        rows = [(size, one) for size, one in found if one.closure == finish.name]
        bad = [(size, one) for size, one in rows if abs(one.first - one.second) > NEAR]
        if not bad:
            continue
        worst = max(abs(one.first - one.second) for _, one in bad)
        told = DIFFER.at(
            finish.origin,
            name=finish.name,
            difference=subject.difference(worst),
            sizes=subject.sizes(size for size, _ in bad),
        )
        for size, one in rows:
            first, second = subject.lengths(one.first, one.second)
            told = told.note(f"size {size}: {first} and {second}")
        yield told.help("divide both edges at the same distance from the corners that meet")
