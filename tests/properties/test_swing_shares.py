"""What swinging one dart to several places must keep, on fronts of random dimensions."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.alteration import swing
from specc.model.alteration import Form, Swing, SwingTarget
from specc.pattern.measure import dart_angle, stitched_length
from specc.pattern.outline import area
from tests.altering import ORIGIN, altered, at_share, edge, evaluate, part, refused, sewn, share
from tests.strategies import fronts

if TYPE_CHECKING:
    from specc.alteration.refusal import Refusal
    from specc.pattern.piece import Piece

forms = st.sampled_from(list(Form))
kept_long = st.sampled_from([Form.DART, Form.GATHERS, Form.EASE, Form.PLEAT, Form.TUCK])
shares = st.floats(0.1, 0.45)
EDGES = ("hem", "neck", "shoulder", "armhole")
pairs = st.sampled_from([(a, b) for a in EDGES for b in EDGES if a != b])


def target(name: str, form: Form, part_of: float | None, place: float = 0.5) -> SwingTarget:
    return SwingTarget(part(name), at_share(place), form, None if part_of is None else share(part_of))


def swung(piece: Piece, *targets: SwingTarget) -> tuple[Piece, ...] | Refusal:
    return swing.apply((piece,), Swing(part("bust-dart"), targets, ORIGIN), evaluate)


def drawn(piece: Piece, *targets: SwingTarget) -> Piece:
    """The piece with the dart swung; cases in which a slash has no room do not count."""
    result = swung(piece, *targets)
    assume(isinstance(result, tuple))
    return altered(result)


@given(fronts(), pairs, shares, shares)
def test_angles_add_up(piece: Piece, names: tuple[str, str], one: float, other: float) -> None:
    (dart,) = piece.darts
    after = drawn(piece, target(names[0], Form.DART, one), target(names[1], Form.DART, other))
    angles = {each.name: dart_angle(each) for each in after.darts}
    whole = dart_angle(dart)
    assert angles == {
        f"bust-dart-into-{names[0]}": pytest.approx(one * whole, abs=1e-9),
        f"bust-dart-into-{names[1]}": pytest.approx(other * whole, abs=1e-9),
        "bust-dart": pytest.approx((1.0 - one - other) * whole, abs=1e-9),
    }
    assert all(each.pivot.distance(dart.pivot) < 1e-9 for each in after.darts)
    assert area(after) == pytest.approx(area(piece), rel=1e-9)


@given(fronts(), pairs, shares, kept_long, kept_long)
def test_every_edge_stays_as_long_as_sewn(
    piece: Piece, names: tuple[str, str], one: float, first: Form, second: Form
) -> None:
    after = drawn(piece, target(names[0], first, one), target(names[1], second, None))
    assert "bust-dart" not in {dart.name for dart in after.darts}
    assert [gone.name for gone in after.gone] == ["bust-dart"]
    assert after.gone[0].how == f"swung into `front.{names[0]}` and `front.{names[1]}` on line 41"
    for before in piece.edges:
        assert sewn(after, before.name) == pytest.approx(stitched_length(before), abs=1e-6)


@given(fronts(), pairs, shares, forms, forms)
def test_one_statement_is_two_of_the_right_shares(
    piece: Piece, names: tuple[str, str], one: float, first: Form, second: Form
) -> None:
    """Half, then 30 %, is half and then 60 % of what is left."""
    a, b = names
    together = drawn(piece, target(a, first, one), target(b, second, 0.3))
    once = drawn(piece, target(a, first, one))
    twice = drawn(once, target(b, second, 0.3 / (1.0 - one)))
    assert area(together) == pytest.approx(area(twice), rel=1e-9)
    for before in together.edges:
        assert stitched_length(before) == pytest.approx(sewn(twice, before.name), abs=1e-6)


@given(fronts(), shares, st.floats(0.15, 0.35), st.floats(0.65, 0.85))
def test_places_on_one_edge_are_those_before_the_first_turn(
    piece: Piece, one: float, low: float, high: float
) -> None:
    """Two flares in one hem open as far from its ends whichever is named first."""
    near, far = target("hem", Form.FLARE, one, low), target("hem", Form.FLARE, one, high)
    there, back = drawn(piece, near, far), drawn(piece, far, near)
    # The hem is drawn anew between the middles of the runs, and these differ a little with the order.
    assert sewn(there, "hem") == pytest.approx(sewn(back, "hem"), rel=0.02)
    assert sewn(there, "hem") > sewn(piece, "hem")
    for name in ("centre", "side", "shoulder", "armhole", "neck"):
        assert sewn(there, name) == pytest.approx(sewn(piece, name), abs=1e-6)


@given(fronts(), st.floats(0.15, 0.4), st.floats(0.6, 0.85))
def test_darts_stand_where_they_were_asked_for(piece: Piece, low: float, high: float) -> None:
    (dart,) = piece.darts
    after = drawn(piece, target("hem", Form.DART, 0.5, high), target("hem", Form.DART, 0.5, low))
    hem = edge(after, "hem")
    assert set(hem.darts) == {"bust-dart-into-hem", "bust-dart-into-hem-2"}
    stops = [hem.parts[0].length(), hem.parts[0].length() + hem.parts[1].length()]
    assert stops == pytest.approx([low * sewn(piece, "hem"), high * sewn(piece, "hem")], abs=1e-6)
    assert sum(map(dart_angle, after.darts)) == pytest.approx(dart_angle(dart), abs=1e-9)
    assert dart_angle(dart) < pi


@given(fronts())
def test_more_than_the_dart_is_refused(piece: Piece) -> None:
    """The text is checked before; a step made otherwise is refused here."""
    too_much = swung(piece, target("hem", Form.FLARE, 0.7), target("neck", Form.FLARE, 0.7))
    assert refused(too_much) == "share-out-of-range"
    nothing_left = swung(piece, target("hem", Form.FLARE, 1.0), target("neck", Form.FLARE, None))
    assert refused(nothing_left) == "share-out-of-range"
