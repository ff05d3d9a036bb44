"""Owns what a garment is made of and packed in: cloths, trims, threads, packing, as declared.

Knows nothing of how much of each is used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.model.spreading import Spreading
    from specc.source import Span
    from specc.units import Quantity


@dataclass(frozen=True, slots=True)
class FibreShare:
    """A fibre and its share of the weight."""

    fibre: str
    share: Fraction


@dataclass(frozen=True, slots=True)
class PriceFrom:
    """A lower price for whoever buys at least so much: units of sale, or pieces, exact."""

    least: Fraction
    amount: Fraction


@dataclass(frozen=True, slots=True)
class Price:
    """A price for one unit of sale: `amount` in `currency` per `per` (a length unit, `piece` or `cone`).

    `breaks` are the prices of larger amounts, rising.
    """

    amount: Fraction
    currency: str
    per: str
    breaks: tuple[PriceFrom, ...] = ()

    def of(self, bought: Fraction) -> Fraction:
        """The price of one unit where so many are bought."""
        return next((each.amount for each in reversed(self.breaks) if bought >= each.least), self.amount)


@dataclass(frozen=True, slots=True)
class Buying:
    """How a material is bought: the share added for `waste`, the least that is sold, spare pieces a garment.

    `at_least` is a length or a number. `reference` is what the supplier calls it.
    """

    waste: Fraction
    at_least: Quantity | None
    spare: int
    reference: str | None


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth.

    `use` is what it is for: `shell` unless said otherwise. Lengths are quantities, shares fractions.
    `sold_in` is the length of the rolls that it is sold in; None where it is cut to any length.
    """

    name: str
    title: str
    use: str
    fibres: tuple[FibreShare, ...]
    width: Quantity | None
    usable: Quantity | None
    weight: Quantity | None
    thickness: Quantity | None
    traits: tuple[str, ...]
    stretch: Fraction
    shrinks_length: Fraction
    shrinks_width: Fraction
    spreading: Spreading
    buying: Buying
    sold_in: Quantity | None
    price: Price | None
    colour: str | None
    supplier: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Trim:
    """A trim. `kind` is a word of the trade: fold-over elastic, bias strip, zip, button, ...

    `lengths` are those in which it is sold, rising (zips); `diameter` and `thickness` are a button's.
    """

    name: str
    title: str
    kind: str
    fibres: tuple[FibreShare, ...]
    width: Quantity | None
    stretch: Fraction
    cut_from: str | None  # name of the cloth
    bias_way: str | None  # one of BIAS_WAYS of the model of spreading, where the maker chose
    price: Price | None
    sold_in: Quantity | None  # rolls of this length, or packs of so many
    lengths: tuple[Quantity, ...]
    buying: Buying
    diameter: Quantity | None
    thickness: Quantity | None
    colour: str | None
    supplier: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Thread:
    """A sewing thread; `use` is what it is for, in words. It is sold in cones of the length `cone`.

    `waste` is the share added for what is lost, None where nothing is said.
    """

    name: str
    title: str
    size: str | None
    use: str | None
    cone: Quantity | None
    waste: Fraction | None
    price: Price | None
    colour: str | None
    supplier: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Packing:
    """What garments are packed in, or what hangs on them: one of it for every `holds` garments."""

    name: str
    title: str
    holds: int
    price: Price | None
    sold_in: Quantity | None  # packs of so many
    buying: Buying
    colour: str | None
    supplier: str | None
    origin: Span
