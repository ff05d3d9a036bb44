"""A drawing as SVG: well-formed whatever it says, in few digits, with the lines of its style."""

from __future__ import annotations

from math import pi
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.backends import svg
from specc.backends.svg import alone, inline, write
from specc.document.drawing import Bend, Drawing, Label, Stroke, Trace
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.geometry.point import Point
from tests.unit.document.values import document

SVG = "{http://www.w3.org/2000/svg}"
ODD = st.text(alphabet=st.characters(codec=None, exclude_categories=()))


def drawing(*items: Stroke | Label, title: str = "a drawing") -> Drawing:
    return Drawing("it", title, 40.0, 30.0, None, items)


def parsed(text: str) -> ET.Element:
    return ET.fromstring(text.encode())  # noqa: S314 - our own text


@given(ODD, ODD)
def test_any_text_gives_well_formed_xml(title: str, text: str) -> None:
    root = parsed(alone(drawing(Label(text, Point(1, 1), Lettering.NAME), title=title)))

    assert [child.tag for child in root] == [f"{SVG}title", f"{SVG}text"]


def test_sizes_are_millimetres_of_paper() -> None:
    root = parsed(alone(drawing()))

    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("40mm", "30mm", "0 0 40 30")


def test_lines_bends_and_closing() -> None:
    trace = Trace(
        Point(0, 0), (Point(1.23456, -0.0001), Bend(Point(2, 0), Point(3, 1), Point(3, 2))), closed=True
    )

    path = parsed(alone(drawing(Stroke(LineKind.STITCH, (trace,))))).find(f"{SVG}path")

    assert path is not None
    assert path.get("d") == "M0 0L1.235 0C2 0 3 1 3 2Z"
    assert path.get("stroke-dasharray") == "2.4 0.8"
    assert path.get("fill") == "none"


def test_a_turned_label_on_white_ground() -> None:
    label = Label("neck 9 1/4", Point(10, 5), Lettering.SMALL, pi / 2, ground=True)
    root = parsed(alone(drawing(label)))

    rect, text = root.find(f"{SVG}rect"), root.find(f"{SVG}text")
    assert rect is not None
    assert text is not None
    assert rect.get("fill") == "#fff"
    assert text.get("transform") == rect.get("transform") == "rotate(90 10 5)"
    assert text.text == "neck 9 ¹⁄₄"


def test_inline_and_alone_differ_by_the_font_only() -> None:
    one = drawing(Label("a", Point(1, 1), Lettering.TITLE))

    assert alone(one).endswith(str(inline(one, svg._ALONE)))
    assert parsed(str(inline(one, "Other"))).get("font-family") == "Other"


@pytest.mark.parametrize("file", write(document(), ""), ids=lambda file: file.path)
def test_every_drawing_is_a_file_that_fetches_nothing(file: object) -> None:
    data = getattr(file, "data")  # noqa: B009 - the parameter's type is the test's business
    root = ET.fromstring(data)  # noqa: S314 - our own text

    assert root.find(f"{SVG}title") is not None
    assert b"href" not in data
    assert b"script" not in data
