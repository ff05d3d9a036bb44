"""Owns the names of stitch types by their ISO 4915 numbers, read from their table. Knows no seam."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class Stitch:
    """A row of `data/stitches.toml`."""

    number: str
    name: str
    source: str


def stitches() -> tuple[Stitch, ...]:
    """All stitch types that are known, by rising number."""
    text = files("specc.library").joinpath("data", "stitches.toml").read_text(encoding="utf-8")
    return tuple(Stitch(**row) for row in tomllib.loads(text)["stitch"])
