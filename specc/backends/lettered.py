"""Owns how a plain text is set in type: letters that no format carries are replaced, fractions are made real.

Knows nothing of where the text stands.
"""

from __future__ import annotations

import re

from markupsafe import Markup, escape

REPLACEMENT = "\ufffd"

# What XML 1.0 (fifth edition, 2.2) does not allow, and the controls of writing direction that could make a
# line read other than it is written (Unicode UAX 9, 2.1 to 2.4).
_UNFIT = re.compile(
    "[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]"
    "|[\u007f-\u009f\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069]"
)
# A fraction of a tape measure: 3/8, 2 1/4, with nothing beside it that would make it a path or a date.
_FRACTION = re.compile(r"(?<![\w/.])(?:(\d{1,4}) )?(\d{1,2})/(2|4|8|16|32|64)(?![\w/]|\.\d)")
_NUMERATORS = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_DENOMINATORS = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_MINUS = re.compile(r"(?<![\w.,-])-(?=\d)")


def fit(text: str) -> str:
    """The text with every letter that HTML or XML cannot carry replaced by U+FFFD."""
    return _UNFIT.sub(REPLACEMENT, text)


def quoted(text: str) -> Markup:
    """The text as a CSS string: every mark of ASCII is escaped by its number (CSS Syntax Level 3, 4.3.7)."""
    escaped = "".join(
        f"\\{ord(each):06x}" if each.isascii() and not each.isalnum() else each for each in fit(text)
    )
    return Markup(f'"{escaped}"')  # noqa: S704 - nothing is left in it that could end the string


def to_html(text: str) -> Markup:
    """The text escaped, its fractions marked for the font's `frac` feature, its minus signs real."""
    parts: list[str] = []
    end = 0
    text = _MINUS.sub("−", fit(text))
    for found in _FRACTION.finditer(text):
        whole = f'{found[1]}<span class="gap"> </span>' if found[1] else ""
        parts += (
            escape(text[end : found.start()]),
            whole,
            f'<span class="frac">{found[2]}/{found[3]}</span>',
        )
        end = found.end()
    return Markup("").join(Markup(part) for part in (*parts, escape(text[end:])))  # noqa: S704 - escaped above


def to_plain(text: str) -> str:
    """The text with fractions written in raised and lowered figures, for formats without font features."""

    def set_fraction(found: re.Match[str]) -> str:
        whole = f"{found[1]} " if found[1] else ""
        return f"{whole}{found[2].translate(_NUMERATORS)}⁄{found[3].translate(_DENOMINATORS)}"

    return _FRACTION.sub(set_fraction, _MINUS.sub("−", fit(text)))
