"""Trousers, with darts and to pull on: crotch, inseam, outseam, waist and hip, on three charts."""

from __future__ import annotations

from math import degrees

import pytest

from specc.geometry.region import contains
from specc.pattern.lookup import corner_named, point_named
from specc.pattern.outline import flat_outline
from tests.unit.library.blocks import CHILDREN, IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

FITTED, PULLED = "trousers", "pull-on-trousers"
EASE = {FITTED: 2.0, PULLED: 4.0}
SETTINGS = {FITTED: "inseam 26 in; hem-round 22 in; knee-round 22 in", PULLED: "inseam 33 in; hip-ease 6 in"}
CHARTS = (MISSES, WOMEN, MEN)
PLAIN = [(block, chart, size) for block in (FITTED, PULLED) for chart in CHARTS for size in IN[chart]]
EVERY = [
    pytest.param(block, chart, size, settings, id=f"{block}, {chart}, {size}, {settings or 'as it is'}")
    for block, chart, size in PLAIN
    for settings in ("", SETTINGS[block])
]


@pytest.mark.parametrize(("block", "chart", "size", "settings"), EVERY)
def test_corners_are_square_and_edges_smooth_with_darts_closed(
    block: str, chart: str, size: str, settings: str
) -> None:
    for piece in pieces(block, size, settings, chart).values():
        for corner in ("centre-waist", "waist-side", "crotch-point", "hem-inner", "hem-side"):
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{piece.name}.{corner}"
        found = list(kinks(piece))
        assert len(found) == (5 if block == FITTED else 4)
        assert [(where, turn) for where, turn in found if abs(turn) > 0.01] == []


@pytest.mark.parametrize(("block", "chart", "size", "settings"), EVERY)
def test_the_crotch_curves_make_one_smooth_curve_at_the_inseam(
    block: str, chart: str, size: str, settings: str
) -> None:
    of = pieces(block, size, settings, chart)

    assert sum(angle(piece, "crotch-point") for piece in of.values()) == pytest.approx(180.0, abs=0.1)


@pytest.mark.parametrize(("block", "chart", "size", "settings"), EVERY)
def test_inseams_and_outseams_walk(block: str, chart: str, size: str, settings: str) -> None:
    of = pieces(block, size, settings, chart)

    assert sewn(of["front"], "inseam") == pytest.approx(sewn(of["back"], "inseam"), abs=0.01)
    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.01)
    back, front = (edge(of[name], "side").parts[0] for name in ("back", "front"))
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        first = back.point_at(share * back.length()) - back.start
        second = front.point_at(share * front.length()) - front.start
        assert (first.x, first.y) == pytest.approx((-second.x, second.y), abs=1e-6)


@pytest.mark.parametrize(("block", "chart", "size"), PLAIN)
def test_the_hip_is_that_of_the_body_and_the_ease(block: str, chart: str, size: str) -> None:
    assert girth(block, size, "hip-line", "", chart) == pytest.approx(
        body(size, "hip", chart) + EASE[block] * INCH, abs=0.01
    )


@pytest.mark.parametrize("chart", CHARTS)
@pytest.mark.parametrize(("settings", "ease"), [("", 0.75), ("waist-ease 0 in; hip-ease 3 in", 0.0)])
def test_the_waist_fits_with_its_ease(chart: str, settings: str, ease: float) -> None:
    for size in IN[chart]:
        of = pieces(FITTED, size, settings, chart)
        waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
        assert waist == pytest.approx(body(size, "waist", chart) + ease * INCH, abs=0.01)


@pytest.mark.parametrize("chart", CHARTS)
def test_the_waist_to_pull_on_passes_the_hip(chart: str) -> None:
    for size in IN[chart]:
        of = pieces(PULLED, size, "", chart)
        waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
        assert body(size, "hip", chart) + INCH < waist < body(size, "hip", chart) + 4.0 * INCH


@pytest.mark.parametrize(("block", "chart", "size", "settings"), EVERY)
def test_knee_and_hem_are_as_wide_as_set(block: str, chart: str, size: str, settings: str) -> None:
    of = pieces(block, size, settings, chart)
    share = {FITTED: (0.57, 0.5), PULLED: (0.6, 0.54)}[block]
    wide = "round" in settings
    knee = 22.0 * INCH if wide else share[0] * body(size, "hip", chart)
    hem = 22.0 * INCH if wide else share[1] * body(size, "hip", chart)
    across = 0.0
    for piece in of.values():
        inner, outer = corner_named(piece, "hem-inner"), corner_named(piece, "hem-side")
        assert inner is not None
        assert outer is not None
        across += inner.distance(outer)

    assert girth(block, size, "knee-line", settings, chart) == pytest.approx(2.0 * knee, abs=0.01)
    assert across == pytest.approx(hem, abs=0.01)
    assert hem - 1e-6 <= sewn(of["front"], "hem") + sewn(of["back"], "hem") < 1.01 * hem


@pytest.mark.parametrize(("block", "chart", "size"), PLAIN)
def test_the_crotch_is_as_long_as_is_plausible(block: str, chart: str, size: str) -> None:
    """Common practice, no source: 2.2 to 3 times the rise in all, the back longer by 2 to 5 in."""
    of = pieces(block, size, "", chart)
    behind, before = (sewn(of[name], "crotch") for name in ("back", "front"))
    rise = body(size, "waist-to-hip", chart) + body(size, "hip", chart) / 16.0
    rise += INCH / 2.0 if block == PULLED else 0.0

    assert 2.2 * rise < behind + before < 3.0 * rise
    assert 2.0 * INCH < behind - before < 5.0 * INCH


