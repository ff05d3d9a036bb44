"""Owns reading numbers as people write them: `12`, `1.5`, `1/2`, `2 1/4`, `2-1/4`, `½`, `2¼`.

Knows no units.
"""

from __future__ import annotations

import re
from fractions import Fraction

# Bounds what a text from a stranger can cost: twelve digits hold a kilometre in nanometres.
MOST_DIGITS = 12

VULGAR_FRACTIONS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}

_NUMBER = re.compile(
    rf"""(?P<minus>-)?
    (?: (?P<decimal>[0-9]*\.[0-9]+)
      | (?:(?P<whole>[0-9]+)(?:[ ]+|-))?(?P<above>[0-9]+)[/⁄](?P<below>[0-9]+)
      | (?P<before>[0-9]+)?[ ]*(?P<vulgar>[{"".join(VULGAR_FRACTIONS)}])
      | (?P<integer>[0-9]+)
    )""",
    re.VERBOSE,
)


def parse_number(text: str) -> Fraction:
    """Return the exact value of a number as written.

    Raises ValueError, with the reason in plain words, when `text` is not a number, divides by zero, is a
    mixed number whose fraction is 1 or more, or has more than MOST_DIGITS digits in a row.
    """
    match = _NUMBER.fullmatch(text)
    if match is None:
        raise ValueError(f"`{text}` is not a number")
    if any(len(digits) > MOST_DIGITS for digits in re.findall("[0-9]+", text)):
        raise ValueError(f"a number has at most {MOST_DIGITS} digits")
    part = match.groupdict()
    if part["decimal"]:
        value = Fraction(part["decimal"])
    elif part["above"]:
        value = _common_fraction(part["whole"], above=int(part["above"]), below=int(part["below"]))
    elif part["vulgar"]:
        value = int(part["before"] or 0) + VULGAR_FRACTIONS[part["vulgar"]]
    else:
        value = Fraction(int(part["integer"]))
    return -value if part["minus"] else value


def _common_fraction(whole: str | None, *, above: int, below: int) -> Fraction:
    if below == 0:
        raise ValueError("a fraction cannot be divided by 0")
    if whole is not None and above >= below:
        raise ValueError(f"the fraction of a mixed number is less than 1, not {above}/{below}")
    return int(whole or 0) + Fraction(above, below)
