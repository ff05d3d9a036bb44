"""Notches of a seam must meet when it is sewn.

A sewer lays notch on notch. Two that are nearly opposite and do not meet make one side pucker before them and
the other behind, and nobody knows which of the two was meant. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import NotchesApart
    from specc.rules.subject import Subject

APART = declare(
    "SPC523",
    "notches-apart",
    Severity.WARNING,
    "notches of `{first}` and `{second}` are up to {distance} apart in seam `{seam}` in {sizes}",
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic for every two edges whose notches do not meet."""
    origins = {seam.name: seam.origin for seam in subject.garment.seams}
    found: dict[tuple[str, tuple[str, str]], list[tuple[str, NotchesApart]]] = {}
    for size in subject.assembly.sizes:
        for apart in size.apart:
            found.setdefault((apart.seam, apart.edges), []).append((size.size, apart))
    for (seam, (first, second)), each in found.items():
        told = APART.at(
            origins[seam],
            first=first,
            second=second,
            distance=subject.difference(max(apart.distance for _, apart in each)),
            seam=seam,
            sizes=subject.sizes(size for size, _ in each),
        )
        yield told.help(f"notch both as far from one end of the seam; now that of `{first}` is on both")
