"""An edge made two, on a piece that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from specc.alteration import divide
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import Level
from specc.model.dividing import Divide
from specc.pattern.lookup import corner_named
from specc.pattern.piece import Dart, Edge, Fold, FoldKind, Gathers, Gone, Notch, ReferenceLine
from tests.altering import (
    ORIGIN,
    altered,
    at_length,
    at_share,
    edge,
    evaluate,
    length,
    part,
    rectangle,
    refused,
    sewn,
)

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

HIP = ReferenceLine("hip-line", (Path.through(Point(0, 200), Point(200, 200)),))
# a bottom, b right, c top, d left: d runs from D at the top, (0, 300), down to A.
BACK = replace(rectangle(200.0, 300.0), lines=(HIP,), notches=(Notch("d", 40.0), Notch("d", 250.0)))


def step(at: Any, first: str = "zip-opening", second: str = "d", name: str = "d") -> Divide:
    return Divide((part(name),), at, (first, second), ORIGIN)


def divided(piece: Piece, asked: Divide) -> Piece:
    return altered(divide.apply((piece,), asked, evaluate))


def test_a_zip_opening_from_the_waist() -> None:
    """The notch that was at 250 of 300 lies 70 along what is left of the edge."""
    piece = divided(BACK, step(at_length(180.0)))
    assert [e.name for e in piece.edges] == ["a", "b", "c", "zip-opening", "d"]
    assert (sewn(piece, "zip-opening"), sewn(piece, "d")) == (180.0, 120.0)
    assert corner_named(piece, "zip-opening-d") == Point(0, 120)
    assert (edge(piece, "zip-opening").start, edge(piece, "d").end) == ("D", "A")
    assert piece.notches == (Notch("zip-opening", 40.0), Notch("d", 70.0))
    assert piece.gone == ()


def test_from_the_other_corner_the_first_name_lies_there() -> None:
    piece = divided(BACK, step(at_length(50.0, "A"), "slit", "d"))
    assert (edge(piece, "slit").end, sewn(piece, "slit")) == ("A", 50.0)
    assert (edge(piece, "d").start, sewn(piece, "d")) == ("D", 250.0)


def test_at_a_level_the_first_name_lies_above() -> None:
    above = Level("hip-line", None, ORIGIN)
    for name, down in (("d", True), ("b", False)):
        piece = divided(BACK, step(above, "upper", "lower", name))
        order = [e.name for e in piece.edges]
        assert (order.index("upper") < order.index("lower")) is down
        assert corner_named(piece, "upper-lower") == Point(0.0 if down else 200.0, 200.0)
        assert sewn(piece, "upper") == 100.0
        assert Gone(name, "divided into `upper` and `lower` on line 41") in piece.gone
    lower = divided(BACK, step(Level("hip-line", length(-50.0), ORIGIN), "upper", "lower"))
    assert sewn(lower, "upper") == 150.0


def test_a_dart_gathers_and_a_fold_go_with_their_part() -> None:
    dart = Dart("dart", "c", Point(120, 300), Point(100, 300), Point(110, 200))
    runs = (Path.through(Point(200, 300), dart.first), Path.through(dart.second, Point(0, 300)))
    waist = Edge(
        "c", "C", "D", runs, ("dart",), (Gathers(20.0, 60.0, 10.0),), (Fold(140.0, 6.0, FoldKind.PLEAT),)
    )
    piece = replace(BACK, edges=tuple(waist if e.name == "c" else e for e in BACK.edges), darts=(dart,))
    # Sewn, the waist is 180 - 10 - 6 long; the dart lies at 70, the middle of the gathers at 40.
    halves = divided(piece, step(at_length(40.0), "outer", "inner", "c"))
    assert edge(halves, "outer").gathers == (Gathers(20.0, 40.0, 5.0),)
    assert edge(halves, "inner").gathers == (Gathers(0.0, 20.0, 5.0),)
    assert edge(halves, "inner").folds == (Fold(100.0, 6.0, FoldKind.PLEAT),)
    assert (edge(halves, "outer").darts, edge(halves, "inner").darts) == ((), ("dart",))
    assert halves.darts[0].edge == "inner"
    assert sewn(halves, "outer") + sewn(halves, "inner") == 164.0


def test_two_edges_at_one_place() -> None:
    both = Divide((part("b"), part("c")), at_share(0.25), ("first", "c"), ORIGIN)
    # The second edge would give the name a second time.
    assert refused(divide.apply((BACK,), both, evaluate)) == "part-name-taken"
    other = replace(BACK, name="other")
    apart = Divide((part("d"), part("d", "other")), at_share(0.25), ("first", "d"), ORIGIN)
    result = divide.apply((BACK, other), apart, evaluate)
    assert isinstance(result, tuple)
    assert [sewn(piece, "first") for piece in result] == [75.0, 75.0]


def test_refusals() -> None:
    def why(asked: Divide, piece: Piece = BACK) -> str:
        return refused(divide.apply((piece,), asked, evaluate))

    assert why(step(at_length(180.0), name="collar")) == "part-gone"
    assert why(step(at_length(180.0), name="d"), replace(BACK, fold="d")) == "edge-on-fold"
    assert why(step(at_length(180.0), "a", "d")) == "part-name-taken"
    assert why(step(at_length(300.0))) == "divided-at-end"
    assert why(step(at_length(0.5))) == "divided-at-end"
    assert why(step(at_length(310.0))) == "place-beyond-edge"
    assert why(step(at_length(-1.0))) == "place-beyond-edge"
    assert why(step(Level("hip-line", None, ORIGIN), "x", "y", "a")) == "level-does-not-divide"
    assert why(step(Level("knee-line", None, ORIGIN))) == "part-gone"
    dart = Dart("dart", "c", Point(120, 300), Point(100, 300), Point(110, 200))
    runs = (Path.through(Point(200, 300), dart.first), Path.through(dart.second, Point(0, 300)))
    waist = Edge("c", "C", "D", runs, ("dart",))
    darted = replace(BACK, edges=tuple(waist if e.name == "c" else e for e in BACK.edges), darts=(dart,))
    assert why(step(at_length(80.0), "x", "y", "c"), darted) == "divided-at-end"
