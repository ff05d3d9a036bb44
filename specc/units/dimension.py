"""Owns what kind of thing a value is, and which kinds may be added, multiplied and divided.

Knows no values and no units.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

_LARGEST_POWER = 3


@dataclass(frozen=True, slots=True)
class Dimension:
    """Powers of length, angle, mass and pieces; `currency` makes it money, `percent` a ratio.

    The operations return None where no sensible dimension exists, so that the caller can say what was joined.
    """

    length: int = 0
    angle: int = 0
    mass: int = 0
    pieces: int = 0
    currency: str | None = None
    percent: bool = False

    NUMBER: ClassVar[Dimension]
    RATIO: ClassVar[Dimension]
    LENGTH: ClassVar[Dimension]
    ANGLE: ClassVar[Dimension]
    AREA: ClassVar[Dimension]
    MASS: ClassVar[Dimension]
    AREA_WEIGHT: ClassVar[Dimension]
    PIECES: ClassVar[Dimension]

    @staticmethod
    def money(currency: str) -> Dimension:
        """Return the dimension of sums in `currency`, an ISO 4217 code."""
        return Dimension(currency=currency)

    @property
    def is_plain(self) -> bool:
        """Whether values have no unit but percent: numbers and ratios."""
        return self in (Dimension.NUMBER, Dimension.RATIO)

    def plus(self, other: Dimension) -> Dimension | None:
        """Return the dimension of a sum or difference; ratio and number give a number (`1 - 3%`: 0.97)."""
        if self == other:
            return self
        return Dimension.NUMBER if self.is_plain and other.is_plain else None

    def times(self, other: Dimension) -> Dimension | None:
        """Return the dimension of a product; a ratio times anything is that thing."""
        if self == Dimension.RATIO:
            return other
        if other == Dimension.RATIO:
            return self
        if self.currency and other.currency:
            return None
        return self._combined(other, sign=1, currency=self.currency or other.currency)

    def over(self, other: Dimension) -> Dimension | None:
        """Return the dimension of a quotient; like over like is a number."""
        if self == other:
            return Dimension.NUMBER
        if other == Dimension.RATIO:
            return self
        if other.currency not in (None, self.currency):
            return None
        return self._combined(other, sign=-1, currency=None if other.currency else self.currency)

    def root(self) -> Dimension | None:
        """Return the dimension of a square root."""
        if self.is_plain:
            return Dimension.NUMBER
        length, angle, mass, pieces = self._powers
        if self.currency or length % 2 or angle % 2 or mass % 2 or pieces % 2:
            return None
        return Dimension(length // 2, angle // 2, mass // 2, pieces // 2)

    @property
    def _powers(self) -> tuple[int, int, int, int]:
        return self.length, self.angle, self.mass, self.pieces

    def _combined(self, other: Dimension, *, sign: int, currency: str | None) -> Dimension | None:
        length, angle, mass, pieces = (
            mine + sign * theirs for mine, theirs in zip(self._powers, other._powers, strict=True)
        )
        if max(map(abs, (length, angle, mass, pieces))) > _LARGEST_POWER:
            return None
        return Dimension(length, angle, mass, pieces, currency)

    def __str__(self) -> str:
        """The dimension as a noun: `length`, `weight per area`, `money in USD per length`."""
        if self in _NOUNS:
            return _NOUNS[self]
        named = tuple(zip(("length", "angle", "weight", "piece"), self._powers, strict=True))
        over = [_powered(name, power) for name, power in named if power > 0]
        under = [_powered(name, -power) for name, power in named if power < 0]
        if self.currency:
            over.insert(0, f"money in {self.currency}")
        return " per ".join([" times ".join(over) or "number", *under])

    @property
    def with_article(self) -> str:
        """The noun as a sentence takes it: `a length`, `an angle`, `money in USD`."""
        noun = str(self)
        if self.currency:
            return noun
        return f"an {noun}" if noun.startswith(("a", "e", "i", "o", "u")) else f"a {noun}"


def _powered(name: str, power: int) -> str:
    if name == "length":
        return ("length", "area", "volume")[power - 1]
    return name if power == 1 else f"{name} to the power of {power}"


Dimension.NUMBER = Dimension()
Dimension.RATIO = Dimension(percent=True)
Dimension.LENGTH = Dimension(length=1)
Dimension.ANGLE = Dimension(angle=1)
Dimension.AREA = Dimension(length=2)
Dimension.MASS = Dimension(mass=1)
Dimension.AREA_WEIGHT = Dimension(mass=1, length=-2)
Dimension.PIECES = Dimension(pieces=1)

_NOUNS = {
    Dimension.NUMBER: "number",
    Dimension.RATIO: "ratio",
    Dimension.MASS: "weight",
    Dimension.PIECES: "number of pieces",
}
