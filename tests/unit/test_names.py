"""Which name was meant by a misspelt one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.names import did_you_mean, nearest

PARTS = ("front", "back", "sleeve", "bust-dart", "waist-dart", "shoulder-dart", "hem", "neck", "side")
NAMES = st.text(alphabet="abc-", min_size=1, max_size=8)


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("bakc", "back"),  # two neighbours swapped
        ("frnt", "front"),  # one left out
        ("sleeeve", "sleeve"),  # one doubled
        ("bust_dart", "bust-dart"),  # another joint
        ("Hem", "hem"),  # another case
        ("shouldr-dart", "shoulder-dart"),
    ],
)
def test_a_slip_of_the_pen_is_understood(written: str, meant: str) -> None:
    assert nearest(written, PARTS)[0] == meant


@pytest.mark.parametrize("written", ["pocket", "collar", "x", "", "waistband-facing-lining"])
def test_a_name_that_is_like_none_is_not_guessed_at(written: str) -> None:
    assert nearest(written, PARTS) == ()
    assert did_you_mean(written, PARTS) is None


def test_likelier_names_come_first_and_equal_ones_in_alphabetical_order() -> None:
    assert nearest("side-b", ("side-d", "side-bc", "side-a", "sode-c")) == ("side-a", "side-bc", "side-d")


def test_the_question_lists_what_may_be_meant() -> None:
    assert did_you_mean("bakc", PARTS) == "did you mean `back`?"
    assert did_you_mean("dart-x", ("dart-a", "dart-b")) == "did you mean `dart-a` or `dart-b`?"
    assert (
        did_you_mean("dart-x", ("dart-a", "dart-b", "dart-c"))
        == "did you mean `dart-a`, `dart-b` or `dart-c`?"
    )


def test_a_very_long_name_costs_nothing() -> None:
    assert nearest("a" * 1_000_000, ("a" * 999_999,)) == ()


@given(NAMES, st.lists(NAMES, max_size=8))
def test_the_answer_does_not_depend_on_the_order_of_names(name: str, known: list[str]) -> None:
    assert nearest(name, known) == nearest(name, reversed(known))


@given(NAMES, st.lists(NAMES, max_size=8), st.integers(1, 3))
def test_only_other_known_names_are_offered(name: str, known: list[str], most: int) -> None:
    offered = nearest(name, known, most=most)

    assert len(offered) <= most
    assert set(offered) <= set(known) - {name}
