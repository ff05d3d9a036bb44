"""What pleats, tucks and gathers must keep, on fronts of random dimensions."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon, box

from specc.alteration import gather, pleat, sew_as
from specc.model.alteration import Form
from specc.model.fullness import Gather, Lay, Pleat, Slashed
from specc.model.reshaping import SewAs
from specc.pattern.lookup import names_of
from specc.pattern.measure import place_on_edge, run_length, stitched_length
from specc.pattern.outline import area, bounds, flat_outline, mirrored
from tests.altering import ORIGIN, altered, at_share, edge, evaluate, length, part, sewn
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from specc.alteration.refusal import Refusal
    from specc.pattern.piece import Piece

forms = st.sampled_from([Form.PLEAT, Form.TUCK])
lays = st.sampled_from(list(Lay))
ways = st.sampled_from([Slashed(), Slashed(hinged=True), Slashed(part("shoulder"), hinged=True)])
starts, ends = st.floats(0.3, 0.45), st.floats(0.6, 0.75)


def undarted(piece: Piece) -> Piece:
    """The front with its dart eased away, so that a slash may go anywhere."""
    return altered(sew_as.apply((piece,), SewAs((part("bust-dart"),), Form.EASE, ORIGIN), evaluate))


def drawn(result: tuple[Piece, ...] | Refusal) -> Piece:
    """Cases in which a slash meets a corner do not count."""
    assume(isinstance(result, tuple))
    return altered(result)


@given(fronts(), forms, lays, ways, st.integers(2, 4), lengths(3, 12))
def test_pleats_keep_every_edge_as_sewn_but_the_one_below(
    piece: Piece, form: Form, lay: Lay, way: Slashed, count: int, deep: float
) -> None:
    plain = undarted(piece)
    step = Pleat(form, part("hem"), count, at_share(0.3), at_share(0.7), length(deep), lay, None, way, ORIGIN)
    laid = drawn(pleat.apply((plain,), step, evaluate))
    assert sewn(laid, "hem") == pytest.approx(sewn(plain, "hem"), abs=1e-5)
    folds = edge(laid, "hem").folds
    assert len(folds) == (count if lay is Lay.KNIFE else 2 * count)
    assert run_length(edge(laid, "hem")) - sum(f.amount for f in folds) == pytest.approx(
        sewn(plain, "hem"), abs=1e-5
    )
    assert all(f.amount > 1.9 * deep for f in folds)
    assert area(laid) > area(plain)
    for before in plain.edges:
        grown = sewn(laid, before.name) - stitched_length(before)
        if form is Form.PLEAT and not way.hinged:
            assert grown >= -1e-6
        else:
            assert grown == pytest.approx(0.0, abs=1e-5)
    assert set(names_of(plain)) <= set(names_of(laid))


@given(fronts(), starts, ends, lengths(20, 150))
def test_what_is_gathered_along_the_grain_gets_wider_evenly(
    piece: Piece, start: float, end: float, by: float
) -> None:
    """Area by a second program: the band between the places grows in the proportion of its widths."""
    plain = undarted(piece)
    step = Gather(part("hem"), at_share(start), at_share(end), length(by), Slashed(), ORIGIN)
    wider = drawn(gather.apply((plain,), step, evaluate))
    left, right = (
        place_on_edge(edge(plain, "hem"), share * sewn(plain, "hem")).at.x for share in (start, end)
    )
    low, high = bounds(plain)
    band = Polygon([(p.x, p.y) for p in flat_outline(plain)]).intersection(box(left, low.y, right, high.y))
    # Where the slope of an edge changes at the band it is drawn smooth again, a little outside.
    assert area(wider) - area(plain) == pytest.approx(band.area * by / (right - left), rel=5e-3)
    assert sewn(wider, "hem") == pytest.approx(sewn(plain, "hem"), abs=1e-6)
    (gathers,) = edge(wider, "hem").gathers
    assert (gathers.start, gathers.end) == pytest.approx(
        (start * sewn(plain, "hem"), end * sewn(plain, "hem")), abs=1e-6
    )
    assert gathers.amount == pytest.approx(by, rel=1e-2)
    assert edge(wider, "centre") == edge(plain, "centre")
    assert edge(wider, "side").parts[0].length() == pytest.approx(
        edge(plain, "side").parts[0].length(), abs=1e-6
    )


@given(fronts(), starts, ends, lengths(20, 120))
def test_hinged_gathers_open_the_edge_alone(piece: Piece, start: float, end: float, by: float) -> None:
    plain = undarted(piece)
    way = Slashed(part("shoulder"), hinged=True)
    step = Gather(part("hem"), at_share(start), at_share(end), length(by), way, ORIGIN)
    wider = drawn(gather.apply((plain,), step, evaluate))
    for before in plain.edges:
        assert sewn(wider, before.name) == pytest.approx(stitched_length(before), abs=1e-5)
        if before.name not in {"hem", "shoulder"}:
            assert edge(wider, before.name).parts[0].turning() == pytest.approx(
                before.parts[0].turning(), abs=1e-9
            )
    (gathers,) = edge(wider, "hem").gathers
    assert gathers.amount == pytest.approx(by, rel=0.03)
    assert area(wider) > area(plain)


@given(fronts(), lays, ways, lengths(3, 12))
def test_a_mirrored_piece_is_pleated_alike(piece: Piece, lay: Lay, way: Slashed, deep: float) -> None:
    """The outline then runs the other way round, and nothing may depend on that."""
    plain = undarted(piece)
    step = Pleat(
        Form.PLEAT, part("hem"), 2, at_share(0.4), at_share(0.7), length(deep), lay, None, way, ORIGIN
    )
    here = drawn(pleat.apply((plain,), step, evaluate))
    back = mirrored(altered(pleat.apply((mirrored(plain),), step, evaluate)))
    assert area(back) == pytest.approx(area(here), rel=1e-9)
    assert [(f.onto_after, round(f.at, 5)) for f in edge(back, "hem").folds] == [
        (f.onto_after, round(f.at, 5)) for f in edge(here, "hem").folds
    ]
    for each in here.edges:
        assert run_length(edge(back, each.name)) == pytest.approx(run_length(each), abs=1e-5)
