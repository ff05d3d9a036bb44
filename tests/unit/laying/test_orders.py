"""Dividing an order into lays: exactly the order, none higher than allowed, none too long for the table."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.laying.orders import spreads
from specc.laying.plan import Ratio
from specc.model.spreading import CUTTINGS, GARMENT, SET, STACKED

if TYPE_CHECKING:
    from specc.laying.orders import Spread

ORDER = (Ratio("8", 4), Ratio("10", 8), Ratio("12", 10), Ratio("14", 6), Ratio("16", 2))


def _all_fit(_: tuple[Ratio, ...]) -> bool:
    return True


def given_out(found: tuple[Spread, ...]) -> Counter[str]:
    counts: Counter[str] = Counter()
    for spread in found:
        for each in spread.ratio:
            counts[each.size] += each.count * spread.plies * spread.times
    return counts


def test_one_garment_at_a_time_is_one_lay_a_size() -> None:
    found = spreads(GARMENT, ORDER, _all_fit, plies=20)
    assert [(spread.ratio[0].size, spread.times) for spread in found] == [
        ("8", 4),
        ("10", 8),
        ("12", 10),
        ("14", 6),
        ("16", 2),
    ]
    assert {spread.plies for spread in found} == {1}


def test_one_of_each_size_goes_on_with_the_sizes_that_are_left() -> None:
    found = spreads(SET, ORDER, _all_fit, plies=20)
    assert [([each.size for each in spread.ratio], spread.times) for spread in found] == [
        (["8", "10", "12", "14", "16"], 2),
        (["8", "10", "12", "14"], 2),
        (["10", "12", "14"], 2),
        (["10", "12"], 2),
        (["12"], 2),
    ]


def test_stacked_plies_take_the_ratio_that_gives_most() -> None:
    first, *_ = spreads(STACKED, ORDER, _all_fit, plies=20)
    assert (first.plies, first.times) == (2, 1)
    assert [(each.size, each.count) for each in first.ratio] == [
        ("8", 2),
        ("10", 4),
        ("12", 5),
        ("14", 3),
        ("16", 1),
    ]


@given(
    st.lists(st.integers(0, 40), min_size=1, max_size=6).filter(any),
    st.sampled_from(CUTTINGS),
    st.integers(1, 12),
    st.integers(1, 6),
)
def test_every_way_gives_exactly_the_order(counts: list[int], cutting: str, plies: int, most: int) -> None:
    order = tuple(Ratio(str(index), count) for index, count in enumerate(counts))

    def fits(ratio: tuple[Ratio, ...]) -> bool:
        return sum(each.count for each in ratio) <= most

    found = spreads(cutting, order, fits, plies=plies)
    assert given_out(found) == Counter({each.size: each.count for each in order if each.count})
    assert all(spread.plies <= plies for spread in found)
    assert all(fits(spread.ratio) for spread in found)
    assert all(each.count > 0 for spread in found for each in spread.ratio)


def test_a_way_that_is_none_is_a_fault_of_the_program() -> None:
    with pytest.raises(KeyError):
        spreads("by eye", ORDER, _all_fit, plies=1)


@pytest.mark.parametrize("cutting", CUTTINGS)
@pytest.mark.parametrize("plies", [1, 20])
def test_a_million_of_each_size_is_divided_at_once(cutting: str, plies: int) -> None:
    """Lays of a dozen garments at most: whatever is divided one by one would take hours."""
    order = tuple(Ratio(size, 1_000_000 - index) for index, size in enumerate("abcdef"))

    def fits(ratio: tuple[Ratio, ...]) -> bool:
        return sum(each.count for each in ratio) <= 12

    found = spreads(cutting, order, fits, plies=plies)
    assert given_out(found) == Counter({each.size: each.count for each in order})
    assert all(fits(spread.ratio) for spread in found)
    assert len(found) < 100
