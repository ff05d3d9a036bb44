"""Owns the letterings of drawings and how much room a text takes. Knows nothing of where it is put."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType


class Lettering(StrEnum):
    """What a text in a drawing is."""

    TITLE = "title"
    NAME = "name"
    VALUE = "value"
    SMALL = "small"


@dataclass(frozen=True, slots=True)
class LetteringStyle:
    """Height of the em in millimetres, CSS weight."""

    size: float
    weight: int


LETTERINGS = MappingProxyType(
    {
        Lettering.TITLE: LetteringStyle(3.9, 600),
        Lettering.NAME: LetteringStyle(2.8, 600),
        Lettering.VALUE: LetteringStyle(2.8, 400),
        Lettering.SMALL: LetteringStyle(2.5, 400),
    }
)

# Advance widths of Source Sans Pro Semibold 2.020 from U+0020 to U+007E, thousandths of an em (table `hmtx`):
# the wider of the two weights in use, so that no text is wider than it is taken to be.
_WIDTHS = (
    *(200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344),
    *(513, 513, 513, 513, 513, 513, 513, 513, 513, 513, 275, 275, 513, 513, 513, 444),
    *(875, 558, 597, 576, 625, 538, 510, 628, 663, 282, 494, 597, 502, 745, 656, 674),
    *(582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324, 513, 500),
    *(549, 516, 563, 462, 564, 507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549),
    *(564, 564, 373, 431, 361, 556, 495, 748, 481, 495, 443, 324, 255, 324, 513),
)
_FIRST = 0x20
_OTHER = 850  # as wide as the widest letter above; what the font lacks is shown as a box of this width
_CAPITALS = 0.66  # height of capitals, table `OS/2`


def width_of(text: str, lettering: Lettering) -> float:
    """The width that `text` takes at most, in millimetres of paper."""
    codes = (ord(letter) - _FIRST for letter in text)
    total = sum(_WIDTHS[code] if 0 <= code < len(_WIDTHS) else _OTHER for code in codes)
    return total * LETTERINGS[lettering].size / 1000.0


def height_of(lettering: Lettering) -> float:
    """The height of the capitals, in millimetres of paper."""
    return _CAPITALS * LETTERINGS[lettering].size
