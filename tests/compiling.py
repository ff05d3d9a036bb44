"""Owns compiling a text in a test: one place that knows how the program is called."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.pipeline import check

from specc import assets
from specc.diagnostics import Diagnostic
from specc.gather import read

if TYPE_CHECKING:
    from pathlib import Path


@dataclass(frozen=True, slots=True)
class Folder:
    """The world of a test: one project folder and the library that comes with the program."""

    project_folder: Path

    def project(self, path: str) -> bytes | None:
        file = self.project_folder / path
        return file.read_bytes() if file.is_file() else None

    def library(self, name: str) -> bytes | None:
        file = assets.library_texts().get(name)
        return file.read_bytes() if file else None

    def library_names(self) -> tuple[str, ...]:
        return tuple(assets.library_texts())


def said(data: bytes | str, *, folder: Path, name: str = "test.garment") -> tuple[Diagnostic, ...]:
    """What is said about `data` as the file `name` of `folder`, in order."""
    file, faults = read(name, data.encode() if isinstance(data, str) else data)
    return tuple(sorted((*faults, *check(file, Folder(folder)).diagnostics), key=Diagnostic.sort_key))
