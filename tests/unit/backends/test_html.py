"""The sheet as HTML: one file that fetches nothing and runs only its own lines, whatever the spec says."""

from __future__ import annotations

import re
from base64 import b64encode
from hashlib import sha256
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
        if self._inside not in {"style", "script"}:
            self.texts.append(data)

    def values(self, *names: str) -> list[str]:
        """What the attributes of these names hold."""
        return [value or "" for name, value in self.attributes if name in names]

    @property
    def text(self) -> str:
        return "".join(self.texts)


@pytest.fixture(scope="module")
def skiff() -> Document:
    return document()


@pytest.fixture(scope="module")
def page(skiff: Document) -> str:
    return html.pages(skiff).screen


def test_nothing_is_fetched_and_nothing_runs_but_one_script_of_ours(page: str) -> None:
    read = Page(page)

    assert not {"link", "img", "iframe", "object", "embed", "base", "form"} & set(read.tags)
    assert read.tags.count("script") == 1
    assert not [name for name, _ in read.attributes if name.startswith("on") or name == "src"]
    assert all(value.startswith("#") for value in read.values("href"))
    assert set(re.findall(r"url\((\w+):", page)) == {"data"}
    assert "@import" not in page
    assert re.findall(r"https?://[^\"]*", page.replace('xmlns="http://www.w3.org/2000/svg"', "")) == []


def test_the_page_forbids_itself_all_but_its_own_style_and_script(page: str) -> None:
    (policy,) = re.findall(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">', page)
    allowed = dict(part.strip().split(" ", 1) for part in policy.split(";"))

    assert allowed.pop("default-src") == "'none'"
    for tag, directive in (("style", "style-src-elem"), ("script", "script-src")):
        (text,) = re.findall(rf"<{tag}>(.*?)</{tag}>", page, re.DOTALL)
        assert allowed.pop(directive) == f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"
    assert allowed == {
        "style-src-attr": "'unsafe-inline'",
        "style-src": "'unsafe-inline'",  # for browsers that know neither of the finer ones, and only those
        "font-src": "data:",
        "base-uri": "'none'",
        "form-action": "'none'",
    }


def test_the_script_is_small(page: str) -> None:
    (script,) = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)

    assert len(script.encode()) < 4000


def test_links_lead_somewhere_and_every_name_is_there_once(page: str) -> None:
    read = Page(page)
    ids = read.values("id")

    assert len(ids) == len(set(ids))
    assert {value[1:] for value in read.values("href")} <= set(ids)
    assert set(read.values("popovertarget", "aria-describedby")) <= set(ids)


class Shown(HTMLParser):
    """The text of the sheet as it is shown at first: without menu, other unit and notes."""

    EMPTY = frozenset({"input", "meta", "col", "br", "path", "rect"})

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.text = ""
        self._hidden: list[bool] = []
        self.feed(page[page.index("<main>") : page.index("</main>")])

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in self.EMPTY:
            self._hidden.append(dict(attrs).get("class") in {"other", "origin"})

    def handle_endtag(self, tag: str) -> None:
        if tag not in self.EMPTY:
            self._hidden.pop()

    def handle_data(self, data: str) -> None:
        if not any(self._hidden):
            self.text += "".join(data.split())


def test_a_screen_shows_at_first_what_paper_has(skiff: Document) -> None:
    pages = html.pages(skiff)

    assert Shown(pages.screen).text == Shown(pages.paper).text


def test_numbers_of_one_origin_share_its_note(page: str) -> None:
    read = Page(page)
    targets = read.values("popovertarget")

    assert targets.count("menu") == 1
    assert len(targets) > len(set(targets)) > 20
    assert read.values("aria-describedby") == [target for target in targets if target != "menu"]


def test_paper_has_nothing_that_only_a_screen_can_show(skiff: Document) -> None:
    read = Page(html.pages(skiff).paper)

    assert not {"script", "button", "input", "fieldset"} & set(read.tags)
    assert not read.values("popover", "popovertarget", "data-size")
    assert "other" not in {name for value in read.values("class") for name in value.split()}


def test_the_cells_of_a_size_can_be_marked(page: str, skiff: Document) -> None:
    found = Page(page).values("data-size")

    assert set(found) == set(skiff.sizes)
    assert len({found.count(size) for size in skiff.sizes}) == 1
    for number, size in enumerate(skiff.sizes, start=1):
        escaped = "".join(each if each.isalnum() else f"\\{ord(each):06x}" for each in size)
        assert f':root:has(#size-{number}:checked) [data-size="{escaped}"]' in page


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
    whole = html.pages(document(spec)).screen
    read = Page(whole)

    assert read.tags.count("script") == 1
    assert "alert" not in "".join(re.findall(r"<script>(.*?)</script>", whole, re.DOTALL))
    assert "img" not in read.tags
    assert not [name for name, _ in read.attributes if name == "onerror"]
    assert "{{ 7*7 }}" in read.text
    assert "49" not in read.text.partition("Technical sheet")[0]


def test_a_line_of_source_keeps_its_indentation_and_lines_up_its_columns() -> None:
    assert html._tabbed('  style     "SK-01"') == '  style\t"SK-01"'
    assert html._tabbed("plain words stay") == "plain words stay"
    assert html._tabbed("") == ""
