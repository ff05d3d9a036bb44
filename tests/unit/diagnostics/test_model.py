"""Diagnostics as data: filled messages, labels, order, declaration."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.diagnostics import (
    Applicability,
    Collector,
    Diagnostic,
    Edit,
    Severity,
    declare,
    explained,
    explanation,
)
from specc.source import SourceFile

FILE = SourceFile("shirt.garment", "seam side: front.side + bakc.side\n")
UNKNOWN = declare("SPC201", "unknown-name", Severity.ERROR, "there is no piece `{name}`")
LOOSE = declare("SPC599", "seam-is-loose", Severity.WARNING, "seam `{seam}` is loose")


def test_the_message_is_filled_from_facts_and_the_facts_are_kept() -> None:
    diagnostic = UNKNOWN.at(FILE.span(24, 28), "no such piece", name="bakc", size=12)

    assert diagnostic.message == "there is no piece `bakc`"
    assert diagnostic.facts == (("name", "bakc"), ("size", 12))
    assert diagnostic.span == FILE.span(24, 28)
    assert diagnostic.severity is Severity.ERROR


def test_text_in_a_fact_is_never_read_as_a_template() -> None:
    assert UNKNOWN.at(None, name="{name.__class__}").message == "there is no piece `{name.__class__}`"


def test_a_fact_that_the_message_needs_cannot_be_left_out() -> None:
    with pytest.raises(KeyError, match="name"):
        UNKNOWN.at(None)


def test_additions_give_new_diagnostics_and_leave_the_old_one_alone() -> None:
    first = UNKNOWN.at(FILE.span(24, 28), name="bakc")
    edit = Edit(FILE.span(24, 28), "back")
    second = (
        first.see(FILE.span(0, 4), "in this seam").note("a fact").help("a cure").with_fix("write it", edit)
    )

    assert (first.related, first.notes, first.helps, first.fix) == ((), (), (), None)
    assert [label.text for label in second.related] == ["in this seam"]
    assert (second.notes, second.helps) == (("a fact",), ("a cure",))
    assert second.fix is not None
    assert (second.fix.edits, second.fix.applicability) == ((edit,), Applicability.UNSAFE)


def test_nothing_is_added_where_there_is_nothing_to_say() -> None:
    diagnostic = UNKNOWN.at(None, name="bakc")

    assert diagnostic.help(None) == diagnostic
    assert diagnostic.see(None, "nowhere") == diagnostic


def test_a_diagnostic_can_be_put_in_a_set() -> None:
    assert len({UNKNOWN.at(FILE.span(0, 1), name="a"), UNKNOWN.at(FILE.span(0, 1), name="a")}) == 1


def test_the_order_is_file_place_worst_first_id_message() -> None:
    other = SourceFile("belt.garment", "belt")
    ordered = [
        UNKNOWN.at(None, name="nowhere"),
        LOOSE.at(other.span(2, 3), seam="a"),
        UNKNOWN.at(FILE.span(0, 4), name="a"),
        UNKNOWN.at(FILE.span(0, 4), name="b"),
        LOOSE.at(FILE.span(0, 4), seam="a"),
        UNKNOWN.at(FILE.span(5, 6), name="a"),
    ]
    collector = Collector()
    collector.add(*ordered[3:], *reversed(ordered[:3]))

    assert list(collector.diagnostics) == ordered


@given(st.permutations(range(6)))
def test_the_order_does_not_depend_on_which_check_ran_first(order: list[int]) -> None:
    said = [LOOSE.at(FILE.span(place % 3, 4), seam=str(place)) for place in range(6)]
    straight, shuffled = Collector(), Collector()
    straight.add(*said)
    shuffled.add(*(said[place] for place in order))

    assert straight.diagnostics == shuffled.diagnostics


def test_the_collector_hands_on_the_value_and_knows_whether_anything_failed() -> None:
    collector = Collector()

    assert collector.keep(("tree", [LOOSE.at(None, seam="side")])) == "tree"
    before = collector.failed
    assert collector.keep((None, [UNKNOWN.at(None, name="bakc")])) is None
    assert (before, collector.failed) == (False, True)
    assert [diagnostic.code for diagnostic in collector.diagnostics] == [UNKNOWN, LOOSE]


@pytest.mark.parametrize(
    ("code", "name"),
    [
        ("SPC20", "a-name"),
        ("SPC701", "a-name"),
        ("E201", "a-name"),
        ("SPC201", "A-name"),
        ("SPC201", "a_name"),
    ],
)
def test_a_malformed_code_is_refused(code: str, name: str) -> None:
    with pytest.raises(ValueError, match="a code is SPC"):
        declare(code, name, Severity.NOTE, "")


@pytest.mark.parametrize("code", ["SPC299", "../../model", "SPC201.md", "", "spc201"])
def test_there_is_no_page_for_what_is_no_code(code: str) -> None:
    assert explanation(code) is None


def test_every_page_listed_can_be_read() -> None:
    assert all(explanation(code) for code in explained())


def test_severities_compare_and_are_shown_in_lower_case() -> None:
    assert Severity.NOTE < Severity.WARNING < Severity.ERROR
    assert f"{Severity.WARNING}" == "warning"
    assert isinstance(UNKNOWN.at(None, name="a"), Diagnostic)
