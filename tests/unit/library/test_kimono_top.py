"""The top with kimono sleeve: one smooth underarm, seams that are one curve, on three charts."""

from __future__ import annotations

from math import cos, radians

import pytest

from specc.pattern.lookup import corner_named
from tests.unit.library.blocks import IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

BLOCK = "kimono-top"
CLOSER = "bust-ease 5 in; hip-ease 3 in; sleeve 12 in"
EASE = {"": (7.0, 5.0), CLOSER: (5.0, 3.0)}
EVERY = [
    pytest.param(chart, size, settings, id=f"{chart}, {size}, {settings or 'as it is'}")
    for chart in (MISSES, WOMEN, MEN)
    for settings in EASE
    for size in IN[chart]
]
CORNERS = ("centre-neck", "neck-point", "sleeve-top", "sleeve-bottom", "hem-side", "hem-centre")


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_corners_are_square_and_edges_smooth(chart: str, size: str, settings: str) -> None:
    for piece in pieces(BLOCK, size, settings, chart).values():
        for corner in CORNERS:
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{piece.name}.{corner}"
        found = [(where, turn) for where, turn in kinks(piece)]
        assert len(found) == 3
        assert [(where, turn) for where, turn in found if abs(turn) > 0.01] == []


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_side_and_shoulder_are_the_same_curves_behind_and_before(
    chart: str, size: str, settings: str
) -> None:
    of = pieces(BLOCK, size, settings, chart)
    for name in ("side", "shoulder", "sleeve-hem"):
        back, front = (edge(of[half], name).parts[0] for half in ("back", "front"))
        for share in (0.0, 0.25, 0.5, 0.75, 0.9, 1.0):
            first, second = (path.point_at(share * path.length()) for path in (back, front))
            assert (first.x, first.y) == pytest.approx((-second.x, second.y), abs=1e-6)


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_bust_and_hip_are_those_of_the_body_and_the_ease(chart: str, size: str, settings: str) -> None:
    for line, measure, ease in zip(("bust-line", "hip-line"), ("bust", "hip"), EASE[settings], strict=True):
        assert girth(BLOCK, size, line, settings, chart) == pytest.approx(
            body(size, measure, chart) + ease * INCH, abs=0.01
        )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_arm_moves_in_the_sleeve(chart: str, size: str, settings: str) -> None:
    """Common practice, no source: at least 2 in over the arm."""
    of = pieces(BLOCK, size, settings, chart)
    around = sewn(of["back"], "sleeve-hem") + sewn(of["front"], "sleeve-hem")

    assert around >= body(size, "upper-arm", chart) + 2.0 * INCH


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_underarm_lies_below_the_armpit_and_the_sleeve_runs_straight_from_it(
    chart: str, size: str, settings: str
) -> None:
    of = pieces(BLOCK, size, settings, chart)
    for piece in of.values():
        runs = edge(piece, "side").parts[0].segments
        armpit = body(size, "back-waist-length", chart) - body(size, "scye-depth", chart)
        assert max(runs[2].point_at(t).y for t in (0.0, 0.25, 0.5, 0.75, 1.0)) < armpit - INCH
        assert runs[3].length() > INCH
        assert runs[2].start.y > -body(size, "waist-to-hip", chart)


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_neck_passes_the_head(size: str) -> None:
    of = pieces(BLOCK, size)

    assert 2.0 * (sewn(of["front"], "neck") + sewn(of["back"], "neck")) > body(size, "head-girth")


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_shoulder_falls_by_sixteen_degrees_to_the_hem_of_the_sleeve(
    chart: str, size: str, settings: str
) -> None:
    of = pieces(BLOCK, size, settings, chart)
    tip, neck = corner_named(of["back"], "sleeve-top"), corner_named(of["back"], "neck-point")
    sleeve = 12.0 if settings == CLOSER else 10.0

    assert tip is not None
    assert neck is not None
    assert tip.x - neck.x == pytest.approx(
        (body(size, "shoulder-length", chart) + (sleeve - 2.0) * INCH) * cos(radians(16.0)), abs=1e-6
    )


@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
@pytest.mark.parametrize("name", ["neck", "hem", "centre", "shoulder", "sleeve-hem"])
def test_edges_grow_with_the_size(chart: str, name: str) -> None:
    for piece in ("back", "front"):
        values = [sewn(pieces(BLOCK, size, "", chart)[piece], name) for size in IN[chart]]
        assert rising(values), values
