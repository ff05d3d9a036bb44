"""Darts of the library's bodice, moved, shared and joined in every size of a chart."""

from __future__ import annotations

from math import sin
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specc.alteration import swing
from specc.alteration.refusal import Refusal
from specc.model.alteration import Form, Swing, SwingTarget
from specc.pattern.measure import dart_angle, dart_width, stitched_length
from specc.pattern.outline import area
from tests.altering import ORIGIN, altered, at_share, evaluate, part, share
from tests.drafting import SIZES
from tests.sources import Known, against
from tests.unit.library.blocks import pieces

if TYPE_CHECKING:
    from specc.model.alteration import Place
    from specc.pattern.piece import Dart, Piece

# Bust and waist dart of the front have one pivot, the bust point, so that one may go into the other.
BUST, WAIST = "bust-dart", "waist-dart"
EDGES = ("neck", "shoulder", "armhole")


def front(size: str) -> Piece:
    return pieces("bodice", size)["front"]


def swung(piece: Piece, dart: str, into: str, place: float | None = None, how_much: float = 1.0) -> Piece:
    there: Place | None = None if place is None else at_share(place)
    target = SwingTarget(part(into), there, Form.DART, share(how_much))
    result = swing.apply((piece,), Swing(part(dart), (target,), ORIGIN), evaluate)
    if isinstance(result, Refusal):
        assume(result.code_name != "slash-at-end")  # the other dart may lie there
    return altered(result)


def named(piece: Piece, name: str) -> Dart:
    return next(dart for dart in piece.darts if dart.name == name)


def leg(dart: Dart) -> float:
    return dart.first.distance(dart.pivot)


def sewn(piece: Piece) -> dict[str, float]:
    return {edge.name: stitched_length(edge) for edge in piece.edges}


@against(
    Known.DERIVED, "at the radius r a dart takes in the chord 2 r sin(angle / 2), less than the arc r angle"
)
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("edge", EDGES)
@pytest.mark.parametrize("place", [0.2, 0.5, 0.8])
def test_a_dart_takes_in_the_chord_at_the_radius_where_it_ends(size: str, edge: str, place: float) -> None:
    angle = dart_angle(named(front(size), BUST))
    moved = named(swung(front(size), BUST, edge, place), BUST)

    assert moved.edge == edge
    assert dart_width(moved) == pytest.approx(2.0 * leg(moved) * sin(angle / 2.0), abs=1e-6)
    assert dart_width(moved) < leg(moved) * angle


@against(Known.DERIVED, "angles add, widths do not: 2 leg sin((a + b) / 2)")
@pytest.mark.parametrize("size", SIZES)
def test_two_darts_made_one_add_their_angles(size: str) -> None:
    before = front(size)
    (both,) = swung(before, BUST, WAIST).darts
    first, second = named(before, BUST), named(before, WAIST)
    angle = dart_angle(first) + dart_angle(second)

    assert dart_angle(both) == pytest.approx(angle, abs=1e-9)
    assert leg(both) == pytest.approx(leg(second), abs=1e-6)
    assert dart_width(both) == pytest.approx(2.0 * leg(second) * sin(angle / 2.0), abs=1e-6)
    assert abs(dart_width(both) - dart_width(first) - dart_width(second)) > 1.0


@against(Known.DERIVED, "a turn about the pivot: angles at it, sewn lengths and the area without wedges stay")
@settings(max_examples=30)
@given(
    st.sampled_from(SIZES),
    st.lists(
        st.tuples(st.sampled_from([BUST, WAIST]), st.sampled_from(EDGES), st.floats(0.1, 0.9)),
        min_size=1,
        max_size=4,
    ),
)
def test_swings_keep_angle_lengths_and_area(size: str, steps: list[tuple[str, str, float]]) -> None:
    before = after = front(size)
    for dart, edge, place in steps:
        assume(named(after, dart).edge != edge)
        after = swung(after, dart, edge, place)

    for name in (BUST, WAIST):
        assert dart_angle(named(after, name)) == pytest.approx(dart_angle(named(before, name)), abs=1e-9)
    assert sewn(after) == pytest.approx(sewn(before), abs=1e-6)
    assert area(after) == pytest.approx(area(before), abs=1e-4)


@against(Known.DERIVED, "shares of an angle add up to it")
@given(st.sampled_from(SIZES), st.floats(0.1, 0.9), st.sampled_from(EDGES), st.floats(0.2, 0.8))
def test_a_dart_shared_out_keeps_its_angle_in_all(size: str, some: float, edge: str, place: float) -> None:
    before = front(size)
    angle = dart_angle(named(before, BUST))
    after = swung(before, BUST, edge, place, some)
    found = sorted(dart_angle(dart) for dart in after.darts if dart.name != WAIST)

    assert found == pytest.approx(sorted((some * angle, (1.0 - some) * angle)), abs=1e-9)
    assert sewn(after) == pytest.approx(sewn(before), abs=1e-6)
