"""Owns a world for tests: files that are only thought of, and the library that comes with the program."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from specc.gather import Refused, gather
from specc.resolve import resolve
from specc.source import SourceFile
from specc.world import Folder

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Diagnostic
    from specc.model.garment import Garment

_LIBRARY = Folder(Path())


@dataclass(frozen=True, slots=True)
class Texts:
    """A project folder whose files are these texts, by path."""

    files: Mapping[str, str | bytes] = field(default_factory=dict)
    called: str = ""

    def project(self, path: str) -> bytes | Refused:
        """The text as bytes."""
        found = self.files.get(path)
        if found is None:
            inside = any(name.startswith(f"{path}/") for name in self.files)
            return Refused.FOLDER if inside else Refused.MISSING
        return found.encode() if isinstance(found, str) else found

    def project_names(self, folder: str, ending: str) -> tuple[str, ...]:
        """The names of the texts in a folder that end so."""
        inside = (path.rpartition("/") for path in self.files)
        return tuple(sorted(name for before, _, name in inside if before == folder and name.endswith(ending)))

    def library(self, name: str) -> bytes | None:
        """The library's own."""
        return _LIBRARY.library(name)

    def library_names(self) -> tuple[str, ...]:
        """The library's own."""
        return _LIBRARY.library_names()


def resolved(
    text: str, files: Mapping[str, str | bytes] | None = None, *, name: str = "spec.garment"
) -> tuple[Garment | None, tuple[Diagnostic, ...]]:
    """The garment of a text, and all that is said of it before anything is drafted."""
    gathered, said = gather(SourceFile(name, text), Texts(files or {}))
    garment, more = resolve(gathered)
    return garment, tuple(sorted((*said, *more), key=lambda each: each.sort_key()))


def garment_of(text: str, files: Mapping[str, str | bytes] | None = None) -> Garment:
    """The garment of a text without faults."""
    garment, said = resolved(text, files)
    assert [each.message for each in said] == []
    assert garment is not None
    return garment


def told(text: str, files: Mapping[str, str | bytes] | None = None) -> list[tuple[str, str]]:
    """Codes and the texts under the caret, in the order of the text."""
    return [(each.code.id, each.span.text if each.span else "") for each in resolved(text, files)[1]]
