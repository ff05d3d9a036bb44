"""Laws of finishes: what they take and how they lie."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specc.pipeline import quantities
from tests.made import rounds, top

SHARES = st.integers(1, 37)
PLACES = st.tuples(st.integers(0, 100), st.integers(0, 100)).filter(lambda ends: abs(ends[0] - ends[1]) > 1)
NECK = """finish neck along {edges} by elastic-bound {{
  binding edging
  hold {hold}% along front.neck from {start}% to {end}%
}}
"""


def neck(hold: int, ends: tuple[int, int], edges: str = "front.neck, back.neck") -> str:
    return NECK.format(edges=edges, hold=hold, start=ends[0], end=ends[1])


def cut_length(text: str) -> float:
    found = quantities(top(text))
    assert found is not None
    (cut,) = found.sizes[0].trims
    return cut.cut_length


@settings(max_examples=15)
@given(SHARES, PLACES)
def test_zones_cover_the_run_from_end_to_end(hold: int, ends: tuple[int, int]) -> None:
    (laid,) = rounds(top(neck(hold, ends)), "neck")

    assert sum(zone.end - zone.start for zone in laid.zones) == pytest.approx(laid.length)
    assert all(zone.end > zone.start for zone in laid.zones)


@settings(max_examples=15)
@given(SHARES, PLACES)
def test_a_trim_is_shorter_the_more_it_is_held_in(hold: int, ends: tuple[int, int]) -> None:
    assert cut_length(neck(hold + 1, ends)) < cut_length(neck(hold, ends))


@settings(max_examples=10)
@given(SHARES, PLACES)
def test_the_order_of_edges_in_the_text_changes_no_length(hold: int, ends: tuple[int, int]) -> None:
    turned = neck(hold, ends, "back.neck, front.neck")

    assert cut_length(turned) == pytest.approx(cut_length(neck(hold, ends)))
