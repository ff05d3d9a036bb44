"""Seam lines moved from one piece onto the other, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from math import asin, cos, tan

import pytest

from specc.alteration import move_seam
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.recutting import MoveSeam
from specc.pattern.lookup import corner_named, piece_named
from specc.pattern.measure import dart_angle
from specc.pattern.outline import area, mirrored
from specc.pattern.piece import Dart, Edge, Notch, Piece
from tests.altering import ORIGIN, edge, evaluate, is_whole, length, part, polygon, rectangle, refused, sewn

# The right side of the front is sewn to the left side of the back: `b` runs up, `d` runs down.
FRONT = rectangle(200.0, 300.0)
BACK = replace(rectangle(250.0, 300.0), name="back")
STEP = MoveSeam(part("b"), part("d", "back"), length(20.0), None, None, None, "front", ORIGIN)


def moved(step: MoveSeam = STEP, front: Piece = FRONT, back: Piece = BACK) -> tuple[Piece, Piece]:
    result = move_seam.apply((front, back), step, evaluate)
    assert not isinstance(result, Refusal), result
    for piece in result:
        is_whole(piece)
    new = piece_named(result, "front"), piece_named(result, "back")
    assert new[0] is not None
    assert new[1] is not None
    return new[0], new[1]


def darted(piece: Piece, name: str, first: Point, second: Point, pivot: Point) -> Piece:
    old = edge(piece, name)
    parts = (Path.through(old.parts[0].start, first), Path.through(second, old.parts[0].end))
    dart = Dart("dart", name, first, second, pivot)
    new = replace(old, parts=parts, darts=("dart",))
    return replace(piece, edges=tuple(new if e.name == name else e for e in piece.edges), darts=(dart,))


def test_what_the_front_loses_the_back_gains() -> None:
    marked = replace(BACK, notches=(Notch("d", 100.0), Notch("a", 50.0), Notch("c", 200.0)))
    front, back = moved(back=marked)
    assert corner_named(front, "B") == Point(180, 0)
    assert corner_named(back, "A") == Point(-20, 0)
    assert [area(front), area(back)] == pytest.approx([180.0 * 300.0, 270.0 * 300.0])
    assert sewn(front, "b") == sewn(back, "d") == pytest.approx(300.0)
    # `a` of the back begins at the seam, `c` ends there.
    assert [notch.at for notch in back.notches] == pytest.approx([100.0, 70.0, 200.0])


def test_toward_the_other_piece() -> None:
    front, back = moved(replace(STEP, toward="back"))
    assert [area(front), area(back)] == pytest.approx([220.0 * 300.0, 230.0 * 300.0])


def test_more_at_one_end_than_at_the_other() -> None:
    """The edge turns about its upper end: 20 square to it below, and as long as the slant is."""
    step = replace(STEP, at="B", and_by=length(0.0), and_at="C")
    front, back = moved(step)
    angle = asin(20.0 / 300.0)
    below = corner_named(front, "B")
    assert below is not None
    assert below.distance(Point(200.0 - 300.0 * tan(angle), 0.0)) < 1e-9
    assert corner_named(front, "C") == Point(200, 300)
    assert corner_named(back, "D") == Point(0, 300)
    for piece, name in ((front, "b"), (back, "d")):
        assert sewn(piece, name) == pytest.approx(300.0 / cos(angle))
    assert area(front) + area(back) == pytest.approx(450.0 * 300.0)
    swapped = replace(step, at="C", and_at="B", by=length(0.0), and_by=length(20.0))
    assert moved(swapped) == (front, back)


def test_a_slanted_neighbour_goes_over_as_it_is() -> None:
    """Cut off along a slanted hem, the seam is longer; the other piece gets that end of the hem."""
    corners = (Point(0, 0), Point(200, -50), Point(200, 300), Point(0, 300))
    tall = replace(rectangle(250.0, 350.0), name="back")
    front, back = moved(front=polygon(*corners), back=tall)
    assert sewn(front, "b") == sewn(back, "d") == pytest.approx(345.0)
    low = corner_named(back, "A")
    assert low is not None
    # Laid together their lower ends meet: the back's hem goes on up the slant, and then level.
    assert low.distance(Point(-20.0, 5.0)) < 1e-9
    assert area(front) + area(back) == pytest.approx(200.0 * 325.0 + 250.0 * 350.0)


@pytest.mark.parametrize("at", [150.0, 60.0])
def test_a_dart_of_the_piece_that_loses_gets_shorter_legs(at: float) -> None:
    front = darted(FRONT, "b", Point(200, at - 10), Point(200, at + 10), Point(80, at))
    back = replace(rectangle(250.0, 280.0), name="back")
    before = 280.0
    new, other = moved(front=front, back=back)
    (dart,) = new.darts
    assert dart_angle(dart) == pytest.approx(dart_angle(front.darts[0]))
    assert dart.first.distance(dart.pivot) == pytest.approx(dart.second.distance(dart.pivot))
    assert dart.first.distance(dart.pivot) < front.darts[0].first.distance(dart.pivot) - 19.0
    assert sewn(new, "b") - before == pytest.approx(sewn(other, "d") - before, abs=1e-6)


def test_a_dart_of_the_piece_that_gains_gets_longer_legs() -> None:
    back = darted(
        replace(rectangle(250.0, 320.0), name="back"), "d", Point(0, 170), Point(0, 150), Point(120, 160)
    )
    front, new = moved(back=back)
    (dart,) = new.darts
    assert dart_angle(dart) == pytest.approx(dart_angle(back.darts[0]))
    assert dart.first.distance(dart.pivot) == pytest.approx(dart.second.distance(dart.pivot))
    assert dart.first.distance(dart.pivot) > back.darts[0].first.distance(dart.pivot) + 19.0
    assert sewn(new, "d") == pytest.approx(sewn(front, "b"), abs=1e-6)


def test_an_outline_travelled_the_other_way_makes_no_difference() -> None:
    """A mirrored back has its seam on the right; laid to the front it is turned about."""
    _, plain = moved()
    _, turned = moved(back=mirrored(BACK))
    assert area(turned) == pytest.approx(area(plain))
    assert [sewn(turned, e.name) for e in turned.edges] == pytest.approx(
        [sewn(plain, e.name) for e in plain.edges]
    )
    corner = corner_named(turned, "A")
    assert corner is not None
    assert corner.distance(Point(20, 0)) < 1e-9


def test_a_fold_beside_the_seam_stays_straight() -> None:
    """A waist between bodice and skirt, both on the fold: the fold of the one gets longer by the other's."""
    bodice = replace(rectangle(200.0, 400.0, fold="d"), name="bodice")
    skirt = replace(rectangle(200.0, 600.0, fold="d"), name="skirt")
    step = replace(
        STEP, first=part("a", "bodice"), second=part("c", "skirt"), by=length(30.0), toward="bodice"
    )
    result = move_seam.apply((bodice, skirt), step, evaluate)
    assert isinstance(result, tuple)
    assert [sewn(piece, "d") for piece in result] == pytest.approx([370.0, 630.0])
    corners = (Point(0, 0), Point(200, 0), Point(200, 400), Point(-40, 400))
    slanted = replace(polygon(*corners, fold="d"), name="bodice")
    assert refused(move_seam.apply((slanted, skirt), step, evaluate)) == "fold-would-bend"


