"""Owns what a compilation may see of the outside: the files of one project, and the library.

Knows nothing of what the files say. Links that lead out of the folder are not followed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.assets import library_texts
from specc.gather import Refused

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

# A spec is text written by people; a file larger than this is something else.
LARGEST_FILE = 10_000_000


@dataclass(frozen=True, slots=True)
class _Library:
    """The library that comes with the program."""

    def library(self, name: str) -> bytes | None:
        """The bytes of the library file of that name."""
        file = library_texts().get(name)
        return None if file is None else file.read_bytes()

    def library_names(self) -> tuple[str, ...]:
        """The names of the library files, in order."""
        return tuple(library_texts())


@dataclass(frozen=True, slots=True)
class Folder(_Library):
    """The project folder on disk and the library that comes with the program."""

    root: Path

    @property
    def called(self) -> str:
        """The folder as the user called it, with a slash at its end; empty for the folder one is in."""
        called = self.root.as_posix()
        return "" if called == "." else called.rstrip("/") + "/"

    def project(self, path: str) -> bytes | Refused:
        """The bytes of a file of the folder, or why they are not to be had."""
        try:
            root = self.root.resolve()
            file = (root / path).resolve()
            if not file.is_relative_to(root):
                return Refused.OUTSIDE
            if not file.is_file():
                return (
                    Refused.FOLDER if file.is_dir() else Refused.NO_FILE if file.exists() else Refused.MISSING
                )
            with file.open("rb") as opened:
                data = opened.read(LARGEST_FILE + 1)
        except PermissionError:
            return Refused.FORBIDDEN
        except (OSError, ValueError, RuntimeError):  # a name too long for the system, a circle of links
            return Refused.MISSING
        return data if len(data) <= LARGEST_FILE else Refused.TOO_LARGE

    def project_names(self, folder: str, ending: str) -> tuple[str, ...]:
        """The names with that ending in a folder of the project, in order."""
        try:
            root = self.root.resolve()
            place = (root / folder).resolve()
            if not place.is_relative_to(root):
                return ()
            return tuple(sorted(file.name for file in place.iterdir() if file.suffix == ending))
        except (OSError, ValueError, RuntimeError):
            return ()


@dataclass(frozen=True, slots=True)
class Enclosed(_Library):
    """The files of a project by path, wherever they came from, and the library of the program."""

    files: Mapping[str, bytes]
    called: str = ""

    def project(self, path: str) -> bytes | Refused:
        """The bytes of the file of that path."""
        return self.files.get(path, Refused.MISSING)

    def project_names(self, folder: str, ending: str) -> tuple[str, ...]:
        """The names with that ending in a folder, in order."""
        inside = (path.rpartition("/") for path in self.files)
        return tuple(sorted(name for place, _, name in inside if place == folder and name.endswith(ending)))
