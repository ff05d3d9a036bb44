"""Charts against surveys of other people."""

from __future__ import annotations

import numpy as np
import pytest

from tests.outside.test_library_outside import at_bust, column
from tests.sources import Known, against
from tests.unit.library.blocks import INCH, WOMEN, body

BDIMS = "Heinz and others, Journal of Statistics Education (2003), 260 women"

# Means in mm at a chest of 860.6 mm. The slopes of wrist and shoulder girth in the chart use correlations of
# this survey, its means are used nowhere.
MEANS = {"wrist": 150.6, "upper-arm": 281.0, "shoulder-girth": 1003.0}


@against(Known.COMPUTED, BDIMS, "wrist 15.06 cm, biceps 28.10, shoulders 100.30, chest 86.06; within 3 %")
@pytest.mark.parametrize("name", MEANS)
def test_derived_girths_are_those_of_another_survey(name: str) -> None:
    assert at_bust(name, 860.6) == pytest.approx(MEANS[name], rel=0.03)


# Women of a survey are fuller at waist and hip than a chart of misses.
@against(Known.COMPUTED, BDIMS, "waist 69.80 cm, hip 95.65, chest 86.06; within 5 %")
@pytest.mark.parametrize(("name", "mean"), [("waist", 698.0), ("hip", 956.5)])
def test_waist_and_hip_of_misses_are_a_little_below_those_of_young_women(name: str, mean: float) -> None:
    assert 0.95 * mean < interpolated(name, 860.6) < mean


SPANISH = "Spanish sizing survey, sample of 600 women (CRAN Anthropometry 1.20)"


@against(Known.COMPUTED, SPANISH, "waist 85.61 cm, hip 105.46, bust 95.95")
@pytest.mark.parametrize(("name", "mean"), [("waist", 856.1), ("hip", 1054.6)])
def test_waist_and_hip_of_misses_are_below_those_of_women_of_all_ages(name: str, mean: float) -> None:
    assert interpolated(name, 959.5) < mean


@against(Known.COMPUTED, SPANISH, "waist 85.61 cm, hip 105.46, bust 95.95; shares of the bust within 2 %")
@pytest.mark.parametrize(("name", "mean"), [("waist", 856.1), ("hip", 1054.6)])
def test_the_median_of_army_women_has_their_proportions(name: str, mean: float) -> None:
    share = body("p50", name, WOMEN) / body("p50", "bust", WOMEN)

    assert share == pytest.approx(mean / 959.5, rel=0.02)


def interpolated(name: str, bust: float) -> float:
    """A measurement of the misses chart at a bust girth between two sizes, in millimetres."""
    return float(np.interp(bust, column("bust"), column(name)))


D5585 = "ASTM D5585-11e1, the part of table 1 on the standard's abstract page"
# Bust, waist of the curvy and waist of the straight figure, inches.
FIGURES = (
    (31.75, 24.625, 26.125), (33, 25.375, 26.875), (34.125, 26.125, 27.625), (35.25, 27, 28.5),
    (36.25, 28, 29.5), (37.25, 29, 30.5), (38.75, 30.75, 32.25), (40.375, 32.5, 34),
)  # fmt: skip


@against(Known.READ, D5585, "waist by bust, curvy figure; within 2 %")
@against(Known.READ, D5585, "waist by bust, straight figure: all are larger")
@pytest.mark.parametrize(("bust", "curvy", "straight"), FIGURES)
def test_misses_have_the_waist_of_the_curvy_figure(bust: float, curvy: float, straight: float) -> None:
    waist = interpolated("waist", bust * INCH) / INCH

    assert waist == pytest.approx(curvy, rel=0.02)
    assert waist < straight
