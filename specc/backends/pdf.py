"""Owns writing the HTML page as PDF. Knows nothing of what is on it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.backends.fonts import MISSING, missing_letters
from specc.backends.output import OutputFile

if TYPE_CHECKING:
    from specc.document.document import Document


def write(_document: Document, page: str) -> tuple[OutputFile, ...]:
    """The page as a PDF file: the same bytes for the same page.

    No clock enters: the fonts are embedded as they are, and no date is written into the file.
    """
    from weasyprint import HTML  # noqa: PLC0415 - heavy
    from weasyprint.urls import URLFetcher  # noqa: PLC0415 - heavy

    letters = str.maketrans(dict.fromkeys(missing_letters(page), MISSING))
    nothing_but_data = URLFetcher(allowed_protocols=("data",), fail_on_errors=True)
    html = HTML(string=page.translate(letters), url_fetcher=nothing_but_data)
    data = html.write_pdf(full_fonts=True, pdf_tags=True)
    return (OutputFile("sheet.pdf", data),)
