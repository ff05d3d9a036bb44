"""A label in the United States calls a fibre of less than 5 % `other fiber`, unless it has a function.

16 CFR 303.3 (edition of 2015, read): a fibre under 5 % is named only with what it is there for, as elastane
is for stretch. European law lets it be named. A label is judged, not what a mill says of its cloth; what is
elastic counts as having a function.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.library.fibres import fibre_called, is_other
from specc.rules.fibre_lists import fibre_lists, in_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

TOO_LITTLE = declare(
    "SPC582",
    "fibre-too-little-to-name",
    Severity.NOTE,
    "label `{name}` names {share}, less than 5%",
)
LEAST: Final = Fraction(5, 100)
_LAW = (
    "other fiber: 16 CFR 303.3; the European Union lets it be named; check the current text and your local"
    " law"
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One note a label and fibre."""
    for listed in fibre_lists(subject.garment):
        if listed.kind != "label":
            continue
        for each in listed.shares:
            fibre = fibre_called(each.fibre)
            stretches = fibre is not None and fibre.stretches
            if each.share < LEAST and not stretches and not is_other(each.fibre):
                told = TOO_LITTLE.at(listed.origin, name=listed.name, share=in_words((each,)))
                yield told.note(_LAW).help(
                    "for the United States write `other fiber` last, or say what the fibre is there for"
                )
