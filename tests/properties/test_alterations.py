"""What every alteration must keep, on plausible fronts of random dimensions."""

from __future__ import annotations

from dataclasses import replace
from math import sin
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.alteration import crop, lengthen, move_corner, release, swing
from specc.alteration.record import DartState, recorded
from specc.alteration.refusal import REASONS, Refusal
from specc.geometry.region import crosses_itself
from specc.model.alteration import (
    Crop,
    Form,
    Lengthen,
    Level,
    MoveCorner,
    PieceRef,
    Place,
    Release,
    Swing,
    SwingTarget,
)
from specc.model.expression import PartRef
from specc.pattern.lookup import corner_named, edge_named, line_named, names_of
from specc.pattern.measure import (
    dart_angle,
    dart_width,
    drawn_length,
    line_length,
    place_on_edge,
    run_length,
    stitched_at,
    stitched_length,
)
from specc.pattern.outline import area, bounds, drawn_outline, flat_outline, mirrored, notched_outline
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.pattern.piece import Edge, Piece

# Expressions and places in a text belong to other stages: here an expression is a number with a dimension.
ORIGIN: Any = SimpleNamespace(line=41)


def number(value: float, *, length: bool = True) -> Any:
    return SimpleNamespace(number=value, dimension=SimpleNamespace(length=1 if length else 0))


def evaluate(expression: Any) -> float:
    return float(expression.number)


def ref(name: str) -> PartRef:
    return PartRef("front", name, ORIGIN)


WHOLE_PIECE = (PieceRef("front", ORIGIN),)


def one(result: tuple[Piece, ...] | Refusal) -> Piece:
    assert isinstance(result, tuple), result
    assert len(result) == 1
    return result[0]


def refused(result: tuple[Piece, ...] | Refusal) -> Refusal:
    assert isinstance(result, Refusal)
    assert result.code_name in {reason.name for reason in REASONS}
    message = next(reason.message for reason in REASONS if reason.name == result.code_name)
    assert message.format_map(dict(result.facts))
    assert result.help.format_map(dict(result.facts))
    return result


def edge(piece: Piece, name: str) -> Edge:
    found = edge_named(piece, name)
    assert found is not None
    return found


def swung(
    piece: Piece, form: Form, *, share: float = 1.0, target: str = "hem", place: Place | None = None
) -> Piece:
    into = SwingTarget(ref(target), place, form, number(share, length=False))
    step = Swing(ref("bust-dart"), (into,), ORIGIN)
    return one(swing.apply((piece,), step, evaluate))


def at(share: float) -> Place:
    return Place(number(share, length=False), ORIGIN)


def is_whole(piece: Piece) -> None:
    """The piece hangs together: a closed outline that does not cross itself, darts on their edges."""
    assert drawn_outline(piece).closed
    assert notched_outline(piece).closed
    assert not crosses_itself(flat_outline(piece))
    for before, after in zip(piece.edges, piece.edges[1:] + piece.edges[:1], strict=True):
        assert before.end == after.start
        assert before.parts[-1].end.distance(after.parts[0].start) < 1e-6
    hosted = [name for e in piece.edges for name in e.darts]
    assert sorted(hosted) == sorted(dart.name for dart in piece.darts)
    for dart in piece.darts:
        host = edge(piece, dart.edge)
        index = host.darts.index(dart.name)
        assert host.parts[index].end.distance(dart.first) < 1e-6
        assert host.parts[index + 1].start.distance(dart.second) < 1e-6


shares = st.sampled_from([0.25, 0.5, 1.0])
forms = st.sampled_from(list(Form))


@given(fronts(), forms, shares)
def test_a_swing_keeps_angle_lengths_and_fold(piece: Piece, form: Form, share: float) -> None:
    altered = swung(piece, form, share=share)
    is_whole(altered)
    (dart,) = piece.darts
    opened = 1.0 if form is Form.DART else 1.0 - share
    assert sum(map(dart_angle, altered.darts)) == pytest.approx(dart_angle(dart) * opened, abs=1e-12)
    for before in piece.edges:
        after = edge(altered, before.name)
        if before.name == "hem" and form is Form.FLARE:
            assert stitched_length(after) > stitched_length(before)
        else:
            assert stitched_length(after) == pytest.approx(stitched_length(before), abs=1e-6)
    assert edge(altered, "centre") == edge(piece, "centre")
    if form is Form.DART:
        assert area(altered) == pytest.approx(area(piece), abs=1e-4)
    else:
        assert area(altered) > area(piece)


