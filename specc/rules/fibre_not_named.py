"""A label names fibres by the names that the law knows, not by those of shops.

United States: the generic names of 16 CFR 303.7 and those of ISO 2076, which it takes in (edition of 2015,
names read). European Union: Annex I of Regulation (EU) 1007/2011. Viscose from bamboo is viscose.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.fibres import fibre_called, fibre_names, is_other, trade_words
from specc.names import did_you_mean
from specc.rules.fibre_lists import fibre_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

NOT_NAMED = declare(
    "SPC580",
    "fibre-not-named",
    Severity.WARNING,
    "`{fibre}` of {kind} `{name}` is not the name of a fibre as labels give it",
)
_LAW = (
    "names of fibres: 16 CFR 303.7 with ISO 2076, Regulation (EU) 1007/2011 Annex I; check the current text"
    " and your local law"
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a list and name."""
    for listed in fibre_lists(subject.garment):
        for each in listed.shares:
            if fibre_called(each.fibre) is None and not is_other(each.fibre):
                told = NOT_NAMED.at(listed.origin, fibre=each.fibre, kind=listed.kind, name=listed.name)
                yield told.note(_LAW).help(_cure(each.fibre))


def _cure(fibre: str) -> str:
    last = fibre.rsplit(maxsplit=1)[-1]
    meant = trade_words().get(last.casefold())
    if meant is not None:
        named = " or ".join(f"`{name}`" for name in meant)
        return f"write what it is made of, such as {named}"
    return did_you_mean(last, fibre_names()) or "write the generic name; the mill knows it"
