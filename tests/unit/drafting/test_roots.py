from __future__ import annotations

from math import cos

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.drafting.roots import TOLERANCE, root

places = st.floats(-500, 500)


@given(at=places, below=st.floats(0.01, 300), above=st.floats(0.01, 300), bend=st.floats(0, 5))
def test_a_sign_change_is_found_however_the_function_bends(
    at: float, below: float, above: float, bend: float
) -> None:
    def function(x: float) -> float:
        return (x - at) * (1.0 + bend * (x - at) ** 2)

    found = root(function, at - below, at + above)

    assert isinstance(found, float)
    assert found == pytest.approx(at, abs=2 * TOLERANCE)


@given(at=st.floats(-1, 1))
def test_a_step_is_found_although_it_has_no_slope(at: float) -> None:
    found = root(lambda x: -1.0 if x < at else 1.0, -3.0, 2.0)

    assert isinstance(found, float)
    assert found == pytest.approx(at, abs=2 * TOLERANCE)


def test_a_bound_that_is_the_answer_is_the_answer() -> None:
    assert root(lambda x: x - 2.0, 2.0, 5.0) == 2.0
    assert root(lambda x: x - 5.0, 2.0, 5.0) == 5.0


def test_bounds_may_come_in_either_order() -> None:
    assert root(lambda x: x * x - 2.0, 2.0, 0.0) == pytest.approx(2.0**0.5, abs=TOLERANCE)


def test_bounds_may_be_further_apart_than_floats_are_fine() -> None:
    found = root(lambda x: x - 123456789012.3, -1e15, 1e16)

    assert found == pytest.approx(123456789012.3, rel=1e-15)


def test_without_a_sign_change_the_values_at_the_bounds_are_told() -> None:
    assert root(lambda x: x * x + 1.0, -1.0, 3.0) == (2.0, 10.0)


def test_few_values_are_tried_where_the_function_is_smooth() -> None:
    tried: list[float] = []

    def function(x: float) -> float:
        tried.append(x)
        return cos(x) - x

    assert root(function, 0.0, 1.0) == pytest.approx(0.7390851332151607, abs=TOLERANCE)  # known to all digits
    assert len(tried) <= 12
