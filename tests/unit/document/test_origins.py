"""Every number that says where it comes from names a line that is there and figures that make it."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.assets import library_texts
from specc.document.build import build
from specc.document.printed import Origin, Printed, traced
from specc.document.table import Table
from specc.pipeline import document as compiled
from specc.quantities.unpriced import unpriced
from tests.made import sheath
from tests.unit.document.test_alteration_rows import FINISH, STEPS
from tests.unit.document.test_pages import blocks, table
from tests.unit.document.values import SPEC, document, sheet
from tests.unit.quantities.test_cost import COST
from tests.unit.quantities.test_cost import made as made_with_costs

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Document
    from specc.pipeline import Result

SKIFF = document()


def origins(of: Document) -> Iterator[tuple[str, str, Origin]]:
    """The table, the text and the origin of every number that has one."""
    for page in of.pages:
        for block in blocks(page):
            if isinstance(block, Table):
                for row in block.rows:
                    for text in row.texts:
                        if isinstance(text, Printed) and text.origin:
                            yield block.name, text.text, text.origin


def words(name: str, row: int, column: int, of: Document = SKIFF) -> str:
    text = table(name, of).rows[row].texts[column]
    assert isinstance(text, Printed)
    assert text.origin is not None
    return str(text.origin.words)


def test_every_kind_of_computed_number_says_where_it_comes_from() -> None:
    names = {re.sub(r"-[^-]*$", "", name) for name, _, _ in origins(SKIFF)}

    assert names == {
        "points-of", "grade", "edges", "walks", "trim", "thread-by", "thread", "bill-of",
        "materials-by", "lays",
    }  # fmt: skip


def test_every_line_that_is_named_is_there_and_asks_for_something() -> None:
    lines = SPEC.split("\n")

    for _, _, origin in origins(SKIFF):
        if origin.line:
            assert origin.place == f"Line {origin.line}"
            assert re.match(
                r"\s*(measure|expect|seam|finish|hem|cloth|trim|thread|label|piece|edge|accept) ",
                lines[origin.line - 1],
            ), lines[origin.line - 1]
        else:
            assert re.fullmatch(r"Line \d+ of \S+", origin.place)


def test_a_point_of_measure_says_what_it_asks_for_and_what_each_part_came_to() -> None:
    spec = SPEC.replace("= girth at bust-line", "= length of back.centre + 2 * length of front.hem")
    assert spec != SPEC
    rows = table("points-of-measure", document(spec)).rows
    told = next(
        str(text.origin.words)
        for row in rows
        for text in row.texts
        if isinstance(text, Printed) and text.origin and "+" in str(text.origin.words)
    )

    assert re.fullmatch(
        r"length of back\.centre \+ 2 \* length of front\.hem,"
        r" where length of back\.centre is \S+( \S+)? in, length of front\.hem is \S+( \S+)? in",
        told,
    )


def test_a_cut_length_is_what_its_words_say() -> None:
    """The figures to 1/32 in, their sum up to the next 1/8."""
    rows = table("trim-2").rows
    said = words("trim-2", -1, 3)
    seam, held, overlap = (_inches(each) for each in re.findall(r"(\d[\d /]*) in\b", said)[:3])

    assert said.endswith("overlap, rounded up to the next 1/8 in")
    assert 0 <= _inches(rows[-1].cells[3]) - (seam - held + overlap) < 1 / 8 + 3 / 64


def _inches(text: str) -> float:
    whole, _, part = text.rpartition(" ") if "/" in text else (text, "", "0/1")
    above, below = part.split("/")
    return float(whole or 0) + int(above) / int(below)


def test_both_units_are_in_the_words() -> None:
    text = table("trim-2").rows[-1].texts[3]
    assert isinstance(text, Printed)
    assert text.origin is not None
    assert isinstance(text.origin.words, Printed)

    assert "in" in text.origin.words.text
    assert " cm" in text.origin.words.other
    assert not re.search(r"\d in\b", text.origin.words.other)


def test_a_copy_without_the_text_leads_to_no_line() -> None:
    made = sheet()
    copy = build(replace(made, quantities=unpriced(made.quantities)))

    assert {origin.line for _, _, origin in origins(copy)} == {0}
    assert all(origin.place.startswith("Line ") for _, _, origin in origins(copy))


def test_an_edge_tells_what_each_alteration_made_of_it() -> None:
    result = sheath(f"{STEPS}{FINISH}", block="back-centre fold")
    found = document_of(result)
    side = next(row for row in table("edges-front", found).rows if row.cells[0] == "side").texts[1]
    assert isinstance(side, Printed)
    assert side.origin is not None
    told = re.fullmatch(
        r"front\.side, (\S+) cm as drafted, (\S+) cm after alteration 2", str(side.origin.words)
    )
    assert told is not None
    assert float(told[1]) - float(told[2]) == pytest.approx(2.0, abs=0.11)
    assert told[2] == side.text
    assert result.garment is not None
    assert result.garment.sources[0].line(side.origin.line).strip() == "shorten front, back by 2 cm at hem"

    made = table("edges-band", found).rows[0].texts[1]
    assert isinstance(made, Printed)
    assert made.origin is not None
    assert re.fullmatch(r"band\.\S+, \S+ cm after alteration 3", str(made.origin.words))


def test_an_edge_that_nothing_changed_leads_to_its_draft_in_the_library() -> None:
    found = document_of(sheath(FINISH.replace("hem band", "# hem band"), block="back-centre fold"))
    shoulder = next(row for row in table("edges-front", found).rows if row.cells[0] == "shoulder").texts[1]
    assert isinstance(shoulder, Printed)
    assert shoulder.origin is not None
    assert shoulder.origin.words == "front.shoulder as drafted"
    assert shoulder.origin.line == 0
    number, file = re.fullmatch(r"Line (\d+) of library/(\S+)", shoulder.origin.place).groups()  # type: ignore[union-attr]
    text = library_texts()[file.removesuffix(".garment")].read_text(encoding="utf-8")
    assert re.match(r"\s*edge shoulder ", text.split("\n")[int(number) - 1])


def test_work_and_price_say_what_they_are_reckoned_from() -> None:
    found = document_of(made_with_costs(COST % "margin 60%"))
    rows = {row.cells[0]: row.texts[1] for row in table("costs", found).rows}
    said = {
        name: str(text.origin.words)
        for name, text in rows.items()
        if isinstance(text, Printed) and text.origin
    }

    work = re.fullmatch(r"(\S+) minutes at 0.5 EUR", said["Work"])
    assert work is not None
    assert float(work[1]) * 0.5 == pytest.approx(float(str(rows["Work"]).split()[0]), abs=0.03)
    total = re.fullmatch(r"materials (\S+) EUR \+ work (\S+) EUR", said["In all"])
    assert total is not None
    assert f"{float(total[1]) + float(total[2]):.2f} EUR" == str(rows["In all"])
    price = re.fullmatch(
        r"(\S+ EUR) are the 40% that a margin of 60% leaves", said["Price at a margin of 60%"]
    )
    assert price is not None
    assert price[1] == str(rows["In all"])


def document_of(result: Result) -> Document:
    found = compiled(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


@pytest.mark.parametrize("text", ["", Printed("")])
def test_nothing_comes_from_nowhere(text: str | Printed) -> None:
    assert traced(text, Origin("a sum", "Line 1")) == text
    assert traced("12", None) == "12"
