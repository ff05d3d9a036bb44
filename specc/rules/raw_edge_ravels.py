"""An edge may stay raw only in cloth that does not ravel.

A leno or a knit holds its threads, a plain weave does not.

Plain weave ravels more than twill or satin, and these more than knit. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

RAVELS = declare(
    "SPC504",
    "raw-edge-ravels",
    Severity.WARNING,
    "{kind} `{name}` leaves a raw edge in cloth `{cloth}`, which ravels",
)

_HOLDS = ("ravel-free", "knit")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a finish or hem that leaves an edge raw in such cloth."""
    for finish in subject.garment.finishes:
        if finish.making.raw_edge != "raw":
            continue
        for ref in finish.along:
            cloth = subject.cloth(ref.piece or "")
            if cloth is not None and not any(trait in cloth.traits for trait in _HOLDS):
                told = RAVELS.at(finish.origin, kind=finish.kind, name=finish.name, cloth=cloth.name)
                told = told.see(cloth.origin, "not said to be `ravel-free`")
                yield told.help(
                    "turn or bind the edge, or write `ravel-free` under `is` if the cloth holds its threads"
                )
                break
