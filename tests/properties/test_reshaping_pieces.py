"""What splitting, joining, unfolding, mirroring and facing must keep, on fronts of random dimensions."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specc.alteration import face, join, mirror, split, swing, unfold
from specc.alteration.edges import piece_backward
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.model.alteration import Form, Swing, SwingTarget
from specc.model.reshaping import Face, Join, Mirror, Split, SplitEnd, Unfold
from specc.pattern.lookup import line_named, names_of, point_named
from specc.pattern.measure import dart_angle, drawn_length, line_length, place_on_edge, two_pointed_outline
from specc.pattern.outline import area, mirrored, transformed
from specc.pattern.piece import NamedPoint, TwoPointedDart
from tests.altering import (
    ORIGIN,
    at_share,
    edge,
    evaluate,
    is_whole,
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

    from specc.pattern.piece import Edge, Piece

INTO = ("inner", "outer")
shares = st.floats(0.25, 0.75)
high_up = st.floats(0.45, 0.8)  # on the armhole, beyond its deepest curve
near_neck = st.floats(0.02, 0.12)  # on the fold, so that the line keeps clear of the bust dart


def on_edge(name: str, place: float) -> SplitEnd:
    return SplitEnd(part(name), at_share(place))


def at_dart(name: str) -> SplitEnd:
    return SplitEnd(part(name), None)


def cut(piece: Piece, start: SplitEnd, end: SplitEnd, *through: str) -> tuple[Piece, Piece] | Refusal:
    names = tuple(part(name) for name in through)
    step = Split(whole(), "seam", start, names, end, INTO, ORIGIN)
    result = split.apply((piece,), step, evaluate)
    if isinstance(result, Refusal):
        return result
    first, second = result
    return first, second


def two(result: tuple[Piece, Piece] | Refusal) -> tuple[Piece, Piece]:
    assert isinstance(result, tuple), result
    for piece in result:
        is_whole(piece)
        no_kink(edge(piece, "seam"))
    assert tuple(piece.name for piece in result) == INTO
    assert sewn(result[0], "seam") == pytest.approx(sewn(result[1], "seam"), abs=1e-6)
    return result


def made(result: tuple[Piece, ...] | Refusal) -> tuple[Piece, ...]:
    assert isinstance(result, tuple), result
    for piece in result:
        is_whole(piece)
    return result


def no_kink(line: Edge) -> None:
    for path in line.parts:
        for a, b in pairwise(path.segments):
            assert abs(a.end_direction().angle_to(b.start_direction())) < 2e-3


def princess(piece: Piece, *, over: float = 0.5) -> tuple[Piece, Piece] | Refusal:
    return cut(piece, on_edge("shoulder", over), on_edge("hem", 0.5), "bust-point")


@given(fronts(), high_up, near_neck)
def test_a_straight_split_parts_the_cloth_and_nothing_else(piece: Piece, high: float, low: float) -> None:
    first, second = two(cut(piece, on_edge("armhole", high), on_edge("centre", low)))
    assert area(first) + area(second) == pytest.approx(area(piece), abs=1e-3)
    # Both lie on the fold; the one with the first corner of the first edge, at the hem, comes first.
    assert (first.fold, second.fold) == ("centre", "centre")
    assert point_named(first, "hem-centre") == point_named(piece, "hem-centre")
    for name in ("armhole", "centre"):
        assert sewn(first, name) + sewn(second, name) == pytest.approx(sewn(piece, name), abs=1e-6)
    a, b = (
        place_on_edge(edge(piece, name), sewn(piece, name) * place).at
        for name, place in (("armhole", high), ("centre", low))
    )
    assert sewn(first, "seam") == pytest.approx(a.distance(b), abs=1e-6)
    assert {e.name for e in first.edges} | {e.name for e in second.edges} == {
        *(e.name for e in piece.edges),
        "seam",
    }
    for each in (first, second):
        assert {edge(each, "seam").start, edge(each, "seam").end} == {"seam-start", "seam-end"}
        told = {gone.name for gone in each.gone}
        assert set(names_of(piece)) <= set(names_of(each)) | told
        assert "front" in told
        assert all("line 41" in gone.how for gone in each.gone)
    assert sum(len(each.notches) for each in (first, second)) == len(piece.notches)


@given(fronts(), shares)
def test_a_princess_line_takes_up_the_bust_dart(piece: Piece, over: float) -> None:
    first, second = two(princess(piece, over=over))
    (dart,) = piece.darts
    assert first.fold == "centre"
    assert (second.fold, second.cut) == (None, 2)
    assert not first.darts
    assert not second.darts
    # What is lost is the wedge; where the edge is drawn over the kink, less than a rectangle of its zone.
    slack = 50.0 * 50.0 * dart_angle(dart) / 4.0
    assert area(first) + area(second) == pytest.approx(area(piece), abs=slack)
    assert sewn(second, "side") == pytest.approx(sewn(piece, "side"), abs=1e-3)
    assert sewn(second, "armhole") == pytest.approx(sewn(piece, "armhole"), abs=1e-6)
    for name in ("hem", "shoulder"):
        assert sewn(first, name) + sewn(second, name) == pytest.approx(sewn(piece, name), abs=1e-6)
    # The seam shapes what the dart shaped: the outer edge turns by the dart's angle more than the inner one.
    turning = [abs(edge(each, "seam").parts[0].turning()) for each in (first, second)]
    assert abs(turning[0] - turning[1]) <= dart_angle(dart) + 1e-6
    signed = edge(first, "seam").parts[0].turning() + edge(second, "seam").parts[0].turning()
    assert abs(signed) == pytest.approx(dart_angle(dart), abs=2e-3)
    # One notch on either edge at the bust point, at the same place as sewn.
    notches = [next(n.at for n in each.notches if n.edge == "seam") for each in (first, second)]
    total = sewn(first, "seam")
    assert notches[0] + notches[1] == pytest.approx(total, abs=1e-6)


@given(fronts(waist_dart=True))
def test_a_seam_takes_up_a_dart_on_its_way(piece: Piece) -> None:
    (inner,) = piece.two_pointed
    result = cut(piece, on_edge("shoulder", 0.5), on_edge("hem", 0.5), "bust-point", "waist-dart")
    if isinstance(result, Refusal):
        assert refused(result) in {"split-crosses-dart", "split-leaves-piece"}
        return
    first, second = two(result)
    assert not (*first.two_pointed, *second.two_pointed)
    opening = 0.5 * inner.first.distance(inner.second) * inner.top.distance(inner.bottom)
    slack = 50.0 * 50.0 * (dart_angle(piece.darts[0]) + 0.5) / 4.0
    assert area(first) + area(second) == pytest.approx(area(piece) - opening, abs=slack)
    # At the level of the dart's middle the two are as much narrower as it was wide there.
    assert [n.edge for n in first.notches].count("seam") == 3
    a, b = ([n.at for n in each.notches if n.edge == "seam"] for each in (first, second))
    for one, other in zip(sorted(a), sorted(sewn(second, "seam") - at for at in b), strict=True):
        assert one == pytest.approx(other, abs=1e-6)


def with_shoulder_dart(piece: Piece) -> Piece:
    """The bust dart swung to the shoulder."""
    target = SwingTarget(part("shoulder"), at_share(0.5), Form.DART, share(1.0))
    step = Swing(part("bust-dart"), (target,), ORIGIN)
    (swung,) = made(swing.apply((piece,), step, evaluate))
    return swung


@given(fronts())
def test_a_seam_from_a_dart_takes_in_its_legs(piece: Piece) -> None:
    swung = with_shoulder_dart(piece)
    (dart,) = swung.darts
    first, second = two(cut(swung, at_dart("bust-dart"), on_edge("hem", 0.5)))
    assert not (*first.darts, *second.darts)
    leg = dart.first.distance(dart.pivot)
    hem = place_on_edge(edge(swung, "hem"), 0.5 * sewn(swung, "hem")).at
    assert sewn(first, "seam") == pytest.approx(leg + dart.pivot.distance(hem), abs=1e-3)
    slack = 50.0 * 50.0 * dart_angle(dart) / 2.0
    assert area(first) + area(second) == pytest.approx(area(swung), abs=slack)
    signed = edge(first, "seam").parts[0].turning() + edge(second, "seam").parts[0].turning()
    assert abs(signed) == pytest.approx(dart_angle(dart), abs=2e-3)


@given(fronts(), high_up, near_neck)
def test_split_and_joined_is_as_before(piece: Piece, high: float, low: float) -> None:
    parts = two(cut(piece, on_edge("armhole", high), on_edge("centre", low)))
    step = Join(part("seam", "inner"), part("seam", "outer"), "front", ORIGIN)
    (front,) = made(join.apply(parts, step, evaluate))
    assert area(front) == pytest.approx(area(piece), abs=1e-3)
    assert front.fold in {"centre", "inner-centre"}
    assert sewn(front, front.fold or "") == pytest.approx(sewn(piece, "centre"), abs=1e-6)
    assert len(edge(front, front.fold or "").parts[0].segments) == 1
    armholes = sewn(front, "inner-armhole") + sewn(front, "outer-armhole")
    assert armholes == pytest.approx(sewn(piece, "armhole"), abs=1e-6)
    for name in ("hem", "side", "shoulder", "neck"):
        assert sewn(front, name) == pytest.approx(sewn(piece, name), abs=1e-6)
    for before in piece.lines:
        after = line_named(front, before.name)
        assert after is not None
        assert line_length(front, after) == pytest.approx(line_length(piece, before), abs=1e-5)
    assert front.darts == piece.darts
    assert set(names_of(piece)) <= set(names_of(front)) | {gone.name for gone in front.gone}


@given(fronts(), high_up, st.floats(-3.0, 3.0), lengths(-400, 400), st.sampled_from(["on", "back"]))
def test_pieces_join_wherever_and_whichever_way_they_were_drawn(
    piece: Piece, high: float, angle: float, far: float, travelled: str
) -> None:
    first, second = two(cut(piece, on_edge("armhole", high), on_edge("centre", 0.1)))
    moved = transformed(second, Rigid.turning(Point(far, 100.0), angle))
    moved = piece_backward(moved) if travelled == "back" else moved
    step = Join(part("seam", "inner"), part("seam", "outer"), "front", ORIGIN)
    (there,) = made(join.apply((first, second), step, evaluate))
    (again,) = made(join.apply((first, moved), step, evaluate))
    assert [e.name for e in again.edges] == [e.name for e in there.edges]
    assert area(again) == pytest.approx(area(piece), abs=1e-3)


@given(fronts(waist_dart=True))
def test_an_unfolded_piece_is_twice_the_half(piece: Piece) -> None:
    (front,) = made(unfold.apply((piece,), Unfold((whole(),), ORIGIN), evaluate))
    is_whole(front)
    assert front.fold is None
    assert area(front) == pytest.approx(2.0 * area(piece), abs=1e-3)
    for name in ("hem", "neck"):
        assert sewn(front, name) == pytest.approx(2.0 * sewn(piece, name), abs=1e-6)
        no_kink(edge(front, name))
    for name in ("side", "armhole", "shoulder"):
        for side in ("-right", "-left"):
            assert sewn(front, name + side) == pytest.approx(sewn(piece, name), abs=1e-6)
            assert drawn_length(edge(front, name + side)) == pytest.approx(
                drawn_length(edge(piece, name)), abs=1e-6
            )
    for before in piece.lines:
        after = line_named(front, before.name)
        assert after is not None
        assert line_length(front, after) == pytest.approx(2.0 * line_length(piece, before), abs=1e-5)
    assert {d.name for d in front.darts} == {"bust-dart-right", "bust-dart-left"}
    assert {d.name for d in front.two_pointed} == {"waist-dart-right", "waist-dart-left"}
    assert edge(front, "hem").start.endswith(("-left", "-right"))
    centre = line_named(front, "centre")
    assert centre is not None
    assert centre.parts == edge(piece, "centre").parts
    assert set(names_of(piece)) <= set(names_of(front)) | {gone.name for gone in front.gone}
    # Marks of the hem lie evenly to both sides; those of the sides at the same heights.
    whole_hem = sewn(front, "hem")
    at = sorted(n.at for n in front.notches if n.edge == "hem")
    assert at[0] + at[1] == pytest.approx(whole_hem, abs=1e-6)
    right, left = (
        place_on_edge(edge(front, n.edge), n.at).at
        for name in ("side-right", "side-left")
        for n in front.notches
        if n.edge == name
    )
    assert (right.x, right.y) == pytest.approx((-left.x, left.y), abs=1e-6)


@given(fronts(waist_dart=True), st.integers(1, 5))
def test_mirrored_twice_is_as_before(piece: Piece, times: int) -> None:
    some = replace(piece, cut=times)
    kept, copy = made(mirror.apply((some,), Mirror(whole(), "other", ORIGIN), evaluate))
    assert kept.cut + copy.cut == max(2, times)
    assert area(copy) == pytest.approx(area(piece), rel=1e-12)
    assert replace(mirrored(copy), name=piece.name, title=piece.title, cut=times) == some
    assert kept == replace(some, cut=kept.cut)


@given(fronts(), lengths(20, 60))
def test_a_facing_is_a_strip_along_its_edge(piece: Piece, by: float) -> None:
    result = face.apply((piece,), Face((part("neck"),), length(by), "facing", ORIGIN), evaluate)
    if isinstance(result, Refusal):
        assert refused(result) in {"facing-too-tight", "facing-too-deep"}
        return
    kept, facing = result
    assert kept == piece
    is_whole(facing)
    assert facing.fold == "centre"
    assert [e.name for e in facing.edges] == ["neck", "centre", "neck-inner", "shoulder"]
    assert sewn(facing, "neck") == pytest.approx(sewn(piece, "neck"), abs=1e-6)
    # The neck stands square to the shoulder and to the fold, so both ends are as long as the facing is deep.
    for name in ("centre", "shoulder"):
        assert sewn(facing, name) == pytest.approx(by, abs=2e-3)
    turn = abs(edge(piece, "neck").parts[0].turning())
    long = sewn(piece, "neck")
    assert sewn(facing, "neck-inner") == pytest.approx(long + turn * by, abs=0.02)
    assert by * long < area(facing) < by * (long + turn * by)
    assert area(facing) == pytest.approx(by * (long + 0.5 * turn * by), rel=1e-4)


@given(fronts(), lengths(20, 45))
def test_a_facing_closes_darts(piece: Piece, by: float) -> None:
    """With the dart in the shoulder, a facing of shoulder and neck has none."""
    swung = with_shoulder_dart(piece)
    step = Face((part("shoulder"),), length(by), "facing", ORIGIN)
    result = face.apply((swung,), step, evaluate)
    if isinstance(result, Refusal):
        assert refused(result) in {"facing-too-tight", "facing-too-deep"}
        return
    facing = result[1]
    is_whole(facing)
    assert not facing.darts
    assert sewn(facing, "shoulder") == pytest.approx(sewn(swung, "shoulder"), abs=1e-6)
    assert area(facing) == pytest.approx(area_of_shoulder_facing(piece, by), rel=0.02)


def area_of_shoulder_facing(piece: Piece, by: float) -> float:
    """The same facing on the piece with the dart still in the side, where the shoulder is straight."""
    _, facing = made(face.apply((piece,), Face((part("shoulder"),), length(by), "facing", ORIGIN), evaluate))
    return area(facing)


@given(fronts(), shares, lengths(20, 50))
@settings(max_examples=30)
def test_a_mirrored_piece_reshapes_alike(piece: Piece, place: float, by: float) -> None:
    """The outline then runs the other way round, and nothing may depend on that."""
    steps: list[Callable[[Piece], tuple[Piece, ...] | Refusal]] = [
        lambda p: princess(p, over=place),
        lambda p: cut(p, on_edge("armhole", place), on_edge("centre", 0.1)),
        lambda p: cut(with_shoulder_dart(p), at_dart("bust-dart"), on_edge("hem", place)),
        lambda p: unfold.apply((p,), Unfold((whole(),), ORIGIN), evaluate),
        lambda p: face.apply((p,), Face((part("neck"),), length(by), "facing", ORIGIN), evaluate),
        lambda p: face.apply(
            (p,), Face((part("armhole"), part("shoulder")), length(by), "facing", ORIGIN), evaluate
        ),
    ]
    for step in steps:
        plain, other = step(piece), step(mirrored(piece))
        if isinstance(plain, Refusal):
            assert refused(plain) == refused(other)
            continue
        assert isinstance(other, tuple)
        for one_way, back in zip(plain, other, strict=True):
            is_whole(one_way)
            assert area(back) == pytest.approx(area(one_way), rel=1e-9)
            assert [e.name for e in back.edges] == [e.name for e in one_way.edges]
            for e in one_way.edges:
                assert sewn(back, e.name) == pytest.approx(sewn(one_way, e.name), abs=1e-5)
            for line in one_way.lines:
                twin = line_named(back, line.name)
                assert twin is not None
                assert line_length(back, twin) == pytest.approx(line_length(one_way, line), abs=1e-5)


@given(fronts(), lengths(3, 60))
def test_a_dart_beside_the_line_is_refused_with_its_distance(piece: Piece, off: float) -> None:
    """Moving a dart onto the line would change what it shapes: nobody does that unasked."""
    (dart,) = piece.darts
    beside = NamedPoint("beside", dart.pivot + Point(off, 0.0))
    marked = replace(piece, points=(*piece.points, beside))
    result = cut(marked, on_edge("shoulder", 0.5), on_edge("hem", 0.5), "beside")
    if isinstance(result, tuple):
        # The line passed the pivot by on the inner side, and the dart stays a dart.
        assert sum(len(each.darts) for each in result) == 1
        return
    assert refused(result) in {"split-crosses-dart", "split-leaves-piece"}
    if result.code_name == "split-crosses-dart":
        distance = dict(result.facts)["distance"]
        assert isinstance(distance, float)
        assert 0.0 < distance <= hypot(off, 0.0) + 1e-6


@given(fronts())
def test_a_dart_whose_points_the_line_meets_by_chance_is_taken_up(piece: Piece) -> None:
    """A straight line through both ends of a dart inside needs no mention of it."""
    shoulder = place_on_edge(edge(piece, "shoulder"), 0.5 * sewn(piece, "shoulder")).at
    hem = place_on_edge(edge(piece, "hem"), 0.5 * sewn(piece, "hem")).at
    way = Path.through(shoulder, hem)
    top, middle, bottom = (way.point_at(way.length() * share) for share in (0.55, 0.65, 0.75))
    side = way.start_direction().left() * 8.0
    inner = TwoPointedDart("waist-dart", top, bottom, middle + side, middle - side)
    bare = replace(piece, two_pointed=(inner,))
    (pivot,) = (dart.pivot for dart in piece.darts)
    assume(way.distance_to(pivot) > 1.0)
    result = cut(bare, on_edge("shoulder", 0.5), on_edge("hem", 0.5))
    if isinstance(result, Refusal):
        assert refused(result) == "split-crosses-dart"
        assert dict(result.facts)["dart"] == "bust-dart"
        return
    first, second = two(result)
    assert not (*first.two_pointed, *second.two_pointed)
    halves = Path.through(top, middle + side, bottom).length()
    outline = two_pointed_outline(inner)
    assert outline.length() == pytest.approx(2.0 * halves, abs=1e-9)
    assert sewn(first, "seam") == pytest.approx(way.length() - 0.2 * way.length() + halves, abs=1e-6)
