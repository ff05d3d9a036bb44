"""Owns comparing a text with the file that holds what is expected, and accepting a change on request."""

from __future__ import annotations

import difflib
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path


@dataclass(frozen=True, slots=True)
class Golden:
    """Call it with a path and the text that belongs there.

    Without `update` a difference fails, and so does a missing file. With `update` the text is written and the
    difference is handed to `accepted`.
    """

    update: bool
    accepted: Callable[[str], None]

    def __call__(self, path: Path, actual: str) -> None:
        expected = path.read_text(encoding="utf-8") if path.is_file() else ""
        if actual == expected and path.is_file():
            return
        change = "".join(
            difflib.unified_diff(
                expected.splitlines(keepends=True),
                actual.splitlines(keepends=True),
                f"{path.name} as it stands",
                f"{path.name} as the program gives it",
            )
        )
        if not self.update:
            raise AssertionError(f"{path} differs (pytest --update -k ... accepts it)\n{change}")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(actual, encoding="utf-8", newline="\n")
        self.accepted(change)
