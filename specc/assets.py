"""Owns finding the files that come with the program: grammar, templates, library texts, fonts.

Knows nothing of what is in them.
"""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

_PACKAGE = Path(__file__).resolve().parent


class Font(NamedTuple):
    """One cut of Source Sans Pro, weight and style as CSS names them (CSS Fonts Level 4, 2.2 and 2.4)."""

    weight: int
    style: Literal["normal", "italic"]


# Those that the sheet uses, and the end of their files' names.
_CUTS = MappingProxyType(
    {
        Font(400, "normal"): "Regular",
        Font(400, "italic"): "It",
        Font(600, "normal"): "Semibold",
        Font(700, "normal"): "Bold",
    }
)


def folder(name: Literal["grammar", "templates"]) -> Path:
    """The folder `name`: inside the package in an installed wheel, else beside the package in a checkout."""
    packaged = _PACKAGE / f"_{name}"
    return packaged if packaged.is_dir() else _PACKAGE.parent / name


def library_texts() -> Mapping[str, Path]:
    """The charts, blocks and methods that come with the program, by file name without ending, in order."""
    return {path.stem: path for path in sorted(_PACKAGE.joinpath("library").glob("*.garment"))}


def font_files() -> Mapping[Font, Path]:
    """The TrueType files of Source Sans Pro, from the package font-source-sans-pro.

    The package is found, not imported: importing it lists and opens more than is needed.
    """
    found = find_spec("font_source_sans_pro")
    if found is None or found.origin is None:
        raise FileNotFoundError("the package font-source-sans-pro is not installed")
    files = Path(found.origin).parent / "files"
    return {font: files / f"SourceSansPro-{cut}.ttf" for font, cut in _CUTS.items()}
