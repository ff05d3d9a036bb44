"""What is declared and never used is a slip: a name that was changed, or a line that was forgotten.

It is judged only in the spec's own text: a file of ways of sewing may hold more than one garment takes. A
colourway that gives it a colour does not use it. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.rules.makings import cloths_used, trims_used

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject
    from specc.source import Span

UNUSED = declare("SPC591", "declared-unused", Severity.WARNING, "{kind} `{name}` is declared and {what}")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a declaration."""
    for kind, name, what, cure, origin in _unused(subject):
        if origin.file == subject.garment.sources[0]:
            yield UNUSED.at(origin, kind=kind, name=name, what=what).help(f"{cure}, or take it out")


def _unused(subject: Subject) -> Iterator[tuple[str, str, str, str, Span]]:
    garment = subject.garment
    cloths, trims = cloths_used(subject), trims_used(subject)
    for cloth in garment.cloths:
        if cloth.name not in cloths:
            cure = f"name its pieces behind `for`, or write `also cut … from {cloth.name}`"
            yield "cloth", cloth.name, "nothing is cut from it", cure, cloth.origin
    for trim in garment.trims:
        if trim.name not in trims:
            yield "trim", trim.name, "nothing takes it", "name it in a seam, finish or closure", trim.origin
    for one in garment.unused:
        yield one.kind, one.name, "nothing uses it", "use it", one.origin
