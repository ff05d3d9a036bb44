"""What a label says of fibres is what the cloth is made of.

16 CFR 303.43 (edition of 2015, read): a share may be off by 3 of a hundred parts of all fibre, and by nothing
where the label says that all is one fibre. A label that agrees with any cloth of the garment is let pass: it
may be for the lining.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.library.fibres import fibre_called, is_other
from specc.rules.fibre_lists import fibre_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.material import FibreShare
    from specc.rules.subject import Subject

NOT_OF_CLOTH = declare(
    "SPC583",
    "label-not-of-cloth",
    Severity.WARNING,
    "label `{name}` says {says}; no cloth is made of that",
)
OFF: Final = Fraction(3, 100)
_LAW = (
    "16 CFR 303.43 lets a share be off by 3 percentage points, and by none where all is one fibre; check the"
    " current text and your local law"
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a label."""
    lists = tuple(fibre_lists(subject.garment))
    cloths = [listed for listed in lists if listed.kind == "cloth"]
    for listed in lists:
        if listed.kind != "label" or not cloths:
            continue
        if any(_agree(listed.shares, cloth.shares) for cloth in cloths):
            continue
        told = NOT_OF_CLOTH.at(listed.origin, name=listed.name, says=listed.written)
        for cloth in cloths:
            told = told.see(cloth.origin, f"is {cloth.written}")
        yield told.note(_LAW).help("write on the label what the cloth says, or correct the cloth")


def _agree(label: tuple[FibreShare, ...], cloth: tuple[FibreShare, ...]) -> bool:
    """Whether the label tells the truth of the cloth; what it calls other fibres may be any."""
    said, made = _shares(label), _shares(cloth)
    if len(said) == 1 or len(made) == 1:
        return said == made
    other = sum((each.share for each in label if is_other(each.fibre)), Fraction(0))
    unnamed = sum((share for name, share in made.items() if name not in said), Fraction(0))
    named = (abs(share - made.get(name, Fraction(0))) <= OFF for name, share in said.items() if name != "")
    return all(named) and abs(unnamed - other) <= OFF


def _shares(shares: tuple[FibreShare, ...]) -> dict[str, Fraction]:
    """The share of each fibre by one name for all its names; other fibres are nameless."""
    found: dict[str, Fraction] = {}
    for each in shares:
        fibre = fibre_called(each.fibre)
        name = "" if is_other(each.fibre) else fibre.names[0] if fibre else each.fibre.casefold()
        found[name] = found.get(name, Fraction(0)) + each.share
    return found
