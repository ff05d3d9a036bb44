"""Owns where a garment says what it is made of: cloths, trims, and the texts of labels.

Knows no rule.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.library.fibres import fibre_called
from specc.model.material import FibreShare
from specc.units import UNITS, Quantity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.model.garment import Garment
    from specc.source import Span

# `80% wool, 20% polyamide` in the text of a label; a share may have decimals.
_SHARE = re.compile(r"(\d+(?:\.\d+)?)\s*%\s*((?:[^\W\d_]|[' -])+)")


@dataclass(frozen=True, slots=True)
class FibreList:
    """Fibres as they stand: `kind` is `cloth`, `trim` or `label`, `name` what of that kind."""

    kind: str
    name: str
    shares: tuple[FibreShare, ...]
    origin: Span

    @property
    def written(self) -> str:
        """The list as a text has it: `95% cotton, 5% elastane`."""
        return in_words(self.shares)


def fibre_lists(garment: Garment) -> Iterator[FibreList]:
    """Every list of fibres, of cloths and trims first.

    The text of a label is one when a share in it is of a fibre: `100% handmade` is none.
    """
    for cloth in garment.cloths:
        if cloth.fibres:
            yield FibreList("cloth", cloth.name, cloth.fibres, cloth.origin)
    for trim in garment.trims:
        if trim.fibres:
            yield FibreList("trim", trim.name, trim.fibres, trim.origin)
    for label in garment.labels:
        for text in label.says:
            found = _SHARE.findall(text)
            shares = tuple(FibreShare(name.strip(), Fraction(share) / 100) for share, name in found)
            if any(fibre_called(each.fibre) for each in shares):
                yield FibreList("label", label.name, shares, label.origin)


def in_words(shares: tuple[FibreShare, ...]) -> str:
    """Shares as a text has them."""
    return ", ".join(f"{Quantity(one.share, UNITS['%'])} {one.fibre}" for one in shares)
