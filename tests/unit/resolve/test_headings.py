"""The garment's own sheet: sizes, sample, order, revisions."""

from __future__ import annotations

import pytest

from specc.model.garment import Ordered
from tests.worlds import garment_of, resolved, told

REST = """
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
"""


def spec(body: str, name: str = "dress") -> str:
    return f"garment {name} {{\n{body}\n}}\n{REST}"


def test_what_is_not_said_has_its_usual_value() -> None:
    header = garment_of(spec("")).header

    assert (header.name, header.title, header.style) == ("dress", "dress", "dress")
    assert header.sizes == ("6", "8", "10", "12", "14", "16", "18", "20")
    assert header.sample == "14"
    assert (header.wearer, header.puts_on, header.unit, header.paper) == ("adult", None, "cm", "A4")
    assert (header.order, header.revisions, header.maker, header.season) == ((), (), None, None)
    assert header.status is None


@pytest.mark.parametrize("status", ["draft", "for sampling", "approved"])
def test_a_garment_says_how_far_it_has_come(status: str) -> None:
    assert garment_of(spec(f"status {status}")).header.status == status


def test_a_garment_may_do_without_a_name() -> None:
    assert garment_of(spec('style "ES-07"', '"Estuary shell"')).header.title == "Estuary shell"


def test_sizes_stand_in_the_order_of_the_chart() -> None:
    header = garment_of(spec("sizes 12, 8, 10\norder 12: 1, 8: 2")).header

    assert header.sizes == ("8", "10", "12")
    assert header.sample == "10"
    assert header.order == (Ordered("8", 2), Ordered("12", 1))


def test_an_empty_title_is_none() -> None:
    assert garment_of(spec("", 'dress "  "')).header.title == "dress"


@pytest.mark.parametrize(
    ("body", "answers"),
    [
        ("sizes 8, 9", [("SPC201", "9")]),
        ("status finished", [("SPC210", "finished")]),
        ("sizes 8 in, 10", [("SPC201", "8 in")]),
        ("sizes 8 10", [("SPC207", "8 10")]),
        ("sizes 8 to 12", [("SPC207", "8 to 12")]),
        ("sizes 8, 8", [("SPC202", "8")]),
        ("sizes 8, 10\nsample 12", [("SPC201", "12")]),
        ("sample 8, 10", [("SPC207", "8, 10")]),
        ("sizes 8\norder 10: 3", [("SPC201", "10")]),
        ("order 8: 3, 8: 4", [("SPC202", "8")]),
        ("order 8: 1.5", [("SPC211", "1.5")]),
        ("order 8: 1000001", [("SPC211", "1000001")]),
        ("order 8: 0", [("SPC211", "8: 0")]),
        ("order 8, 10: 3", [("SPC207", "8")]),
        ("order 8: 3 in", [("SPC207", "8: 3 in")]),
        ("order 8: 3 10: 4", [("SPC207", "8: 3 10: 4")]),
        ('style ""', [("SPC207", '""')]),
        ('style "A", "B"', [("SPC207", '"A", "B"')]),
        ("units inch", [("SPC210", "inch")]),
        ("units yd", [("SPC210", "yd")]),
        ("paper A5", [("SPC210", "A5")]),
        ("worn-by dog", [("SPC210", "dog")]),
        ("puts-on head first", [("SPC210", "head first")]),
        ('revision B "x"', [("SPC207", 'B "x"')]),
        ('revision B 2026-03-02 ""', [("SPC207", '""')]),
        ('revision B 2026-03-02 "x"\nrevision B 2026-03-03 "y"', [("SPC202", "B")]),
        ('revision B 2026-03-02 "x"\nrevision C 2026-03-01 "y"', [("SPC211", "2026-03-01")]),
        ('revision B 2026-02-30 "x"', [("SPC110", "2026-02-30")]),
    ],
)
def test_a_slip_is_told_at_its_own_place(body: str, answers: list[tuple[str, str]]) -> None:
    assert told(spec(body)) == answers


def test_words_may_be_written_apart() -> None:
    header = garment_of(spec("puts-on over the head")).header

    assert header.puts_on == "over the head"
    assert garment_of(spec("puts-on over-the-head")).header.puts_on == "over the head"


def test_sizes_without_commas_are_mended() -> None:
    _, said = resolved(spec("sizes 8 10"))

    (answer,) = said
    assert answer.fix is not None
    assert answer.fix.edits[0].replacement == "8, 10"


def test_revisions_are_kept_in_order() -> None:
    header = garment_of(spec('revision 1 2026-02-11 "first"\nrevision 2 2026-02-11 "second"')).header

    assert [revision.name for revision in header.revisions] == ["1", "2"]


def test_a_chart_has_no_more_sizes_than_a_sheet_can_hold() -> None:
    sizes = ", ".join(f"s{number}" for number in range(41))
    chart = f"chart long {{ sizes {sizes}\nmeasurement bust = 90 cm }}\n"
    text = spec("").replace("use chart misses", "use chart long") + chart

    assert ("SPC211", sizes) in told(text)
