"""Alterations after each other: what one has drawn the next can work on, or says why it cannot."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import VERBS
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import Crop, Form, Lengthen, Level
from specc.model.expression import PartRef
from specc.model.fullness import Gather, Lay, Pleat, Slashed
from specc.model.recutting import EndShift, Shape
from specc.model.reshaping import Face, RoundCorner, Scallop, Split, SplitEnd, Taper, Unfold
from specc.pattern.measure import stitched_length
from specc.pattern.outline import area
from specc.pattern.piece import ReferenceLine
from tests.altering import (
    ORIGIN,
    at_share,
    edge,
    evaluate,
    is_whole,
    length,
    part,
    rectangle,
    refused,
    sewn,
    whole,
)

if TYPE_CHECKING:
    from specc.model.alteration import Alteration
    from specc.pattern.piece import Piece

LINES = tuple(
    ReferenceLine(name, (Path.through(Point(0, at), Point(200, at)),))
    for name, at in (("low", 8.0), ("hip", 200.0))
)
# Hem `a` from A at the fold, side `b`, waist `c`, fold `d`.
SKIRT = replace(
    rectangle(200.0, 300.0, fold="d"), lines=LINES, grain=Path.through(Point(30, 50), Point(30, 250))
)
SCALLOPED_HEM = Scallop(part("a"), length(40.0), length(12.0), ORIGIN)
SCALLOPED_SIDE = Scallop(part("b"), length(50.0), length(10.0), ORIGIN)
ROUNDED = RoundCorner(whole(), "B", length(60.0), ORIGIN)
PLEATED = Pleat(
    Form.PLEAT, part("c"), 2, at_share(0.3), at_share(0.6), length(15.0), Lay.KNIFE, None, Slashed(), ORIGIN
)
GATHERED = Gather(part("c"), at_share(0.2), at_share(0.7), length(90.0), Slashed(), ORIGIN)
SHAPED = Shape((part("a"),), (EndShift("B", up=True, by=length(50.0)),), None, ORIGIN)


def crop(line: str) -> Crop:
    return Crop((whole(),), Level(line, None, ORIGIN), ORIGIN)


def run(*steps: Alteration, piece: Piece = SKIRT) -> tuple[Piece, ...]:
    pieces: tuple[Piece, ...] = (piece,)
    for step in steps:
        result = dict(VERBS)[type(step)](pieces, step, evaluate)
        assert not isinstance(result, Refusal), result
        pieces = result
        for each in pieces:
            is_whole(each)
    return pieces


def why(*steps: Alteration) -> str:
    *before, last = steps
    return refused(dict(VERBS)[type(last)](run(*before), last, evaluate))


def test_cropped_above_its_scallops_a_hem_is_straight_again() -> None:
    (skirt,) = run(SCALLOPED_HEM, crop("hip"))
    assert edge(skirt, "a").parts[0].length() == pytest.approx(200.0)
    assert area(skirt) == pytest.approx(200.0 * 100.0)


def test_a_scalloped_side_is_cropped_between_two_points_of_its_scallops() -> None:
    (whole_side,) = run(SCALLOPED_SIDE)
    (skirt,) = run(SCALLOPED_SIDE, crop("hip"))
    # Two of six scallops are left.
    assert sewn(skirt, "b") == pytest.approx(sewn(whole_side, "b") / 3.0, abs=1e-6)
    assert sewn(skirt, "a") == pytest.approx(200.0)


def test_a_crop_through_a_scallop_leaves_a_part_of_it() -> None:
    (skirt,) = run(SCALLOPED_SIDE, crop("low"))
    low = edge(skirt, "b").parts[0]
    assert low.start.y == pytest.approx(8.0)
    assert low.start.x > 200.0


def test_a_rounded_corner_is_faced_along_its_arc() -> None:
    """The facing ends on the waist as a strip as deep along hem, arc and side."""
    facing = Face((part("a"), part("b")), length(30.0), "facing", ORIGIN)
    skirt, faced = run(ROUNDED, facing)
    for name in ("a", "b"):
        assert sewn(faced, name) == pytest.approx(sewn(skirt, name), abs=1e-6)
    inner = edge(faced, "a-inner").parts[0]
    outer = Path((*edge(skirt, "a").parts[0].segments, *edge(skirt, "b").parts[0].segments))
    for share in (0.2, 0.5, 0.8):
        at = inner.point_at(inner.length() * share)
        assert outer.distance_to(at) == pytest.approx(30.0, abs=0.05)
    assert why(ROUNDED, replace(facing, by=length(70.0))) == "facing-too-tight"


def test_scallops_are_faced_as_deep_from_their_points() -> None:
    """Points turn outward: a facing of a scalloped edge needs to be drawn before, and scalloped like it."""
    facing = Face((part("a"),), length(60.0), "facing", ORIGIN)
    scallop_both = replace(SCALLOPED_HEM, edge=PartRef("facing", "a", ORIGIN))
    skirt, faced = run(facing, SCALLOPED_HEM, scallop_both)
    assert sewn(faced, "a") == pytest.approx(sewn(skirt, "a"), abs=1e-6)
    assert why(SCALLOPED_HEM, facing) == "facing-too-tight"


def test_a_shaped_hem_is_faced_and_unfolded() -> None:
    skirt, faced = run(SHAPED, Face((part("a"),), length(25.0), "facing", ORIGIN))
    assert sewn(faced, "a") == pytest.approx(sewn(skirt, "a"), abs=1e-6)
    (full,) = run(SHAPED, Unfold((whole(),), ORIGIN))
    assert area(full) == pytest.approx(2.0 * area(skirt), rel=1e-9)
    hems = [each for each in full.edges if each.name.startswith("a")]
    assert sum(map(stitched_length, hems)) == pytest.approx(2.0 * sewn(skirt, "a"), abs=1e-6)


def test_pleats_stay_when_the_piece_is_cut_below_them() -> None:
    (skirt,) = run(PLEATED, crop("hip"))
    assert sewn(skirt, "c") == pytest.approx(200.0)
    assert sewn(skirt, "a") == pytest.approx(260.0)
    (longer,) = run(PLEATED, Lengthen((whole(),), length(40.0), Level("hip", None, ORIGIN), ORIGIN))
    assert [fold.at for fold in edge(longer, "c").folds] == pytest.approx([60.0, 120.0])
    assert area(longer) == pytest.approx(260.0 * 340.0)


def test_unfolded_pleats_face_both_sides() -> None:
    """Each half keeps its pleats: they face the two sides, as the wearer has them."""
    (full,) = run(PLEATED, Unfold((whole(),), ORIGIN))
    folds = [(fold.at, fold.onto_after) for each in full.edges for fold in each.folds]
    assert len(folds) == 4
    assert sorted(onto for _, onto in folds) == [False, False, True, True]
    assert sum(stitched_length(e) for e in full.edges if e.folds) == pytest.approx(400.0)


def test_gathers_go_with_the_part_on_which_they_are() -> None:
    """Split through the gathers, either part keeps its share of them; taken in, they stay where they are."""
    yoke = Split(
        whole(),
        "panel",
        SplitEnd(part("c"), at_share(0.5)),
        (),
        SplitEnd(part("a"), at_share(0.5)),
        ("middle", "flank"),
        ORIGIN,
    )
    middle, flank = run(GATHERED, yoke)
    shares = [sum(g.amount for e in piece.edges for g in e.gathers) for piece in (middle, flank)]
    # Of the 100 that are gathered 40 lie on the half at the fold.
    assert shares == pytest.approx([90.0 * 0.4, 90.0 * 0.6])
    assert sewn(middle, "c") + sewn(flank, "c") == pytest.approx(200.0)
    (narrow,) = run(GATHERED, Taper((part("b"),), False, length(10.0), None, None, None, ORIGIN))
    (gathers,) = edge(narrow, "c").gathers
    assert (gathers.start, gathers.end) == pytest.approx((30.0, 130.0))
    assert sewn(narrow, "c") == pytest.approx(190.0)


def test_what_is_drawn_in_is_not_scalloped_shaped_or_faced() -> None:
    facing = Face((part("c"),), length(25.0), "facing", ORIGIN)
    assert why(PLEATED, replace(SCALLOPED_HEM, edge=part("c"))) == "edge-not-plain"
    assert why(GATHERED, facing) == "face-gathered"
    shaped = Shape((part("c"),), (EndShift("C", up=True, by=length(5.0)),), None, ORIGIN)
    assert why(GATHERED, shaped) == "edge-not-plain"
