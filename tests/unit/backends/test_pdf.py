"""The sheet as PDF: the same bytes for the same page, from nothing but what is in the page."""

from __future__ import annotations

import gc
import logging
import os
import subprocess
import sys
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pypdf
import pytest

from specc.backends import html, pdf, write
from specc.backends.fonts import MISSING, missing_letters
from tests.unit.document.values import SPEC, document

if TYPE_CHECKING:
    from specc.document.document import Document

ROOT = Path(__file__).parents[3]
SMALL = '<html lang="en"><head><title>t</title></head><body>{}</body></html>'


@pytest.fixture(scope="module")
def skiff() -> Document:
    return document()


@pytest.fixture(scope="module")
def pages(skiff: Document) -> html.Pages:
    return html.pages(skiff)


@pytest.fixture(scope="module")
def data(skiff: Document, pages: html.Pages) -> bytes:
    return pdf.write(skiff, pages)[0].data


def reader(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(data))


def test_another_process_with_another_hash_seed_and_no_fixed_clock_gives_the_same_bytes(data: bytes) -> None:
    program = (
        "import sys, hashlib; from tests.unit.document.values import document;"
        "from specc.backends import html, pdf, write; d = document();"
        "print(hashlib.sha256(pdf.write(d, html.pages(d))[0].data).hexdigest())"
    )
    environment = {k: v for k, v in os.environ.items() if k != "SOURCE_DATE_EPOCH"}
    done = subprocess.run(
        [sys.executable, "-c", program],
        cwd=ROOT,
        env=environment | {"PYTHONHASHSEED": "7", "LC_ALL": "C", "TZ": "Asia/Tokyo"},
        capture_output=True,
        text=True,
        check=True,
    )
    from hashlib import sha256

    assert done.stdout.strip() == sha256(data).hexdigest()


def test_nothing_is_warned_of(skiff: Document, pages: html.Pages, caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        pdf.write(skiff, pages)

    assert [record.getMessage() for record in caplog.records] == []


def test_title_language_and_tags(data: bytes) -> None:
    document = reader(data)

    assert document.metadata is not None
    assert document.metadata.title == "SK-01 Skiff overtop, revision B"
    assert document.metadata.get("/CreationDate") is None
    root: Any = document.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]


def test_pages_are_bookmarked(data: bytes, skiff: Document) -> None:
    titles = [entry.title for entry in reader(data).outline if not isinstance(entry, list)]

    assert titles == [page.title for page in skiff.pages]


def resources(page: Any) -> Any:
    """The resources of a page; pypdf types them as any object of a PDF."""
    return page["/Resources"]


def test_only_our_fonts_are_in_it(data: bytes) -> None:
    names = {
        str(font.get_object()["/BaseFont"]).partition("+")[2]
        for page in reader(data).pages
        for font in resources(page)["/Font"].values()
    }

    assert {name.partition("-Sans")[0] for name in names} == {"Specc"}


def test_a_letter_that_the_font_lacks_is_shown_as_a_box_not_by_a_font_of_the_machine() -> None:
    spec = SPEC.replace('"Skiff overtop"', '"Skiff 上着 🧵"')
    skiff = document(spec)
    data = pdf.write(skiff, html.pages(skiff))[0].data

    assert missing_letters("Skiff 上着 🧵") == frozenset("上着🧵")
    assert f"Skiff {MISSING}{MISSING} {MISSING}" in reader(data).pages[0].extract_text()
    test_only_our_fonts_are_in_it(data)


def test_nothing_can_be_fetched(skiff: Document, tmp_path: Path) -> None:
    secret = tmp_path / "secret.css"
    secret.write_text("body { color: red }")
    page = SMALL.format(f'<link rel="stylesheet" href="{secret.as_uri()}">')

    with pytest.raises(BaseException, match="Error fetching"):
        pdf.write(skiff, html.Pages("", page))


def test_the_collector_is_as_before(skiff: Document) -> None:
    assert gc.isenabled()
    write(skiff, ("html",))
    assert gc.isenabled()
