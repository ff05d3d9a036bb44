"""Other blocks and charts of the library."""

from __future__ import annotations

from math import asin, pi

import pytest

from specc.pattern.lookup import corner_named
from specc.pattern.measure import dart_angle, dart_width
from specc.pattern.outline import area
from tests.sources import ANSUR, COSTUME_TEXT, Known, against
from tests.unit.library.blocks import IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import sewn

SHARES = {"1": 1.0, "3/4": 0.75, "1/2": 0.5, "1/4": 0.25}


# Size 12 of the misses chart has a waist of 26.5 in; without ease the radii
# are 4.218, 5.623, 8.435 and 16.870 in (reckoned by hand, to a thousandth).
@against(Known.DERIVED, "r = W / (2 pi f)")
@pytest.mark.parametrize(("share", "radius"), [("1", 4.218), ("3/4", 5.623), ("1/2", 8.435), ("1/4", 16.870)])
def test_the_radius_of_a_circle_skirt(share: str, radius: float) -> None:
    for piece in pieces("circle-skirt", "12", f"circle {share}; waist-ease 0 in").values():
        middle = next(point.at for point in piece.points if point.name == "middle")
        waist = corner_named(piece, "waist-side")
        assert waist is not None
        assert waist.distance(middle) / INCH == pytest.approx(radius, abs=0.0006)


# W = 26.5 in, L = 24 in, full circle: 177.30 in.
@against(Known.DERIVED, "hem = W + 2 pi f L")
def test_the_hem_of_a_full_circle() -> None:
    of = pieces("circle-skirt", "12", "circle 1; waist-ease 0 in")
    hem = 2.0 * (sewn(of["front"], "hem") + sewn(of["back"], "hem"))

    assert hem / INCH == pytest.approx(177.30, abs=0.005)


@against(Known.DERIVED, "hem = W + 2 pi f L")
@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_waist_and_hem_of_circle_skirts(chart: str, share: str) -> None:
    """To 0.01 mm in every size, though they are drawn with cubic curves."""
    for size in IN[chart]:
        of = pieces("circle-skirt", size, f"circle {share}", chart)
        waist, hem = (2.0 * (sewn(of["front"], name) + sewn(of["back"], name)) for name in ("waist", "hem"))
        wanted = body(size, "waist", chart) + 0.75 * INCH
        assert waist == pytest.approx(wanted, abs=0.01)
        assert hem == pytest.approx(wanted + 2.0 * pi * SHARES[share] * 24.0 * INCH, abs=0.01)


@against(Known.DERIVED, "r = W / (2 pi f); area = f pi ((r + L)^2 - r^2)")
@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_radius_and_area_of_circle_skirts(chart: str, share: str) -> None:
    """Of both halves and in every size; an arc in cubics takes in less than a millionth more."""
    for size in IN[chart]:
        of = pieces("circle-skirt", size, f"circle {share}", chart)
        radius = (body(size, "waist", chart) + 0.75 * INCH) / (2.0 * pi * SHARES[share])
        for piece in of.values():
            middle = next(point.at for point in piece.points if point.name == "middle")
            for corner in ("waist-side", "centre-waist"):
                waist = corner_named(piece, corner)
                assert waist is not None
                assert waist.distance(middle) == pytest.approx(radius, abs=1e-6)
        ring = SHARES[share] * pi * ((radius + 24.0 * INCH) ** 2 - radius**2)
        assert 2.0 * sum(area(piece) for piece in of.values()) == pytest.approx(ring, rel=1e-6)


@against(Known.READ, COSTUME_TEXT, "skirt and trouser waist 1/2 to 3/4 in, hips 2 to 2 3/4 in")
@pytest.mark.parametrize("block", ["straight-skirt", "trousers"])
@pytest.mark.parametrize("size", IN[MISSES])
def test_the_ease_of_skirt_and_trousers_is_within_the_published_range(block: str, size: str) -> None:
    of = pieces(block, size)
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist")) - body(size, "waist")
    hip = girth(block, size, "hip-line") - body(size, "hip")

    assert 0.5 <= waist / INCH <= 0.75 + 1e-6
    assert 2.0 - 1e-6 <= hip / INCH <= 2.75


