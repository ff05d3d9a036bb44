"""What leads from one place of the sheet to another leads there, and back."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from pathlib import Path
from urllib.parse import unquote

import pytest

from specc.backends import html
from specc.backends.linked import linked
from specc.document.build import build
from specc.document.document import Group, Heading, Page
from specc.document.link import Link
from specc.document.links import listed, without_dead_ends
from specc.document.table import Column, Row, Table
from specc.pipeline import check_bytes, lay_out
from specc.pipeline import document as document_of
from specc.quantities.unpriced import unpriced
from specc.world import Folder
from tests.compiling import roughly
from tests.unit.document.values import document, sheet

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*/*.garment"))
NAMED = [path.stem for path in EXAMPLES]


@cache
def page_of(path: Path) -> str:
    """The sheet of an example as HTML."""
    world = Folder(path.parent)
    result = lay_out(check_bytes(path.name, path.read_bytes(), world), world, roughly)
    made = document_of(result)
    assert made is not None
    return html.pages(made).paper


def links(page: str) -> list[str]:
    return [unquote(each) for each in re.findall(r'href="#([^"]*)"', page)]


def row(page: str, table: str, place: str) -> str:
    """The row of a table that is called by a place."""
    start = page.index(f'<table id="{table}"')
    found = re.search(rf'<tr id="{place}".*?</tr>', page[start:])
    assert found is not None
    return found[0]


@pytest.mark.parametrize("example", EXAMPLES, ids=NAMED)
def test_every_link_of_every_example_leads_to_one_place(example: Path) -> None:
    page = page_of(example)
    places = re.findall(r' id="([^"]*)"', page)

    assert len(places) == len(set(places))
    assert set(links(page)) <= set(places)


@pytest.mark.parametrize("example", EXAMPLES, ids=NAMED)
def test_trims_lead_from_the_bill_to_where_they_are_cut_and_sewn_and_back(example: Path) -> None:
    page = page_of(example)
    cut = set(re.findall(r' id="(trims/[^"]*)"', page))
    sewn = {f"making/{place.rsplit('/', 1)[1]}" for place in cut}
    billed = {f"bill/{place.split('/')[1]}" for place in cut}
    found = links(page)

    assert cut <= set(found)
    assert sewn & set(re.findall(r' id="(making/[^"]*)"', page)) <= set(found)
    assert billed <= set(found)


def test_a_trim_is_found_from_the_bill_and_from_the_seam_and_the_bill_from_the_trim() -> None:
    page = html.pages(document()).paper

    assert '<a href="#trims/edging/shoulder">' in row(page, "bill-of-materials", "bill/edging")
    making = page[page.index(' id="making/shoulder"') :]
    assert '<a href="#trims/edging/shoulder">' in making[: making.index("</table>")]
    trims = page[page.index(' id="trims/edging/shoulder"') :]
    assert '<a href="#bill/edging">' in trims[: trims.index("</h2>")]
    assert '<a href="#making/shoulder">' in trims[: trims.index("</h2>")]


def test_an_alteration_leads_to_the_line_that_asks_for_it() -> None:
    (example,) = (path for path in EXAMPLES if path.stem == "estuary-shell")
    page = page_of(example)
    (line,) = re.findall(
        r'lower front.neck .*?<a href="#(line-\d+)">', page[page.index(' id="alterations"') :]
    )[:1]
    at = page[page.index(f'<li id="{line}">') :]

    assert "lower" in at[: at.index("</li>")]
    assert "front.neck" in at[: at.index("</li>")]


def test_an_edge_leads_to_what_it_goes_into() -> None:
    page = html.pages(document()).paper
    edges = page[page.index('<table id="edges-front"') :]
    edges = edges[: edges.index("</table>")]

    assert '<a href="#making/side">seam side: ' in edges
    assert '<a href="#making/neckline">finish neckline: ' in edges
    assert "fold of the cloth</td>" in edges


def test_a_warning_leads_to_its_line_and_to_what_it_speaks_of() -> None:
    page = html.pages(document()).paper
    accepted = page[page.index('<table id="accepted"') :]
    accepted = accepted[: accepted.index("</table>")]

    (line,) = re.findall(r'<a href="#(line-\d+)">', accepted)
    assert '<a href="#pieces/front">front.bust-dart</a>' in accepted
    at = page[page.index(f'<li id="{line}">') :]
    assert at[: at.index("</li>")].startswith(f'<li id="{line}">accept')


def test_a_copy_without_the_text_has_no_links_into_it() -> None:
    whole = sheet()
    page = html.pages(build(replace(whole, quantities=unpriced(whole.quantities)))).paper

    assert not [link for link in links(page) if link.startswith("line-")]
    assert ">85<" in page


def test_parts_of_a_list_lead_each_to_its_own_place() -> None:
    text, found = listed((("hem top", ""), ("hem", "making/hem"), ("3/8 in", "a/b c")), of=2)

    assert text == "hem top, hem, 3/8 in"
    assert [text[link.start : link.end] for link in found] == ["hem", "3/8 in"]
    assert linked(text, found) == (
        'hem top, <a href="#making/hem">hem</a>, <a href="#a/b%20c"><span class="frac">3/8</span> in</a>'
    )
    assert linked(text, ()) == 'hem top, hem, <span class="frac">3/8</span> in'


def test_a_hostile_name_cannot_end_an_address() -> None:
    assert linked("x", (Link(0, 0, 1, '"><script>'),)) == '<a href="#%22%3E%3Cscript%3E">x</a>'


def test_what_leads_nowhere_is_left_out() -> None:
    here, nowhere = Link(0, 0, 1, "making/side"), Link(0, 0, 1, "making/none")
    rows = (Row(("a",), links=(here, nowhere)),)
    blocks = (
        Group("stack", (Heading("side", place="making/side", links=(nowhere,)),)),
        Table("t", "", (Column("c"),), rows),
    )
    (page,) = without_dead_ends((Page("making", "", "", blocks),))
    group, table = page.blocks

    assert isinstance(group, Group)
    assert group.blocks == (Heading("side", place="making/side"),)
    assert isinstance(table, Table)
    assert table.rows == (Row(("a",), links=(here,)),)
