"""A garment held against a chart of limits: the most of each size, what is left out, what is forgotten."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.drafting import Evaluator, FinishedPieces
from specc.model.expression import Constant
from tests.worlds import garment_of, told

if TYPE_CHECKING:
    from specc.model.garment import Expect

SPEC = """\
garment g "G" { style "G"; sizes 4, 6 }
use chart children
use block rectangle
cloth c { fibre 100% cotton }
chart most "the most" {
  source "a law"
  sizes 2, 6, 4
  measurement wide "width of it" = 10, 14, 12 cm
  measurement deep "depth of it" from "a table" = 2 * wide - half of wide
  measurement slope = 30 deg
}
"""


def demands(lines: str) -> tuple[Expect, ...]:
    return garment_of(f"{SPEC}expect within most {{ {lines} }}\n").expects


def most(expect: Expect) -> list[str]:
    return [str(one.value) for one in expect.right if isinstance(one, Constant)]


def test_each_limit_is_a_demand_with_the_most_of_each_size_made_in_their_order() -> None:
    (wide,) = demands("wide = length of rectangle.top; without deep, slope")

    assert (wide.compare, wide.by_size) == ("<=", True)
    assert most(wide) == ["12 cm", "14 cm"]
    assert wide.text == "wide = length of rectangle.top, within most"
    assert wide.because == "width of it; a law"


def test_a_derived_limit_is_reckoned_in_its_size() -> None:
    (deep,) = demands("deep = 1 cm; without wide, slope")
    nothing: dict[str, float] = {}
    evaluator = Evaluator(nothing.__getitem__, FinishedPieces(()))

    assert [evaluator.value(one) for one in deep.right] == pytest.approx([180.0, 210.0])
    assert deep.because == "depth of it; a table"


def test_an_angle_may_be_limited() -> None:
    (slope,) = demands("slope = arc-tangent of 0.5; without deep, wide")

    assert most(slope) == ["30 deg", "30 deg"]


@pytest.mark.parametrize(
    ("lines", "answers"),
    [
        ("wide = 1 cm; without slope", [("SPC325", "most")]),
        ("without wide, deep, slope, wide", [("SPC202", "wide")]),
        ("without wide, deep, slope; deep = 1 cm", [("SPC202", "deep")]),
        ("wide = 1 cm; without deep, slope, high", [("SPC201", "high")]),
        ("wide = 1 deg; without deep, slope", [("SPC204", "1 deg")]),
        ("wide = length of rectangle.roof; without deep, slope", [("SPC201", "roof")]),
    ],
)
def test_a_slip_is_told_once_at_its_own_place(lines: str, answers: list[tuple[str, str]]) -> None:
    assert told(f"{SPEC}expect within most {{ {lines} }}\n") == answers


def test_the_chart_must_be_there_and_have_the_sizes() -> None:
    assert told(f"{SPEC}expect within mots {{ wide = 1 cm }}\n") == [("SPC201", "mots")]
    other = SPEC.replace("sizes 4, 6", "sizes 4, 5, 6, 8")
    assert told(f"{other}expect within most {{ wide = 1 cm; without deep, slope }}\n") == [("SPC326", "most")]


def test_a_statement_that_cannot_be_read_may_have_said_what_is_missing() -> None:
    answers = told(f"{SPEC}expect within most {{\n wide = = 1 cm\n without slope\n}}\n")

    assert [code for code, _ in answers] == ["SPC101"]
