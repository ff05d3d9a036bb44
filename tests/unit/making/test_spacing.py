"""Fastenings spaced along a length, with places that a person can reckon."""

from __future__ import annotations

import pytest

from specc.making.spacing import Spread, spread


def spaced(
    length: float,
    count: int | None = None,
    every: float | None = None,
    ends: tuple[float, float | None] | None = None,
    at: float | None = None,
) -> tuple[float, ...] | str:
    first, last = ends or (None, None)
    return spread(Spread(length, count, every, first, last, at))


def test_five_from_first_to_last_lie_evenly() -> None:
    assert spaced(500.0, 5, ends=(10.0, 410.0)) == (10.0, 110.0, 210.0, 310.0, 410.0)


def test_from_the_other_end_the_first_lies_there() -> None:
    assert spaced(500.0, 3, ends=(490.0, 90.0)) == (490.0, 290.0, 90.0)


def test_without_ends_there_is_half_a_space_on_either_side() -> None:
    assert spaced(400.0, 4) == (50.0, 150.0, 250.0, 350.0)
    assert spaced(38.0, 1) == (19.0,)


def test_every_so_far_from_the_first_and_none_beyond_the_last() -> None:
    assert spaced(500.0, every=80.0, ends=(20.0, 460.0)) == (20.0, 100.0, 180.0, 260.0, 340.0, 420.0)
    assert spaced(500.0, every=110.0, ends=(480.0, 40.0)) == (480.0, 370.0, 260.0, 150.0, 40.0)


def test_every_so_far_without_ends_lies_in_the_middle() -> None:
    """Five spaces of 90 fit 500; the outermost two lie 70 from the ends."""
    assert spaced(500.0, every=90.0) == (70.0, 160.0, 250.0, 340.0, 430.0)


def test_one_lies_where_it_must_and_both_parts_are_even() -> None:
    """Of 400 the line lies at 180: two spaces of 90 above it and two of 110 below."""
    assert spaced(400.0, 5, ends=(0.0, 400.0), at=180.0) == (0.0, 90.0, 180.0, 290.0, 400.0)
    # One of 170 above and three of 210 / 3 below are less alike than two of 85 and two of 105.
    assert spaced(380.0, 5, ends=(0.0, 380.0), at=170.0) == (0.0, 85.0, 170.0, 275.0, 380.0)
    assert spaced(500.0, every=80.0, ends=(20.0, 460.0), at=150.0) == (70.0, 150.0, 230.0, 310.0, 390.0)
    assert spaced(500.0, 3, ends=(10.0, 410.0), at=10.0) == (10.0, 210.0, 410.0)
    assert spaced(500.0, 1, ends=(10.0, None), at=300.0) == (300.0,)


@pytest.mark.parametrize(
    ("found", "why"),
    [
        (spaced(500.0, 3, ends=(10.0, 510.0)), "beyond the end"),
        (spaced(500.0, 3, ends=(-10.0, 410.0)), "beyond the end"),
        (spaced(500.0, 3, ends=(100.0, 100.0)), "on each other"),
        (spaced(500.0, 3, ends=(100.0, 300.0), at=400.0), "does not lie between"),
        (spaced(500.0, 2, ends=(100.0, 300.0), at=200.0), "takes three"),
        (spaced(5000.0, every=1.0), "more than 500"),
    ],
)
def test_what_cannot_be_spaced(found: tuple[float, ...] | str, why: str) -> None:
    assert isinstance(found, str)
    assert why in found
