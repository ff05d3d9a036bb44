"""What is sold in certain lengths must be sold in one that fits the opening in every size.

A zip that is longer than its opening is cut down, one that is shorter leaves a longer seam below; which of
the two is meant the way of sewing says. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.quantities.pieces import NEAR, sold_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.closing import TakesPieces
    from specc.model.construction import Finish
    from specc.model.material import Trim
    from specc.rules.subject import Subject

NOT_SOLD = declare(
    "SPC527",
    "fastening-not-sold",
    Severity.WARNING,
    "`{trim}` is not sold {wanted} than the opening of closure `{name}` in {sizes}",
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a closure and trim."""
    trims = {trim.name: trim for trim in subject.garment.trims}
    for finish in subject.garment.finishes:
        for takes in finish.making.pieces:
            yield from _checked(subject, finish, takes, trims[takes.trim])


def _checked(subject: Subject, finish: Finish, takes: TakesPieces, trim: Trim) -> Iterator[Diagnostic]:
    bad = []
    for size in subject.assembly.sizes:
        opening = next((one.first for one in size.closures if one.closure == finish.name), None)
        sold = None if opening is None else sold_length(trim, takes, opening)
        if opening is None or sold is None:
            continue
        over = float(sold.value) - opening
        if (takes.rounding == "shorter" and over > NEAR) or (takes.rounding == "longer" and over < -NEAR):
            bad.append((size.size, opening))
    if not bad:
        return
    told = NOT_SOLD.at(
        finish.origin,
        trim=trim.name,
        wanted=takes.rounding,
        name=finish.name,
        sizes=subject.sizes(name for name, _ in bad),
    ).see(trim.origin, "declared here")
    for name, opening in bad:
        told = told.note(f"size {name}: the opening is {subject.length(opening)} long")
    yield told.help("add the length to its `lengths`, or make the opening longer or shorter")
