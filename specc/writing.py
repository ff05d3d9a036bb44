"""Owns writing a folder of files whole or not at all: the old output stays until the new one is complete.

Knows nothing of what the files hold.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.backends.output import OutputFile


class OutputError(Exception):
    """The files could not be written; nothing was changed."""


def write_all(folder: Path, files: Iterable[OutputFile]) -> None:
    """The folder holds the files, and whatever else it held that is not of ours.

    They are written beside the folder first and take its place in one step. Raises OutputError, with the old folder as
    it was.
    """
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(prefix=f".{folder.name}-", dir=folder.parent) as scratch:
            fresh = Path(scratch) / "new"
            fresh.mkdir()
            for file in files:
                target = fresh / file.path
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_bytes(file.data)
            _keep_strangers(folder, fresh)
            fresh.chmod(0o777 & ~_umask())
            _swap(folder, fresh, Path(scratch) / "old")
    except OSError as fault:
        raise OutputError(f"cannot write {folder}: {fault.strerror or fault}") from fault


def _swap(folder: Path, fresh: Path, old: Path) -> None:
    """`fresh` takes the place of `folder`; should that fail, `folder` is put back."""
    there = folder.exists()
    if there:
        folder.rename(old)
    try:
        fresh.rename(folder)
    except OSError:
        if there:
            old.rename(folder)
        raise


def _keep_strangers(folder: Path, fresh: Path) -> None:
    """Copy what somebody else put into the old folder; what we wrote before and no longer write is dropped."""
    if not folder.is_dir():
        return
    for item in sorted(folder.iterdir()):
        if item.name == "drawings" or (fresh / item.name).exists():
            continue
        if item.is_dir() and not item.is_symlink():
            shutil.copytree(item, fresh / item.name, symlinks=True)
        else:
            shutil.copy2(item, fresh / item.name, follow_symlinks=False)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
