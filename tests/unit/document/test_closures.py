"""The sheet shows closures: on the pieces, among the ways of making, among the trims, in the result."""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest

from specc.backends import json as json_backend
from specc.document.document import Facts, Group
from specc.document.drawing import Label, Stroke
from specc.document.line import LineKind
from specc.document.placement import flattened
from specc.document.table import Table
from specc.pipeline import document
from tests.made import made

if TYPE_CHECKING:
    from specc.document.document import Document, Page
    from specc.document.drawing import Drawing

INCH = 25.4
SCHEMA = json.loads(files("specc.backends").joinpath("result.schema.json").read_text(encoding="utf-8"))
SKIRT = """garment skirt "Skirt" { style "S"; sizes 8, 12; sample 12; order 8: 1, 12: 2; units in }
use chart misses
use block a-line-skirt
cloth twill "twill" { fibre 100% cotton; width 58 in; is stable }
trim zip "skirt zip" { kind zip; lengths 7 in, 8 in }
trim button "horn button" { kind button; diameter 5/8 in; thickness 1/8 in }
alter {
  divide back.centre at 7 1/2 in from centre-waist into opening, centre
  divide front.side, back.side at 6 in from waist-side into placket, side
}
seam centre joins back.centre to back.centre by pressed-open
seam side joins front.side to back.side by pressed-open
closure zip "back zip" along back.opening by zip-centred { zip zip }
closure row "side buttons" along front.placket to back.placket by buttoned {
  button button
  places 3, first 1 in from waist-side, last 1 in from placket-side
}
hem top along front.waist, back.waist by double-turned
hem bottom along front.hem, back.hem by double-turned
"""


@cache
def sheet() -> Document:
    found = document(made(SKIRT))
    assert found is not None
    return found


def drawing(name: str) -> Drawing:
    return next(each for each in sheet().drawings if each.name == name)


def blocks(of: Page | Group) -> list[object]:
    found: list[object] = []
    for block in of.blocks:
        found += blocks(block) if isinstance(block, Group) else [block]
    return found


def table(name: str) -> Table:
    found = [each for page in sheet().pages for each in blocks(page) if isinstance(each, Table)]
    return next(each for each in found if each.name == name)


def rows(name: str) -> list[tuple[str, ...]]:
    return [row.cells for row in table(name).rows]


def marks(name: str) -> list[tuple[Any, ...]]:
    """The straight strokes of closures on a piece, as their two ends on paper."""
    strokes = [
        each for each in drawing(name).items if isinstance(each, Stroke) and each.line is LineKind.NOTCH
    ]
    return [tuple(flattened(trace)) for trace in strokes[-1].traces]


def test_the_upper_side_has_crosses_and_buttonholes_and_the_lower_crosses() -> None:
    """Two strokes a cross, and three a buttonhole, which is as long as button and thickness, to scale."""
    front, back = drawing("piece-front"), drawing("piece-back")
    assert front.scale is not None
    assert len(marks("piece-front")) == 3 * 2 + 3 * 3
    assert len(marks("piece-back")) == 3 * 2
    longest = max(start.distance(end) for start, end in marks("piece-front"))
    assert longest == pytest.approx(0.75 * INCH * float(front.scale))
    for piece in (front, back):
        texts = [each.text for each in piece.items if isinstance(each, Label)]
        assert {"1", "2", "3"} <= set(texts)


def test_places_are_told_in_every_size() -> None:
    assert rows("closure-row") == [
        ("opening", "", "6", "6"),
        ("horn button", "pieces", "6", "6"),  # left and right
        ("place 1", "from waist-side", "1", "1"),
        ("place 2", "from waist-side", "3", "3"),
        ("place 3", "from waist-side", "5", "5"),
    ]
    note = table("closure-row").note
    assert "3/4 in inside the edge" in str(note)
    assert "Buttonholes: 3/4 in long, across the edge" in str(note)


def test_a_zip_is_told_in_the_length_that_is_bought() -> None:
    assert rows("closure-zip") == [
        ("opening", "", "7 1/2", "7 1/2"),
        ("skirt zip", "pieces", "1 × 8 in", "1 × 8 in"),
    ]
    facts = [
        (fact.label, str(fact.value))
        for page in sheet().pages
        for block in blocks(page)
        if isinstance(block, Facts)
        for fact in block.rows
    ]
    assert ("Zip", "skirt zip, in size 12: 1 × 8 in") in facts
    assert ("Laps", "1 1/2 in") in facts


def test_fastenings_stand_on_the_page_of_trims() -> None:
    page = next(page for page in sheet().pages if page.kind == "trims")
    assert page.title == "Fastenings"
    assert rows("fastenings") == [
        ("skirt zip", "back zip", "1 × 8 in", "1 × 8 in"),
        ("horn button", "side buttons", "6", "6"),
    ]


def test_openings_are_told_open_and_closed() -> None:
    when = [row[0] for row in rows("openings")]
    assert when == ["put on", "", "worn", ""]
    edges = [row[1] for row in rows("openings")]
    assert "back.opening" in edges[0] or "back.opening" in edges[1]
    assert not any("opening" in each or "placket" in each for each in edges[2:])


def test_the_result_holds_closures_openings_and_fastenings() -> None:
    result = json.loads(json_backend.write(sheet(), "")[0].data)
    validator = jsonschema.Draft202012Validator(SCHEMA)
    size = result["sizes"]["12"]
    row = size["closures"]["row"]

    assert [error.message for error in validator.iter_errors(result)] == []
    assert (row["count"], row["from"], row["laps_mm"]) == (2, "waist-side", pytest.approx(1.5 * INCH))
    assert [place["along_mm"] for place in row["places"][:3]] == pytest.approx([INCH, 3 * INCH, 5 * INCH])
    assert [place["hole"] is None for place in row["places"]] == [False] * 3 + [True] * 3
    assert size["fastenings"] == [
        {"trim": "zip", "used_on": "zip", "count": 1, "length_mm": 203.2, "opening_mm": 190.5},
        {"trim": "button", "used_on": "row", "count": 6, "length_mm": None, "opening_mm": 152.4},
    ]
    longest = max(each["sewn_mm"] for each in size["openings"] if "back.waist" in each["edges"])
    worn = max(each["sewn_mm"] for each in size["openings_worn"] if "back.waist" in each["edges"])
    assert longest > worn
