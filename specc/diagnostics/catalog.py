"""Owns how a code is declared and where its explanation page is found.

Knows no single code: each is declared beside the check that raises it, and `specc.catalog` gathers them.
"""

from __future__ import annotations

import re
from importlib.resources import files
from typing import TYPE_CHECKING

from specc.diagnostics.model import Code

if TYPE_CHECKING:
    from specc.diagnostics.model import Severity

_ID = re.compile(r"SPC[1-69][0-9]{2}")
_NAME = re.compile(r"[a-z]+(-[a-z0-9]+)*")


def declare(id: str, name: str, severity: Severity, message: str) -> Code:  # noqa: A002 - it is the id
    """Return the code `id`, to be kept in a constant of the module that raises it.

    The hundreds say the stage: 1 syntax, 2 names and units, 3 completeness, 4 drafting and alteration,
    5 construction, 6 document and output, 9 our own faults. Raises ValueError for a malformed id or name.
    """
    if not _ID.fullmatch(id) or not _NAME.fullmatch(name):
        raise ValueError(f"a code is SPC and three digits, its name words and hyphens: not {id} {name}")
    return Code(id, name, severity, message)


def explained() -> tuple[str, ...]:
    """The ids that have an explanation page, in order."""
    pages = files("specc.diagnostics").joinpath("explain").iterdir()
    return tuple(sorted(page.name.removesuffix(".md") for page in pages if page.name.endswith(".md")))


def explanation(id: str) -> str | None:  # noqa: A002 - it is the id
    """The explanation page of code `id` as Markdown; None when there is no such page."""
    if not _ID.fullmatch(id):
        return None
    page = files("specc.diagnostics").joinpath("explain", f"{id}.md")
    return page.read_text(encoding="utf-8") if page.is_file() else None
