"""What spacing must keep, whatever the lengths."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.making.spacing import Spread, spread
from tests.strategies import lengths


@given(lengths(200, 900), st.integers(2, 20), lengths(0, 50), lengths(0, 100), st.booleans())
def test_as_many_as_asked_from_first_to_last(
    length: float,
    count: int,
    near: float,
    far: float,
    backward: bool,  # noqa: FBT001
) -> None:
    ends = (length - near, far) if backward else (near, length - far)
    places = spread(Spread(length, count, None, *ends, None))
    assert isinstance(places, tuple)
    assert len(places) == count
    assert [places[0], places[-1]] == pytest.approx(list(ends))
    gaps = [abs(b - a) for a, b in pairwise(places)]
    assert gaps == [pytest.approx(gaps[0])] * len(gaps)


@given(lengths(200, 900), st.integers(3, 20), st.floats(0.05, 0.95))
def test_one_lies_on_the_line_and_no_better_choice_is_left(length: float, count: int, share: float) -> None:
    at = share * length
    places = spread(Spread(length, count, None, 0.0, length, at))
    assert isinstance(places, tuple)
    assert len(places) == count
    assert list(places) == sorted(places)
    met = min(range(count), key=lambda index: abs(places[index] - at))
    assert places[met] == pytest.approx(at)
    if not 0 < met < count - 1:
        return

    def unlike(index: int) -> float:
        return abs(at / index - (length - at) / (count - 1 - index))

    assert all(unlike(met) <= unlike(index) + 1e-9 for index in range(1, count - 1))


@given(lengths(100, 900), lengths(20, 120), lengths(0, 40), lengths(0, 40))
def test_every_so_far_never_passes_the_last(length: float, every: float, near: float, far: float) -> None:
    assume(near + far < length)
    places = spread(Spread(length, None, every, near, length - far, None))
    assert isinstance(places, tuple)
    assert places[0] == near
    assert places[-1] <= length - far + 0.05
    assert places[-1] + every > length - far - 0.05
    assert all(b - a == pytest.approx(every) for a, b in pairwise(places))
