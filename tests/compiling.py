"""Owns compiling a text in a test: one place that knows how the pipeline is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.pipeline import World, check

from specc.source import SourceFile

if TYPE_CHECKING:
    from pathlib import Path

    from specc.diagnostics import Diagnostic


def said(text: str, *, folder: Path, name: str = "test.garment") -> tuple[Diagnostic, ...]:
    """What is said about `text` as the file `name` of `folder`, in order."""
    return check(SourceFile(name, text), World(folder)).diagnostics