@given(fronts(), st.floats(0.1, 0.9))
def test_a_dart_may_go_into_any_edge_and_back(piece: Piece, share: float) -> None:
    there = swung(piece, Form.DART, target="neck", place=at(share))
    is_whole(there)
    (dart,) = there.darts
    assert dart.edge == "neck"
    assert area(there) == pytest.approx(area(piece), abs=1e-4)
    length = piece.edges[1].parts[0].length()
    back = swung(there, Form.DART, target="side", place=Place(number(length), ORIGIN))
    for before in piece.edges:
        after = edge(back, before.name)
        assert stitched_length(after) == pytest.approx(stitched_length(before), abs=1e-6)
        assert after.parts[0].start.distance(before.parts[0].start) < 1e-6
        assert after.parts[-1].end.distance(before.parts[-1].end) < 1e-6


@given(fronts(), shares)
def test_a_flare_has_no_kink_and_grows_as_the_arc_about_the_pivot(piece: Piece, share: float) -> None:
    altered = swung(piece, Form.FLARE, share=share)
    hem = edge(altered, "hem").parts
    assert len(hem) == 1
    for before, after in zip(hem[0].segments, hem[0].segments[1:], strict=False):
        assert abs(before.end_direction().angle_to(after.start_direction())) < 1e-6
    pivot, old = piece.darts[0].pivot, edge(piece, "hem").parts[0]
    foot = old.length_at(pivot)
    if 0.3 * old.length() < foot < 0.6 * old.length():
        reach = old.point_at(foot).distance(pivot)
        opening = dart_angle(piece.darts[0]) * share
        # An arc in one cubic is longer than the circle by a few millionths.
        assert hem[0].length() - old.length() == pytest.approx(reach * opening, rel=1e-5)


@given(fronts(), shares)
def test_gathers_hold_what_the_flare_adds(piece: Piece, share: float) -> None:
    flared, gathered = swung(piece, Form.FLARE, share=share), swung(piece, Form.GATHERS, share=share)
    assert edge(flared, "hem").parts == edge(gathered, "hem").parts
    (gathers,) = edge(gathered, "hem").gathers
    growth = stitched_length(edge(flared, "hem")) - stitched_length(edge(piece, "hem"))
    assert gathers.amount == pytest.approx(growth, abs=1e-6)
    assert 0.0 <= gathers.start < gathers.end <= stitched_length(edge(piece, "hem"))


@given(fronts(), forms)
def test_two_halves_swung_are_one_whole(piece: Piece, form: Form) -> None:
    half = swung(piece, form, share=0.5)
    both = swung(half, form, place=None if form is not Form.DART else at(0.9))
    if form is Form.DART:
        angles = sorted(map(dart_angle, both.darts))
        assert angles[0] == pytest.approx(angles[1], abs=1e-12)
    at_once = swung(piece, form)
    assert stitched_length(edge(both, "side")) == pytest.approx(
        stitched_length(edge(at_once, "side")), abs=1e-6
    )
    assert corner_named(both, "hem-side").distance(corner_named(at_once, "hem-side")) < 1e-6  # type: ignore[union-attr, arg-type]


@given(fronts())
def test_darts_put_together_add_their_angles(piece: Piece) -> None:
    split = swung(piece, Form.DART, share=0.5, target="armhole", place=at(0.5))
    angles = list(map(dart_angle, split.darts))
    joined = swung(split, Form.DART, target="bust-dart-into-armhole")
    (dart,) = joined.darts
    assert dart.name == "bust-dart-into-armhole"
    assert dart_angle(dart) == pytest.approx(sum(angles), abs=1e-12)
    assert area(joined) == pytest.approx(area(piece), abs=1e-4)
    is_whole(joined)


