"""The HTML sheet in a browser, on a phone, on a tablet and on a desk: read, switched, asked, printed."""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from typing import TYPE_CHECKING, Any

import pytest
from pypdfium2 import PdfDocument

if TYPE_CHECKING:
    from tests.browser.conftest import Opened, Sheet

pytestmark = pytest.mark.browser

WIDTHS = (390, 820, 1400)
on_each = pytest.mark.parametrize("opened", [{"width": width} for width in WIDTHS], indirect=True, ids=str)
on_a_phone = pytest.mark.parametrize("opened", [{"width": 390, "touch": True}], indirect=True, ids=["phone"])
on_a_desk = pytest.mark.parametrize("opened", [{"width": 1400}], indirect=True, ids=["desk"])
without_script = pytest.mark.parametrize(
    "opened",
    [{"width": width, "script": False} for width in WIDTHS],
    indirect=True,
    ids=str,
)

FIRST = "#points-of-measure button.traced"
SHOWN = ".origin:popover-open"


def shown(page: Any, selector: str) -> list[str]:
    """The texts of what is seen of it."""
    return [each.inner_text() for each in page.locator(selector).all() if each.is_visible()]


def choose(page: Any, name: str) -> None:
    """Choose in the menu, which stands beside the sheet or is opened first."""
    button = page.get_by_role("button", name="Pages, size, units")
    if button.is_visible():
        button.click()
    page.get_by_label(name, exact=True).check()
    page.keyboard.press("Escape")


def point(page: Any) -> list[str]:
    return [text.replace("\xa0", " ") for text in shown(page, "#points-of-measure tbody tr:first-child td")]


@on_each
def test_nothing_is_asked_for_and_nothing_complained_of(opened: Opened, sheet: Sheet) -> None:
    choose(opened.page, opened.page.locator("label:has(#unit-other)").inner_text())
    opened.page.locator(FIRST).first.click()

    assert opened.said == []
    assert opened.asked == [sheet.file.as_uri()]


@on_each
def test_only_tables_are_wider_than_the_window(opened: Opened) -> None:
    wide = "document.documentElement.scrollWidth - document.documentElement.clientWidth"

    assert opened.page.evaluate(wide) == 0


@on_a_phone
def test_a_wide_table_scrolls_in_its_box_under_the_names_of_its_rows(opened: Opened) -> None:
    page = opened.page
    box = page.locator(".table:has(#points-of-measure)")
    name = page.locator("#points-of-measure tbody tr:first-child th")
    assert box.evaluate("box => box.scrollWidth > box.clientWidth")

    box.evaluate("box => { box.scrollLeft = 60 }")

    assert name.evaluate("cell => cell.getBoundingClientRect().left") == pytest.approx(
        box.evaluate("box => box.getBoundingClientRect().left"), abs=1.0
    )


@on_each
def test_lengths_are_shown_in_the_unit_that_is_chosen(opened: Opened) -> None:
    page, lead = opened.page, opened.page.locator("#measures .lead")
    inches = point(page)
    choose(page, "centimetres")
    centimetres = point(page)
    assert "centimetres" in lead.inner_text()
    choose(page, "inches")

    assert point(page) == inches
    assert "inches" in lead.inner_text()
    assert inches != centimetres
    assert [re.fullmatch(r"\d+\.\d", text) is not None for text in centimetres[3:8]] == [True] * 5
    assert not any("." in text for text in inches)


@on_each
def test_a_size_is_marked_everywhere_and_no_other(opened: Opened) -> None:
    page = opened.page
    choose(page, "10")
    marked = page.evaluate(
        """[...document.querySelectorAll("[data-size]")]
             .filter(cell => getComputedStyle(cell).backgroundColor === "rgb(255, 236, 140)")
             .map(cell => cell.dataset.size)"""
    )

    assert set(marked) == {"10"}
    assert len(marked) == page.locator('[data-size="10"]').count()


@on_each
def test_a_number_reached_by_keyboard_says_where_it_comes_from_and_leads_there(opened: Opened) -> None:
    page = opened.page
    page.locator(".table:has(#points-of-measure)").focus()
    page.keyboard.press("Tab")

    assert page.evaluate("document.activeElement.className") == "traced"
    (note,) = shown(page, SHOWN)
    line = re.search(r"Line (\d+)$", note)
    assert line is not None
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == line[0]
    page.keyboard.press("Enter")
    assert page.evaluate("location.hash") == f"#line-{line[1]}"
    assert "girth" in page.locator(f"#line-{line[1]}").inner_text()
    assert page.locator(f"#line-{line[1]}").is_visible()
    assert shown(page, SHOWN) == []


