"""Owns plain data for programs: trees of named members and tables of plain values, frozen.

Knows nothing of formats.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Members:
    """Named values in a fixed order; no name twice."""

    items: tuple[tuple[str, Value], ...]


Value = Members | tuple["Value", ...] | str | float | int | bool | None
"""A tree: members, a list (a tuple), or a plain value."""


@dataclass(frozen=True, slots=True)
class DataTable:
    """A table of plain values; `name` makes the file's name. Numbers are unrounded."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str | float | int | None, ...], ...]
