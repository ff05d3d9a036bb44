"""Owns writing a folder of files whole or not at all: the old output stays until the new one is complete.

Knows nothing of what the files hold.
"""

from __future__ import annotations

import glob
import os
import re
import shutil
import tempfile
import unicodedata
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.backends.output import OutputFile

# Lists, in each folder, the files that are ours, so that the others are left alone.
LIST = ".specc"
_NEW, _OLD = "new", "old"
_LONGEST_NAME = 100
_RESERVED = re.compile(
    r"(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?", re.IGNORECASE
)  # by Windows, as file names


class OutputError(Exception):
    """The files could not be written; nothing was changed."""


def folder_name(style: str) -> str:
    """The style as the name of a folder on any system: letters, digits, dots, hyphens and underscores.

    Anything else becomes a hyphen; what then begins or ends with a dot or hyphen loses it.
    """
    composed = unicodedata.normalize("NFC", style)[:_LONGEST_NAME]
    kept = "".join(letter if letter.isalnum() or letter in "._-" else "-" for letter in composed)
    name = kept.strip(".-") or "garment"
    while len(name.encode()) > _LONGEST_NAME:
        name = name[:-1]
    return f"{name}_" if _RESERVED.fullmatch(name) else name


def write_all(folder: Path, files: Iterable[OutputFile]) -> None:
    """The folder holds the files, and whatever else it held that is not of ours.

    They are written beside the folder first and take its place in one step. Raises OutputError, with the old
    folder as it was.
    """
    try:
        place = folder.resolve()
        place.parent.mkdir(parents=True, exist_ok=True)
        _recover(place)
        if place.exists() and not place.is_dir():
            raise OutputError(f"cannot write {folder}: it is a file, not a folder")
        with tempfile.TemporaryDirectory(prefix=f".{place.name}-", dir=place.parent) as scratch:
            fresh = Path(scratch) / _NEW
            fresh.mkdir()
            ours = _write(fresh, files)
            stranger = _keep_strangers(place, fresh, ours)
            if stranger is not None:
                raise OutputError(f"cannot write {folder}: its {stranger} is not of our making; move it away")
            _swap(place, fresh, Path(scratch) / _OLD)
    except OSError as fault:
        raise OutputError(f"cannot write {folder}: {fault.strerror or fault}") from fault


def write_one(path: Path, data: bytes) -> None:
    """The file holds the data. Raises OutputError, with the old file as it was."""
    try:
        place = path.resolve()
        with tempfile.TemporaryDirectory(prefix=f".{place.name}-", dir=place.parent) as scratch:
            fresh = Path(scratch) / _NEW
            fresh.write_bytes(data)
            fresh.replace(place)
    except OSError as fault:
        raise OutputError(f"cannot write {path}: {fault.strerror or fault}") from fault


def _recover(folder: Path) -> None:
    """Put back a folder that a run was about to replace when the machine or somebody put an end to it."""
    if folder.exists():
        return
    for scratch in sorted(folder.parent.glob(f".{glob.escape(folder.name)}-*")):
        if scratch.joinpath(_OLD).is_dir():
            scratch.joinpath(_OLD).rename(folder)
            shutil.rmtree(scratch, ignore_errors=True)
            return


def _write(fresh: Path, files: Iterable[OutputFile]) -> frozenset[str]:
    """Write the files and the list of them; return their paths."""
    paths = []
    for file in files:
        target = fresh / file.path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(file.data)
        paths.append(PurePosixPath(file.path).as_posix())
    fresh.joinpath(LIST).write_text(
        "".join(f"{path}\n" for path in sorted(paths)), encoding="utf-8", newline="\n"
    )
    return frozenset((*paths, LIST))


def _swap(folder: Path, fresh: Path, old: Path) -> None:
    """`fresh` takes the place of `folder`; should that be cut short, `folder` is put back."""
    there = folder.exists()
    if there:
        folder.rename(old)
    try:
        fresh.rename(folder)
    except BaseException:
        if there:
            old.rename(folder)
        raise


def _keep_strangers(folder: Path, fresh: Path, ours: frozenset[str]) -> str | None:
    """Copy what somebody else put into the old folder; what we wrote before and no longer write is dropped.

    Returns the path of a file that is not ours and stands where one of ours must, if there is one.
    """
    before = _listed(folder)
    places = frozenset(parent.as_posix() for one in ours for parent in PurePosixPath(one).parents)
    for path in _files(folder):
        name = path.relative_to(folder).as_posix()
        if name in before or name == LIST:
            continue
        if name in ours or (name in places and not _is_folder(path)):
            return name
        target = fresh / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if _is_folder(path):
            target.mkdir(exist_ok=True)
        else:
            shutil.copy2(path, target, follow_symlinks=False)
    return None


def _is_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()


def _files(folder: Path) -> Iterator[Path]:
    """The files in a folder and in those within it, and empty folders, in order; links are not followed."""
    for place, folders, names in os.walk(folder):
        folders.sort()
        links = [name for name in folders if Path(place, name).is_symlink()]
        yield from (Path(place, name) for name in sorted((*names, *links)))
        if not folders and not names and Path(place) != folder:
            yield Path(place)


def _listed(folder: Path) -> frozenset[str]:
    """The paths of the files that we wrote into the folder."""
    try:
        return frozenset(folder.joinpath(LIST).read_text(encoding="utf-8").splitlines())
    except (OSError, UnicodeDecodeError):
        return frozenset()
