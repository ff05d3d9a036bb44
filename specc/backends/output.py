"""Owns what a backend hands out: a relative path and bytes. Knows nothing of folders or of writing."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class OutputFile:
    """A file to be written: `path` is relative, with forward slashes."""

    path: str
    data: bytes
