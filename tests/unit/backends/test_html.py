"""The sheet as HTML: one file that fetches nothing and runs nothing, whatever the spec says."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from typing import TYPE_CHECKING

import pytest

from specc.backends import html
from tests.unit.document.values import SPEC, document

if TYPE_CHECKING:
    from specc.document.document import Document

HOSTILE = "</title><script>alert(1)</script><img src=x onerror=alert(1)>\"'}}{{ 7*7 }}</style>"


class Page(HTMLParser):
    """The tags, attributes and texts of a page."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []
        self.texts: list[str] = []
        self._inside = ""
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs
        self._inside = tag

    def handle_data(self, data: str) -> None:
        if self._inside != "style":
            self.texts.append(data)

    @property
    def text(self) -> str:
        return "".join(self.texts)


@pytest.fixture(scope="module")
def skiff() -> Document:
    return document()


@pytest.fixture(scope="module")
def page(skiff: Document) -> str:
    return html.page(skiff)


def test_nothing_is_fetched_and_nothing_runs(page: str) -> None:
    read = Page(page)

    assert not {"script", "link", "img", "iframe", "object", "embed", "base"} & set(read.tags)
    assert not [name for name, _ in read.attributes if name.startswith("on") or name == "src"]
    assert all((value or "").startswith("#") for name, value in read.attributes if name == "href")
    assert set(re.findall(r"url\((\w+):", page)) == {"data"}
    assert "@import" not in page


def test_links_lead_somewhere(page: str) -> None:
    read = Page(page)
    ids = [value for name, value in read.attributes if name == "id"]

    assert len(ids) == len(set(ids))
    assert {(value or "")[1:] for name, value in read.attributes if name == "href"} <= set(ids)


def test_every_page_and_every_line_of_the_source_is_there(page: str, skiff: Document) -> None:
    text = " ".join(Page(page).text.split())

    for each in skiff.pages:
        assert each.title in text
    assert "finish neckline along back.neck, front.neck by elastic-bound {" in text


def test_fractions_are_real(page: str) -> None:
    assert '<span class="frac">1/8</span>' in page


def test_a_heading_that_columns_share_spans_them(page: str) -> None:
    assert re.search(r'<th colspan="5"[^>]*>Size</th>', page)
    assert page.count("<thead>") == page.count("<table")


def test_a_spec_cannot_inject_markup() -> None:
    spec = SPEC.replace('"Skiff overtop"', f'"{HOSTILE.replace(chr(34), "")}"').replace(
        '"first sample"', f'"{HOSTILE.replace(chr(34), "")}"'
    )
    read = Page(html.page(document(spec)))

    assert "script" not in read.tags
    assert "img" not in read.tags
    assert not [name for name, _ in read.attributes if name == "onerror"]
    assert "{{ 7*7 }}" in read.text
    assert "49" not in read.text.partition("Technical sheet")[0]


def test_a_line_of_source_keeps_its_indentation_and_lines_up_its_columns() -> None:
    assert html._tabbed('  style     "SK-01"') == '  style\t"SK-01"'
    assert html._tabbed("plain words stay") == "plain words stay"
    assert html._tabbed("") == ""
