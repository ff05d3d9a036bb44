"""The bodice: the upper part of the sheath, with a waist that fits and closes smoothly."""

from __future__ import annotations

import pytest

from specc.pattern.lookup import point_named
from specc.pattern.measure import dart_tip, dart_width
from tests.unit.library.blocks import IN, INCH, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

BLOCK = "bodice"
LOOSE = "bust-ease 3 in; waist-ease 2 in"
EASE = {"": (2.0, 1.0), LOOSE: (3.0, 2.0)}
EVERY = [
    pytest.param(chart, size, settings, id=f"{chart}, {size}, {settings or 'own ease'}")
    for chart in (MISSES, WOMEN)
    for settings in EASE
    for size in IN[chart]
]
BODY_CORNERS = ("centre-neck", "neck-point", "shoulder-tip", "underarm", "waist-side", "waist-centre")
RIGHT_ANGLES = {
    "back": BODY_CORNERS,
    "front": BODY_CORNERS,
    "sleeve": ("underarm-back", "underarm-front", "wrist-back", "wrist-front"),
}


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_corners_are_square(chart: str, size: str, settings: str) -> None:
    for name, piece in pieces(BLOCK, size, settings, chart).items():
        for corner in RIGHT_ANGLES[name]:
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{name}.{corner}"


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_no_edge_has_a_kink_open_or_with_its_darts_closed(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    found = [(where, turn) for piece in of.values() for where, turn in kinks(piece)]

    assert len(found) >= 7
    assert [(where, turn) for where, turn in found if abs(turn) > 0.01] == []


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_seams_walk(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    cap = sewn(of["sleeve"], "cap-front", "cap-back")

    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.01)
    assert sewn(of["front"], "shoulder") == pytest.approx(sewn(of["back"], "shoulder"), abs=0.01)
    assert cap - sewn(of["front"], "armhole") - sewn(of["back"], "armhole") == pytest.approx(
        1.25 * INCH, abs=0.01
    )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_bust_waist_and_neck_are_those_of_the_body_and_the_ease(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    for_bust, for_waist = EASE[settings]
    waist, neck = (2.0 * (sewn(of["front"], name) + sewn(of["back"], name)) for name in ("waist", "neck"))

    assert girth(BLOCK, size, "bust-line", settings, chart) == pytest.approx(
        body(size, "bust", chart) + for_bust * INCH, abs=0.01
    )
    assert waist == pytest.approx(body(size, "waist", chart) + for_waist * INCH, abs=0.01)
    assert neck == pytest.approx(body(size, "neck-base-girth", chart) + INCH / 2, abs=0.01)


@pytest.mark.parametrize("size", IN[MISSES])
def test_it_agrees_with_the_sheath_above_the_waist(size: str) -> None:
    """Same corners, and the same curves at neck and armhole."""
    bodice, sheath = pieces(BLOCK, size), pieces("sheath", size)
    for name in ("back", "front"):
        for corner in ("centre-neck", "neck-point", "shoulder-tip", "underarm", "waist-side"):
            first, second = point_named(bodice[name], corner), point_named(sheath[name], corner)
            assert first is not None
            assert second is not None
            assert first.distance(second) < 1e-6
        for curve in ("neck", "armhole"):
            assert edge(bodice[name], curve).parts == edge(sheath[name], curve).parts
    assert sewn(bodice["sleeve"], "cap-back", "cap-front") == pytest.approx(
        sewn(sheath["sleeve"], "cap-back", "cap-front"), abs=1e-3
    )


@pytest.mark.parametrize("size", IN[MISSES])
def test_both_front_darts_point_at_the_bust_point_and_stop_an_inch_short(size: str) -> None:
    front = pieces(BLOCK, size)["front"]

    assert {dart.name for dart in front.darts} == {"waist-dart", "bust-dart"}
    for dart in front.darts:
        assert dart.pivot == point_named(front, "bust-point")
        assert dart_tip(dart).distance(dart.pivot) == pytest.approx(INCH, abs=1e-6)


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_waist_darts_are_those_of_the_sheath_within_a_tenth_of_an_inch(size: str) -> None:
    bodice, sheath = pieces(BLOCK, size), pieces("sheath", size)
    for name in ("back", "front"):
        (own,) = [dart for dart in bodice[name].darts if dart.name == "waist-dart"]
        (other,) = sheath[name].two_pointed
        assert dart_width(own) == pytest.approx(dart_width(other), abs=INCH / 10)
        assert (own.first.x + own.second.x) / 2.0 == pytest.approx((other.first.x + other.second.x) / 2.0)


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_waist_dips_little_toward_its_darts(size: str) -> None:
    """Common practice, no source: less than 3/8 in."""
    for name in ("back", "front"):
        points = [
            point for part in edge(pieces(BLOCK, size)[name], "waist").parts for point in part.flattened()
        ]
        assert -3 / 8 * INCH < min(point.y for point in points) < 0.0


@pytest.mark.parametrize("chart", [MISSES, WOMEN])
@pytest.mark.parametrize("name", ["neck", "armhole", "waist", "shoulder", "centre"])
def test_edges_grow_with_the_size(chart: str, name: str) -> None:
    for piece in ("back", "front"):
        assert rising([sewn(pieces(BLOCK, size, "", chart)[piece], name) for size in IN[chart]])
