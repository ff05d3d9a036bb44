"""Owns a browser and the sheet of an example in it: for tests of what only a browser can show."""

from __future__ import annotations

import shutil
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import pytest

from specc.backends import html, pdf
from specc.gather import read
from specc.pipeline import check, document, lay_out
from specc.world import Folder

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from specc.document.document import Document

EXAMPLE = "estuary-shell"


@dataclass(frozen=True)
class Sheet:
    """The sheet as a file for the browser, and the document and PDF it must agree with."""

    document: Document
    pages: html.Pages
    file: Path

    @property
    def pdf(self) -> bytes:
        return pdf.write(self.document, self.pages)[0].data


@dataclass(frozen=True)
class Opened:
    """The sheet in a window, and all that the browser said or asked for meanwhile."""

    page: Any
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)


@pytest.fixture(scope="session")
def sheet(root: Path, tmp_path_factory: pytest.TempPathFactory) -> Sheet:
    folder = root / "examples" / EXAMPLE
    name = f"{EXAMPLE}.garment"
    source, _ = read(name, folder.joinpath(name).read_bytes())
    made = document(lay_out(check(source, Folder(folder)), Folder(folder)))
    assert made is not None
    pages = html.pages(made)
    file = tmp_path_factory.mktemp("sheet") / "sheet.html"
    file.write_text(pages.screen, encoding="utf-8", newline="\n")
    return Sheet(made, pages, file)


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    if program is None:
        pytest.skip("there is no Chromium here: apt-get install chromium")
    driver = pytest.importorskip("playwright.sync_api", reason="pip install playwright drives the browser")
    with driver.sync_playwright() as started:
        opened = started.chromium.launch(executable_path=program, args=["--no-sandbox"])
        yield opened
        opened.close()


@pytest.fixture
def opened(browser: Any, sheet: Sheet, request: pytest.FixtureRequest) -> Iterator[Opened]:
    """The sheet in a window as wide as `width` says; `script` and `touch` as asked for."""
    asked: dict[str, Any] = {"width": 1400, "script": True, "touch": False} | getattr(request, "param", {})
    context = browser.new_context(
        viewport={"width": asked["width"], "height": 900},
        java_script_enabled=asked["script"],
        has_touch=asked["touch"],
    )
    found = Opened(context.new_page())
    found.page.on("console", lambda message: found.said.append(message.text))
    found.page.on("pageerror", lambda error: found.said.append(str(error)))
    found.page.on("request", lambda wanted: found.asked.append(wanted.url))
    found.page.goto(sheet.file.as_uri())
    yield found
    context.close()
