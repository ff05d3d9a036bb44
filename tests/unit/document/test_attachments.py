"""The sheet shows what is attached: on the piece that takes it, among the ways of making, in the result."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import pytest

from specc.document.data import Members
from specc.document.document import Facts, Figure, Group, Heading
from specc.document.drawing import Label, Stroke
from specc.document.line import LineKind
from specc.document.placement import flattened
from specc.document.table import Table
from specc.pipeline import document
from tests.attaching import pocketed

if TYPE_CHECKING:
    from specc.document.document import Document, Page
    from specc.document.drawing import Drawing

MORE = """use block rectangle as tie "waist tie" { wide 4 cm; long 60 cm; cutting twice }
seam tie-length joins tie.left-edge to tie.right-edge by turned-tube
finish tie-end along tie.top by closed-end
attach tie.bottom to front.flank at 3 cm from waist-side
"""
POCKET = "attach pocket on front with top-left at 5 cm below bust-line, 3 cm from centre by patch\n"
ACROSS = "attach pocket on front with top-right at 5 cm below bust-line, 7 cm from centre by patch\n"


@cache
def sheet(attach: str = POCKET, cutting: str = "twice") -> Document:
    found = document(pocketed(MORE + attach, wide=140, long=150, cutting=cutting))
    assert found is not None
    return found


def drawing(name: str, of: Document) -> Drawing:
    return next(each for each in of.drawings if each.name == name)


def strokes(of: Drawing, kind: LineKind) -> list[Stroke]:
    return [item for item in of.items if isinstance(item, Stroke) and item.line is kind]


def blocks(of: Page | Group) -> list[object]:
    found: list[object] = []
    for block in of.blocks:
        found += blocks(block) if isinstance(block, Group) else [block]
    return found


def on(kind: str, of: Document) -> list[object]:
    return blocks(next(page for page in of.pages if page.kind == kind))


def table(name: str) -> Table:
    found = [each for page in sheet().pages for each in blocks(page) if isinstance(each, Table)]
    return next(each for each in found if each.name == name)


def test_the_piece_shows_the_outline_its_drill_marks_and_how_it_is_measured() -> None:
    front = drawing("piece-front", sheet())
    assert front.scale is not None
    scale = float(front.scale)
    (outline,) = strokes(front, LineKind.PLACED)
    points = [point for trace in outline.traces for point in flattened(trace)]
    wide = max(p.x for p in points) - min(p.x for p in points)
    high = max(p.y for p in points) - min(p.y for p in points)

    assert (wide, high) == pytest.approx((140.0 * scale, 150.0 * scale))
    assert len(strokes(front, LineKind.MARK)) == 4
    measures = [
        trace.start.distance(trace.runs[-1])
        for stroke in strokes(front, LineKind.THIN)
        for trace in stroke.traces
        if not hasattr(trace.runs[-1], "to")
    ]
    assert measures == pytest.approx([30.0 * scale, 50.0 * scale])
    texts = {item.text for item in front.items if isinstance(item, Label)}
    assert {"pocket", "waist tie", "3.0", "5.0"} <= texts
    assert strokes(drawing("piece-back", sheet()), LineKind.PLACED) == []


def test_of_what_lies_across_the_fold_the_half_is_drawn_that_the_piece_has() -> None:
    """The front is drawn to the right of its centre; the pocket reaches 7 cm beyond on both sides."""
    front = drawing("piece-front", sheet(ACROSS, "once"))
    assert front.scale is not None
    (outline,) = strokes(front, LineKind.PLACED)
    (fold,) = strokes(front, LineKind.FOLD)
    centre = fold.traces[0].start.x
    points = [point for trace in outline.traces for point in flattened(trace)]

    assert min(p.x for p in points) == pytest.approx(centre, abs=0.01)
    assert max(p.x for p in points) == pytest.approx(centre + 70.0 * float(front.scale), abs=0.01)
    assert len(strokes(front, LineKind.MARK)) == 2


def test_the_piece_says_in_every_size_where_it_takes_what() -> None:
    rows = [row.cells for row in table("takes-front").rows]

    assert rows == [
        ("waist tie", "notch from waist-side, along flank", "3.0", "3.0"),
        ("", "notch from waist-side, along flank", "5.0", "5.0"),
        ("pocket", "top-left below bust-line", "5.0", "5.0"),
        ("", "top-left from centre, along that level", "3.0", "3.0"),
    ]


def test_an_attached_edge_says_what_it_goes_into() -> None:
    goes = {row.cells[0]: row.cells[-1] for row in table("edges-pocket").rows}

    assert goes["bottom"] == "pocket on front: edges turned in and sewn on, as of a patch pocket"
    assert table("edges-tie").rows[2].cells[-1] == "tie.bottom to front.flank: caught in seam flank"


def test_what_is_sewn_on_stands_among_the_ways_of_making() -> None:
    making = on("making", sheet())
    at = next(
        number
        for number, block in enumerate(making)
        if isinstance(block, Heading) and block.detail == "pocket on front"
    )
    facts = making[at + 1]
    assert isinstance(facts, Facts)
    said = {fact.label: str(fact.value) for fact in facts.rows}

    assert said["Place"] == "top-left 5.0 cm below bust-line, 3.0 cm from centre, along that level"
    assert said["How often"] == "twice, left and right"
    assert said["Sewn along"] == "left-edge, bottom, right-edge"


def test_ends_that_are_caught_stand_in_one_table() -> None:
    (caught,) = [
        block for block in on("making", sheet()) if isinstance(block, Table) and "caught" in block.name
    ]

    assert [row.cells[1:] for row in caught.rows] == [
        (
            "waist tie",
            "tie.bottom to front.flank",
            "between notches 3.0 cm and 5.0 cm from waist-side, along flank",
            "twice, left and right",
            "seam flank",
        )
    ]


def test_the_result_has_the_outline_and_the_notches() -> None:
    result = sheet().result
    assert isinstance(result, Members)
    sizes = dict(result.items)["sizes"]
    assert isinstance(sizes, Members)
    size = sizes.items[0][1]
    assert isinstance(size, Members)
    found = dict(size.items)["attachments"]
    assert isinstance(found, Members)
    tie, pocket = (dict(each.items) for _, each in found.items if isinstance(each, Members))

    assert [name for name, _ in found.items] == ["tie-to-front-flank", "pocket-on-front"]
    assert (tie["to"], tie["ends"], tie["places"]) == ("front.flank", ("tie.bottom",), 2)
    assert pocket["sewn_edges"] == ("left-edge", "bottom", "right-edge")
    outline = pocket["outline"]
    assert isinstance(outline, tuple)
    assert outline[0] == outline[-1]
    assert set(outline) == {(30.0, 300.0), (170.0, 300.0), (170.0, 150.0), (30.0, 150.0)}


def test_a_figure_of_the_piece_explains_its_wide_dashes_only_where_there_are_some() -> None:
    texts = [
        getattr(block, "text", "") for block in on("pieces", sheet()) if not isinstance(block, Figure | Table)
    ]

    assert sum("Wide dashes" in text for text in texts) == 1
