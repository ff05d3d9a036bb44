"""What spreading, tapering, extending, rounding and scalloping must keep, on fronts of random dimensions."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.alteration import band, extend, round_corner, scallop, sew_as, spread, swing, taper
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.model.alteration import Form, Swing, SwingTarget
from specc.model.reshaping import Band, Extend, RoundCorner, Scallop, SewAs, Spread, Taper
from specc.pattern.lookup import corner_named, line_named, names_of
from specc.pattern.measure import (
    dart_angle,
    line_length,
    place_on_edge,
    run_length,
    stitched_at,
    stitched_length,
)
from specc.pattern.outline import area, mirrored
from specc.pattern.piece import Fold, FoldKind, Gathers, Notch
from tests.altering import (
    ORIGIN,
    altered,
    at_share,
    edge,
    evaluate,
    length,
    part,
    refused,
    sewn,
    share,
    whole,
)
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.pattern.piece import Piece

    Result = tuple[Piece, ...] | Refusal
    Verb = Callable[[Piece], Result]

forms = st.sampled_from([Form.FLARE, Form.GATHERS, Form.EASE, Form.PLEAT, Form.TUCK])
amounts = lengths(2, 60)
places = st.floats(0.55, 0.9)


def opened(by: float, and_by: float | None, form: Form, place: float, *, other: str = "shoulder") -> Verb:
    """A slash from the hem to the shoulder, to the outside of the bust dart's pivot or not, as it comes."""

    def result(piece: Piece) -> Result:
        second = None if and_by is None else length(and_by)
        step = Spread(
            part("hem"), at_share(place), part(other), at_share(0.5), length(by), second, form, ORIGIN
        )
        return spread.apply((piece,), step, evaluate)

    return result


def undarted(piece: Piece) -> Piece:
    """The front with its dart eased away, so that a slash may go anywhere."""
    return altered(sew_as.apply((piece,), SewAs((part("bust-dart"),), Form.EASE, ORIGIN), evaluate))


@given(fronts(), amounts, st.none() | lengths(0, 40), forms, places)
def test_a_spread_keeps_both_halves(
    piece: Piece, by: float, and_by: float | None, form: Form, place: float
) -> None:
    plain = undarted(piece)
    result = opened(by, and_by, form, place)(plain)
    assume(isinstance(result, tuple))
    wider = altered(result)
    assert area(wider) > area(plain)
    assert edge(wider, "centre") == edge(plain, "centre")
    for name in ("side", "armhole", "neck"):
        before, after = edge(plain, name).parts[0], edge(wider, name).parts[0]
        assert after.length() == pytest.approx(before.length(), abs=1e-6)
        assert after.turning() == pytest.approx(before.turning(), abs=1e-9)
        assert after.start.distance(after.end) == pytest.approx(before.start.distance(before.end), abs=1e-9)
    corner = [
        edge(p, "side").parts[0].end_direction().angle_to(edge(p, "armhole").parts[0].start_direction())
        for p in (plain, wider)
    ]
    assert corner[0] == pytest.approx(corner[1], abs=1e-9)
    for name, amount in (("hem", by), ("shoulder", by if and_by is None else and_by)):
        growth = sewn(wider, name) - sewn(plain, name)
        if form is Form.FLARE and amount > 0.0:
            assert growth >= 0.0
            assert len(edge(wider, name).parts) == 1
        else:
            assert growth == pytest.approx(0.0, abs=1e-6)
    assert set(names_of(plain)) <= set(names_of(wider))


@given(fronts(), amounts, places)
def test_a_hinge_stays_where_it_was(piece: Piece, by: float, place: float) -> None:
    plain = undarted(piece)
    result = opened(by, 0.0, Form.FLARE, place)(plain)
    assume(isinstance(result, tuple))
    hinged = altered(result)
    old = place_on_edge(edge(plain, "shoulder"), 0.5 * sewn(plain, "shoulder")).at
    new = place_on_edge(edge(hinged, "shoulder"), 0.5 * sewn(plain, "shoulder")).at
    assert new.distance(old) < 1e-6


