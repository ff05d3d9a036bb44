"""Pieces of bias from strips that lays leave over, and the rest from cloth."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.laying.bias import CLEAR, from_offcuts
from specc.model.spreading import OFFCUTS

CLOTH = (1100.0, 32.0)
LENGTHS = st.lists(st.floats(100.0, 900.0), min_size=1, max_size=12).map(tuple)
STRIPS = st.lists(st.floats(150.0, 1200.0), max_size=20).map(tuple)


@given(pieces=LENGTHS, strips=STRIPS)
def test_joined_pieces_come_first_from_the_longest_offcuts(
    pieces: tuple[float, ...], strips: tuple[float, ...]
) -> None:
    cut = from_offcuts(pieces, strips, CLOTH, whole=False)
    if cut is None:
        return
    assert cut.way == OFFCUTS
    assert len(cut.joins) == len(pieces)
    assert cut.strips == tuple(sorted(strips, reverse=True))[: len(cut.strips)]
    done = len(pieces) - (len(cut.rest.joins) if cut.rest else 0)
    assert done > 0
    assert sum(pieces[:done]) <= sum(cut.strips) + 1e-6
    for piece, joins in zip(pieces, cut.joins, strict=True):
        assert all(CLEAR - 1e-6 <= join <= piece - CLEAR + 1e-6 for join in joins)


@given(pieces=LENGTHS, strips=STRIPS)
def test_whole_pieces_have_no_join(pieces: tuple[float, ...], strips: tuple[float, ...]) -> None:
    cut = from_offcuts(pieces, strips, CLOTH, whole=True)
    assert cut is None or not any(cut.joins)


@pytest.mark.parametrize("whole", [True, False])
def test_enough_offcuts_leave_nothing_to_be_bought(*, whole: bool) -> None:
    cut = from_offcuts((400.0, 500.0), (520.0, 600.0, 450.0), CLOTH, whole=whole)
    assert cut is not None
    assert (cut.length, cut.rest, cut.strips) == (0.0, None, (600.0, 520.0))


def test_without_offcuts_there_is_no_such_way() -> None:
    assert from_offcuts((400.0,), (), CLOTH, whole=False) is None
    assert from_offcuts((400.0,), (300.0,), CLOTH, whole=True) is None
