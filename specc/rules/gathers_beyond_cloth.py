"""A heavy cloth cannot be gathered as closely as a light one: the folds do not fit into the seam.

Twice the length is taught for most cloths, up to three times for sheer ones. That more than three times, and
in cloth of 200 g/m2 or more twice, do not fit: common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.units import format_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.material import Cloth
    from specc.rules.subject import Subject

CROWDED = declare(
    "SPC566",
    "gathers-beyond-cloth",
    Severity.WARNING,
    "seam `{seam}` gathers `{piece}` {times} times into its length; {cloth} takes {most} times",
)

LIGHT: Final = 3.0
HEAVY: Final = 2.0
HEAVY_FROM: Final = 200.0  # g/m2


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, with the size that gathers most."""
    for index, seam in enumerate(subject.garment.seams):
        if not seam.gathered:
            continue
        walks = [(size.size, size.walks[index]) for size in subject.assembly.sizes]
        size, worst = max(walks, key=lambda one: one[1].first_length / one[1].second_length)
        cloth = subject.cloth(worst.first[0].piece)
        times, most = worst.first_length / worst.second_length, _most(cloth)
        if cloth is not None and times > most:
            first, second = subject.lengths(worst.first_length, worst.second_length)
            told = CROWDED.at(
                seam.origin,
                seam=seam.name,
                piece=worst.first[0].piece,
                times=format_number(times, decimals=1),
                cloth=f"`{cloth.name}`",
                most=format_number(most, decimals=0),
            )
            told = told.note(f"size {size}: {first} is gathered to {second}").see(cloth.origin, "its cloth")
            yield told.help("make the gathered side shorter, or lay pleats, which lie on each other")


def _most(cloth: Cloth | None) -> float:
    heavy = cloth is not None and cloth.weight is not None and float(cloth.weight.value) >= HEAVY_FROM
    return HEAVY if heavy else LIGHT
