"""Owns the formats in which a document is written down, one module each. Knows nothing of garments.

`BACKENDS` is the table of contents; a backend is a function `write(document, page)` that returns files,
`page` being the sheet as HTML, which two of them share.
"""

from types import MappingProxyType

from specc.backends import csv, html, json, pdf, svg
from specc.backends.output import OutputFile
from specc.document.document import Document

BACKENDS = MappingProxyType(
    {
        "pdf": pdf.write,
        "html": html.write,
        "json": json.write,
        "csv": csv.write,
        "svg": svg.write,
    }
)

__all__ = ["BACKENDS", "OutputFile", "write"]


def write(document: Document, formats: tuple[str, ...] = tuple(BACKENDS)) -> tuple[OutputFile, ...]:
    """The files of a document in these formats, in the order of `BACKENDS`."""
    page = html.page(document) if {"pdf", "html"} & set(formats) else ""
    return tuple(
        file for name, backend in BACKENDS.items() if name in formats for file in backend(document, page)
    )
