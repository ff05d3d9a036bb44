"""Owns the fonts of the sheet: cut down to the letters in use, the same bytes on every machine.

Knows no pages.

WeasyPrint would cut fonts down by one of two libraries, whichever the machine has, with different bytes, and
stamps the time into them. A font that is cut down here and then embedded whole does not depend on either.
"""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Any

from specc.assets import Font, font_files

if TYPE_CHECKING:
    from pathlib import Path

FAMILY = (
    "Specc Sans"  # the licence (SIL OFL 1.1, clause 3) reserves the name of the original for the original
)
USED = (Font(400, "normal"), Font(600, "normal"))
MISSING = (
    "☐"  # U+2610: shown for a letter that the font does not have, so that no font of the machine is used
)

_FEATURES = ["kern", "frac"]
_LICENCE_NAMES = (0, 13, 14)  # OpenType name ids: copyright, licence, its address
_DIGITS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹"
_SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉"


@dataclass(frozen=True, slots=True)
class Face:
    """One font file for `@font-face`, base64."""

    weight: int
    style: str
    data: str


def faces(text: str) -> tuple[Face, ...]:
    """The fonts of the sheet with the letters of `text` and printable ASCII."""
    letters = frozenset(text) | frozenset(map(chr, range(0x20, 0x7F))) | {MISSING, *"⁰⁄₀−–"}
    files = font_files()
    return tuple(Face(font.weight, font.style, _cut_down(files[font], letters)) for font in USED)


def missing_letters(text: str) -> frozenset[str]:
    """Those letters of `text` that the fonts of the sheet do not have."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - heavy

    files = font_files()
    known: set[int] = set(range(0x20))
    with TTFont(files[USED[0]], lazy=True) as font:
        known |= set(font.getBestCmap())
    return frozenset(letter for letter in text if ord(letter) not in known)


def _cut_down(path: Path, letters: frozenset[str]) -> str:
    from fontTools.subset import Options, Subsetter  # noqa: PLC0415 - heavy
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - heavy

    options = Options(
        hinting=False,
        layout_features=_FEATURES,
        notdef_outline=True,
        name_IDs=["*"],  # left to `_name`, which knows without a search that no feature is named
        recalc_timestamp=False,
    )
    subsetter = Subsetter(options)
    subsetter.populate(text="".join(sorted(letters)))
    with TTFont(path, lazy=True, recalcTimestamp=False) as font:
        subsetter.subset(font)
        _name(font)
        _give_fractions_letters(font)
        cut = BytesIO()
        font.save(cut, reorderTables=False)
    return b64encode(cut.getvalue()).decode("ascii")


def _name(font: Any) -> None:  # noqa: ANN401 - fontTools has no types
    """The family gets our name, and keeps copyright and licence.

    Name ids 1 (family), 2 (style), 4 (full name), 6 (PostScript name).
    """
    weight = str(font["OS/2"].usWeightClass)
    font["name"].names = [each for each in font["name"].names if each.nameID in _LICENCE_NAMES]
    names = {1: FAMILY, 2: "Regular", 4: f"{FAMILY} {weight}", 6: f"{FAMILY.replace(' ', '')}-{weight}"}
    for identifier, name in names.items():
        font["name"].setName(name, identifier, 3, 1, 0x409)  # Windows, Unicode BMP, US English


def _give_fractions_letters(font: Any) -> None:  # noqa: ANN401 - fontTools has no types
    """The figures of fractions get the letters ¹ ⁄ ₂: by them the PDF is read and drawings are written."""
    glyphs = set(font.getGlyphOrder())
    wanted = {ord("⁄"): "slash.frac"}
    wanted |= {ord(_SUPERSCRIPTS[value]): f"{name}.numr" for value, name in enumerate(_DIGITS)}
    wanted |= {ord(_SUBSCRIPTS[value]): f"{name}.dnom" for value, name in enumerate(_DIGITS)}
    for table in font["cmap"].tables:
        table.cmap.update({code: glyph for code, glyph in wanted.items() if glyph in glyphs})
