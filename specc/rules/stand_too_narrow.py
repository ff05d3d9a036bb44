"""A button must not reach over the edge of the garment when it is buttoned.

From the centre line to the edge there are three quarters of the button's diameter at least (the manual of a
sewing machine, on buttonholes).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

NARROW = declare(
    "SPC528",
    "stand-too-narrow",
    Severity.WARNING,
    "the edge of closure `{name}` lies {stand} from its centre line, and `{trim}` is {diameter} wide",
)

LEAST = 0.75  # of the diameter


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a closure that is buttoned; half of what it laps lies beyond the centre line."""
    trims = {trim.name: trim for trim in subject.garment.trims}
    for finish in subject.garment.finishes:
        making = finish.making
        if making.laps is None:
            continue
        stand = subject.evaluate(making.laps) / 2.0
        for takes in making.pieces:
            diameter = trims[takes.trim].diameter
            if takes.each_place and diameter is not None and stand < LEAST * float(diameter.value) - 1e-6:
                printed = subject.lengths(stand, float(diameter.value))
                told = NARROW.at(
                    finish.origin, name=finish.name, stand=printed[0], trim=takes.trim, diameter=printed[1]
                )
                least = subject.length(LEAST * float(diameter.value))
                yield told.help(f"make the stand at least {least} wide, or take a smaller button")