def test_refusals() -> None:
    def why(step: MoveSeam, front: Piece = FRONT, back: Piece = BACK) -> str:
        return refused(move_seam.apply((front, back), step, evaluate))

    assert why(replace(STEP, by=length(-1.0))) == "amount-not-positive"
    assert why(replace(STEP, by=length(190.0)), back=replace(BACK, fold="d")) == "edge-on-fold"
    assert why(replace(STEP, by=length(210.0))) == "edge-cannot-move"
    assert why(replace(STEP, at="A", and_by=length(0.0), and_at="C")) == "not-a-corner-of-edge"
    assert why(replace(STEP, first=part("yoke"))) == "part-gone"
    assert why(replace(STEP, second=part("d", "sleeve"))) == "piece-gone"
    deep = darted(FRONT, "b", Point(200, 140), Point(200, 160), Point(185, 150))
    assert why(STEP, front=deep) == "seam-through-dart"
    tall = replace(rectangle(250.0, 360.0), name="back")
    wide = darted(tall, "d", Point(0, 190), Point(0, 130), Point(100, 160))
    assert why(STEP, back=wide) == "seam-sides-unlike"
    assert moved(replace(STEP, by=length(0.0))) == (FRONT, BACK)


def test_edges_of_two_runs_are_told_apart() -> None:
    """A lens of two edges: both neighbours of the seam are one edge, trimmed at both ends."""
    arc = Path.through(Point(0, 0), Point(-150, 150), Point(0, 300))
    lens = Piece(
        "front",
        "front",
        (
            Edge("b", "B", "C", (Path.through(Point(0, 0), Point(0, 300)),)),
            Edge("e", "C", "B", (arc.reversed(),)),
        ),
    )
    front, back = moved(front=lens)
    assert sewn(front, "b") == pytest.approx(260.0)
    assert sewn(front, "e") == pytest.approx(sewn(lens, "e") - 2.0 * 20.0 * 2.0**0.5)
    assert sewn(back, "d") == pytest.approx(260.0)
    assert area(front) + area(back) == pytest.approx(area(lens) + area(BACK), rel=5e-3)
