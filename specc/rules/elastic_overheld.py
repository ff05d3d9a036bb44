"""A trim held in by a share h is stretched by h / (1 - h) to reach the edge.

It must be able to stretch that far.

A trim of 0.94 m laid on 1 m of edge is stretched by 6.4 % (geometry). A trim of a stated length that is
shorter than the edge holds it in by what it lacks.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.construction import Finish
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Seam
    from specc.rules.subject import Subject
    from specc.source import Span

OVERHELD = declare(
    "SPC508",
    "trim-held-beyond-stretch",
    Severity.ERROR,
    "`{finish}` holds `{trim}` in by {held}, which stretches it by {needed}; it stretches by {stretch}",
)


_EXACT = 1e-9


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a hold that its trim cannot give."""
    trims = {trim.name: trim for trim in subject.garment.trims}
    every: tuple[Seam | Finish, ...] = (*subject.garment.seams, *subject.garment.finishes)
    for finish in every:
        zones = {
            zone
            for size in subject.assembly.sizes
            for laid in (*size.sewn, *size.rounds)
            if laid.by == finish.name
            for zone in laid.zones
        }
        held = max((zone.held for zone in zones), default=0.0)
        stated = [takes for takes in finish.making.takes if takes.long is not None]
        for takes in stated or finish.making.takes:
            trim = trims[takes.trim]
            needed = held / (1.0 - held)
            if takes.hanging is None and needed > float(trim.stretch) + _EXACT:
                told = OVERHELD.at(
                    takes.long.origin if takes.long is not None else _place(subject, finish),
                    finish=finish.name,
                    trim=trim.name,
                    held=format_ratio(held),
                    needed=format_ratio(needed),
                    stretch=format_ratio(trim.stretch),
                )
                told = told.see(trim.origin, "declared here")
                less = "cut it longer" if takes.long is not None else "hold it in less"
                yield told.help(f"{less}, take a trim that stretches, or write its `stretch`")


def _place(subject: Subject, finish: Seam | Finish) -> Span:
    """The hold that holds in most."""
    written = finish.holds if isinstance(finish, Finish) else ()
    holds = [(subject.evaluate(hold.share), hold) for hold in written]
    return max(holds, key=lambda one: one[0])[1].origin if holds else finish.origin
