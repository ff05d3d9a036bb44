"""On folded elastic a straight stitch of at least 3.0 mm: a shorter one is too tight for the elastic.

Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Making
    from specc.rules.subject import Subject
    from specc.source import Span

SHORT = declare(
    "SPC507",
    "stitch-short-on-elastic",
    Severity.WARNING,
    "`{name}` is sewn on elastic with a stitch of {length}, under 3.0 mm",
)

SHORTEST = 3.0  # mm
STRAIGHT = ("101", "301", "401")  # ISO 4915:1991, from memory: a zigzag (304) or an overedge gives by itself


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam or finish that sews elastic with too short a stitch."""
    elastic = {trim.name for trim in subject.garment.trims if "elastic" in trim.kind}
    for name, making, origin in _made(subject):
        if not any(takes.trim in elastic for takes in making.takes):
            continue
        lengths = [
            subject.evaluate(one.stitch_length)
            for one in making.passes
            if one.stitch in STRAIGHT and one.stitch_length
        ]
        shortest = min(lengths, default=SHORTEST)
        if shortest < SHORTEST:
            told = SHORT.at(origin, name=name, length=format_length(shortest, "mm", decimals=1))
            yield told.help("write `stitch-length 3 mm`")


def _made(subject: Subject) -> Iterator[tuple[str, Making, Span]]:
    for seam in subject.garment.seams:
        yield seam.name, seam.making, seam.origin
    for finish in subject.garment.finishes:
        yield finish.name, finish.making, finish.origin
    for name, making, _, origin in subject.attached():
        yield name, making, origin