@given(fronts(), amounts, places)
def test_a_line_across_a_parallel_spread_is_bridged(piece: Piece, by: float, place: float) -> None:
    plain = undarted(piece)
    result = opened(by, None, Form.FLARE, place)(plain)
    assume(isinstance(result, tuple))
    wider = altered(result)
    old, new = line_named(plain, "hip-line"), line_named(wider, "hip-line")
    assert old is not None
    assert new is not None
    assert len(new.parts) == len(old.parts)
    # Straight across between two places that were moved apart by the amount.
    growth = line_length(wider, new) - line_length(plain, old)
    assert growth == pytest.approx(by, abs=1e-6)


@given(fronts(), st.sampled_from([Form.PLEAT, Form.TUCK, Form.EASE]), st.sampled_from([0.5, 1.0]))
def test_a_swung_dart_may_become_ease_pleat_or_tuck(piece: Piece, form: Form, part_of: float) -> None:
    step = Swing(part("bust-dart"), (SwingTarget(part("hem"), None, form, share(part_of)),), ORIGIN)
    laid = altered(swing.apply((piece,), step, evaluate))
    assert sewn(laid, "hem") == pytest.approx(sewn(piece, "hem"), abs=1e-6)
    hem = edge(laid, "hem")
    taken = sum(g.amount for g in hem.gathers) + sum(fold.amount for fold in hem.folds)
    assert run_length(hem) - taken == pytest.approx(sewn(piece, "hem"), abs=1e-6)
    kinds = [fold.kind.value for fold in hem.folds]
    assert kinds == ([] if form is Form.EASE else [form.value])
    assert [g.eased for g in hem.gathers] == ([True] if form is Form.EASE else [])


@given(fronts(), st.sampled_from([Form.GATHERS, Form.EASE, Form.PLEAT, Form.TUCK]))
def test_a_dart_sewn_otherwise_keeps_every_length(piece: Piece, form: Form) -> None:
    sewn_so = altered(sew_as.apply((piece,), SewAs((part("bust-dart"),), form, ORIGIN), evaluate))
    assert not sewn_so.darts
    assert [gone.name for gone in sewn_so.gone] == ["bust-dart"]
    for before in piece.edges:
        assert sewn(sewn_so, before.name) == pytest.approx(stitched_length(before), abs=1e-6)
    assert area(sewn_so) > area(piece)
    side = edge(sewn_so, "side").parts[0]
    if form in {Form.GATHERS, Form.EASE}:
        for a, b in pairwise(side.segments):
            assert abs(a.end_direction().angle_to(b.start_direction())) < 1e-6


@given(fronts(), lengths(1, 12))
def test_taken_in_and_let_out_is_as_before(piece: Piece, by: float) -> None:
    step = Taper((part("shoulder"),), False, length(by), None, None, None, ORIGIN)
    # Straight neighbours: the shoulder of a front whose neck and armhole are drawn straight.
    straight = straightened(piece)
    result = taper.apply((straight,), step, evaluate)
    assume(isinstance(result, tuple))
    narrow = altered(result)
    assert area(narrow) < area(straight)
    back = altered(taper.apply((narrow,), replace(step, let_out=True), evaluate))
    for before in straight.edges:
        assert sewn(back, before.name) == pytest.approx(stitched_length(before), abs=1e-6)
    for name in names_of(straight):
        corner = corner_named(straight, name)
        if corner is not None:
            there = corner_named(back, name)
            assert there is not None
            assert there.distance(corner) < 1e-6


@given(fronts(), lengths(1, 8))
def test_a_tapered_hem_comes_back_within_half_a_tenth(piece: Piece, by: float) -> None:
    """Not exactly: the amount is measured square to the edge, and the tapered edge has another direction."""
    step = Taper((part("hem"),), False, length(by), "hem-side", length(0.0), "hem-centre", ORIGIN)
    straight = straightened(piece)
    result = taper.apply((straight,), step, evaluate)
    assume(isinstance(result, tuple))
    narrow = altered(result)
    assert corner_named(narrow, "hem-centre") == corner_named(straight, "hem-centre")
    back = altered(taper.apply((narrow,), replace(step, let_out=True), evaluate))
    for before in straight.edges:
        assert sewn(back, before.name) == pytest.approx(stitched_length(before), abs=0.05)


