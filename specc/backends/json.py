"""Owns writing the result as JSON; result.schema.json beside it says what is in it.

Knows nothing of garments.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from specc.backends.output import OutputFile
from specc.document.data import Members

if TYPE_CHECKING:
    from specc.document.data import Value
    from specc.document.document import Document

_DECIMALS = (
    4  # 1e-4 of a millimetre: finer than any cloth, coarser than the last bits that differ between machines
)


def write(document: Document, _pages: object) -> tuple[OutputFile, ...]:
    """The result as a file."""
    return (
        OutputFile("result.json", f"{_text(document.result)}\n".encode("utf-8", errors="backslashreplace")),
    )


def _text(value: Value) -> str:
    return json.dumps(_plain(value), ensure_ascii=False, allow_nan=False, indent=1)


def _plain(value: Value) -> object:
    """The tree as JSON values in the order of the tree; numbers rounded, never -0."""
    if isinstance(value, Members):
        return {name: _plain(part) for name, part in value.items}
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if isinstance(value, float):
        return round(value, _DECIMALS) + 0.0
    return value
