"""Facings, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specc.alteration import face
from specc.alteration.refusal import Refusal
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Face
from specc.pattern.outline import area
from specc.pattern.piece import Dart, Edge, Gathers, Notch, Piece, TwoPointedDart
from tests.altering import ORIGIN, edge, evaluate, is_whole, length, part, polygon, rectangle, refused, sewn

SKIRT = replace(
    rectangle(200.0, 300.0, fold="d"),
    notches=(Notch("c", 40.0), Notch("b", 20.0)),
    grain=Path.through(Point(30, 50), Point(30, 250)),
)


def faced(piece: Piece, by: float, *edges: str) -> tuple[Piece, ...] | Refusal:
    step = Face(tuple(part(name) for name in edges), length(by), "facing", ORIGIN)
    return face.apply((piece,), step, evaluate)


def facing(piece: Piece, by: float, *edges: str) -> Piece:
    result = faced(piece, by, *edges)
    assert isinstance(result, tuple), result
    kept, new = result
    assert kept == piece
    is_whole(new)
    return new


def test_a_waist_facing_on_the_fold() -> None:
    new = facing(SKIRT, 60.0, "c")
    assert (new.name, new.title, new.fold, new.cut) == ("facing", "facing", "d", 1)
    assert [(e.name, e.start, e.end) for e in new.edges] == [
        ("c", "C", "D"),
        ("d", "D", "c-inner-start"),
        ("c-inner", "c-inner-start", "c-inner-end"),
        ("b", "c-inner-end", "C"),
    ]
    assert [sewn(new, n) for n in ("c", "d", "c-inner", "b")] == pytest.approx([200.0, 60.0, 200.0, 60.0])
    assert area(new) == pytest.approx(12_000.0)
    assert new.notches == (Notch("c", 40.0),)
    assert new.grain == Path.through(Point(100, 260), Point(100, 280))


def test_off_the_fold_it_is_cut_twice() -> None:
    assert (facing(SKIRT, 60.0, "b").fold, facing(SKIRT, 60.0, "b").cut) == (None, 2)


def test_round_corners_of_the_piece() -> None:
    """Inside a convex corner the copies are cut at each other, at a hollow one they go on until they meet."""
    new = facing(SKIRT, 30.0, "b", "c")
    assert [e.name for e in new.edges] == ["b", "c", "d", "b-inner", "a"]
    assert sewn(new, "b-inner") == pytest.approx(170.0 + 270.0)
    assert area(new) == pytest.approx(200.0 * 300.0 - 170.0 * 270.0)
    # The edge named first gives the name, whatever the order of the outline.
    assert [e.name for e in facing(SKIRT, 30.0, "c", "b").edges][3] == "c-inner"
    hollow = polygon(
        Point(0, 0), Point(300, 0), Point(300, 300), Point(200, 300), Point(200, 200), Point(0, 200)
    )
    around = facing(hollow, 30.0, "d", "e")
    assert sewn(around, "d-inner") == pytest.approx(130.0 + 230.0)


def test_ends_run_along_slanting_neighbours() -> None:
    """Sides that lean out by 1 in 3: at a depth of 30 the facing is 20 wider than its edge."""
    slanting = polygon(Point(-100, 0), Point(300, 0), Point(200, 300), Point(0, 300))
    new = facing(slanting, 30.0, "c")
    assert sewn(new, "c-inner") == pytest.approx(220.0)
    assert area(new) == pytest.approx(30.0 * 210.0)


def darted(width: float = 20.0) -> Piece:
    """The waist of the skirt with a dart in its middle, 90 deep, toward the fold half of its width."""
    waist = Edge(
        "c",
        "C",
        "D",
        (
            Path.through(Point(200, 300), Point(100 + width / 2, 300)),
            Path.through(Point(100 - width / 2, 300), Point(0, 300)),
        ),
        ("dart",),
    )
    ends = Point(100 + width / 2, 300), Point(100 - width / 2, 300)
    return replace(
        SKIRT,
        edges=(*SKIRT.edges[:2], waist, SKIRT.edges[3]),
        darts=(Dart("dart", "c", *ends, Point(100, 210)),),
        notches=(),
    )


def test_darts_are_closed_and_the_fold_stays() -> None:
    new = facing(darted(), 60.0, "c")
    assert not new.darts
    assert sewn(new, "c") == pytest.approx(180.0, abs=1e-6)
    assert edge(new, "d").parts[0].start == Point(0, 300)
    # The far end turns up by the dart's angle; the inner edge loses what the dart took in there, 20/90 of 30.
    assert area(new) == pytest.approx(60.0 * (200.0 - 20.0 * 60.0 / 90.0), rel=5e-3)
    assert edge(new, "b").parts[0].start_direction().angle_to(Point(0, 1)) != 0.0


def test_a_dart_on_the_neighbour_is_closed_too() -> None:
    side = Edge(
        "b",
        "B",
        "C",
        (Path.through(Point(200, 0), Point(200, 260)), Path.through(Point(200, 280), Point(200, 300))),
        ("dart",),
    )
    piece = replace(
        SKIRT,
        edges=(SKIRT.edges[0], side, *SKIRT.edges[2:]),
        darts=(Dart("dart", "b", Point(200, 260), Point(200, 280), Point(120, 270)),),
        notches=(),
    )
    new = facing(piece, 60.0, "c")
    assert not new.darts
    assert sewn(new, "b") > 60.0
    assert sewn(new, "d") == pytest.approx(60.0)


ROUND = Piece(
    "front",
    "front",
    (
        Edge("arc", "P", "Q", (arc(Point(0, -50), Point(0, 0), 3.0),)),
        Edge("left", "Q", "R", (Path.through(arc(Point(0, -50), Point(0, 0), 3.0).end, Point(-200, 49)),)),
        Edge("far", "R", "S", (Path.through(Point(-200, 49), Point(-200, -50)),)),
        Edge("low", "S", "P", (Path.through(Point(-200, -50), Point(0, -50)),)),
    ),
)
GATHERED = replace(SKIRT.edges[2], gathers=(Gathers(0.0, 50.0, 20.0),))
FISH = TwoPointedDart("fish", Point(100, 280), Point(100, 100), Point(110, 200), Point(90, 200))


@pytest.mark.parametrize(
    ("reason", "result"),
    [
        ("piece-gone", faced(replace(SKIRT, name="back"), 30.0, "c")),
        ("amount-not-positive", faced(SKIRT, 0.0, "c")),
        ("part-gone", faced(SKIRT, 30.0, "x")),
        ("not-an-edge", faced(SKIRT, 30.0, "A")),
        ("face-along-fold", faced(SKIRT, 30.0, "d")),
        (
            "face-gathered",
            faced(replace(SKIRT, edges=(*SKIRT.edges[:2], GATHERED, SKIRT.edges[3])), 30.0, "c"),
        ),
        ("face-not-a-row", faced(replace(SKIRT, fold=None), 30.0, "a", "c")),
        ("face-not-a-row", faced(SKIRT, 30.0, "a", "b", "c")),
        ("facing-meets-dart", faced(replace(SKIRT, two_pointed=(FISH,)), 60.0, "c")),
        ("facing-meets-dart", faced(darted(), 250.0, "a")),
        ("facing-too-tight", faced(ROUND, 51.0, "arc")),
        ("facing-too-deep", faced(SKIRT, 301.0, "c")),
    ],
)
def test_refusals(reason: str, result: tuple[Piece, ...] | Refusal) -> None:
    assert refused(result) == reason


def test_what_only_other_pieces_can_spoil() -> None:
    step = Face((part("c"), part("a", "back")), length(30.0), "facing", ORIGIN)
    assert refused(face.apply((SKIRT,), step, evaluate)) == "face-other-piece"
    taken = replace(SKIRT, name="facing")
    step = Face((part("c"),), length(30.0), "facing", ORIGIN)
    assert refused(face.apply((SKIRT, taken), step, evaluate)) == "piece-name-taken"


def test_the_radius_is_told() -> None:
    result = faced(ROUND, 51.0, "arc")
    assert isinstance(result, Refusal)
    assert dict(result.facts)["radius"] == pytest.approx(50.0, rel=0.01)


def test_a_facing_that_would_reach_out_of_the_piece() -> None:
    """A waist in the hollow of the side: the copy would lie outside."""
    waisted = polygon(
        Point(0, 0),
        Point(200, 0),
        Point(200, 200),
        Point(20, 250),
        Point(200, 300),
        Point(200, 400),
        Point(0, 400),
    )
    assert refused(faced(waisted, 120.0, "g")) == "facing-too-deep"
