"""Pleats and tucks along an edge, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from math import asin
from typing import TYPE_CHECKING

import pytest

from specc.alteration import pleat
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import Form
from specc.model.fullness import Lay, Pleat, Slashed
from specc.pattern.lookup import corner_named
from specc.pattern.measure import run_length
from specc.pattern.outline import area
from specc.pattern.piece import Dart, FoldKind, Notch, ReferenceLine
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
    from specc.model.alteration import Place
    from specc.pattern.piece import Piece

SKIRT = rectangle(200.0, 300.0, fold="d")  # the waist is `c`, from C at the side to D at the centre
PLEAT, TUCK = FoldKind.PLEAT, FoldKind.TUCK


def step(count: int, start: Place, end: Place | None, **changes: object) -> Pleat:
    plain = Pleat(Form.PLEAT, part("c"), count, start, end, length(10.0), Lay.KNIFE, None, Slashed(), ORIGIN)
    return replace(plain, **changes)  # type: ignore[arg-type]


THREE = step(3, at_share(0.2), at_share(0.6))


def laid(piece: Piece, name: str = "c") -> list[tuple[float, float, bool]]:
    return [(round(f.at, 9), round(f.amount, 9), f.onto_after) for f in edge(piece, name).folds]


def test_three_pleats_through_to_the_hem() -> None:
    """Each takes twice its depth; the waist stays as long as sewn, the hem grows, the fold stays."""
    marked = replace(
        SKIRT,
        notches=(Notch("c", 100.0), Notch("a", 20.0), Notch("a", 190.0)),
        lines=(ReferenceLine("hip-line", (Path.through(Point(0, 200), Point(200, 200)),)),),
    )
    pleated = altered(pleat.apply((marked,), THREE, evaluate))
    folds = edge(pleated, "c").folds
    assert [fold.at for fold in folds] == pytest.approx([40.0, 80.0, 120.0])
    assert [fold.amount for fold in folds] == pytest.approx([20.0] * 3)
    assert [fold.kind for fold in folds] == [PLEAT] * 3
    assert sewn(pleated, "c") == pytest.approx(200.0)
    assert run_length(edge(pleated, "c")) == pytest.approx(260.0)
    assert sewn(pleated, "a") == pytest.approx(260.0)
    assert area(pleated) == pytest.approx(260.0 * 300.0)
    corner = corner_named(pleated, "B")
    assert corner is not None
    assert corner.distance(Point(260, 0)) < 1e-9
    assert [notch.at for notch in pleated.notches] == pytest.approx([100.0, 20.0, 250.0])
    assert pleated.lines[0].parts[0].length() == pytest.approx(260.0)


def test_tucks_are_sewn_all_along() -> None:
    tucked = altered(pleat.apply((SKIRT,), replace(THREE, form=Form.TUCK), evaluate))
    assert sewn(tucked, "c") == pytest.approx(200.0)
    assert sewn(tucked, "a") == pytest.approx(200.0)
    assert run_length(edge(tucked, "a")) == pytest.approx(260.0)
    waist, hem = edge(tucked, "c").folds, edge(tucked, "a").folds
    assert [fold.kind for fold in (*waist, *hem)] == [TUCK] * 6
    # Seen along the hem, which runs the other way, the same fold faces the other way.
    assert [fold.onto_after for fold in hem] == [not fold.onto_after for fold in waist]
    assert sorted(200.0 - fold.at for fold in hem) == pytest.approx([fold.at for fold in waist])


def test_hinged_pleats_leave_the_hem_as_it_was() -> None:
    hinged = altered(pleat.apply((SKIRT,), replace(THREE, slashed=Slashed(hinged=True)), evaluate))
    assert run_length(edge(hinged, "a")) == pytest.approx(200.0)
    assert sewn(hinged, "c") == pytest.approx(200.0)
    side = edge(hinged, "b").parts[0]
    assert side.length() == pytest.approx(300.0)
    # Every slash of 300 opens by 20: the side has turned by the sum.
    turned = Point(0, 1).angle_to(side.start_direction())
    assert abs(turned) == pytest.approx(3.0 * 2.0 * asin(20.0 / 600.0), abs=1e-9)


@pytest.mark.parametrize(("corner", "onto_after"), [("C", True), ("D", False), (None, True)])
def test_a_knife_pleat_faces_the_corner_named(corner: str | None, onto_after: bool) -> None:  # noqa: FBT001
    """Not said, it is pressed toward the fold as a dart is, and faces the side."""
    pleated = altered(pleat.apply((SKIRT,), replace(THREE, toward=corner), evaluate))
    assert [fold.onto_after for fold in edge(pleated, "c").folds] == [onto_after] * 3


def test_a_box_pleat_and_an_inverted_one() -> None:
    one = step(1, at_share(0.5), None)
    box = altered(pleat.apply((SKIRT,), replace(one, lay=Lay.BOX), evaluate))
    assert laid(box) == [(90.0, 20.0, True), (110.0, 20.0, False)]
    inverted = altered(pleat.apply((SKIRT,), replace(one, lay=Lay.INVERTED), evaluate))
    assert laid(inverted) == [(100.0, 20.0, False), (100.0, 20.0, True)]
    for piece in (box, inverted):
        assert sewn(piece, "c") == pytest.approx(200.0)
        assert sewn(piece, "a") == pytest.approx(240.0)
        assert area(piece) == pytest.approx(240.0 * 300.0)
    tucked = replace(one, form=Form.TUCK, lay=Lay.INVERTED)
    assert laid(altered(pleat.apply((SKIRT,), tucked, evaluate)), "a") == [
        (100.0, 20.0, False),
        (100.0, 20.0, True),
    ]


def test_slashed_to_the_facing_place_of_an_edge() -> None:
    """At 30% of the waist from the side it comes to 30% of the hem from the side, hinged or not."""
    one = step(1, at_share(0.3), None)
    hinged = altered(pleat.apply((SKIRT,), replace(one, slashed=Slashed(part("a"), hinged=True)), evaluate))
    hem = edge(hinged, "a").parts[0]
    assert any(s.end.distance(Point(140, 0)) < 1e-9 for s in hem.segments[:-1])
    open_too = altered(pleat.apply((SKIRT,), replace(one, slashed=Slashed(part("a"))), evaluate))
    assert sewn(open_too, "a") == pytest.approx(220.0)


def test_a_slash_across_the_grain_is_laid_to_an_edge() -> None:
    """Along the side the grain leads nowhere; to the facing place of the other side the folds lie across."""
    free = rectangle(200.0, 300.0)
    along_side = replace(THREE, edge=part("b"))
    assert refused(pleat.apply((free,), along_side, evaluate)) == "edge-along-grain"
    across = altered(pleat.apply((free,), replace(along_side, slashed=Slashed(part("d"))), evaluate))
    assert sewn(across, "b") == pytest.approx(300.0)
    assert sewn(across, "d") == pytest.approx(360.0)
    assert area(across) == pytest.approx(200.0 * 360.0)


def test_with_a_slanted_hem_the_folds_keep_the_waist() -> None:
    corners = (Point(0, 0), Point(200, 40), Point(200, 300), Point(0, 300))
    edges = tuple(
        replace(old, parts=(Path.through(a, b),))
        for old, a, b in zip(SKIRT.edges, corners, corners[1:] + corners[:1], strict=True)
    )
    pleated = altered(pleat.apply((replace(SKIRT, edges=edges),), THREE, evaluate))
    assert sewn(pleated, "c") == pytest.approx(200.0)
    assert len(edge(pleated, "a").parts) == 1


def test_refusals() -> None:
    def why(changed: Pleat) -> str:
        return refused(pleat.apply((SKIRT,), changed, evaluate))

    assert why(replace(THREE, deep=length(0.0))) == "amount-not-positive"
    assert why(replace(THREE, edge=part("d"))) == "edge-on-fold"
    assert why(replace(THREE, edge=part("yoke"))) == "part-gone"
    assert why(replace(THREE, edge=part("c", "sleeve"))) == "piece-gone"
    assert why(replace(THREE, lay=Lay.BOX, deep=length(21.0))) == "pleats-too-close"
    assert why(replace(THREE, end=at_share(0.2))) == "pleats-too-close"
    assert why(replace(THREE, start=at_share(0.0))) == "slash-at-end"
    assert why(replace(THREE, start=at_length(210.0), end=at_length(260.0))) == "slash-at-end"
    assert why(replace(THREE, slashed=Slashed(part("d")))) == "slash-into-fold"
    assert why(replace(THREE, slashed=Slashed(part("c")))) == "slash-on-one-edge"
    assert why(replace(THREE, slashed=Slashed(part("z")))) == "part-gone"


def test_a_dart_in_the_way_is_named() -> None:
    dart = Dart("dart", "c", Point(130, 300), Point(110, 300), Point(100, 150))
    parts = (Path.through(Point(200, 300), dart.first), Path.through(dart.second, Point(0, 300)))
    waist = replace(SKIRT.edges[2], parts=parts, darts=("dart",))
    darted = replace(SKIRT, edges=(*SKIRT.edges[:2], waist, SKIRT.edges[3]), darts=(dart,))
    # At 78 from the centre the grain line passes the dart; at 105 it would cut into its legs.
    beside = altered(pleat.apply((darted,), step(1, at_length(60.0, "D"), None), evaluate))
    assert sewn(beside, "c") == pytest.approx(180.0)
    assert [d.name for d in beside.darts] == ["dart"]
    across = step(1, at_length(105.0, "D"), None)
    assert refused(pleat.apply((darted,), across, evaluate)) == "slash-crosses-dart"
