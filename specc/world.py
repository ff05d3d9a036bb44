"""Owns what a compilation may see of the outside: the files of one project folder, and the library. Nothing else.

Knows nothing of what the files say. Links that lead out of the folder are not followed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.assets import library_texts

if TYPE_CHECKING:
    from pathlib import Path

# A spec is text written by people; a file larger than this is something else.
LARGEST_FILE = 10_000_000


@dataclass(frozen=True, slots=True)
class Folder:
    """The project folder on disk and the library that comes with the program."""

    root: Path

    @property
    def called(self) -> str:
        """The folder as the user called it, with a slash at its end; empty for the folder one is in."""
        called = self.root.as_posix()
        return "" if called == "." else called.rstrip("/") + "/"

    def project(self, path: str) -> bytes | None:
        """The bytes of a file of the folder; None when it is not there, not inside, or no file of text's size."""
        root = self.root.resolve()
        try:
            file = (root / path).resolve()
            if not file.is_relative_to(root) or not file.is_file() or file.stat().st_size > LARGEST_FILE:
                return None
            return file.read_bytes()
        except (OSError, ValueError):
            return None

    def library(self, name: str) -> bytes | None:
        """The bytes of the library file of that name."""
        file = library_texts().get(name)
        return None if file is None else file.read_bytes()

    def library_names(self) -> tuple[str, ...]:
        """The names of the library files, in order."""
        return tuple(library_texts())
