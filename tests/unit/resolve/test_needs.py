"""A chart for one person, and the one answer about all that a block needs and a chart has not."""

from __future__ import annotations

from pathlib import Path

import pytest

from specc.library.measurements import body_measurements
from specc.resolve.needs import needs
from specc.syntax import tree
from tests.drafting import drafted, named
from tests.unit.syntax.reading import read
from tests.worlds import garment_of, resolved, told

LIBRARY = Path(__file__).parent.parent.parent.parent / "specc/library"
REST = 'garment g "G" { style "G" }\nuse chart me\ncloth lawn { fibre 100% cotton; width 150 cm }\n'
SKIRT = "measurement hip = 99 cm; measurement waist-to-hip = 8 in"


def one_person(measurements: str, block: str = "pull-on-skirt", sizes: str = "me") -> str:
    return f"{REST}use block {block}\nchart me {{\n  sizes {sizes}\n  {measurements}\n}}\n"


def test_one_person_is_a_chart_of_one_size_with_a_number_a_line() -> None:
    garment = garment_of(one_person(SKIRT))

    assert garment.chart is not None
    assert garment.chart.sizes == garment.header.sizes == ("me",)
    assert garment.header.sample == "me"
    pieces = drafted(garment, "me")
    assert pieces.measurements["hip"] == pytest.approx(990.0)
    assert pieces.measurements["waist-to-hip"] == pytest.approx(203.2)
    assert set(named(pieces)) == {"back", "front"}


def test_one_number_holds_for_every_size() -> None:
    garment = garment_of(
        one_person("measurement hip = 96, 104 cm; measurement waist-to-hip = 20 cm", sizes="S, L")
    )

    assert [drafted(garment, size).measurements["waist-to-hip"] for size in ("S", "L")] == [200.0, 200.0]


@pytest.mark.parametrize(
    ("measurement", "answer"),
    [
        ("measurement hip = 99", ("SPC204", "99")),
        ("measurement hip = 99%", ("SPC204", "99%")),
        ("measurement hip = 0 cm", ("SPC211", "0 cm")),
        ("measurement hip = 99 m", ("SPC211", "99 m")),
    ],
)
def test_what_no_body_measures_is_told_at_its_place(measurement: str, answer: tuple[str, str]) -> None:
    assert told(one_person(f"{measurement}; measurement waist-to-hip = 20 cm")) == [answer]


def test_a_forgotten_unit_is_cured() -> None:
    _, said = resolved(one_person("measurement hip = 99; measurement waist-to-hip = 20 cm"))

    assert said[0].message == "`hip` must be a length or an angle, not a number"
    assert said[0].helps == ("write a unit: `99 in`, `99 cm` or `99 mm`",)


def test_one_answer_lists_all_that_is_missing_with_how_to_take_it() -> None:
    _, said = resolved(one_person("measurement bust = 92 cm", block="kimono-top"))
    (answer,) = said

    assert answer.code.id == "SPC313"
    listed = [note.partition("`:")[0].strip("`") for note in answer.notes]
    assert listed == [
        "hip",
        "back-waist-length",
        "scye-depth",
        "neck-base-girth",
        "waist-to-hip",
        "shoulder-length",
    ]
    assert answer.notes[0] == "`hip`: hip girth; round the body, level, over the fullest part of the seat"
    assert "`measurement hip = … cm`" in answer.helps[0]


def test_a_name_that_stands_only_behind_another_missing_one_is_listed_too() -> None:
    """`find` looks up its upper bound only when it has the lower one."""
    block = "block b { find w between hip / 8 and bust / 2, so that w = 20 cm\npiece p { cut 1 } }\n"
    _, said = resolved(one_person("measurement waist = 70 cm", block="b") + block)
    (answer,) = (one for one in said if one.code.id == "SPC313")

    assert [note.partition("`:")[0] for note in answer.notes] == ["`hip", "`bust"]


def test_a_slip_in_a_block_of_ones_own_stays_a_slip() -> None:
    block = "block b { let w = hop / 4\npiece p { cut 1 } }\n"
    _, said = resolved(one_person("measurement hip = 99 cm", block="b") + block)

    assert ("SPC201", "hop") in [(one.code.id, one.span.text if one.span else "") for one in said]
    assert "SPC313" not in [one.code.id for one in said]


def blocks() -> tuple[tree.Block, ...]:
    found = []
    for path in sorted(LIBRARY.glob("*.garment")):
        parsed, faults = read(path.read_text(encoding="utf-8"))
        assert faults == ()
        found += [each for each in parsed.declarations if isinstance(each, tree.Block)]
    return tuple(found)


@pytest.mark.parametrize("block", blocks(), ids=lambda block: block.name.text)
def test_it_is_told_how_to_take_whatever_a_block_of_the_library_needs(block: tree.Block) -> None:
    assert set(needs(block)) <= set(body_measurements())


def test_how_to_take_a_measurement_is_said_in_a_few_words() -> None:
    for name, row in body_measurements().items():
        assert name == row.name
        assert 0 < len(row.title) <= 60
        assert 10 < len(row.how) <= 100
        assert not row.how.endswith(".")
