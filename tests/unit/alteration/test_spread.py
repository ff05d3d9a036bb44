"""Slash and spread, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from math import asin
from typing import TYPE_CHECKING

import pytest

from specc.alteration import spread
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import Form
from specc.model.reshaping import Spread
from specc.pattern.lookup import corner_named
from specc.pattern.piece import (
    Dart,
    Fold,
    FoldKind,
    Gathers,
    NamedPoint,
    Notch,
    ReferenceLine,
    TwoPointedDart,
)
from tests.altering import (
    ORIGIN,
    altered,
    at_length,
    at_share,
    edge,
    evaluate,
    length,
    part,
    polygon,
    rectangle,
    refused,
    sewn,
)

if TYPE_CHECKING:
    from specc.pattern.piece import (
        Piece,
    )

MIDDLE = at_share(0.5)


def step(by: float, and_by: float | None = None, form: Form = Form.FLARE, **changes: object) -> Spread:
    second = None if and_by is None else length(and_by)
    plain = Spread(part("a"), MIDDLE, part("c"), MIDDLE, length(by), second, form, ORIGIN)
    return replace(plain, **changes)  # type: ignore[arg-type]


SKIRT = rectangle(200.0, 300.0, fold="d")


def test_a_skirt_opened_along_its_length() -> None:
    """All that lies behind the slash moves by the amount, away from the fold; lines are drawn across."""
    piece = replace(
        SKIRT,
        lines=(ReferenceLine("hip-line", (Path.through(Point(0, 200), Point(200, 200)),)),),
        points=(NamedPoint("pocket", Point(150, 250)), NamedPoint("mark", Point(50, 250))),
        notches=(Notch("a", 50.0), Notch("a", 150.0), Notch("b", 100.0)),
        grain=Path.through(Point(30, 50), Point(30, 250)),
    )
    wider = altered(spread.apply((piece,), step(40.0), evaluate))
    assert corner_named(wider, "B") == Point(240, 0)
    assert corner_named(wider, "C") == Point(240, 300)
    assert wider.grain == piece.grain
    assert [p.at for p in wider.points] == [Point(190, 250), Point(50, 250)]
    assert [n.at for n in wider.notches] == [50.0, 190.0, 100.0]
    (line,) = wider.lines
    assert line.parts[0].end == Point(240, 200)
    assert line.parts[0].length() == pytest.approx(240.0)


def test_gathers_reach_over_the_inner_halves_of_the_two_runs() -> None:
    gathered = altered(spread.apply((SKIRT,), step(40.0, form=Form.GATHERS), evaluate))
    assert edge(gathered, "a").gathers == (Gathers(50.0, 150.0, 40.0),)
    assert edge(gathered, "c").gathers == (Gathers(50.0, 150.0, 40.0),)
    assert sewn(gathered, "a") == 200.0


def test_a_pleat_is_marked_where_it_begins() -> None:
    from_corners = step(
        60.0, form=Form.PLEAT, start_place=at_length(80.0, "B"), end_place=at_length(120.0, "D")
    )
    pleated = altered(spread.apply((SKIRT,), from_corners, evaluate))
    assert edge(pleated, "a").folds == (Fold(120.0, 60.0, FoldKind.PLEAT),)
    assert edge(pleated, "c").folds == (Fold(80.0, 60.0, FoldKind.PLEAT, onto_after=True),)


def test_a_second_slash_leaves_the_marks_of_the_first() -> None:
    once = spread.apply((SKIRT,), step(60.0, form=Form.PLEAT), evaluate)
    assert isinstance(once, tuple)
    nearer = step(30.0, start_place=at_length(40.0), end_place=at_length(160.0))
    twice = altered(spread.apply(once, nearer, evaluate))
    assert edge(twice, "a").folds == (Fold(130.0, 60.0, FoldKind.PLEAT),)
    assert sewn(twice, "a") == pytest.approx(230.0)


def test_hinged_at_the_waist_the_hem_opens() -> None:
    flared = altered(spread.apply((SKIRT,), step(40.0, 0.0), evaluate))
    waist = edge(flared, "c").parts[0]
    assert waist.length() == pytest.approx(200.0)
    assert any(s.end.distance(Point(100, 300)) < 1e-9 for s in waist.segments[:-1])
    at_hem = altered(spread.apply((SKIRT,), step(0.0, 40.0), evaluate))
    assert sewn(at_hem, "a") == pytest.approx(200.0)
    assert sewn(at_hem, "c") > 239.0


def test_without_a_fold_the_half_with_the_grain_stays() -> None:
    free = replace(SKIRT, fold=None, grain=Path.through(Point(150, 50), Point(150, 250)))
    wider = altered(spread.apply((free,), step(40.0), evaluate))
    assert corner_named(wider, "A") == Point(-40, 0)
    assert corner_named(wider, "B") == Point(200, 0)


def test_refusals() -> None:
    def why(changed: Spread) -> str:
        return refused(spread.apply((SKIRT, replace(SKIRT, name="back")), changed, evaluate))

    assert why(step(5.0, form=Form.DART)) == "form-not-for-verb"
    assert why(step(-5.0)) == "amount-not-positive"
    assert why(step(5.0, end=part("c", "back"))) == "slash-to-other-piece"
    assert why(step(5.0, end=part("a"), end_place=at_share(0.2))) == "slash-on-one-edge"
    assert why(step(5.0, end=part("d"))) == "slash-into-fold"
    assert why(step(5.0, end=part("yoke"))) == "part-gone"
    assert why(step(5.0, start=part("a", "sleeve"))) == "piece-gone"
    assert why(step(5.0, end_place=at_length(0.4))) == "slash-at-end"
    assert why(step(400.0, 20.0)) == "spread-too-far"


def test_hinged_at_a_corner() -> None:
    """From the middle of the hem to the upper corner: the side swings out about it and keeps its length."""
    to_corner = step(40.0, 0.0, end=part("C"), end_place=None)
    opened = altered(spread.apply((SKIRT,), to_corner, evaluate))
    assert corner_named(opened, "C") == Point(200, 300)
    assert edge(opened, "c") == SKIRT.edges[2]
    side = edge(opened, "b").parts[0]
    assert side.length() == pytest.approx(300.0)
    slash = Point(100, 0).distance(Point(200, 300))
    assert abs(Point(0, 1).angle_to(side.start_direction())) == pytest.approx(2.0 * asin(20.0 / slash))
    assert sewn(opened, "a") > 235.0
    from_corner = Spread(part("C"), None, part("a"), MIDDLE, length(0.0), length(40.0), Form.FLARE, ORIGIN)
    other = altered(spread.apply((SKIRT,), from_corner, evaluate))
    for each in opened.edges:
        assert sewn(other, each.name) == pytest.approx(sewn(opened, each.name), abs=1e-6)


def test_on_the_fold_the_grain_keeps_to_the_fold() -> None:
    """The half with the grain line swings out, and the line stays parallel to the fold."""
    marked = replace(SKIRT, grain=Path.through(Point(120, 50), Point(120, 250)))
    assert altered(spread.apply((marked,), step(60.0, 0.0), evaluate)).grain == marked.grain


def test_a_corner_is_no_place_to_open() -> None:
    def why(changed: Spread, piece: Piece = SKIRT) -> str:
        return refused(spread.apply((piece,), changed, evaluate))

    assert why(step(40.0, 5.0, end=part("C"), end_place=None)) == "corner-would-open"
    assert why(step(40.0, 0.0, end=part("B"), end_place=None)) == "slash-on-one-edge"
    assert why(step(40.0, 0.0, end=part("E"), end_place=None)) == "part-gone"
    marked = replace(SKIRT, points=(NamedPoint("pocket", Point(150, 250)),))
    assert why(step(40.0, 0.0, end=part("pocket"), end_place=None), marked) == "slash-begins-inside"


def test_what_stands_in_the_way_of_a_slash() -> None:
    dart = Dart("dart", "b", Point(200, 140), Point(200, 160), Point(80, 150))
    parts = (Path.through(Point(200, 0), dart.first), Path.through(dart.second, Point(200, 300)))
    side = replace(SKIRT.edges[1], parts=parts, darts=("dart",))
    darted = replace(SKIRT, edges=(SKIRT.edges[0], side, *SKIRT.edges[2:]), darts=(dart,))
    assert refused(spread.apply((darted,), step(5.0), evaluate)) == "slash-crosses-dart"
    inner = TwoPointedDart("waist-dart", Point(100, 200), Point(100, 100), Point(95, 150), Point(105, 150))
    assert refused(spread.apply((replace(SKIRT, two_pointed=(inner,)),), step(5.0), evaluate)) == (
        "slash-crosses-dart"
    )
    hollow = Path.through(Point(200, 0), Point(200, 50), Point(60, 150), Point(200, 250), Point(200, 300))
    dented = replace(
        SKIRT, edges=(SKIRT.edges[0], replace(SKIRT.edges[1], parts=(hollow,)), *SKIRT.edges[2:])
    )
    assert refused(spread.apply((dented,), step(5.0), evaluate)) == "slash-leaves-piece"


def test_a_half_must_not_be_turned_into_the_other() -> None:
    """A horseshoe opened across its bend, hinged inside, closes its arms; too far, and they meet."""
    outer = (Point(0, 0), Point(300, 0), Point(300, 300), Point(280, 300))
    inner = (Point(280, 20), Point(20, 20), Point(20, 300), Point(0, 300))
    shoe = polygon(*outer, *inner)
    bent = step(10.0, 0.0, end=part("e"))
    assert altered(spread.apply((shoe,), bent, evaluate)).name == "front"
    assert refused(spread.apply((shoe,), replace(bent, by=length(18.0)), evaluate)) == "would-cross-itself"
