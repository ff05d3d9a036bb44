"""The raglan top: seams walk, the neck goes on smoothly over them, girths are the body's and their ease."""

from __future__ import annotations

from itertools import pairwise
from math import hypot

import pytest

from specc.pattern.lookup import corner_named, point_named
from specc.pattern.piece import NotchKind
from tests.unit.library.blocks import CHILDREN, IN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

TOP = "raglan-top"
CHILD = "neck-wider 1 cm; neck-lower 2 cm; bust-ease 8 cm; sleeve 0.4 * sleeve-length"
PLAIN = [(chart, size) for chart in (CHILDREN, MISSES, WOMEN) for size in IN[chart]]
EVERY = [
    pytest.param(chart, size, settings, id=f"{chart}, {size}, {settings or 'as it is'}")
    for chart, size in PLAIN
    for settings in ("", CHILD, "back-centre seam")
]


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_raglan_seams_side_and_sleeve_seams_walk(chart: str, size: str, settings: str) -> None:
    of = pieces(TOP, size, settings, chart)
    back, front, sleeve = of["back"], of["front"], of["sleeve"]

    assert sewn(sleeve, "raglan-back") == pytest.approx(sewn(back, "raglan"), abs=0.01)
    assert sewn(sleeve, "raglan-front") == pytest.approx(sewn(front, "raglan"), abs=0.01)
    assert sewn(front, "side") == pytest.approx(sewn(back, "side"), abs=1e-6)
    assert sewn(sleeve, "seam-front") == pytest.approx(sewn(sleeve, "seam-back"), abs=1e-6)


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_neck_is_smooth_over_the_raglan_seams_and_square_at_the_centre(
    chart: str, size: str, settings: str
) -> None:
    of = pieces(TOP, size, settings, chart)

    for name in ("back", "front"):
        joined = angle(of[name], "raglan-neck") + angle(of["sleeve"], f"neck-{name}")
        assert joined == pytest.approx(180.0, abs=0.01)
        assert angle(of[name], "centre-neck") == pytest.approx(90.0, abs=0.01)
        assert angle(of[name], "underarm") == pytest.approx(90.0, abs=0.01)
        assert angle(of["sleeve"], f"underarm-{name}") == pytest.approx(90.0, abs=0.01)
        assert angle(of["sleeve"], f"hem-{name}") == pytest.approx(90.0, abs=0.01)
    for piece in of.values():
        assert [turn for _, turn in kinks(piece) if abs(turn) > 0.01] == []


@pytest.mark.parametrize(("chart", "size"), PLAIN)
def test_girths_are_those_of_the_body_and_their_ease(chart: str, size: str) -> None:
    bust, hip = body(size, "bust", chart), body(size, "hip", chart)

    assert girth(TOP, size, "bust-line", "", chart) == pytest.approx(bust * 9.0 / 8.0, abs=0.01)
    assert girth(TOP, size, "hip-line", "", chart) == pytest.approx(hip * 1.1, abs=0.01)
    assert girth(TOP, size, "bust-line", "bust-ease 8 cm", chart) == pytest.approx(bust + 80.0, abs=0.01)
    line = girth(TOP, size, "upper-arm-line", "upper-arm-ease 5 cm", chart) / 2.0
    assert line == pytest.approx(body(size, "upper-arm", chart) + 50.0, abs=0.01)


@pytest.mark.parametrize(("chart", "size"), PLAIN)
def test_the_sleeve_is_as_long_as_shoulder_and_arm_along_its_middle(chart: str, size: str) -> None:
    sleeve = pieces(TOP, size, "", chart)["sleeve"]
    tops = [corner_named(sleeve, f"neck-{name}") for name in ("back", "front")]
    hem = corner_named(sleeve, "hem-back")
    assert hem is not None
    rise = sum(top.y for top in tops if top is not None) / 2.0
    length = body(size, "shoulder-length", chart) + body(size, "sleeve-length", chart)

    assert rise - hem.y == pytest.approx(length - body(size, "neck-base-girth", chart) / 25.0, abs=0.01)


@pytest.mark.parametrize(("chart", "size"), PLAIN)
def test_the_neck_lies_on_its_ellipse_where_the_sleeve_begins(chart: str, size: str) -> None:
    for name in ("back", "front"):
        piece = pieces(TOP, size, "", chart)[name]
        corner, side = corner_named(piece, "raglan-neck"), point_named(piece, "neck-point")
        centre = corner_named(piece, "centre-neck")
        assert corner is not None
        assert side is not None
        assert centre is not None
        across, down = corner.x / side.x, (side.y - corner.y) / (side.y - centre.y)
        assert hypot(across, down) == pytest.approx(1.0, abs=1e-9)


@pytest.mark.parametrize(("chart", "size"), PLAIN)
def test_notches_of_both_sides_meet(chart: str, size: str) -> None:
    of = pieces(TOP, size, "", chart)
    for name, kind in (("back", NotchKind.DOUBLE), ("front", NotchKind.SINGLE)):
        (ours,) = (one for one in of[name].notches if one.edge == "raglan")
        (theirs,) = (one for one in of["sleeve"].notches if one.edge == f"raglan-{name}")
        from_underarm = theirs.at if name == "back" else sewn(of["sleeve"], "raglan-front") - theirs.at
        assert (ours.kind, theirs.kind) == (kind, kind)
        assert ours.at == pytest.approx(from_underarm, abs=0.01)


@pytest.mark.parametrize("chart", [CHILDREN, MISSES, WOMEN])
@pytest.mark.parametrize(
    ("piece", "name"),
    [("back", "neck"), ("front", "neck"), ("back", "raglan"), ("front", "raglan"), ("back", "side")],
)
def test_edges_grow_with_the_size(chart: str, piece: str, name: str) -> None:
    assert rising([sewn(pieces(TOP, size, "", chart)[piece], name) for size in IN[chart]])


def test_growth_has_no_jump_on_the_childrens_chart() -> None:
    """From age to age an edge gains between half and twice of what it gains on the average.

    The neck is left out: it grows by millimetres, and its column in the chart has no finer steps.
    """
    for piece, name in (("back", "raglan"), ("front", "raglan"), ("sleeve", "seam-front"), ("back", "side")):
        lengths = [sewn(pieces(TOP, size, "", CHILDREN)[piece], name) for size in IN[CHILDREN]]
        steps = [after - before for before, after in pairwise(lengths)]
        average = sum(steps) / len(steps)
        assert all(average / 2.0 < step < 2.0 * average for step in steps), (piece, name, steps)


@pytest.mark.parametrize(("chart", "size"), PLAIN)
def test_the_raglan_runs_outward_first_and_is_scooped_below(chart: str, size: str) -> None:
    """It crosses the straight way between its ends once, from below at the underarm to above at the neck."""
    for name, sign in (("back", 1.0), ("front", -1.0)):
        path = edge(pieces(TOP, size, "", chart)[name], "raglan").parts[0]
        chord = (path.end - path.start).unit()
        off = [
            sign * chord.cross(path.point_at(share * path.length()) - path.start)
            for share in (0.1, 0.25, 0.75, 0.9)
        ]
        assert off[0] > 0.0
        assert off[1] > 0.0
        assert off[3] < 0.0
