"""Owns compiling a text in a test: one place that knows how the program is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.gather import read
from specc.pipeline import check
from specc.world import Folder

if TYPE_CHECKING:
    from pathlib import Path

    from specc.diagnostics import Diagnostic


class Here(Folder):
    """A folder that goes by no name, so that what is said is the same wherever it lies."""

    @property
    def called(self) -> str:
        """Nothing stands before a path."""
        return ""


def said(data: bytes | str, *, folder: Path, name: str = "test.garment") -> tuple[Diagnostic, ...]:
    """What is said about `data` as the file `name` of `folder`, in order, wherever the folder lies."""
    source, faults = read(name, data.encode() if isinstance(data, str) else data)
    return faults or check(source, Here(folder)).diagnostics
