"""Unfolding, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import unfold
from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Unfold
from specc.pattern.lookup import line_named, point_named
from specc.pattern.outline import area
from specc.pattern.piece import (
    Dart,
    Edge,
    Fold,
    FoldKind,
    Gathers,
    NamedPoint,
    Notch,
    Piece,
    ReferenceLine,
)
from tests.altering import ORIGIN, edge, evaluate, is_whole, part, polygon, rectangle, refused, sewn, whole

if TYPE_CHECKING:
    from specc.alteration.refusal import Refusal

# Bottom a, right side b, a slanting top c, the fold d on the left.
HALF = polygon(Point(0, 0), Point(200, 0), Point(200, 300), Point(0, 250), fold="d")


def unfolded(piece: Piece) -> tuple[Piece, ...] | Refusal:
    return unfold.apply((piece,), Unfold((whole(),), ORIGIN), evaluate)


def one(result: tuple[Piece, ...] | Refusal) -> Piece:
    assert isinstance(result, tuple), result
    (piece,) = result
    is_whole(piece)
    return piece


def test_what_runs_across_the_fold_is_one_edge_and_what_does_not_is_two() -> None:
    front = one(unfolded(HALF))
    assert [(e.name, e.start, e.end) for e in front.edges] == [
        ("a", "B-left", "B-right"),
        ("b-right", "B-right", "C-right"),
        ("c-right", "C-right", "D"),
        ("c-left", "D", "C-left"),
        ("b-left", "C-left", "B-left"),
    ]
    assert (front.fold, front.cut) == (None, 1)
    assert area(front) == pytest.approx(2.0 * area(HALF))
    assert edge(front, "a").parts == (Path.through(Point(-200, 0), Point(200, 0)),)
    # The fold stays as a line, and the corner that is none any more as a point.
    centre = line_named(front, "d")
    assert centre is not None
    assert centre.parts == (Path.through(Point(0, 250), Point(0, 0)),)
    assert point_named(front, "A") == Point(0, 0)
    assert {(gone.name, gone.how) for gone in front.gone} == {
        ("d", "unfolded on line 41 and is a reference line now"),
        ("b", "unfolded into `b-right` and `b-left` on line 41"),
        ("c", "unfolded into `c-right` and `c-left` on line 41"),
        ("B", "unfolded into `B-right` and `B-left` on line 41"),
        ("C", "unfolded into `C-right` and `C-left` on line 41"),
    }


def test_what_lies_on_the_piece_is_there_twice_but_on_the_fold_once() -> None:
    piece = replace(
        HALF,
        lines=(
            ReferenceLine("hip", (Path.through(Point(0, 200), Point(200, 200)),)),
            ReferenceLine("knee", (Path.through(Point(200, 100), Point(0, 100)),)),
            ReferenceLine("pocket", (Path.through(Point(100, 50), Point(150, 50)),)),
            ReferenceLine("middle", (Path.through(Point(0, 50), Point(0, 90)),)),
        ),
        points=(NamedPoint("mark", Point(150, 50)), NamedPoint("navel", Point(0, 120))),
        notches=(Notch("a", 50.0), Notch("b", 100.0)),
        grain=Path.through(Point(30, 50), Point(30, 250)),
    )
    front = one(unfolded(piece))
    assert {line.name: line.parts for line in front.lines} == {
        "hip": (Path.through(Point(-200, 200), Point(200, 200)),),
        "knee": (Path.through(Point(200, 100), Point(-200, 100)),),
        "pocket-right": (Path.through(Point(100, 50), Point(150, 50)),),
        "pocket-left": (Path.through(Point(-100, 50), Point(-150, 50)),),
        "middle": (Path.through(Point(0, 50), Point(0, 90)),),
        "d": (Path.through(Point(0, 250), Point(0, 0)),),
    }
    assert {point.name: point.at for point in front.points} == {
        "mark-right": Point(150, 50),
        "mark-left": Point(-150, 50),
        "navel": Point(0, 120),
        "A": Point(0, 0),
    }
    assert set(front.notches) == {
        Notch("a", 150.0),
        Notch("a", 250.0),
        Notch("b-right", 100.0),
        Notch("b-left", 200.0),
    }
    assert front.grain == piece.grain


def test_darts_gathers_and_folds_are_mirrored() -> None:
    bottom = Edge(
        "a",
        "A",
        "B",
        (Path.through(Point(0, 0), Point(60, 0)), Path.through(Point(80, 0), Point(200, 0))),
        ("dart",),
        gathers=(Gathers(100.0, 120.0, 10.0),),
        folds=(Fold(130.0, 20.0, FoldKind.TUCK),),
    )
    dart = Dart("dart", "a", Point(60, 0), Point(80, 0), Point(70, 90))
    front = one(unfolded(replace(HALF, edges=(bottom, *HALF.edges[1:]), darts=(dart,))))
    # 180 of cloth on each half less 30: 150 as sewn on each, counted from the left.
    hem = edge(front, "a")
    assert sewn(front, "a") == pytest.approx(300.0)
    assert hem.darts == ("dart-left", "dart-right")
    assert hem.gathers == (Gathers(30.0, 50.0, 10.0), Gathers(250.0, 270.0, 10.0))
    assert [fold.at for fold in hem.folds] == [20.0, 280.0]
    assert {dart.name: (dart.edge, dart.pivot) for dart in front.darts} == {
        "dart-right": ("a", Point(70, 90)),
        "dart-left": ("a", Point(-70, 90)),
    }


def test_half_a_circle_becomes_a_circle() -> None:
    """One edge and the fold: the edge goes all round from one corner to itself."""
    round_edge = arc(Point(0, -100), Point(0, 0), 3.141592653589793)
    round_edge = round_edge.between_points(Point(0, -100), Point(0, 100))
    half = Piece(
        "front",
        "front",
        (
            Edge("rim", "low", "high", (round_edge,)),
            Edge("fold", "high", "low", (Path.through(Point(0, 100), Point(0, -100)),)),
        ),
        fold="fold",
    )
    disc = one(unfolded(half))
    (rim,) = disc.edges
    assert (rim.name, rim.start, rim.end) == ("rim", "low", "low")
    assert area(disc) == pytest.approx(3.141592653589793 * 10_000.0, rel=1e-5)


@pytest.mark.parametrize(
    ("reason", "piece"),
    [
        ("not-on-fold", replace(HALF, fold=None)),
        ("part-name-taken", replace(HALF, points=(NamedPoint("b-left", Point(9, 9)),))),
        (
            "dart-on-fold",
            replace(
                rectangle(200, 300, fold="d"),
                edges=(
                    *rectangle(200, 300).edges[:3],
                    Edge(
                        "d",
                        "D",
                        "A",
                        (
                            Path.through(Point(0, 300), Point(0, 200)),
                            Path.through(Point(0, 180), Point(0, 0)),
                        ),
                        ("dart",),
                    ),
                ),
                darts=(Dart("dart", "d", Point(0, 200), Point(0, 180), Point(90, 190)),),
            ),
        ),
    ],
)
def test_refusals(reason: str, piece: Piece) -> None:
    assert refused(unfolded(piece)) == reason


def test_a_piece_that_is_gone() -> None:
    step = Unfold((whole("back"),), ORIGIN)
    assert refused(unfold.apply((HALF,), step, evaluate)) == "piece-gone"
    assert part("a").name == "a"