@against(Known.READ, COSTUME_TEXT, "bodice bust 1 1/2 to 2 in, dress waist 3/4 to 1 in")
@pytest.mark.parametrize("size", IN[MISSES])
def test_the_ease_of_the_bodice_is_within_the_published_range(size: str) -> None:
    of = pieces("bodice", size)
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist")) - body(size, "waist")
    bust = girth("bodice", size, "bust-line") - body(size, "bust")

    assert 1.5 <= bust / INCH <= 2.0 + 1e-6
    assert 0.75 <= waist / INCH <= 1.0 + 1e-6


# The thigh of the block is measured straight across from the crotch point.
@against(Known.READ, COSTUME_TEXT, "men's trousers, thigh at least 1 in")
@against(Known.COMPUTED, ANSUR, "thigh girths")
@pytest.mark.parametrize("chart", [WOMEN, MEN])
@pytest.mark.parametrize("block", ["trousers", "pull-on-trousers"])
def test_the_ease_of_trousers_at_the_thigh(chart: str, block: str) -> None:
    for size in IN[chart]:
        around = 0.0
        for piece in pieces(block, size, "", chart).values():
            crotch = corner_named(piece, "crotch-point")
            assert crotch is not None
            side = next(edge for edge in piece.edges if edge.name == "side").parts[0]
            across = min(side.flattened(), key=lambda point: abs(point.y - crotch.y))
            around += abs(across.x - crotch.x)
        assert around >= body(size, "thigh", chart) + INCH


@against(Known.COMPUTED, ANSUR, "round heel and ankle, 1.442 times the ankle on average")
@pytest.mark.parametrize("block", ["trousers", "pull-on-trousers"])
@pytest.mark.parametrize("chart", [WOMEN, MEN])
def test_the_foot_passes_the_leg(chart: str, block: str) -> None:
    for size in IN[chart]:
        of = pieces(block, size, "", chart)
        assert sewn(of["front"], "hem") + sewn(of["back"], "hem") > body(size, "heel-ankle", chart)


@against(Known.SECOND_HAND, "two practitioners' pages", "sleeve-cap ease in knits 0 to 1/2 in")
@pytest.mark.parametrize("size", IN[MISSES])
def test_the_cap_of_the_knit_top_is_hardly_longer_than_its_armhole(size: str) -> None:
    of = pieces("knit-top", size)
    ease = (
        sewn(of["sleeve"], "cap-front", "cap-back")
        - sewn(of["front"], "armhole")
        - sewn(of["back"], "armhole")
    )

    assert 0.0 <= ease / INCH <= 0.5


# At the base of the neck a knit would have to stretch by half. A neckline cut wider asks for less.
@against(Known.COMPUTED, ANSUR, "head girth over neck-base girth, women, 1.51")
@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_the_neck_of_the_knit_top_asks_for_less_stretch_than_one_at_the_base_of_the_neck(chart: str) -> None:
    for size in IN[chart]:
        of = pieces("knit-top", size, "", chart)
        neck = 2.0 * (sewn(of["front"], "neck") + sewn(of["back"], "neck"))
        head = body(size, "head-girth", chart)
        assert 0.0 <= head / neck - 1.0 < 0.25 < head / body(size, "neck-base-girth", chart) - 1.0


@against(Known.DERIVED, "angle = 2 asin(width / (2 leg))")
@pytest.mark.parametrize("block", ["straight-skirt", "bodice", "trousers"])
def test_dart_angle_width_and_leg_agree(block: str) -> None:
    for size in IN[MISSES]:
        for piece in pieces(block, size).values():
            for dart in piece.darts:
                leg = dart.first.distance(dart.pivot)
                assert dart_angle(dart) == pytest.approx(2.0 * asin(dart_width(dart) / (2.0 * leg)), abs=1e-9)