def straightened(piece: Piece) -> Piece:
    """The front with every edge straight, and no dart."""
    edges = tuple(
        replace(e, parts=(Path.through(e.parts[0].start, e.parts[-1].end),), darts=()) for e in piece.edges
    )
    return replace(piece, edges=edges, darts=(), two_pointed=(), lines=(), points=(), notches=())


@given(fronts(), lengths(0, 14), lengths(0, 14), st.booleans())
def test_a_taper_keeps_the_dart(piece: Piece, first: float, last: float, let_out: bool) -> None:  # noqa: FBT001
    step = Taper((part("side"),), let_out, length(first), "hem-side", length(last), "underarm", ORIGIN)
    result = taper.apply((piece,), step, evaluate)
    assume(isinstance(result, tuple))  # a short side below a steep armhole cannot be taken in so far
    moved = altered(result)
    (before,), (after,) = piece.darts, moved.darts
    assert after.pivot == before.pivot
    assert dart_angle(after) == pytest.approx(dart_angle(before), abs=1e-9)
    legs = after.first.distance(after.pivot), after.second.distance(after.pivot)
    old = before.first.distance(before.pivot), before.second.distance(before.pivot)
    assert legs[0] - legs[1] == pytest.approx(old[0] - old[1], abs=1e-5)
    if max(first, last) > 0.0:
        assert (area(moved) > area(piece)) == let_out
    for name in ("neck", "centre", "shoulder"):
        assert edge(moved, name) == edge(piece, name)


@given(fronts(), lengths(2, 15), st.booleans())
def test_a_tapered_curve_stays_smooth(piece: Piece, by: float, let_out: bool) -> None:  # noqa: FBT001
    step = Taper((part("armhole"),), let_out, length(by), "underarm", None, None, ORIGIN)
    result = taper.apply((piece,), step, evaluate)
    assume(isinstance(result, tuple))
    moved = altered(result)
    for a, b in pairwise(edge(moved, "armhole").parts[0].segments):
        assert abs(a.end_direction().angle_to(b.start_direction())) < 2e-3
    assert corner_named(moved, "shoulder-point") == corner_named(piece, "shoulder-point")
    # The armhole leaves the underarm level: its corner moves straight down, or up, the side.
    shift = sewn(moved, "side") - sewn(piece, "side")
    assert abs(shift) >= by * 0.95


@given(fronts(), lengths(5, 60))
def test_an_extension_leaves_a_line_where_the_edge_lay(piece: Piece, by: float) -> None:
    open_front = replace(piece, fold=None)
    wider = altered(extend.apply((open_front,), Extend(part("centre"), length(by), ORIGIN), evaluate))
    line = line_named(wider, "centre-line")
    assert line is not None
    assert line.parts == edge(piece, "centre").parts
    centre = edge(wider, "centre").parts[0]
    assert all(point.x == pytest.approx(-by, abs=1e-9) for point in (centre.start, centre.end))
    # Neck and hem leave the centre square to it: they go straight on, by the amount.
    for name in ("neck", "hem"):
        assert sewn(wider, name) == pytest.approx(sewn(piece, name) + by, abs=1e-2)
    again = altered(extend.apply((wider,), Extend(part("centre"), length(by), ORIGIN), evaluate))
    assert line_named(again, "centre-line-2") is not None
    assert (
        refused(extend.apply((piece,), Extend(part("centre"), length(by), ORIGIN), evaluate))
        == "edge-on-fold"
    )


