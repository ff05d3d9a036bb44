"""A label names the fibre with the largest share first, other fibres last.

16 CFR 303.16 (edition of 2015, read) and Regulation (EU) 1007/2011 ask for descending order. The sheet prints
the list as the text has it, and the label is copied from there.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.fibres import is_other
from specc.rules.fibre_lists import fibre_lists, in_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.material import FibreShare
    from specc.rules.subject import Subject

OUT_OF_ORDER = declare(
    "SPC581",
    "fibres-out-of-order",
    Severity.WARNING,
    "the fibres of {kind} `{name}` do not stand with the largest share first: {written}",
)
_LAW = "descending order: 16 CFR 303.16, Regulation (EU) 1007/2011; check the current text and your local law"


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a list."""
    for listed in fibre_lists(subject.garment):
        if any(_rank(first) > _rank(second) for first, second in pairwise(listed.shares)):
            told = OUT_OF_ORDER.at(listed.origin, kind=listed.kind, name=listed.name, written=listed.written)
            yield told.note(_LAW).help(f"write `{in_words(tuple(sorted(listed.shares, key=_rank)))}`")


def _rank(each: FibreShare) -> tuple[bool, float]:
    return is_other(each.fibre), -float(each.share)
