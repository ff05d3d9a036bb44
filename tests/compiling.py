"""Owns compiling a text in a test: one place that knows how the program is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.pipeline import check_bytes
from specc.world import Folder

if TYPE_CHECKING:
    from pathlib import Path

    from specc.diagnostics import Diagnostic


def said(data: bytes | str, *, folder: Path, name: str = "test.garment") -> tuple[Diagnostic, ...]:
    """What is said about `data` as the file `name` of `folder`, in order."""
    return check_bytes(name, data.encode() if isinstance(data, str) else data, Folder(folder)).diagnostics