@given(fronts(), lengths(3, 60), st.sampled_from(["hem-side", "underarm", "shoulder-point", "neck-point"]))
def test_a_round_corner_touches_both_edges(piece: Piece, by: float, corner: str) -> None:
    result = round_corner.apply((piece,), RoundCorner(whole(), corner, length(by), ORIGIN), evaluate)
    if isinstance(result, Refusal):
        assert refused(result) in {"trim-too-long", "corner-is-smooth", "would-cross-itself"}
        return
    rounded = altered(result)
    ending = next(e for e in rounded.edges if e.end == corner)
    starting = next(e for e in rounded.edges if e.start == corner)
    for path in (ending.parts[-1], starting.parts[0]):
        for a, b in pairwise(path.segments):
            assert abs(a.end_direction().angle_to(b.start_direction())) < 1e-6
    assert abs(ending.parts[-1].end_direction().angle_to(starting.parts[0].start_direction())) < 1e-6
    # The edges on either side are as they were, up to the arc.
    old = edge(piece, ending.name).parts[-1]
    kept = old.length() - by
    assert ending.parts[-1].point_at(kept).distance(old.point_at(kept)) < 1e-5
    others = [e for e in piece.edges if e.name not in {ending.name, starting.name}]
    assert all(edge(rounded, e.name) == e for e in others)


@given(fronts(), st.sampled_from(["hem", "armhole", "neck"]), lengths(15, 70), st.floats(0.05, 0.4))
def test_scallops_part_on_the_edge_and_reach_their_depth(
    piece: Piece, name: str, every: float, deep: float
) -> None:
    run = edge(piece, name).parts[0]
    count = max(1, round(run.length() / every))
    step = run.length() / count
    result = scallop.apply(
        (piece,), Scallop(part(name), length(every), length(deep * step), ORIGIN), evaluate
    )
    if isinstance(result, Refusal):
        assert refused(result) == "would-cross-itself"
        return
    cut = altered(result)
    path = edge(cut, name).parts[0]
    for index in range(count + 1):
        assert path.distance_to(run.point_at(index * step)) < 1e-6
    for index in range(count):
        middle = (index + 0.5) * step
        across = run.direction_at(middle).left()
        reached = [run.point_at(middle) + across * (sign * deep * step) for sign in (1.0, -1.0)]
        assert min(path.distance_to(point) for point in reached) < 1e-2
    assert area(cut) > area(piece)
    assert (cut.edges[0].start, cut.edges[0].end) == (piece.edges[0].start, piece.edges[0].end)


@given(fronts())
def test_nothing_changes_by_nothing(piece: Piece) -> None:
    nothing = length(0.0)
    plain = undarted(piece)
    steps: list[Result] = [
        opened(0.0, None, Form.FLARE, 0.2, other="neck")(plain),
        taper.apply((plain,), Taper((part("side"),), True, nothing, None, None, None, ORIGIN), evaluate),
        extend.apply((plain,), Extend(part("side"), nothing, ORIGIN), evaluate),
        round_corner.apply((plain,), RoundCorner(whole(), "hem-side", nothing, ORIGIN), evaluate),
        scallop.apply((plain,), Scallop(part("hem"), length(30.0), nothing, ORIGIN), evaluate),
    ]
    assert all(result == (plain,) for result in steps if isinstance(result, tuple))
    assert sum(isinstance(result, tuple) for result in steps) >= len(steps) - 1


