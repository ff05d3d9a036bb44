"""The sheet."""

from __future__ import annotations

import unicodedata
from importlib.resources import files
from io import BytesIO
from itertools import combinations
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from fontTools.ttLib import TTFont
from shapely.affinity import rotate, translate
from shapely.geometry import box

from specc.assets import Font, font_files
from specc.backends import html, pdf
from specc.document.drawing import Label
from specc.document.lettering import _WIDTHS, LETTERINGS, width_of
from specc.document.lettering import height_of as capital_height
from specc.pipeline import check_bytes
from specc.pipeline import document as pipeline_document
from specc.world import Folder
from tests.sources import Known, against
from tests.unit.document.values import SPEC, document

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

    from specc.document.document import Document
    from specc.document.drawing import Drawing

EXAMPLES = Path(__file__).parents[2] / "examples"
POINT = 25.4 / 72  # millimetres: PDF 1.7 (ISO 32000-1), 8.3.2.3, a default user space unit is 1/72 inch

# ISO 216:2007: A4 is 210 mm by 297 mm. ANSI/ASME Y14.1: size A is 8.5 in by 11 in. Both from memory.
PAPERS = {"A4": (210.0, 297.0), "Letter": (8.5 * 25.4, 11 * 25.4)}


def made(spec: str = SPEC) -> tuple[Document, bytes]:
    skiff = document(spec)
    return skiff, pdf.write(skiff, html.pages(skiff))[0].data


@pytest.fixture(scope="module")
def sheet() -> tuple[Document, bytes]:
    return made()


@against(Known.MEMORY, "ISO 216:2007", "A4; ANSI/ASME Y14.1: size A")
@against(Known.PROGRAM, "pypdfium2")
@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_pages_have_the_size_of_the_paper(paper: str) -> None:
    _, data = made(SPEC.replace("paper     A4", f"paper     {paper}"))

    for page in pypdfium2.PdfDocument(data):
        assert page.get_width() * POINT == pytest.approx(PAPERS[paper][0], abs=0.05)
        assert page.get_height() * POINT == pytest.approx(PAPERS[paper][1], abs=0.05)


def paths(page: pypdfium2.PdfPage) -> list[tuple[float, float, float, float]]:
    """Left, bottom, right, top of every path on the page, in millimetres, line widths left out."""
    found = []
    for thing in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH], max_depth=8):
        left, bottom, right, top = thing.get_bounds()
        found.append((left * POINT, bottom * POINT, right * POINT, top * POINT))
    return found


@against(Known.PROGRAM, "pypdfium2: bounds of the paths on the page")
@pytest.mark.parametrize("length", [100.0, 4 * 25.4])
def test_the_bar_to_check_the_print_is_as_long_as_it_says(
    sheet: tuple[Document, bytes], length: float
) -> None:
    _, data = sheet
    page = next(
        page
        for page in pypdfium2.PdfDocument(data)
        if "Measure these bars" in page.get_textpage().get_text_range()
    )
    # A bar is two paths, its first and third quarter and its second and fourth. Bounds take in some of the
    # width of the line, which falls out: what a path is wider than three steps from one path to the other.
    bars = [each for each in paths(page) if 1.0 < each[3] - each[1] < 2.5]
    measured = []
    for dark, light in combinations(bars, 2):
        step = light[0] - dark[0]
        if abs(dark[1] - light[1]) < 0.01 and step > 20.0:
            measured.append(light[2] - dark[0] - (dark[2] - dark[0] - 3 * step))

    assert len(measured) == 2
    assert min(abs(each - length) for each in measured) < 0.02


@against(Known.PROGRAM, "pypdf: text of the pages")
def test_the_title_block_and_the_page_are_on_every_page(sheet: tuple[Document, bytes]) -> None:
    _, data = sheet
    pages = pypdf.PdfReader(BytesIO(data)).pages

    for number, page in enumerate(pages, start=1):
        text = page.extract_text()
        assert "SK-01" in text
        assert "Revision B, 2026-03-02" in text
        assert f"Page {number} of {len(pages)}" in text


@against(Known.PROGRAM, "pypdf: text of the pages")
def test_a_reader_finds_every_length_of_the_edges(sheet: tuple[Document, bytes]) -> None:
    _, data = sheet
    # Compatibility composition turns raised and lowered figures of fractions into plain ones (UAX 15).
    text = " ".join(
        unicodedata.normalize("NFKC", page.extract_text()).replace("⁄", "/")
        for page in pypdf.PdfReader(BytesIO(data)).pages
    )

    assert "side 12 1/8" in text
    assert "12 1/8 12 1/8 12 1/8 12 1/8 12 1/8" in " ".join(text.split())


@against(Known.PROGRAM, "pypdf: named destinations")
def test_links_of_the_list_of_pages_lead_to_pages(sheet: tuple[Document, bytes]) -> None:
    skiff, data = sheet
    document = pypdf.PdfReader(BytesIO(data))
    wanted = {page.kind for page in skiff.pages[1:]}

    notes: Any = document.pages[0]["/Annots"]
    links = {
        str(note.get_object().get("/Dest", note.get_object().get("/A", {}).get("/D", ""))) for note in notes
    }

    assert wanted <= {link.strip("()") for link in links}
    assert wanted <= set(document.named_destinations)


@against(Known.PROGRAM, "fontTools.ttLib: table hmtx")
def test_the_widths_of_letters_are_those_of_the_font() -> None:
    with TTFont(font_files()[Font(600, "normal")]) as font:
        letters = font.getBestCmap()
        widths = tuple(font["hmtx"][letters[code]][0] for code in range(0x20, 0x7F))

    assert widths == _WIDTHS


def area(label: Label) -> BaseGeometry:
    wide = width_of(label.text, label.lettering)
    high = capital_height(label.lettering)
    flat = box(-wide / 2, -high / 2, wide / 2, high / 2)
    return translate(rotate(flat, label.angle, origin=(0, 0), use_radians=True), label.at.x, label.at.y)


def drawings() -> list[Drawing]:
    """Those of the tests' own garment and of every example."""
    found = list(document().drawings)
    for path in sorted(EXAMPLES.glob("*/*.garment")):
        result = check_bytes(path.name, path.read_bytes(), Folder(path.parent))
        made = pipeline_document(result)
        assert made is not None, path
        found += made.drawings
    return found


@against(Known.PROGRAM, "shapely: intersects")
def test_no_label_touches_another_in_any_example_by_shapely_too() -> None:
    for drawing in drawings():
        labels = [item for item in drawing.items if isinstance(item, Label)]
        for a, b in combinations(labels, 2):
            assert not area(a).intersects(area(b)), (drawing.name, a.text, b.text)


@against(Known.PRACTICE)
def test_letterings_are_legible_when_copied() -> None:
    # 5 points is the smallest type that is usual for print (common practice, no source): capitals of 1.2 mm.
    assert all(capital_height(lettering) >= 1.2 for lettering in LETTERINGS)


@against(Known.PROGRAM, "jsonschema: draft 2020-12")
def test_the_schema_of_the_result_is_a_schema() -> None:
    import json

    import jsonschema

    schema = json.loads(files("specc.backends").joinpath("result.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
