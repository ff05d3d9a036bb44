"""The chart of misses, the sheath, and ways of making that it began with."""

from __future__ import annotations

from itertools import pairwise
from math import asin, sqrt

import pytest

from specc.pattern.measure import dart_angle, dart_width
from tests.drafting import SIZES, in_size, named
from tests.methods import inches, made
from tests.sources import ANSUR, ARMY_REPAIR, COSTUME_TEXT, Known, against
from tests.unit.library.quality import sewn
from tests.unit.library.test_sheath import girth

INCH = 25.4


def column(name: str) -> list[float]:
    """A measurement of the misses chart in every size, in millimetres."""
    return [in_size("sheath", size).measurements[name] for size in SIZES]


def at_bust(name: str, bust: float) -> float:
    """A measurement that grows evenly with the bust, at any bust girth, in millimetres."""
    busts, values = column("bust"), column(name)
    slope = (values[-1] - values[0]) / (busts[-1] - busts[0])
    return values[0] + slope * (bust - busts[0])


# Inches.
MISSES = {
    "bust": (30.5, 31.5, 32.5, 34, 36, 38, 40, 42),
    "waist": (23, 24, 25, 26.5, 28, 30, 32, 34),
    "hip": (32.5, 33.5, 34.5, 36, 38, 40, 42, 44),
    "back-waist-length": (15.5, 15.75, 16, 16.25, 16.5, 16.75, 17, 17.25),
}


@against(
    Known.READ,
    "US misses size chart of pattern publishers since the late 1960s",
    "sewingscholar.blogspot.com (2011), and a second chart",
)
@pytest.mark.parametrize("name", MISSES)
def test_the_misses_chart_has_the_published_values(name: str) -> None:
    assert [value / INCH for value in column(name)] == pytest.approx(MISSES[name], abs=1e-9)


@against(Known.READ, "the same", "bust 1, 1, 1 1/2, 2, 2, 2, 2 in")
def test_the_misses_chart_grades_as_published() -> None:
    steps = [(high - low) / INCH for low, high in pairwise(column("bust"))]

    assert steps == pytest.approx([1, 1, 1.5, 2, 2, 2, 2])


# Means in mm and slopes on chest girth, 1,986 women.
CHEST = 946.86
GROWTH = {
    "neck-base-girth": (371.16, 0.156),
    "across-back": (373.36, 0.229),
    "upper-arm": (305.58, 0.278),
    "shoulder-length": (135.41, 0.016),
    "head-girth": (561.12, 0.049),
}
# Means alone; how these grow is said in the chart.
GROWTH_MEANS = {"wrist": 154.79, "shoulder-girth": 1028.19}


@against(Known.COMPUTED, ANSUR, "means and slopes on chest girth, women")
@pytest.mark.parametrize("name", GROWTH)
def test_derived_measurements_have_mean_and_slope_of_ansur(name: str) -> None:
    mean, slope = GROWTH[name]
    busts, values = column("bust"), column(name)

    assert at_bust(name, CHEST) == pytest.approx(mean, abs=0.01)
    for (low, high), (less, more) in zip(pairwise(busts), pairwise(values), strict=True):
        assert (more - less) / (high - low) == pytest.approx(slope, abs=1e-6)


@against(Known.COMPUTED, ANSUR, "wrist 154.79 mm, shoulder girth 1028.19 mm, women")
@pytest.mark.parametrize("name", GROWTH_MEANS)
def test_derived_measurements_have_the_mean_of_ansur(name: str) -> None:
    assert at_bust(name, CHEST) == pytest.approx(GROWTH_MEANS[name], abs=0.01)


@against(
    Known.COMPUTED,
    ANSUR,
    "cervicale over axilla 156.6 mm, sleeve outseam 543.55 mm, stature 1628.47 mm, women",
)
def test_scye_and_sleeve_start_from_ansur_at_the_height_of_the_chart() -> None:
    stature = 65.5 * INCH  # 5 ft 5 to 6 in, from the misses chart's source

    assert at_bust("scye-depth", CHEST) == pytest.approx(156.6 * stature / 1628.47 + INCH, abs=0.1)
    slope = 0.79 * 29.44 / 64.20  # correlation of stature and sleeve, standard deviations
    assert column("sleeve-length")[4] == pytest.approx(543.55 + slope * (stature - 1628.47), abs=0.6)


@against(Known.COMPUTED, ANSUR, "head girth, women, 532 to 597 mm")
def test_the_head_of_every_size_lies_among_the_heads_of_women() -> None:
    assert all(532 < head < 597 for head in column("head-girth"))


@against(Known.COMPUTED, ANSUR, "561.12 / 371.16 = 1.51, women")
def test_a_neckline_at_the_base_of_the_neck_does_not_pass_the_head() -> None:
    assert at_bust("head-girth", CHEST) / at_bust("neck-base-girth", CHEST) == pytest.approx(1.51, abs=0.005)
    assert all(
        head > neck for head, neck in zip(column("head-girth"), column("neck-base-girth"), strict=True)
    )


# Single figures to hold against; the population and the year differ, so agreement is loose. A row says bust,
# head girth, neck base and shoulder girth, inches.
D5585 = (
    (33, 21.5, 13.75, 38.375),
    (35.25, 21.75, 14.25, 39.75),
    (37.25, 22, 14.875, 41.25),
    (40.375, 22.25, 15.5, 43),
    (42.125, 22.25, 15.75, 44.25),
)