@given(fronts())
def test_reference_lines_turn_with_the_cloth(piece: Piece) -> None:
    hip = line_named(piece, "hip-line")
    assert hip is not None
    as_dart, as_flare = swung(piece, Form.DART), swung(piece, Form.FLARE)
    there = line_named(as_dart, "hip-line")
    wider = line_named(as_flare, "hip-line")
    assert there is not None
    assert wider is not None
    assert line_length(as_dart, there) == pytest.approx(line_length(piece, hip), abs=1e-6)
    assert len(there.parts) == 2
    # Straight below the pivot the opening is a chord: 2 r sin(angle / 2).
    (dart,) = piece.darts
    reach = dart.pivot.y - hip.parts[0].start.y
    opening = 2.0 * reach * sin(0.5 * dart_angle(dart))
    if hip.parts[0].end.x > dart.pivot.x + 1.0:
        assert line_length(as_flare, wider) == pytest.approx(line_length(piece, hip) + opening, abs=1e-6)


@given(fronts(waist_dart=True))
def test_a_slash_does_not_cut_into_another_dart(piece: Piece) -> None:
    (dart,) = piece.two_pointed
    hem = edge(piece, "hem")
    pivot = piece.darts[0].pivot
    through = pivot + (dart.bottom - pivot) * ((hem.parts[0].start.y - pivot.y) / (dart.bottom.y - pivot.y))
    assume(through.x < hem.parts[0].end.x - 20.0)
    place = Place(number(hem.parts[0].length_at(through)), ORIGIN)
    into = SwingTarget(ref("hem"), place, Form.FLARE, number(1.0, length=False))
    step = Swing(ref("bust-dart"), (into,), ORIGIN)
    refusal = refused(swing.apply((piece,), step, evaluate))
    assert refusal.code_name == "slash-crosses-dart"
    assert dict(refusal.facts)["crossed"] == "waist-dart"
    freed = one(release.apply((piece,), Release((ref("waist-dart"),), ORIGIN), evaluate))
    assert isinstance(swing.apply((freed,), step, evaluate), tuple)


@given(fronts(waist_dart=True))
def test_a_released_dart_becomes_length(piece: Piece) -> None:
    altered = one(release.apply((piece,), Release((ref("bust-dart"), ref("waist-dart")), ORIGIN), evaluate))
    is_whole(altered)
    assert not altered.darts
    assert not altered.two_pointed
    mouth = dart_width(piece.darts[0])
    assert stitched_length(edge(altered, "side")) == pytest.approx(
        drawn_length(edge(piece, "side")), abs=1e-6
    )
    assert run_length(edge(altered, "side")) - run_length(edge(piece, "side")) == pytest.approx(
        mouth, abs=1e-6
    )
    assert [gone.name for gone in altered.gone] == ["bust-dart", "waist-dart"]
    assert all("line 41" in gone.how for gone in altered.gone)


def level(above: float) -> Level:
    return Level("hip-line", number(above), ORIGIN)


@given(fronts(), lengths(-150, 60))
def test_a_crop_keeps_what_is_above(piece: Piece, above: float) -> None:
    altered = one(crop.apply((piece,), Crop(WHOLE_PIECE, level(above), ORIGIN), evaluate))
    is_whole(altered)
    line = line_named(piece, "hip-line")
    assert line is not None
    height = line.parts[0].start.y + above
    assert bounds(altered)[0].y == pytest.approx(height, abs=1e-6)
    assert [e.name for e in altered.edges] == [e.name for e in piece.edges]
    for name in ("armhole", "shoulder", "neck"):
        assert edge(altered, name) == edge(piece, name)
    hem = edge(altered, "hem")
    assert hem.start == "hem-centre"
    assert hem.end == "hem-side"
    # The hem is the width of the piece at that level: by proportion on the straight side.
    side = edge(piece, "side").parts[0]
    share = (height - side.start.y) / (side.end.y - side.start.y)
    assert stitched_length(hem) == pytest.approx(side.start.x + share * (side.end.x - side.start.x), abs=1e-6)
    kept = line_named(altered, "hip-line") is not None
    assert kept == (above <= 0.0)
    assert ("hip-line" in {gone.name for gone in altered.gone}) != kept
    again = (
        one(crop.apply((altered,), Crop(WHOLE_PIECE, level(above), ORIGIN), evaluate)) if kept else altered
    )
    assert area(again) == pytest.approx(area(altered), abs=1e-3)


