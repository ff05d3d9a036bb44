"""Darts that become ease, gathers, pleats or tucks, on a piece that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specc.alteration import sew_as
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import Form
from specc.model.reshaping import SewAs
from specc.pattern.piece import Dart, Edge, Notch, Piece, ReferenceLine, TwoPointedDart
from tests.altering import ORIGIN, altered, edge, evaluate, part, refused, sewn

DART = Dart("waist-dart", "waist", Point(90, 200), Point(110, 200), Point(100, 100))
# A skirt front on the fold, the waist at the top, run clockwise.
SKIRT = Piece(
    "front",
    "front",
    (
        Edge(
            "waist",
            "centre-waist",
            "side-waist",
            (Path.through(Point(0, 200), DART.first), Path.through(DART.second, Point(200, 200))),
            ("waist-dart",),
        ),
        Edge("side", "side-waist", "hem-side", (Path.through(Point(200, 200), Point(200, 0)),)),
        Edge("hem", "hem-side", "hem-centre", (Path.through(Point(200, 0), Point(0, 0)),)),
        Edge("centre", "hem-centre", "centre-waist", (Path.through(Point(0, 0), Point(0, 200)),)),
    ),
    darts=(DART,),
    lines=(
        ReferenceLine(
            "high-hip-line",
            (Path.through(Point(0, 150), Point(95, 150)), Path.through(Point(105, 150), Point(200, 150))),
        ),
    ),
    notches=(Notch("waist", 45.0), Notch("waist", 150.0)),
    fold="centre",
)


def sewn_as(form: Form) -> Piece:
    return altered(sew_as.apply((SKIRT,), SewAs((part("waist-dart"),), form, ORIGIN), evaluate))


@pytest.mark.parametrize("form", [Form.EASE, Form.GATHERS, Form.PLEAT, Form.TUCK])
def test_the_waist_stays_as_long_as_sewn(form: Form) -> None:
    skirt = sewn_as(form)
    assert sewn(skirt, "waist") == pytest.approx(180.0)
    assert [n.at for n in skirt.notches] == [45.0, 150.0]
    (line,) = skirt.lines
    assert line.parts == (Path.through(Point(0, 150), Point(200, 150)),)
    (gone,) = skirt.gone
    assert gone.name == "waist-dart"
    assert gone.how.endswith("on line 41")


def test_ease_and_gathers_differ_by_a_word() -> None:
    eased, gathered = edge(sewn_as(Form.EASE), "waist"), edge(sewn_as(Form.GATHERS), "waist")
    assert eased.parts == gathered.parts
    assert [g.eased for g in (*eased.gathers, *gathered.gathers)] == [True, False]
    (gathers,) = gathered.gathers
    assert (gathers.start, gathers.end) == (45.0, 135.0)


def test_a_pleat_is_laid_toward_the_centre() -> None:
    """Its upper layer is the mirror image of the waist in the inner leg: the peak lies above the waist."""
    waist = edge(sewn_as(Form.PLEAT), "waist")
    (path,) = waist.parts
    (fold,) = waist.folds
    assert fold.at == 90.0
    # The leg leans by atan(0.1) from upright; mirrored in it, the waist rises by twice that to the middle.
    rise = 10.0 * 0.2 / (1.0 - 0.01)
    assert path.point_at(90.0 + 0.5 * fold.amount).y == pytest.approx(200.0 + rise)
    assert path.point_at(90.0 + 0.5 * fold.amount).x == pytest.approx(100.0)


def test_refusals() -> None:
    inner = TwoPointedDart("inner-dart", Point(50, 120), Point(50, 40), Point(45, 80), Point(55, 80))
    piece = replace(SKIRT, two_pointed=(inner,))

    def why(name: str, which: Piece = piece) -> str:
        return refused(sew_as.apply((which,), SewAs((part(name),), Form.EASE, ORIGIN), evaluate))

    assert why("inner-dart") == "not-an-edge-dart"
    assert why("shoulder-dart") == "part-gone"
    as_flare = SewAs((part("waist-dart"),), Form.FLARE, ORIGIN)
    assert refused(sew_as.apply((SKIRT,), as_flare, evaluate)) == "form-not-for-verb"
    crooked = replace(SKIRT, darts=(replace(DART, pivot=Point(104, 100)),))
    assert why("waist-dart", crooked) == "dart-legs-unequal"
