"""Scallops, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specc.alteration import scallop
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Scallop
from specc.pattern.outline import bounds
from specc.pattern.piece import Dart, Fold, FoldKind, Gathers, Notch
from tests.altering import ORIGIN, altered, edge, evaluate, length, part, polygon, rectangle, refused, sewn

HEM = rectangle(200.0, 100.0, fold="d")


def step(every: float, by: float, name: str = "a") -> Scallop:
    return Scallop(part(name), length(every), length(by), ORIGIN)


@pytest.mark.parametrize(("every", "count"), [(50.0, 4), (45.0, 4), (60.0, 3), (500.0, 1), (199.0, 1)])
def test_as_many_as_come_nearest(every: float, count: int) -> None:
    cut = altered(scallop.apply((HEM,), step(every, 10.0), evaluate))
    path = edge(cut, "a").parts[0]
    parted = [s.end.x for s in path.segments if abs(s.end.y) < 1e-9]
    assert parted == pytest.approx([200.0 * (i + 1) / count for i in range(count)])
    assert bounds(cut)[0].y == pytest.approx(-10.0)


def test_notches_keep_their_scallop() -> None:
    marked = replace(HEM, notches=(Notch("a", 50.0), Notch("a", 75.0)))
    cut = altered(scallop.apply((marked,), step(50.0, 10.0), evaluate))
    whole = sewn(cut, "a")
    assert [n.at for n in cut.notches] == pytest.approx([whole / 4.0, whole * 3.0 / 8.0], abs=1e-6)


def test_refusals() -> None:
    def why(asked: Scallop) -> str:
        return refused(scallop.apply((HEM,), asked, evaluate))

    assert why(step(50.0, 10.0, "d")) == "edge-on-fold"
    assert why(step(50.0, 10.0, "cuff")) == "part-gone"
    assert why(step(0.0, 10.0)) == "amount-not-positive"
    assert why(step(50.0, -1.0)) == "amount-not-positive"
    assert why(step(50.0, 26.0)) == "scallop-too-deep"


def test_an_edge_that_is_drawn_in_is_not_scalloped() -> None:
    def why(**changes: object) -> str:
        changed = replace(HEM.edges[0], **changes)  # type: ignore[arg-type]
        piece = replace(HEM, edges=(changed, *HEM.edges[1:]))
        return refused(scallop.apply((piece,), step(50.0, 10.0), evaluate))

    assert why(gathers=(Gathers(20.0, 100.0, 30.0),)) == "edge-not-plain"
    assert why(folds=(Fold(20.0, 30.0, FoldKind.TUCK),)) == "edge-not-plain"
    dart = Dart("dart", "a", Point(90, 0), Point(110, 0), Point(100, 50))
    parts = (Path.through(Point(0, 0), dart.first), Path.through(dart.second, Point(200, 0)))
    assert why(parts=parts, darts=("dart",)) == "edge-not-plain"


def test_scallops_into_the_other_side_of_a_slit() -> None:
    slit = polygon(
        Point(0, 0),
        Point(95, 0),
        Point(95, 80),
        Point(103, 80),
        Point(103, 0),
        Point(200, 0),
        Point(200, 100),
        Point(0, 100),
    )
    assert refused(scallop.apply((slit,), step(30.0, 10.0, "b"), evaluate)) == "would-cross-itself"
    assert altered(scallop.apply((slit,), step(30.0, 5.0, "b"), evaluate)).edges[0] == slit.edges[0]
