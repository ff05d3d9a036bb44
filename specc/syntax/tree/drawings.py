"""Owns drawings as they were written: the lines of an SVG file that have an id.

Knows nothing of where they run: their data and transforms are texts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.source import SourceFile, Span


class DrawnPath(NamedTuple):
    """A line of a drawing, as the data of a path; `transforms` are those that hold for it, outermost first.

    `fault` says why it cannot be used, if it cannot.
    """

    data: str
    transforms: tuple[str, ...]
    fault: str | None
    span: Span


class Drawing(NamedTuple):
    """A drawing: its lines by their ids."""

    file: SourceFile
    paths: Mapping[str, DrawnPath]
