"""Owns writing the HTML page as PDF, with its source inside. Knows nothing of what is on it.

The file is PDF/UA-1 (ISO 14289-1): tagged, so that what reads aloud can follow it; tests/outside holds what a
program can see of that against other programs, and no validator of the standard was at hand. It allows
enclosed files of any kind, if each has its name for old and for new readers (7.11, from memory). PDF/A-1 and
-2 (ISO 19005) take no text inside, and WeasyPrint cannot say PDF/A-3 and PDF/UA of one file.
"""

from __future__ import annotations

from base64 import b64encode
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any, Final

from specc.backends import json
from specc.backends.fonts import MISSING, missing_letters
from specc.backends.output import OutputFile

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.backends.html import Pages
    from specc.document.document import Document

RESULT: Final = "result.json"
SOURCE: Final = "source/"  # before the path of an enclosed file in its project folder

_ALWAYS = datetime(1980, 1, 1, tzinfo=UTC)  # an enclosed file must have a date, and no clock may enter


def write(document: Document, pages: Pages) -> tuple[OutputFile, ...]:
    """The page for paper as a PDF file: the same bytes for the same page.

    No clock enters: the fonts are embedded as they are, and no date is written into the file.
    """
    from weasyprint import HTML, Attachment  # noqa: PLC0415 - heavy
    from weasyprint.urls import URLFetcher  # noqa: PLC0415 - heavy

    letters = str.maketrans(dict.fromkeys(missing_letters(pages.paper), MISSING))
    nothing_but_data = URLFetcher(allowed_protocols=("data",), fail_on_errors=True)
    html = HTML(string=pages.paper.translate(letters), url_fetcher=nothing_but_data)
    enclosed = [Attachment(url_fetcher=nothing_but_data, **each) for each in _enclosed(document)]
    data = html.write_pdf(full_fonts=True, pdf_variant="pdf/ua-1", attachments=enclosed)
    return (OutputFile("sheet.pdf", data),)


def _enclosed(document: Document) -> Iterator[dict[str, Any]]:
    """What goes inside: the values of the sheet and its source.

    In the order of their names, as a name tree must be (ISO 32000-1, 7.9.6). A `data:` address says the type
    of a text, which would else be looked up in tables of the machine.
    """
    (result,) = json.write(document, "")
    files = {RESULT: ("application/json", result.data, "the values of this sheet")}
    for number, file in enumerate(document.enclosed):
        said = "a file of the source" if number else "the spec that this sheet was made from"
        files[SOURCE + file.name] = ("text/plain;charset=utf-8", file.text.encode(), said)
    for name, (media, data, description) in sorted(files.items(), key=lambda each: each[0].encode()):
        yield {
            "url": f"data:{media};base64,{b64encode(data).decode('ascii')}",
            "name": name,
            "description": description,
            "created": _ALWAYS,
            "modified": _ALWAYS,
            "relationship": "Data" if name == RESULT else "Source",
        }
