"""A lockstitch gives little: in an edge that is stretched in wear its thread breaks.

Stitch guides give 301 little stretch and send seams that must give to 401 and to overedge stitches. A taped
seam is held and does not stretch. Looked at is what goes round the garment, in cloth that stretches by 25 %
or more, where published bands of knits call it stretchy; that it is worn stretched is common practice, no
source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.model.construction import Finish
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.rules.subject import Subject

BREAKS = declare(
    "SPC567",
    "lockstitch-in-knit",
    Severity.WARNING,
    "`{made}` sews `{cloth}`, which stretches by {stretch}, with lockstitch 301: it breaks when stretched",
)

STRETCHY: Final = 0.25
_ROUND: Final = 150.0  # mm: a shorter round is the end of a strap, not a hem or a neck


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, finish or hem."""
    every: tuple[Seam | Finish, ...] = (*subject.garment.seams, *subject.garment.finishes)
    size = subject.assembly.sizes[0]
    rounds = {each.by for each in (*size.rounds, *size.sewn) if each.closed and each.length >= _ROUND}
    for made in every:
        if made.name not in rounds:
            continue
        if made.making.takes or not any(done.stitch == "301" for done in made.making.passes):
            continue
        cloths = [subject.cloth(ref.piece or "") for ref in _edges(made)]
        found = [cloth for cloth in cloths if cloth is not None and float(cloth.stretch) >= STRETCHY]
        if found and len(found) == len(cloths):
            told = BREAKS.at(
                made.origin, made=made.name, cloth=found[0].name, stretch=format_ratio(found[0].stretch)
            )
            told = told.see(found[0].origin, "the cloth")
            yield told.help("`by overlocked`, a coverstitch hem, or a tape that holds the seam")


def _edges(made: Seam | Finish) -> tuple[PartRef, ...]:
    return made.along if isinstance(made, Finish) else tuple(ref for side in made.sides for ref in side)
