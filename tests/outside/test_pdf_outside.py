"""The PDF of a sheet, as programs that read PDFs have it."""

from __future__ import annotations

import re
from importlib.resources import files
from io import BytesIO
from itertools import pairwise
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np
import pypdf
import pypdfium2
import pytest
from fontTools.ttLib import TTFont
from pypdf.generic import ArrayObject, ContentStream, DictionaryObject

from specc.backends import html, pdf
from tests.operators import POINT, painted
from tests.sources import Known, against
from tests.unit.document.values import document

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Document

A4, LETTER = (210.0, 297.0), (8.5 * 25.4, 11 * 25.4)  # ISO 216; ANSI/ASME Y14.1 size A, both from memory
UNREACHED = 5.0  # millimetres at the edge of the paper that printers do not reach; common practice, no source


class Sheet(NamedTuple):
    made: Document
    data: bytes
    reader: pypdf.PdfReader
    texts: tuple[str, ...]


@pytest.fixture(scope="module")
def sheet() -> Sheet:
    """One PDF for all that is asked of it here."""
    made = document()
    data = pdf.write(made, html.pages(made))[0].data
    reader = pypdf.PdfReader(BytesIO(data))
    return Sheet(made, data, reader, tuple(page.extract_text() for page in reader.pages))


def inside(reader: pypdf.PdfReader) -> Iterator[Any]:
    """Every object of a PDF, also those within others."""

    def within(thing: Any) -> Iterator[Any]:
        yield thing
        if isinstance(thing, DictionaryObject):
            for value in thing.values():
                yield from within(value)
        elif isinstance(thing, ArrayObject):
            for value in thing:
                yield from within(value)

    for number in range(1, int(str(reader.trailer["/Size"]))):
        yield from within(reader.get_object(number))


def elements(reader: pypdf.PdfReader) -> Iterator[Any]:
    """The structure elements in the order of reading."""
    root: Any = reader.trailer["/Root"]

    def below(thing: Any) -> Iterator[Any]:
        found = thing.get_object()
        if isinstance(found, ArrayObject):
            for one in found:
                yield from below(one)
        elif isinstance(found, DictionaryObject):
            if "/S" in found:
                yield found
            if "/K" in found:
                yield from below(found["/K"])

    yield from below(root["/StructTreeRoot"])


# --- what stands on the pages ---


def bookmarks(reader: pypdf.PdfReader) -> list[tuple[int, str, int]]:
    """The depth of each bookmark, its title, and the number of its page from 0."""
    found: list[tuple[int, str, int]] = []

    def below(entries: list[Any], depth: int) -> None:
        for entry in entries:
            if isinstance(entry, list):
                below(entry, depth + 1)
            else:
                found.append((depth, entry.title, reader.get_destination_page_number(entry) or 0))

    below(reader.outline, 0)
    return found


@against(Known.PROGRAM, "pypdf: outline and text of the pages")
def test_bookmarks_are_the_pages_and_below_them_what_is_counted_on_them(sheet: Sheet) -> None:
    found = bookmarks(sheet.reader)
    below_making = [title for depth, title, _ in found[_index(found, "Seams, finishes, hems") :]]

    assert [title for depth, title, _ in found if depth == 0] == [page.title for page in sheet.made.pages]
    assert {depth for depth, _, _ in found} == {0, 1}
    assert below_making[1].startswith("1 ")
    assert below_making[2].startswith("2 ")
    for _, title, number in found:
        words = "".join(title.split())
        assert words in "".join(sheet.texts[number].split()), title


def _index(found: list[tuple[int, str, int]], title: str) -> int:
    return next(place for place, (_, one, _) in enumerate(found) if one == title)


@against(Known.PROGRAM, "pypdf: text of the pages")
def test_every_page_says_what_it_is_part_of_and_has_something_on_it(sheet: Sheet) -> None:
    for number, text in enumerate(sheet.texts, start=1):
        for said in ("SK-01", "Skiff overtop", "Revision B, 2026-03-02", "Saltmarsh Works", "specc 0.1.0"):
            assert said in text
        assert f"Page {number} of {len(sheet.texts)}" in text
        assert len(text) > 150, number


