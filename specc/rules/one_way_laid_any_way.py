"""In cloth with a nap or a one-way print all pieces lie one way up; laid as they fit they differ in shade.

Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.spreading import ANY

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

SHADES = declare(
    "SPC569",
    "one-way-laid-any-way",
    Severity.WARNING,
    "`{cloth}` is {trait}, but {pieces} may lie any way: they will differ in shade or print",
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a cloth."""
    for cloth in subject.garment.cloths:
        trait = next((trait for trait in ("napped", "one-way") if trait in cloth.traits), None)
        turned = [each.piece for each in cloth.spreading.turned if each.way == ANY]
        if trait is not None and turned:
            pieces = " and ".join(f"`{piece}`" for piece in turned)
            told = SHADES.at(cloth.origin, cloth=cloth.name, trait=trait, pieces=pieces)
            yield told.help("leave out `any-way`, or cut those pieces from another cloth")
