"""Owns reading the files of a command, and what may be seen beside them.

Knows nothing of what is done with them.
"""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import TYPE_CHECKING, Final

from specc.cli.console import OUR_FAULT, USAGE, UsageError, complain, passing, visible

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from specc.cli.console import Outcome
    from specc.pipeline import Result
    from specc.world import Folder

_GARMENT: Final = re.compile(rb"^[ \t]*garment[ \t]", re.MULTILINE)


def for_each(files: Sequence[str], outcome: Outcome, act: Callable[[str], None]) -> None:
    """Do it with each file; what goes wrong with one is kept for the end, and the others are still read."""
    for file in _each(files):
        try:
            act(file)
        except UsageError as fault:
            outcome.problems.append(str(fault))
            outcome.worsen(USAGE)
        except BrokenPipeError:
            raise
        except Exception as fault:
            if os.environ.get("SPECC_DEBUG"):
                raise
            from specc.diagnostics.ours import FAULT  # noqa: PLC0415

            told = FAULT.at(None, fault=f"{type(fault).__name__}: {fault}")
            outcome.said.append(told.note(f"it came up in {file}; the output is as it was"))
            outcome.worsen(OUR_FAULT)
    for problem in outcome.problems:
        complain(problem)


def compiled(file: str) -> Result:
    """Everything that can be said of a file; its own folder is the project folder."""
    from specc.pipeline import check_bytes  # noqa: PLC0415
    from specc.world import LARGEST_FILE  # noqa: PLC0415

    data = bytes_of(file, LARGEST_FILE, kind="a spec", ending=".garment")
    return check_bytes(Path(file).name, data, world(file))


def bytes_of(file: str, most: int, *, kind: str, ending: str) -> bytes:
    """What is in a file, which must not be larger than such a kind of file is."""
    try:
        with Path(file).open("rb") as opened:
            data = opened.read(most + 1)
    except IsADirectoryError:
        raise UsageError(f"{file} is a folder; name a {ending} file") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise UsageError(f"cannot read {file}: {reason}") from None
    if len(data) > most:
        raise UsageError(f"{file} has more than {most} bytes, too many for {kind}")
    return data


def garments_of(names: Sequence[str]) -> tuple[str, ...]:
    """The files as named; in place of a folder, all files below it that hold a garment, by their paths.

    Files without one are blocks, charts and ways of making, which garments use.
    """
    found: list[str] = []
    for name in names:
        below = sorted(Path(name).rglob("*.garment")) if is_folder(name) else []
        # A folder without any stays as it is named, and is told of when it is read.
        found += [str(path) for path in below if path.is_file() and _holds_garment(path)] or [name]
    return tuple(found)


def is_folder(name: str) -> bool:
    """Whether a name as given on the command line is that of a folder."""
    try:
        return bool(name) and Path(name).is_dir()
    except (OSError, ValueError):  # no name of anything
        return False


def _holds_garment(path: Path) -> bool:
    """Whether a line of the file begins a garment; what cannot be read is told of when it is."""
    from specc.world import LARGEST_FILE  # noqa: PLC0415

    try:
        with path.open("rb") as opened:
            return _GARMENT.search(opened.read(LARGEST_FILE)) is not None
    except OSError:
        return True


def world(file: str) -> Folder:
    """What may be seen beside a file: its own folder is the project folder."""
    from specc.world import Folder  # noqa: PLC0415

    return Folder(Path(file).parent)


def laid_out(result: Result, file: str) -> Result:
    """The result with its pieces cut and laid, as the lay file beside the spec says where there is one."""
    from specc.pipeline import lay_out  # noqa: PLC0415

    return lay_out(result, world(file))


def _each(files: Sequence[str]) -> Iterator[str]:
    """The files, with a line of progress on a terminal when there are many."""
    for number, file in enumerate(files, start=1):
        if len(files) > 1:
            passing(f"{number} of {len(files)}: {visible(file)}")
        yield file
        if len(files) > 1:
            passing("")
