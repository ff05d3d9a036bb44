"""The knit top: smaller than the body by the stretch, cap against armhole, corners, on three charts."""

from __future__ import annotations

import pytest

from tests.unit.library.blocks import IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

BLOCK = "knit-top"
CLOSER = "stretch 80%; stretch-worn 10%; cap-ease 0 in"
SMALLER = {"": (1.04, 0.25), CLOSER: (1.08, 0.0)}
EVERY = [
    pytest.param(chart, size, settings, id=f"{chart}, {size}, {settings or 'as it is'}")
    for chart in (MISSES, WOMEN, MEN)
    for settings in SMALLER
    for size in IN[chart]
]
BODY_CORNERS = ("centre-neck", "neck-point", "shoulder-tip", "underarm", "hem-side", "hem-centre")
RIGHT_ANGLES = {
    "back": BODY_CORNERS,
    "front": BODY_CORNERS,
    "sleeve": ("underarm-back", "underarm-front", "wrist-back", "wrist-front"),
}


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_corners_are_square_and_edges_smooth(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    for name, piece in of.items():
        for corner in RIGHT_ANGLES[name]:
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{name}.{corner}"
        assert [(where, turn) for where, turn in kinks(piece) if abs(turn) > 0.01] == []
    assert angle(of["sleeve"], "crown") == pytest.approx(180.0, abs=0.01)


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_bust_and_hip_are_the_body_less_what_the_cloth_stretches(
    chart: str, size: str, settings: str
) -> None:
    smaller, _ = SMALLER[settings]
    for line, measure in (("bust-line", "bust"), ("hip-line", "hip")):
        assert girth(BLOCK, size, line, settings, chart) * smaller == pytest.approx(
            body(size, measure, chart), abs=0.01
        )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_waist_is_loose_but_no_wider_than_the_bust(chart: str, size: str, settings: str) -> None:
    waist = girth(BLOCK, size, "waist-line", settings, chart)

    assert waist <= girth(BLOCK, size, "bust-line", settings, chart) + 1e-6
    assert waist == pytest.approx(
        min(body(size, "waist", chart) + 4.0 * INCH, body(size, "bust", chart) / SMALLER[settings][0]),
        abs=0.01,
    )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_seams_walk_and_the_cap_is_longer_by_its_ease(chart: str, size: str, settings: str) -> None:
    of = pieces(BLOCK, size, settings, chart)
    _, ease = SMALLER[settings]

    for name in ("side", "shoulder"):
        assert sewn(of["front"], name) == pytest.approx(sewn(of["back"], name), abs=0.01)
    assert sewn(of["sleeve"], "seam-front") == pytest.approx(sewn(of["sleeve"], "seam-back"), abs=0.01)
    for half in ("front", "back"):
        assert sewn(of["sleeve"], f"cap-{half}") - sewn(of[half], "armhole") == pytest.approx(
            ease * INCH / 2.0, abs=0.01
        )


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_armhole_turns_one_way_below_and_the_front_is_scooped_out_deeper(
    chart: str, size: str, settings: str
) -> None:
    of = pieces(BLOCK, size, settings, chart)
    back, front = (edge(of[name], "armhole").parts[0] for name in ("back", "front"))
    low = 0.5 * (back.length() + front.length()) / 2.0

    assert back.segments[0].turning() < 0.0 < front.segments[0].turning()
    assert abs(front.point_at(low).x) < abs(back.point_at(low).x)


@pytest.mark.parametrize(("chart", "size", "settings"), EVERY)
def test_the_sleeve_goes_round_the_arm(chart: str, size: str, settings: str) -> None:
    smaller, _ = SMALLER[settings]

    assert girth(BLOCK, size, "upper-arm-line", settings, chart) == pytest.approx(
        2.0 * (body(size, "upper-arm", chart) / smaller + INCH / 2.0), abs=0.01
    )


@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_a_neckband_of_the_same_cloth_passes_the_head(chart: str) -> None:
    """Stretched by half, as the cloth of the block states."""
    for size in IN[chart]:
        of = pieces(BLOCK, size, "", chart)
        neck = 2.0 * (sewn(of["front"], "neck") + sewn(of["back"], "neck"))
        assert neck * 1.5 > body(size, "head-girth", chart) * 1.1
        assert neck > body(size, "neck-base-girth", chart)


@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_edges_grow_with_the_size(chart: str) -> None:
    for piece, name in (
        *((half, name) for half in ("back", "front") for name in ("neck", "armhole", "hem", "centre")),
        ("back", "shoulder"), ("front", "shoulder"),
        ("sleeve", "cap-back"), ("sleeve", "cap-front"), ("sleeve", "hem"),
    ):  # fmt: skip
        assert rising([sewn(pieces(BLOCK, size, "", chart)[piece], name) for size in IN[chart]]), (
            piece,
            name,
        )