@pytest.mark.parametrize(("block", "chart", "size", "settings"), EVERY)
def test_the_back_crotch_point_is_lowered_a_little(block: str, chart: str, size: str, settings: str) -> None:
    """Common practice, no source: up to 1 in."""
    of = pieces(block, size, settings, chart)
    back, front = (corner_named(of[name], "crotch-point") for name in ("back", "front"))

    assert back is not None
    assert front is not None
    assert -INCH / 8.0 < front.y - back.y < INCH
    assert abs(back.x) > abs(front.x)


@pytest.mark.parametrize(("block", "chart", "size"), PLAIN)
def test_the_crotch_curve_turns_one_way_and_stays_below_the_hip(block: str, chart: str, size: str) -> None:
    for name, turn in (("back", -1.0), ("front", 1.0)):
        run = edge(pieces(block, size, "", chart)[name], "crotch").parts[0].segments[1]
        first, middle, last = (run.point_at(t) for t in (0.0, 0.5, 1.0))
        assert turn * run.turning() > 0.0
        assert 60.0 < abs(degrees(run.turning())) < 110.0
        assert last.y < middle.y < first.y


@pytest.mark.parametrize("chart", CHARTS)
def test_the_darts_of_the_fitted_pair_lie_inside_above_the_hip(chart: str) -> None:
    for size in IN[chart]:
        for piece in pieces(FITTED, size, "", chart).values():
            (dart,) = piece.darts
            assert contains(flat_outline(piece), dart.pivot)
            assert dart.pivot.y > -body(size, "waist-to-hip", chart) + INCH / 2.0
            assert all(run.length() > INCH for run in edge(piece, "waist").parts)


@pytest.mark.parametrize(("block", "chart", "size"), PLAIN)
def test_the_centre_of_the_back_stands_above_that_of_the_front(block: str, chart: str, size: str) -> None:
    of = pieces(block, size, "", chart)
    back, front = (point_named(of[name], "centre-waist") for name in ("back", "front"))

    assert back is not None
    assert front is not None
    assert INCH / 2.0 <= back.y - front.y <= 1.25 * INCH


@pytest.mark.parametrize("block", [FITTED, PULLED])
@pytest.mark.parametrize("chart", CHARTS)
@pytest.mark.parametrize("name", ["waist", "crotch", "hem", "side"])
def test_edges_grow_with_the_size(block: str, chart: str, name: str) -> None:
    for piece in ("back", "front"):
        assert rising([sewn(pieces(block, size, "", chart)[piece], name) for size in IN[chart]])


@pytest.mark.parametrize("chart", CHARTS)
def test_the_side_does_not_stand_out_at_the_waist_even_where_the_waist_is_full(chart: str) -> None:
    """Common practice, no source: by no more than 1/4 in, on the largest waists of the chart of men."""
    for size in IN[chart]:
        for piece in pieces(FITTED, size, "", chart).values():
            waist, hip = corner_named(piece, "waist-side"), point_named(piece, "hip-side")
            assert waist is not None
            assert hip is not None
            assert abs(waist.x) < abs(hip.x) + INCH / 4.0


@pytest.mark.parametrize("size", IN[MISSES])
def test_the_seat_leans_as_is_usual(size: str) -> None:
    """Common practice, no source: 8 to 12 degrees off the vertical in fitted trousers for women."""
    back = pieces(FITTED, size)["back"]
    seat = edge(back, "crotch").parts[0].segments[0].start_direction()

    assert 8.0 < abs(degrees(seat.angle())) - 90.0 < 12.0


# On the children's chart: trousers to pull on, set to the child.
CHILD = "inseam crotch-height - 3 cm; hip-ease 6 cm"
AGES = IN[CHILDREN]


@pytest.mark.parametrize("size", AGES)
def test_a_childs_pair_is_square_smooth_and_walks(size: str) -> None:
    of = pieces(PULLED, size, CHILD, CHILDREN)

    for piece in of.values():
        for corner in ("centre-waist", "waist-side", "crotch-point", "hem-inner", "hem-side"):
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{piece.name}.{corner}"
        assert [(where, turn) for where, turn in kinks(piece) if abs(turn) > 0.01] == []
    assert sewn(of["front"], "inseam") == pytest.approx(sewn(of["back"], "inseam"), abs=0.01)
    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.01)
    assert sum(angle(piece, "crotch-point") for piece in of.values()) == pytest.approx(180.0, abs=0.1)


@pytest.mark.parametrize("size", AGES)
def test_a_childs_pair_fits_hip_thigh_foot_and_leg(size: str) -> None:
    """The thigh has an inch and more of room, the foot passes the hem, the inseam ends above the floor."""
    of = pieces(PULLED, size, CHILD, CHILDREN)
    hip, thigh = body(size, "hip", CHILDREN), body(size, "thigh", CHILDREN)
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
    crotch_level = sum(abs(corner_named(of[name], "crotch-point").x) for name in of)  # type: ignore[union-attr]

    assert girth(PULLED, size, "hip-line", CHILD, CHILDREN) == pytest.approx(hip + 60.0, abs=0.01)
    assert hip + 20.0 < waist < hip + 60.0
    assert crotch_level + (hip + 60.0) / 2.0 > thigh + INCH
    assert sewn(of["front"], "hem") + sewn(of["back"], "hem") > body(size, "heel-ankle", CHILDREN) + INCH
    inseam = body(size, "crotch-height", CHILDREN) - 30.0
    assert inseam - 5.0 < sewn(of["front"], "inseam") < inseam + 5.0


@pytest.mark.parametrize("name", ["waist", "crotch", "inseam", "hem", "side"])
def test_a_childs_edges_grow_with_age(name: str) -> None:
    for piece in ("back", "front"):
        assert rising([sewn(pieces(PULLED, size, CHILD, CHILDREN)[piece], name) for size in AGES])
