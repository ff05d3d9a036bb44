"""Owns compiling a text in a test: one place that knows how the program is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.gather import read
from specc.packing import bottom_left
from specc.pipeline import check, lay_out
from specc.world import Folder

if TYPE_CHECKING:
    from pathlib import Path

    from specc.diagnostics import Diagnostic
    from specc.packing import Layout, Strip


class Here(Folder):
    """A folder that goes by no name, so that what is said is the same wherever it lies."""

    @property
    def called(self) -> str:
        """Nothing stands before a path."""
        return ""


def said(
    data: bytes | str, *, folder: Path, name: str = "test.garment", laid: bool = False
) -> tuple[Diagnostic, ...]:
    """What is said about `data` as the file `name` of `folder`, in order, wherever the folder lies.

    `laid` asks for what is said on the way to the sheet, too; pieces are placed in the plainest way.
    """
    source, faults = read(name, data.encode() if isinstance(data, str) else data)
    if faults:
        return faults
    result = check(source, Here(folder))
    return (lay_out(result, Here(folder), roughly) if laid else result).diagnostics


def roughly(strip: Strip) -> Layout:
    """A layout in a moment: on coarse squares, and so longer than need be."""
    return bottom_left(strip, squares=60)


def is_of_output(code: str) -> bool:
    """Whether a code, or a file named after one, is of what is only made for the sheet."""
    return code.startswith("SPC6")
