"""Owns reading the rows of a data file that comes with the program; knows nothing of what they say."""

from __future__ import annotations

import tomllib
from importlib.resources import files
from typing import Any


def rows(file: str, kind: str) -> list[dict[str, Any]]:
    """The rows `[[kind]]` of `data/file`, in order."""
    text = files("specc.library").joinpath("data", file).read_text(encoding="utf-8")
    found: list[dict[str, Any]] = tomllib.loads(text)[kind]
    return found
