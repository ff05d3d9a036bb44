"""What dividing an edge must keep, on fronts of random dimensions, in both directions of the outline."""

from __future__ import annotations

from dataclasses import replace
from math import hypot
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.alteration import divide, extend, sew_as
from specc.alteration.edges import piece_backward
from specc.model.alteration import Form
from specc.model.dividing import Divide
from specc.model.reshaping import Extend, SewAs
from specc.pattern.lookup import corner_named, names_of
from specc.pattern.measure import drawn_length, place_on_edge, stitched_length
from specc.pattern.outline import area, drawn_outline, flat_outline
from tests.altering import ORIGIN, altered, at_length, edge, evaluate, length, part, sewn
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

edges = st.sampled_from(["hem", "side", "armhole", "shoulder", "neck"])


def halves(piece: Piece, name: str, at: float, corner: str | None = None) -> Piece:
    step = Divide((part(name),), at_length(at, corner), ("near", "far"), ORIGIN)
    result = divide.apply((piece,), step, evaluate)
    assume(isinstance(result, tuple))
    return altered(result)


@given(fronts(waist_dart=True), edges, st.floats(0.02, 0.98), st.booleans())
def test_nothing_moves(piece: Piece, name: str, share: float, backward: bool) -> None:  # noqa: FBT001
    piece = piece_backward(piece) if backward else piece
    whole = edge(piece, name)
    at = share * stitched_length(whole)
    two = halves(piece, name, at)
    assert area(two) == pytest.approx(area(piece), rel=1e-9)
    outline = drawn_outline(piece)
    assert all(outline.is_near(place, 1e-4) for place in flat_outline(two))
    assert sewn(two, "near") == pytest.approx(at, abs=1e-6)
    assert sewn(two, "near") + sewn(two, "far") == pytest.approx(stitched_length(whole), abs=1e-6)
    drawn = sum(drawn_length(edge(two, part_)) for part_ in ("near", "far"))
    assert drawn == pytest.approx(drawn_length(whole), abs=1e-6)
    corner = corner_named(two, "near-far")
    assert corner is not None
    assert corner.distance(place_on_edge(whole, at).at) < 1e-6
    assert {dart.name for dart in two.darts} == {dart.name for dart in piece.darts}


@given(fronts(), edges, st.floats(0.02, 0.98))
def test_notches_stay_where_they_are_on_the_cloth(piece: Piece, name: str, share: float) -> None:
    two = halves(piece, name, share * sewn(piece, name))
    before = [place_on_edge(edge(piece, notch.edge), notch.at).at for notch in piece.notches]
    after = [place_on_edge(edge(two, notch.edge), notch.at).at for notch in two.notches]
    for place in before:
        assert any(place.distance(other) < 1e-6 for other in after)
    assert len(two.notches) == len(piece.notches)


@given(fronts(), st.floats(0.02, 0.98))
def test_from_either_corner_the_same_place(piece: Piece, share: float) -> None:
    side = edge(piece, "side")
    whole = stitched_length(side)
    one = halves(piece, "side", share * whole, side.start)
    other = halves(piece, "side", whole - share * whole, side.end)
    assert sewn(one, "near") == pytest.approx(sewn(other, "far"), abs=1e-6)
    first, second = corner_named(one, "near-far"), corner_named(other, "near-far")
    assert first is not None
    assert second is not None
    assert first.distance(second) < 1e-6


@given(fronts(), st.sampled_from([Form.EASE, Form.GATHERS, Form.PLEAT, Form.TUCK]), st.floats(0.05, 0.95))
def test_what_is_drawn_in_is_shared(piece: Piece, form: Form, share: float) -> None:
    laid = altered(sew_as.apply((piece,), SewAs((part("bust-dart"),), form, ORIGIN), evaluate))
    two = halves(replace(laid, notches=()), "side", share * sewn(laid, "side"))

    def drawn_in(*names: str) -> float:
        found = [edge(two if name != "side" else laid, name) for name in names]
        return sum(g.amount for e in found for g in e.gathers) + sum(f.amount for e in found for f in e.folds)

    assert drawn_in("near", "far") == pytest.approx(drawn_in("side"), abs=1e-6)
    assert sewn(two, "near") + sewn(two, "far") == pytest.approx(sewn(laid, "side"), abs=1e-6)


@given(fronts(straight_hem=True), st.floats(0.1, 0.9), lengths(10, 80), lengths(0, 30), st.booleans())
def test_a_step_adds_a_rectangle_and_keeps_every_name(
    piece: Piece,
    share: float,
    by: float,
    slant: float,
    backward: bool,  # noqa: FBT001
) -> None:
    """The hem is straight and stands square on the fold."""
    two = halves(
        piece_backward(piece) if backward else piece, "hem", share * sewn(piece, "hem"), "hem-centre"
    )
    wide = sewn(two, "near")
    assume(wide > slant + 5.0 and 3.0 * by > slant)
    step = Extend(part("near"), length(by), ORIGIN, length(slant))
    vented = altered(extend.apply((two,), step, evaluate))
    assert area(vented) - area(two) == pytest.approx(by * wide - 0.5 * by * slant, rel=1e-9)
    assert sewn(vented, "far") == pytest.approx(sewn(two, "far"), abs=1e-9)
    assert sewn(vented, "near") == pytest.approx(wide - slant, abs=1e-6)
    assert sewn(vented, "near-step") == pytest.approx(hypot(by, slant), abs=1e-6)
    assert set(names_of(two)) < set(names_of(vented))
    assert corner_named(vented, "near-far") == corner_named(two, "near-far")