@against(Known.PROGRAM, "pypdf: text of the pages")
def test_every_table_and_drawing_is_called_what_the_document_calls_it(sheet: Sheet) -> None:
    whole = "".join("".join(sheet.texts).split())
    captions = re.findall(r"<caption>(.*?)</caption>", html.pages(sheet.made).paper)

    assert len(captions) > 10
    for caption in captions:
        assert "".join(re.sub("<.*?>", "", caption).split()) in whole


@against(Known.PROGRAM, "pypdf: document information")
def test_the_file_says_what_it_is_by_whom_and_in_which_language(sheet: Sheet) -> None:
    said, root = sheet.reader.metadata, sheet.reader.trailer["/Root"]

    assert said is not None
    assert said.title == "SK-01 Skiff overtop, revision B"
    assert said.author == "Saltmarsh Works"
    assert said.subject == "Technical sheet, style SK-01. Revision B, 2026-03-02"
    assert said.creator == "specc 0.1.0"
    assert str(said.get("/Keywords")).startswith("technical sheet, Skiff overtop, summer, sizes 8 to 16, ")
    assert (said.creation_date, said.modification_date) == (None, None)
    assert root["/Lang"] == "en"  # type: ignore[index]


# --- links ---


@against(Known.PROGRAM, "pypdf: annotations and named destinations")
def test_every_link_leads_to_a_place_in_the_file(sheet: Sheet) -> None:
    notes = [note.get_object() for page in sheet.reader.pages for note in page.get("/Annots", ArrayObject())]
    wanted = {str(note["/Dest"]) for note in notes}

    assert {str(note["/Subtype"]) for note in notes} == {"/Link"}
    assert wanted <= set(sheet.reader.named_destinations)
    assert {"bill/edging", "trims/edging/shoulder", "making/shoulder", "pieces/front"} <= wanted
    assert any(place.startswith("line-") for place in wanted)


@against(Known.PROGRAM, "pypdf: annotations, text near them")
def test_a_link_from_the_bill_leads_to_the_page_of_its_trim(sheet: Sheet) -> None:
    place = sheet.reader.named_destinations["trims/edging/shoulder"]
    number = sheet.reader.get_destination_page_number(place)

    assert number is not None
    assert "Trims to cut" in sheet.texts[number]


@against(Known.PROGRAM, "pypdf: every object of the file")
def test_nothing_in_the_file_reaches_out_of_it_or_acts_by_itself(sheet: Sheet) -> None:
    """ISO 32000-1, 12.6.4: actions; 7.11: a file that is not enclosed would be one that is reached for."""
    dictionaries = [thing for thing in inside(sheet.reader) if isinstance(thing, DictionaryObject)]
    keys = {key for thing in dictionaries for key in thing}

    assert not {"/URI", "/AA", "/OpenAction", "/JS", "/JavaScript", "/XFA", "/AcroForm"} & keys
    links = [thing for thing in dictionaries if thing.get("/Subtype") == "/Link"]
    assert links
    assert not any("/A" in link for link in links)
    specs = [thing for thing in dictionaries if thing.get("/Type") == "/Filespec"]
    assert specs
    assert all("/EF" in spec and {"/F", "/UF"} <= set(spec) for spec in specs)


# --- measures and paper ---


@against(Known.PROGRAM, "pypdf: the operators of the page through their matrices")
def test_the_bars_to_check_the_print_measure_100_mm_and_4_in(sheet: Sheet) -> None:
    number = next(number for number, text in enumerate(sheet.texts) if "Measure these bars" in text)
    found = [each for each in painted(sheet.reader, sheet.reader.pages[number]) if each.by == "B"]
    rows: dict[float, list[tuple[float, float]]] = {}
    for each in found[:4]:
        left, bottom, right, top = each.box
        assert top - bottom == pytest.approx(1.6, abs=1e-3)
        rows.setdefault(round(top, 3), []).append((left, right))

    lengths = [max(right for _, right in row) - min(left for left, _ in row) for row in rows.values()]
    assert lengths == pytest.approx([100.0, 4 * 25.4], abs=1e-3)


