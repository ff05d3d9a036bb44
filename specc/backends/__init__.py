"""Owns the formats in which a document is written down, one module each. Knows nothing of garments.

`BACKENDS` is the table of contents; a backend is a function `write(document, pages)` that returns files,
`pages` being the sheet as HTML, which two of them write.
"""

from __future__ import annotations

import gc
from contextlib import contextmanager
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.backends import csv, html, json, pdf, svg, xlsx
from specc.backends.output import OutputFile

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Document

BACKENDS = MappingProxyType(
    {
        "pdf": pdf.write,
        "html": html.write,
        "json": json.write,
        "csv": csv.write,
        "xlsx": xlsx.write,
        "svg": svg.write,
    }
)

__all__ = ["BACKENDS", "OutputFile", "write"]


def write(document: Document, formats: tuple[str, ...] = tuple(BACKENDS)) -> tuple[OutputFile, ...]:
    """The files of a document in these formats, in the order of `BACKENDS`."""
    chosen = [backend for name, backend in BACKENDS.items() if name in formats]
    with _no_collection():
        pages = html.pages(document) if {"pdf", "html"} & set(formats) else html.Pages("", "")
        return tuple(file for backend in chosen for file in backend(document, pages))


@contextmanager
def _no_collection() -> Iterator[None]:
    """Garbage is not looked for meanwhile.

    A fifth of WeasyPrint's time goes there, and its boxes live until the end anyway.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
