"""The straight skirt: waist and hip exact, darts closed smooth, sides that are one curve, on three charts."""

from __future__ import annotations

import pytest

from specc.geometry.region import contains
from specc.pattern.measure import dart_width
from specc.pattern.outline import flat_outline
from tests.unit.library.blocks import IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

BLOCK = "straight-skirt"
LOOSE = "waist-ease 0 in; hip-ease 3 in; skirt-length 30 in"
EASE = {"": (0.75, 2.0), LOOSE: (0.0, 3.0)}
EVERY = [
    pytest.param(chart, size, settings, id=f"{chart}, {size}, {settings or 'own ease'}")
    for chart in (MISSES, WOMEN, MEN)
    for settings in EASE
    for size in IN[chart]
]


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_every_corner_is_square(chart: str, size: str, settings: str) -> None:
    for piece in pieces(BLOCK, size, settings, chart).values():
        for corner in ("waist-side", "centre-waist", "hem-centre", "hem-side"):
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{piece.name}.{corner}"


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_no_edge_has_a_kink_open_or_with_its_darts_closed(chart: str, size: str, settings: str) -> None:
    found = [kink for piece in pieces(BLOCK, size, settings, chart).values() for kink in kinks(piece)]

    assert len(found) == 5
    assert [(where, turn) for where, turn in found if abs(turn) > 0.01] == []


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_waist_and_hip_are_those_of_the_body_and_the_ease(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
    for_waist, for_hip = EASE[settings]

    assert waist == pytest.approx(body(size, "waist", chart) + for_waist * INCH, abs=0.01)
    assert girth(BLOCK, size, "hip-line", settings, chart) == pytest.approx(
        body(size, "hip", chart) + for_hip * INCH, abs=0.01
    )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_side_seams_are_one_curve(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    back, front = (edge(of[name], "side").parts[0] for name in ("back", "front"))

    assert back.length() == pytest.approx(front.length(), abs=1e-6)
    for share in (0.0, 0.3, 0.6, 0.7, 0.8, 0.9, 1.0):
        first = back.point_at(share * back.length()) - back.start
        second = front.point_at(share * front.length()) - front.start
        assert (first.x, first.y) == pytest.approx((-second.x, second.y), abs=1e-6)


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_darts_lie_inside_above_the_hip_and_apart(chart: str, size: str, settings: str) -> None:
    """Common practice, no source: at least 3/4 in of waist between darts and beside them."""
    of = pieces(BLOCK, size, settings, chart)

    assert [dart.name for dart in of["back"].darts] == ["outer-dart", "inner-dart"]
    assert [dart.name for dart in of["front"].darts] == ["waist-dart"]
    for piece in of.values():
        corners = flat_outline(piece)
        for dart in piece.darts:
            assert contains(corners, dart.pivot)
            assert dart.pivot.y > -body(size, "waist-to-hip", chart) + INCH
            assert 0.25 * INCH - 1e-6 <= dart_width(dart) <= 1.25 * INCH
        assert all(run.length() > 0.75 * INCH for run in edge(piece, "waist").parts)


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_back_takes_in_more_and_deeper_than_the_front(size: str) -> None:
    of = pieces(BLOCK, size)
    behind, before = (sum(dart_width(dart) for dart in of[name].darts) for name in ("back", "front"))

    assert behind > before
    assert min(dart.pivot.y for dart in of["back"].darts) < of["front"].darts[0].pivot.y
    assert sewn(of["back"], "waist") < sewn(of["front"], "waist")


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_waist_rises_evenly_to_the_side(size: str) -> None:
    """Common practice, no source: the side of the waist stands 1/2 in above the centre front."""
    of = pieces(BLOCK, size)
    heights = {name: edge(of[name], "waist").parts[0].start.y for name in ("back", "front")}

    assert heights == pytest.approx({"back": 0.5 * INCH, "front": 0.5 * INCH})


@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
@pytest.mark.parametrize("name", ["waist", "hem"])
def test_edges_grow_with_the_size(chart: str, name: str) -> None:
    for piece in ("back", "front"):
        assert rising([sewn(pieces(BLOCK, size, "", chart)[piece], name) for size in IN[chart]])
