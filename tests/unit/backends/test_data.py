"""The result for programs: JSON that keeps to its schema, CSV that no spreadsheet runs."""

from __future__ import annotations

import csv
import io
import json
from importlib.resources import files
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest

from specc.backends import csv as csv_backend
from specc.backends import json as json_backend
from specc.backends import write
from specc.document.data import DataTable, Members
from tests.unit.document.values import SPEC, document

if TYPE_CHECKING:
    from specc.document.document import Document

SCHEMA = json.loads(files("specc.backends").joinpath("result.schema.json").read_text(encoding="utf-8"))
TABLES = [
    "bill-of-materials.csv",
    "costs.csv",
    "trims.csv",
    "thread.csv",
    "bias-strips.csv",
    "lays.csv",
    "points-of-measure.csv",
]


@pytest.fixture(scope="module")
def skiff() -> Document:
    return document()


@pytest.fixture(scope="module")
def result(skiff: Document) -> Any:
    return json.loads(json_backend.write(skiff, "")[0].data)


def test_the_result_keeps_to_its_schema(result: Any) -> None:
    validator = jsonschema.Draft202012Validator(SCHEMA)
    validator.check_schema(SCHEMA)

    assert [error.message for error in validator.iter_errors(result)] == []


def test_the_result_holds_what_was_agreed(result: Any) -> None:
    size = result["sizes"]["12"]
    front = size["pieces"]["front"]

    assert list(result["sizes"]) == ["8", "10", "12", "14", "16"]
    assert front["on_fold"] is True
    assert front["cut"] == 1
    assert front["net_outline"][0] == front["net_outline"][-1]
    assert front["cut_outline"][0] == front["cut_outline"][-1]
    assert front["edges"]["side"]["stitched_mm"] < front["edges"]["side"]["drawn_mm"]
    assert size["seams"]["side"]["first_mm"] == front["edges"]["side"]["stitched_mm"]
    trim = size["trims"][1]
    added = sum(each["length_mm"] for each in trim["additions"])
    assert trim["cut_length_mm"] == pytest.approx(trim["seam_mm"] - trim["held_mm"] + added, abs=2e-4)
    assert set(size["measures"]) == {"bust_mm", "neck_mm"}
    assert result["diagnostics"][0]["code"] == "SPC599"
    assert result["accepted"][0]["because"] == "the dart is the ornament & <b>shows</b>"


def test_numbers_are_rounded_and_never_minus_zero() -> None:
    value = Members((("a", 1.23456789), ("b", -0.0), ("c", (1, 2.00004, None)), ("d", True)))

    assert json_backend._plain(value) == {"a": 1.2346, "b": 0.0, "c": [1, 2.0, None], "d": True}
    assert "-0" not in json_backend._text(Members((("b", -0.00001),)))


def test_files_come_in_the_order_of_the_backends_whatever_is_asked_first(skiff: Document) -> None:
    paths = [file.path for file in write(skiff, ("csv", "json"))]

    assert paths == ["result.json", *TABLES]


def read(table: DataTable) -> list[list[str]]:
    return list(csv.reader(io.StringIO(csv_backend._text(table))))


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "=cmd|' /C calc'!A0"])
def test_a_cell_cannot_be_a_formula(text: str) -> None:
    (_, (cell,)) = read(DataTable("t", ("a",), ((text,),)))

    assert cell.startswith("'")
    assert not cell.removeprefix("'").startswith("'")


def test_numbers_stay_numbers() -> None:
    table = DataTable("t", ("a", "b", "c", "d"), ((-1.5, 3, 1e-9, None),))

    assert read(table)[1] == ["-1.5", "3", "0", ""]


def test_quotes_commas_and_ends_of_line_survive() -> None:
    text = 'a "b", c\nd'

    assert read(DataTable("t", ("x",), ((text,),)))[1] == [text]


def test_the_tables_are_those_that_were_agreed(skiff: Document) -> None:
    found = {file.path: file.data.decode() for file in csv_backend.write(skiff, "")}

    assert list(found) == TABLES
    assert len(list(csv.reader(io.StringIO(found["trims.csv"])))) == 1 + 5 * 2
    rows = {row["name"]: row for row in csv.DictReader(io.StringIO(found["points-of-measure.csv"]))}
    assert rows["bust"]["plus"] == "12.7"
    assert float(rows["bust"]["size_12"]) == pytest.approx(4 * 244 - 16, abs=30)


def test_a_formula_in_a_spec_does_not_reach_a_spreadsheet() -> None:
    spec = SPEC.replace('"cotton leno, open weave"', '"=HYPERLINK(1)"')
    (bill, *_) = csv_backend.write(document(spec), "")

    assert "'=HYPERLINK(1)" in bill.data.decode()