@given(fronts(straight_hem=True), lengths(-100, -20))
def test_a_crop_is_undone_by_lengthening(piece: Piece, above: float) -> None:
    cropped = one(crop.apply((piece,), Crop(WHOLE_PIECE, level(above), ORIGIN), evaluate))
    back = bounds(cropped)[0].y - bounds(piece)[0].y
    longer = one(lengthen.apply((cropped,), Lengthen(WHOLE_PIECE, number(back), "hem", ORIGIN), evaluate))
    is_whole(longer)
    assert area(longer) == pytest.approx(area(piece), abs=1e-3)
    for before in piece.edges:
        assert stitched_length(edge(longer, before.name)) == pytest.approx(stitched_length(before), abs=1e-6)
    shorter = one(
        lengthen.apply((longer,), Lengthen(WHOLE_PIECE, number(back), "hem", ORIGIN, shorten=True), evaluate)
    )
    assert stitched_length(edge(shorter, "hem")) == pytest.approx(
        stitched_length(edge(cropped, "hem")), abs=1e-6
    )
    assert stitched_length(edge(shorter, "side")) == pytest.approx(
        stitched_length(edge(cropped, "side")), abs=1e-6
    )


@given(fronts(), lengths(5, 120))
def test_lengthening_at_a_level_adds_that_much_to_both_sides(piece: Piece, by: float) -> None:
    longer = one(lengthen.apply((piece,), Lengthen(WHOLE_PIECE, number(by), level(0.0), ORIGIN), evaluate))
    is_whole(longer)
    for name in ("side", "centre"):
        before, after = edge(piece, name), edge(longer, name)
        assert stitched_length(after) == pytest.approx(stitched_length(before) + by, abs=1e-6)
    assert stitched_length(edge(longer, "hem")) == pytest.approx(
        stitched_length(edge(piece, "hem")), abs=1e-6
    )
    line = line_named(piece, "hip-line")
    assert line is not None
    assert area(longer) == pytest.approx(area(piece) + by * line_length(piece, line), abs=1e-3)
    assert line_named(longer, "hip-line") == line


@given(fronts(straight_hem=True), lengths(5, 120))
def test_shortening_at_a_level_takes_that_much_from_the_fold(piece: Piece, by: float) -> None:
    shorter = one(
        lengthen.apply(
            (piece,), Lengthen(WHOLE_PIECE, number(by), level(0.0), ORIGIN, shorten=True), evaluate
        )
    )
    is_whole(shorter)
    before, after = edge(piece, "centre"), edge(shorter, "centre")
    assert stitched_length(after) == pytest.approx(stitched_length(before) - by, abs=1e-6)
    assert len(after.parts[0].segments) == 1
    assert stitched_length(edge(shorter, "hem")) == pytest.approx(
        stitched_length(edge(piece, "hem")), abs=1e-6
    )
    side = edge(shorter, "side").parts[0]
    for a, b in zip(side.segments, side.segments[1:], strict=False):
        # Ends within a thousandth of a millimetre are put together, which turns a run of 50 mm by less than
        # this.
        assert abs(a.end_direction().angle_to(b.start_direction())) < 1e-4