@against(Known.MEMORY, "ISO 216:2007; ANSI/ASME Y14.1", "A4 is 297 mm high, Letter 279.4 mm")
@against(Known.PROGRAM, "pypdfium2: where there is ink on the page")
def test_an_a4_page_printed_at_full_size_on_letter_loses_nothing(sheet: Sheet) -> None:
    """The page is centred on the paper, as printers do it."""
    scale = 2.0  # points to a point of the picture
    across, up = UNREACHED, (A4[1] - LETTER[1]) / 2 + UNREACHED
    assert A4[0] < LETTER[0]
    for page in pypdfium2.PdfDocument(sheet.data):
        ink = page.render(scale=scale, grayscale=True).to_numpy() < 250
        rows, columns = np.flatnonzero(ink.any(axis=1)), np.flatnonzero(ink.any(axis=0))
        assert ink.shape[0] / scale * POINT == pytest.approx(A4[1], abs=0.2)
        assert rows[0] / scale * POINT > up
        assert (rows[-1] + 1) / scale * POINT < A4[1] - up
        assert columns[0] / scale * POINT > across
        assert (columns[-1] + 1) / scale * POINT < A4[0] - across


# --- fonts ---


@against(Known.PROGRAM, "pypdf and fontTools: the fonts in the file")
def test_fonts_are_inside_cut_down_and_say_which_letter_is_which(sheet: Sheet) -> None:
    with TTFont(files("font_source_sans_pro") / "files/SourceSansPro-Regular.ttf", lazy=True) as font_file:
        whole = len(font_file.getGlyphOrder())
    fonts = {
        id(font.get_object()): font.get_object()
        for page in sheet.reader.pages
        for font in page["/Resources"]["/Font"].values()  # type: ignore[index]
    }

    assert len(fonts) == 2
    for font in fonts.values():
        described: Any = font["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        with TTFont(BytesIO(described["/FontFile2"].get_object().get_data())) as embedded:
            assert len(embedded.getGlyphOrder()) < whole / 4
        assert re.fullmatch(r"/[A-Z]{6}\+Specc-Sans.*", font["/BaseFont"])
        assert "/ToUnicode" in font


# --- what reads aloud ---


@against(Known.PROGRAM, "pypdf: the operators of the pages")
def test_all_that_is_painted_is_of_the_text_or_an_ornament(sheet: Sheet) -> None:
    """ISO 14289-1, 7.1 (from memory): content is marked as part of the structure or as an artifact."""
    shows = {b"f", b"f*", b"F", b"S", b"s", b"B", b"B*", b"b", b"b*", b"Tj", b"TJ", b"Do", b"sh"}
    for page in sheet.reader.pages:
        depth = 0
        for _, operator in ContentStream(page["/Contents"].get_object(), sheet.reader).operations:
            depth += {b"BMC": 1, b"BDC": 1, b"EMC": -1}.get(operator, 0)
            assert depth or operator not in shows
        assert str(page["/Tabs"]) == "/S"


@against(Known.PROGRAM, "pypdf: the structure tree")
def test_headings_go_down_one_level_at_a_time(sheet: Sheet) -> None:
    """ISO 14289-1, 7.4.2 (from memory): no level is skipped."""
    levels = [int(one["/S"][2:]) for one in elements(sheet.reader) if re.fullmatch(r"/H\d", one["/S"])]

    assert levels[0] == 1
    assert levels.count(1) == len(sheet.made.pages)
    assert all(next_ <= one + 1 for one, next_ in pairwise(levels))


@against(Known.PROGRAM, "pypdf: the structure tree")
def test_drawings_say_what_they_show_and_cells_which_heading_is_theirs(sheet: Sheet) -> None:
    found = list(elements(sheet.reader))
    figures = [str(one["/Alt"]) for one in found if one["/S"] == "/Figure"]
    cells = [one for one in found if one["/S"] == "/TD"]
    headed = [one for one in cells if one["/A"].get("/Headers")]

    assert {drawing.title for drawing in sheet.made.drawings} == set(figures)
    assert all(figures)
    assert {"/Table", "/THead", "/TBody", "/TR", "/TH"} <= {str(one["/S"]) for one in found}
    assert len(headed) == len(cells)


@against(Known.PROGRAM, "pypdf: catalogue and metadata")
def test_it_is_said_to_be_for_reading_aloud(sheet: Sheet) -> None:
    """ISO 14289-1, 5 and 7.1 (from memory): the part is named, the title shown, what is marked declared."""
    root: Any = sheet.reader.trailer["/Root"]

    assert b'pdfuaid:part="1"' in root["/Metadata"].get_data()
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert root["/MarkInfo"]["/Marked"]
    links = [note.get_object() for page in sheet.reader.pages for note in page.get("/Annots", ArrayObject())]
    assert all(link["/Contents"] and "/StructParent" in link for link in links)
