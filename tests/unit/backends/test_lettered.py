"""Plain text is set in type: escaped, its fractions real, nothing in it that a format cannot carry."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.backends.lettered import REPLACEMENT, fit, quoted, to_html, to_plain

ODD = st.text(alphabet=st.characters(codec=None, exclude_categories=()))


class Reader(HTMLParser):
    """What a browser would show of a piece of HTML, and the tags in it."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.text = ""
        self.tags: list[tuple[str, str | None]] = []

    def handle_data(self, data: str) -> None:
        self.text += data

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs).get("class")))


def read(html: str) -> Reader:
    reader = Reader()
    reader.feed(html)
    reader.close()
    return reader


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("1/2", '<span class="frac">1/2</span>'),
        ("2 1/4 in", '2<span class="gap"> </span><span class="frac">1/4</span> in'),
        ("-3/8", '−<span class="frac">3/8</span>'),
        ("15/16, 3/4", '<span class="frac">15/16</span>, <span class="frac">3/4</span>'),
        ("16 CFR 1610/2", "16 CFR 1610/2"),
        ("a/2", "a/2"),
        ("1/3", "1/3"),
        ("2026/03/02", "2026/03/02"),
        ("style A-1", "style A-1"),
        ("girth - bust", "girth - bust"),
    ],
)
def test_fractions_of_a_tape_measure_are_marked_and_nothing_else(text: str, html: str) -> None:
    assert str(to_html(text)) == html


@pytest.mark.parametrize(
    ("text", "plain"), [("9 1/4", "9 ¹⁄₄"), ("13/16", "¹³⁄₁₆"), ("-1/2", "−¹⁄₂"), ("neck", "neck")]
)
def test_drawings_have_raised_and_lowered_figures(text: str, plain: str) -> None:
    assert to_plain(text) == plain


@given(ODD)
def test_a_text_cannot_become_markup(text: str) -> None:
    reader = read(str(to_html(text)))

    assert set(reader.tags) <= {("span", "frac"), ("span", "gap")}


@given(st.text(alphabet=st.characters(codec="utf-8", exclude_categories=("Cc", "Cf", "Cs", "Cn"))))
def test_a_text_is_shown_as_it_is_but_for_its_minus_signs(text: str) -> None:
    assert read(str(to_html(text))).text.replace("−", "-") == text.replace("−", "-").replace("\ufffe", "")


@pytest.mark.parametrize("letter", ["\x00", "\x1b", "\ud800", "\ufffe", "\u202e", "\u2066", "\x7f"])
def test_what_cannot_be_carried_or_would_mislead_is_replaced(letter: str) -> None:
    assert fit(f"a{letter}b") == f"a{REPLACEMENT}b"


@given(ODD)
def test_what_is_fit_can_be_written(text: str) -> None:
    assert fit(text).encode("utf-8").decode("utf-8") == fit(text)


@given(ODD)
def test_a_text_cannot_end_a_css_string_or_the_style_around_it(text: str) -> None:
    inside = str(quoted(text))[1:-1]

    assert not set(inside) & set("\"'<>&\n\r\f")
    assert re.fullmatch(r"(?:[^\\]|\\[0-9a-f]{6})*", inside, re.DOTALL)


def test_a_css_string_reads_as_the_text() -> None:
    assert str(quoted('ES-07 "é"')) == '"ES\\00002d07\\000020\\000022é\\000022"'