@given(fronts(), forms, lengths(3, 14))
def test_a_mirrored_piece_alters_alike(piece: Piece, form: Form, by: float) -> None:
    """The outline then runs the other way round, and nothing may depend on that."""
    plain = undarted(piece)
    free = replace(plain, fold=None)
    one: Verb = lambda p: taper.apply(  # noqa: E731
        (p,), Taper((part("side"),), True, length(by), "underarm", length(1.0), None, ORIGIN), evaluate
    )
    steps: list[tuple[Piece, Verb]] = [
        (plain, opened(by, None, form, 0.7)),
        (plain, opened(by, 2.0, form, 0.8)),
        (free, opened(by, 0.0, form, 0.8)),
        (piece, one),
        (free, lambda p: extend.apply((p,), Extend(part("side"), length(by), ORIGIN), evaluate)),
        (
            piece,
            lambda p: round_corner.apply(
                (p,), RoundCorner(whole(), "hem-side", length(by), ORIGIN), evaluate
            ),
        ),
        (
            piece,
            lambda p: scallop.apply((p,), Scallop(part("hem"), length(40.0), length(by), ORIGIN), evaluate),
        ),
    ]
    if form is not Form.FLARE:
        steps.append(
            (piece, lambda p: sew_as.apply((p,), SewAs((part("bust-dart"),), form, ORIGIN), evaluate))
        )
    for start, step in steps:
        plain_way, other_way = step(start), step(mirrored(start))
        if isinstance(plain_way, Refusal):
            assert refused(other_way) == refused(plain_way)
            continue
        here, back = altered(plain_way), mirrored(altered(other_way))
        assert area(back) == pytest.approx(area(here), rel=1e-9)
        for e in here.edges:
            twin = edge(back, e.name)
            assert stitched_length(twin) == pytest.approx(stitched_length(e), abs=1e-5)
            assert run_length(twin) == pytest.approx(run_length(e), abs=1e-5)
            assert twin.parts[0].start.distance(e.parts[0].start) < 1e-5


@given(fronts(), st.floats(0.0, 1.0), st.floats(0.1, 0.9), lengths(5, 60))
def test_places_on_a_folded_edge_are_found_again(
    piece: Piece, place: float, at: float, amount: float
) -> None:
    hem = edge(piece, "hem")
    loose = run_length(hem) - amount - 20.0
    folded = replace(
        hem,
        gathers=(Gathers(0.2 * loose, 0.4 * loose, 20.0),),
        folds=(Fold(at * loose, amount, FoldKind.PLEAT),),
    )
    assert stitched_length(folded) == pytest.approx(loose, abs=1e-9)
    found = place_on_edge(folded, place * loose)
    assert stitched_at(folded, found.part, found.along) == pytest.approx(place * loose, abs=1e-6)
    # Behind the fold the paper is further on by what is folded away.
    behind = place_on_edge(folded, at * loose + 1e-7)
    before = place_on_edge(folded, at * loose)
    assert behind.along - before.along >= amount - 1e-6


@given(fronts(), lengths(20, 80))
def test_marks_follow_the_edge(piece: Piece, by: float) -> None:
    """A notch behind the opening keeps its distance from the end corner, one before it from the start."""
    plain = replace(undarted(piece), notches=(Notch("hem", 10.0), Notch("hem", sewn(piece, "hem") - 10.0)))
    result = opened(by, None, Form.FLARE, 0.7)(plain)
    assume(isinstance(result, tuple))
    near, far = altered(result).notches
    assert near.at == pytest.approx(10.0)
    assert sewn(altered(result), "hem") - far.at == pytest.approx(10.0, abs=1e-6)


@given(fronts(), lengths(20, 60))
def test_a_band_for_necks_is_one_and_for_armholes_a_pair(piece: Piece, by: float) -> None:
    neck = altered(band.apply((piece,), Band((part("neck"),), length(by), None, "rib", ORIGIN), evaluate))
    assert neck.cut == 1
    assert sewn(neck, "bottom") == pytest.approx(2.0 * sewn(piece, "neck"), abs=1e-9)
    armhole = altered(
        band.apply((piece,), Band((part("armhole"),), length(by), None, "rib", ORIGIN), evaluate)
    )
    assert armhole.cut == 2
    assert sewn(armhole, "bottom") == pytest.approx(sewn(piece, "armhole"), abs=1e-9)
    sleeve = replace(piece, fold=None, cut=2)
    cuff = altered(band.apply((sleeve,), Band((part("hem"),), length(by), None, "cuff", ORIGIN), evaluate))
    assert cuff.cut == 2
    assert sewn(cuff, "top") == pytest.approx(sewn(piece, "hem"), abs=1e-9)