@on_a_desk
def test_escape_puts_a_note_away_and_the_next_number_brings_its_own(opened: Opened) -> None:
    page = opened.page
    page.locator(".table:has(#points-of-measure)").focus()
    page.keyboard.press("Tab")
    page.keyboard.press("Escape")
    assert shown(page, SHOWN) == []
    page.locator("#trim-2 button.traced").last.focus()

    (note,) = shown(page, SHOWN)
    assert note.startswith("seam line ")


@on_a_desk
def test_a_number_pointed_at_says_where_it_comes_from_until_the_pointer_goes(opened: Opened) -> None:
    page = opened.page
    page.locator(FIRST).first.hover()
    page.locator(SHOWN).wait_for()
    (note,) = shown(page, SHOWN)
    assert "girth at bust-line" in note
    number, beside = (page.locator(each).first.bounding_box() for each in (FIRST, SHOWN))
    assert abs(beside["y"] - number["y"] - number["height"]) < 20
    page.locator(SHOWN).hover()
    page.wait_for_timeout(600)
    assert shown(page, SHOWN) == [note]
    page.mouse.move(2, 2)

    page.locator(SHOWN).wait_for(state="hidden")


@on_a_phone
def test_a_number_that_is_touched_says_where_it_comes_from(opened: Opened) -> None:
    page = opened.page
    page.locator(FIRST).first.tap()
    (note,) = shown(page, SHOWN)
    box = page.locator(SHOWN).bounding_box()

    assert "girth at bust-line" in note
    assert box["width"] == 390
    assert box["y"] + box["height"] == pytest.approx(900, abs=1)


@without_script
def test_all_of_it_works_without_script(opened: Opened) -> None:
    page = opened.page
    inches = point(page)
    choose(page, "centimetres")
    assert point(page) != inches
    page.locator(FIRST).first.click()

    assert "girth at bust-line" in shown(page, SHOWN)[0]


@on_each
def test_the_jump_list_leads_to_every_page(opened: Opened, sheet: Sheet) -> None:
    page = opened.page
    for each in sheet.document.pages:
        button = page.get_by_role("button", name="Pages, size, units")
        if button.is_visible():
            button.click()
        page.get_by_role("navigation", name="Pages").get_by_role("link", name=each.title, exact=True).click()

        assert page.evaluate("location.hash") == f"#{each.kind}"
        top = page.locator(f"#{each.kind} h1").bounding_box()["y"]
        assert 0 < top < 900
        if button.is_visible():
            assert not page.get_by_role("navigation", name="Pages").is_visible()


@on_a_desk
def test_a_screen_reader_is_told_the_number_then_where_it_comes_from(opened: Opened) -> None:
    client = opened.page.context.new_cdp_session(opened.page)
    nodes = client.send("Accessibility.getFullAXTree")["nodes"]
    traced = [
        (node["name"]["value"], node["description"]["value"])
        for node in nodes
        if node["role"]["value"] == "button" and node.get("description", {}).get("value")
    ]
    headers = [node["name"]["value"] for node in nodes if node["role"]["value"] == "rowheader"]

    assert traced[0] == ("37 3/4", "girth at bust-line. Line 88")
    assert all(re.search(r"Line \d+( of \S+)?$", said) for _, said in traced)
    assert "bust, round, at the bust line" in headers


@pytest.mark.parametrize("unit", ["inches", "centimetres"])
@on_each
def test_a_print_has_the_pages_of_the_pdf_in_the_unit_of_the_sheet(
    opened: Opened, sheet: Sheet, unit: str
) -> None:
    choose(opened.page, unit)
    opened.page.locator(FIRST).first.click()
    printed = PdfDocument(opened.page.pdf(prefer_css_page_size=True))
    meant = PdfDocument(sheet.pdf)

    assert len(printed) == len(meant)
    assert printed[0].get_size() == pytest.approx(meant[0].get_size(), abs=1.0)
    for number, (page, other) in enumerate(zip(printed, meant, strict=True), start=1):
        # The contents on the first page have their dots and numbers of pages in the PDF alone.
        left_out = set(".0123456789") if number == 1 else set()
        assert letters(page, left_out) == letters(other, left_out), number


def letters(page: Any, left_out: set[str]) -> Counter[str]:
    """How often each letter stands on a page of a PDF, in whatever order."""
    text = unicodedata.normalize("NFKC", page.get_textpage().get_text_range()).replace("⁄", "/")
    return Counter(letter for letter in text if not letter.isspace() and letter not in left_out)