@given(fronts(), lengths(3, 40), st.sampled_from(["lower", "raise"]))
def test_a_moved_neck_keeps_its_directions(piece: Piece, by: float, verb: str) -> None:
    step = MoveCorner(verb, (ref("neck"),), "centre-neck", number(by), ORIGIN)
    result = move_corner.apply((piece,), step, evaluate)
    if isinstance(result, Refusal):
        assert refused(result).code_name == "corner-would-turn-over"
        assert by > 20.0
        return
    altered = one(result)
    is_whole(altered)
    sign = -1.0 if verb == "lower" else 1.0
    before, after = edge(piece, "neck").parts[0], edge(altered, "neck").parts[0]
    assert after.end.y == pytest.approx(before.end.y + sign * by, abs=1e-9)
    assert after.end.x == pytest.approx(0.0, abs=1e-9)
    assert after.start_direction().cross(before.start_direction()) == pytest.approx(0.0, abs=1e-9)
    assert after.end_direction().cross(before.end_direction()) == pytest.approx(0.0, abs=1e-9)
    centre = stitched_length(edge(piece, "centre")) + sign * by
    assert stitched_length(edge(altered, "centre")) == pytest.approx(centre, abs=1e-6)
    others = {"neck", "centre"}
    assert all(edge(altered, e.name) == e for e in piece.edges if e.name not in others)


@given(fronts(), lengths(3, 25))
def test_lowered_and_raised_is_as_before(piece: Piece, by: float) -> None:
    down = MoveCorner("lower", (ref("neck"),), "centre-neck", number(by), ORIGIN)
    up = replace(down, verb="raise")
    lowered = move_corner.apply((piece,), down, evaluate)
    assert isinstance(lowered, tuple)
    back = one(move_corner.apply(lowered, up, evaluate))
    for before in piece.edges:
        assert stitched_length(edge(back, before.name)) == pytest.approx(stitched_length(before), abs=1e-6)
    assert area(back) == pytest.approx(area(piece), abs=1e-3)


@given(fronts(), lengths(3, 30))
def test_a_lowered_armhole_shortens_what_now_lies_outside(piece: Piece, by: float) -> None:
    step = MoveCorner("lower", (ref("armhole"),), "underarm", number(by), ORIGIN)
    result = move_corner.apply((piece,), step, evaluate)
    first_run = piece.edges[1].parts[-1].length()
    if by >= first_run:
        refusal = refused(result)
        assert refusal.code_name == "trim-too-long"
        assert dict(refusal.facts)["available"] == pytest.approx(first_run, abs=1e-6)
        return
    altered = one(result)
    is_whole(altered)
    side = stitched_length(edge(piece, "side")) - by
    assert stitched_length(edge(altered, "side")) == pytest.approx(side, abs=1e-6)


@given(fronts(), st.floats(0.0, 1.0))
def test_places_are_found_again(piece: Piece, share: float) -> None:
    for altered in (piece, swung(piece, Form.GATHERS)):
        for e in altered.edges:
            stitched = share * stitched_length(e)
            place = place_on_edge(e, stitched)
            assert stitched_at(e, place.part, place.along) == pytest.approx(stitched, abs=1e-6)


@given(fronts(), forms)
def test_a_record_tells_what_changed_and_nothing_else(piece: Piece, form: Form) -> None:
    altered = swung(piece, form)
    record = recorded(3, (piece,), (altered,))
    assert record.step == 3
    changed = {change.edge for change in record.edges}
    assert "hem" in changed
    assert changed <= {"hem", "side"}
    assert recorded(0, (altered,), (altered,)).edges == ()
    (dart,) = record.darts
    angle = dart_angle(piece.darts[0])
    assert dart.before == DartState("side", angle)
    if form is Form.DART:
        assert dart.after is not None
        assert dart.after.edge == "hem"
        assert dart.after.angle == pytest.approx(angle, abs=1e-12)
    else:
        assert dart.after is None


@given(fronts(waist_dart=True), forms)
def test_no_name_is_lost_without_a_word(piece: Piece, form: Form) -> None:
    freed = one(release.apply((piece,), Release((ref("waist-dart"),), ORIGIN), evaluate))
    altered = one(crop.apply((swung(freed, form),), Crop(WHOLE_PIECE, level(-100.0), ORIGIN), evaluate))
    told = {gone.name for gone in altered.gone}
    assert set(names_of(piece)) <= set(names_of(altered)) | told