@against(Known.READ, "ASTM D5585-11e1, the part of table 1 on the standard's abstract page")
@pytest.mark.parametrize("row", D5585, ids=lambda row: f"bust {row[0]} in")
def test_derived_girths_agree_with_d5585_within_three_percent(row: tuple[float, ...]) -> None:
    bust, head, neck, shoulders = row

    assert at_bust("head-girth", bust * INCH) / INCH == pytest.approx(head, rel=0.03)
    assert at_bust("neck-base-girth", bust * INCH) / INCH == pytest.approx(neck, rel=0.03)
    assert at_bust("shoulder-girth", bust * INCH) / INCH == pytest.approx(shoulders, rel=0.03)


@against(Known.READ, "ASTM D5585-11e1", "1.25 in of head for 14.875 in of bust")
@against(Known.COMPUTED, ANSUR, "0.049 mm a mm")
def test_heads_grow_little_as_in_d5585() -> None:
    heads, busts = column("head-girth"), column("bust")

    assert 0.0 < (heads[-1] - heads[0]) / (busts[-1] - busts[0]) < 0.084


# Inches.
EASE = {"bust-line": ("bust", 1.5, 2.0), "waist-line": ("waist", 0.75, 1.0), "hip-line": ("hip", 2.0, 2.75)}


@against(Known.READ, COSTUME_TEXT, "bust 1 1/2 to 2 in, dress waist 3/4 to 1 in, hips 2 to 2 3/4 in")
@pytest.mark.parametrize("line", EASE)
@pytest.mark.parametrize("size", SIZES)
def test_the_ease_of_the_sheath_is_within_the_published_range(size: str, line: str) -> None:
    body, least, most = EASE[line]
    ease = girth(size, line) - in_size("sheath", size).measurements[body]

    assert least - 1e-6 <= ease / INCH <= most + 1e-6


@against(Known.READ, COSTUME_TEXT, "skirt waist 1/2 to 3/4 in")
@pytest.mark.parametrize("size", SIZES)
def test_the_ease_of_the_a_line_skirt_is_within_the_published_range(size: str) -> None:
    of = named(in_size("a-line-skirt", size))
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))

    assert 0.5 <= (waist - in_size("a-line-skirt", size).measurements["waist"]) / INCH <= 0.75 + 1e-6


@against(Known.SECOND_HAND, "textbooks, as two practitioners report", "1 to 1 1/2 in")
@pytest.mark.parametrize("size", SIZES)
def test_the_ease_of_the_sleeve_cap_is_that_of_textbooks(size: str) -> None:
    of = named(in_size("sheath", size))
    ease = (
        sewn(of["sleeve"], "cap-front", "cap-back")
        - sewn(of["front"], "armhole")
        - sewn(of["back"], "armhole")
    )

    assert 1.0 <= ease / INCH <= 1.5


@against(Known.DERIVED, "angle = 2 asin(width / (2 leg))")
@pytest.mark.parametrize("size", SIZES)
def test_dart_angle_width_and_leg_agree(size: str) -> None:
    for name in ("back", "front"):
        (dart,) = named(in_size("sheath", size))[name].darts
        leg = dart.first.distance(dart.pivot)
        assert dart_angle(dart) == pytest.approx(2.0 * asin(dart_width(dart) / (2.0 * leg)), abs=1e-9)


def stitches_per_inch(method: str, stitch: str) -> list[float]:
    rows = [done for done in made(method).passes if done.stitch == stitch]
    assert rows
    return [1.0 / inches(row.stitch_length) for row in rows]


@against(Known.READ, ARMY_REPAIR, "301 10 to 12 an inch, 504 6 to 10")
def test_stitch_lengths_are_those_of_the_army_manual() -> None:
    for method in ("pressed-open", "pressed-to-one-side"):
        assert all(10 <= round(count) <= 12 for count in stitches_per_inch(method, "301"))
    for method in ("overlocked", "single-turned"):
        assert all(6 <= count <= 10 for count in stitches_per_inch(method, "504"))


@against(Known.DERIVED, "25.4 over the length in mm")
@pytest.mark.parametrize(("mm", "per_inch"), [(2, 12.70), (2.5, 10.16), (3, 8.47)])
def test_stitch_length_to_stitches_per_inch(mm: float, per_inch: float) -> None:
    (count,) = [
        1.0 / inches(row.stitch_length)
        for row in made("elastic-bound", f"stitch-length {mm} mm").passes
        if row.stitch
    ]

    assert count == pytest.approx(per_inch, abs=0.005)


@against(Known.READ, "Singer Co.; M. Lewis (2006); doinaalexei.com", "1/4 in is cut 1 in, 1/2 in 2 in")
@pytest.mark.parametrize(("finished", "cut"), [("1/4", 1), ("1/2", 2)])
def test_cut_widths_of_bias_bindings(finished: str, cut: float) -> None:
    (taken,) = made("bias-bound", f"finished {finished} in").takes

    assert inches(taken.cut_width) == pytest.approx(cut)


@against(Known.DERIVED, "2 sqrt(2) s of strip")
def test_a_join_on_the_straight_grain_costs_what_geometry_says() -> None:
    (taken,) = made("bias-bound").takes

    assert inches(taken.joining) == pytest.approx(2.0 * sqrt(2.0) / 4.0, abs=0.0005)


@against(Known.SECOND_HAND, "sewing references", "1/2 to 1 in")
def test_the_lap_of_a_round_of_elastic() -> None:
    (taken,) = made("elastic-bound").takes

    assert 0.5 <= inches(taken.overlapping) <= 1.0


@against(Known.READ, "4-H bulletins", "depth and 1/4 in")
def test_a_hem_turned_twice_takes_its_depth_and_what_is_turned_under() -> None:
    assert inches(made("double-turned", "deep 2 in").allowance) == pytest.approx(2.25)
    assert inches(made("single-turned", "deep 2 in").allowance) == pytest.approx(2.0)