# 5th, 50th and 95th percentile in mm.
PERCENTILES = {
    WOMEN: {
        "stature": (1525, 1626, 1740), "bust": (824, 940, 1094), "waist": (710, 852, 1040),
        "hip": (901, 1018, 1156), "neck-base-girth": (340, 370, 405), "head-girth": (532, 560, 597),
        "shoulder-girth": (944, 1027, 1119), "shoulder-length": (120, 135, 153),
        "across-back": (326, 373, 423), "upper-arm": (259, 304, 360), "wrist": (142, 154, 168),
        "hand": (173, 187, 202), "sleeve-length": (497, 542, 594), "back-waist-length": (384, 424, 470),
        "crotch-height": (712, 780, 857), "thigh": (527, 613, 711), "ankle": (193, 215, 242),
        "heel-ankle": (287, 310, 337), "vertical-trunk": (1440, 1555, 1685), "axilla-depth": (133, 156, 180),
    },
    MEN: {
        "stature": (1648, 1755, 1870), "bust": (922, 1056, 1207), "waist": (768, 937, 1131),
        "hip": (899, 1017, 1149), "neck-base-girth": (395, 433, 479), "head-girth": (548, 574, 601),
        "shoulder-girth": (1080, 1176, 1288), "shoulder-length": (133, 150, 167),
        "across-back": (374, 430, 491), "upper-arm": (303, 357, 418), "wrist": (162, 176, 191),
        "hand": (195, 212, 230), "sleeve-length": (545, 592, 645), "back-waist-length": (433, 477, 524),
        "crotch-height": (771, 845, 925), "thigh": (532, 624, 723), "ankle": (206, 228, 254),
        "heel-ankle": (317, 343, 372), "vertical-trunk": (1519, 1664, 1814), "axilla-depth": (165, 188, 212),
    },
}  # fmt: skip


@against(Known.COMPUTED, ANSUR, "5th, 50th, 95th percentile, 1,986 women, 4,082 men")
@pytest.mark.parametrize("chart", PERCENTILES)
def test_the_charts_have_the_percentiles_of_ansur(chart: str) -> None:
    for name, wanted in PERCENTILES[chart].items():
        assert tuple(body(size, name, chart) for size in IN[chart]) == pytest.approx(wanted, abs=1e-9), name


# Blocks drafted from the median, girth less ease.
@against(Known.COMPUTED, ANSUR, "means of chest and hip, women, within 1 %")
@pytest.mark.parametrize(("block", "line", "ease", "mean"), [
    ("sheath", "bust-line", 2.0, 946.86), ("bodice", "bust-line", 2.0, 946.86),
    ("straight-skirt", "hip-line", 2.0, 1021.25), ("trousers", "hip-line", 2.0, 1021.25),
])  # fmt: skip
def test_girths_less_ease_are_those_of_the_average_woman(
    block: str, line: str, ease: float, mean: float
) -> None:
    assert girth(block, "p50", line, "", WOMEN) - ease * INCH == pytest.approx(mean, rel=0.01)


# The raglan top, set to an ease in inches, on women and on men.
@against(Known.COMPUTED, ANSUR, "means of chest, hip and biceps, women and men, within 1 %")
@pytest.mark.parametrize(
    ("chart", "means"), [(WOMEN, (946.86, 1021.25, 305.58)), (MEN, (1058.71, 1019.52, 358.14))]
)
def test_the_raglan_top_less_its_ease_is_the_average_woman_and_man(
    chart: str, means: tuple[float, float, float]
) -> None:
    settings = "bust-ease 3 in; hip-ease 3 in; upper-arm-ease 3 in"
    lines = (("bust-line", 1.0), ("hip-line", 1.0), ("upper-arm-line", 2.0))  # the sleeve is there twice
    found = [girth("raglan-top", "p50", line, settings, chart) / times - 3.0 * INCH for line, times in lines]

    assert found == pytest.approx(means, rel=0.01)