@given(fronts(), forms, lengths(5, 60))
def test_a_mirrored_piece_alters_alike(piece: Piece, form: Form, by: float) -> None:
    """The outline then runs the other way round, and nothing may depend on that."""
    steps: list[Callable[[Piece], tuple[Piece, ...] | Refusal]] = [
        lambda p: (swung(p, form),),
        lambda p: (swung(p, form, share=0.5, target="armhole", place=at(0.4)),),
        lambda p: crop.apply((p,), Crop(WHOLE_PIECE, level(-by), ORIGIN), evaluate),
        lambda p: lengthen.apply((p,), Lengthen(WHOLE_PIECE, number(by), level(-5.0), ORIGIN), evaluate),
        lambda p: lengthen.apply((p,), Lengthen(WHOLE_PIECE, number(by), "hem", ORIGIN), evaluate),
        lambda p: lengthen.apply((p,), Lengthen(WHOLE_PIECE, number(by), "side", ORIGIN), evaluate),
        lambda p: lengthen.apply(
            (p,), Lengthen(WHOLE_PIECE, number(by), "hem", ORIGIN, shorten=True), evaluate
        ),
        lambda p: move_corner.apply(
            (p,), MoveCorner("widen", (ref("neck"),), "neck-point", number(5.0), ORIGIN), evaluate
        ),
    ]
    for step in steps:
        plain, other = step(piece), step(mirrored(piece))
        if isinstance(plain, Refusal):
            assert refused(other).code_name == plain.code_name
            continue
        one_way, back = one(plain), mirrored(one(other))
        is_whole(one_way)
        assert area(back) == pytest.approx(area(one_way), rel=1e-9)
        for e in one_way.edges:
            assert stitched_length(edge(back, e.name)) == pytest.approx(stitched_length(e), abs=1e-5)
        for line in one_way.lines:
            twin = line_named(back, line.name)
            assert twin is not None
            assert line_length(back, twin) == pytest.approx(line_length(one_way, line), abs=1e-5)


@given(fronts())
def test_without_a_fold_the_half_with_the_grain_stays(piece: Piece) -> None:
    free = replace(piece, fold=None)
    altered, as_before = swung(free, Form.DART), swung(piece, Form.DART)
    assert altered.edges == as_before.edges
    assert altered.grain == piece.grain
    # With neither, the larger half stays; the measures are the same either way.
    bare = swung(replace(free, grain=None), Form.DART)
    assert area(bare) == pytest.approx(area(piece), abs=1e-4)
    for e in piece.edges:
        assert stitched_length(edge(bare, e.name)) == pytest.approx(stitched_length(e), abs=1e-6)


@given(fronts(straight_hem=True), lengths(5, 60))
def test_a_moved_side_takes_the_dart_and_the_lines_along(piece: Piece, by: float) -> None:
    result = lengthen.apply((piece,), Lengthen(WHOLE_PIECE, number(by), "side", ORIGIN), evaluate)
    if isinstance(result, Refusal):
        # The short run above the dart has run out between the leg and the armhole.
        assert refused(result).code_name == "edge-cannot-move"
        assert by > 10.0
        return
    wider = one(result)
    (before,), (after,) = piece.darts, wider.darts
    assert after.pivot == before.pivot
    assert dart_angle(after) == pytest.approx(dart_angle(before), abs=1e-9)
    old, new = line_named(piece, "hip-line"), line_named(wider, "hip-line")
    assert old is not None
    assert new is not None
    side = edge(piece, "side").parts[0]
    slant = abs(side.start_direction().y)
    assert line_length(wider, new) == pytest.approx(line_length(piece, old) + by / slant, abs=1e-5)


@given(fronts(), st.sampled_from([-400.0, 1500.0]))
def test_a_level_outside_the_piece_is_refused(piece: Piece, above: float) -> None:
    facts = dict(refused(crop.apply((piece,), Crop(WHOLE_PIECE, level(above), ORIGIN), evaluate)).facts)
    low, high = bounds(piece)
    line = line_named(piece, "hip-line")
    assert line is not None
    assert facts["lowest"] == pytest.approx(low.y - line.parts[0].start.y - above, abs=0.1)
    assert facts["highest"] == pytest.approx(high.y - line.parts[0].start.y - above, abs=0.1)
