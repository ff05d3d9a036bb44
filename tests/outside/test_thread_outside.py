"""How much thread stitches take."""

from __future__ import annotations

import pytest

from specc.library.threads import FORMULAS, GUIDE, TABLE, Stitching, consumption, formulas
from specc.pipeline import quantities
from tests.made import panels
from tests.sources import Known, against

SPREADSHEETS = "textilecalculations.com, worked examples"


def by_formula(stitch: str, per_inch: float, thick: float) -> float:
    found = consumption(Stitching(stitch, per_inch, thick), FORMULAS)
    assert found is not None
    assert found.by == FORMULAS
    return found.ratio


@against(
    Known.READ,
    "401 chart of a machine maker, in a bulletin of a thread maker (2008)",
    "8 to the inch on .060 in: 4.96; on .070 in: 5.12",
)
@pytest.mark.parametrize(("thick", "ratio"), [(0.060, 4.96), (0.070, 5.12)])
def test_two_thread_chainstitch_takes_what_the_chart_says(thick: float, ratio: float) -> None:
    assert by_formula("401", 8, thick) == pytest.approx(ratio, abs=5e-9)


@against(Known.READ, SPREADSHEETS, "101 on .005 in, 9 to the inch: 3.09; 301 on .01 in, 10: 2.2")
@pytest.mark.parametrize(
    ("stitch", "thick", "per_inch", "ratio"), [("101", 0.005, 9, 3.09), ("301", 0.01, 10, 2.2)]
)
def test_worked_answers_come_out(stitch: str, thick: float, per_inch: float, ratio: float) -> None:
    assert by_formula(stitch, per_inch, thick) == pytest.approx(ratio)


@against(Known.DERIVED, "a lockstitch lies on both sides and crosses the cloth twice", "2 + 2 T S")
@pytest.mark.parametrize("per_inch", [8, 10, 12])
@pytest.mark.parametrize("thick", [0.02, 0.04, 0.06])
def test_a_lockstitch_is_as_long_as_its_way_through_the_cloth(per_inch: float, thick: float) -> None:
    long = 1.0 / per_inch
    assert by_formula("301", per_inch, thick) == pytest.approx((2.0 * long + 2.0 * thick) / long)


@against(Known.DERIVED, "516 is 401 beside 504", "9 + 2S(2W + 3T) = 4 + 2TS + 5 + 4S(W + T)")
def test_a_safety_stitch_takes_what_its_two_rows_take() -> None:
    own = {formula.stitch: formula for formula in formulas()}
    for per_inch, thick, width in ((8, 0.05, 0.2), (12, 0.02, 0.3)):
        both = own["401"].ratio(per_inch, thick) + own["504"].ratio(per_inch, thick, width)
        assert own["516"].ratio(per_inch, thick, width) == pytest.approx(both)


@against(Known.MEMORY, "ratios of a thread maker", "301 2.5, 401 5.5, 504 14, 516 20, 605 28")
@pytest.mark.parametrize(
    ("stitch", "ratio", "needle"),
    [("301", 2.5, 0.5), ("401", 5.5, 0.25), ("504", 14, 0.2), ("516", 20, 0.2), ("605", 28, 0.3)],
)
def test_the_ratio_table_is_that_of_the_maker(stitch: str, ratio: float, needle: float) -> None:
    found = consumption(Stitching(stitch, None, None), TABLE)
    assert found is not None
    assert (found.ratio, found.needle) == (ratio, needle)


@against(
    Known.READ,
    "stitch type guide of the same maker",
    "101 5, 103 4.5, 301 2.5, 304 5.5: other than the table",
)
@pytest.mark.parametrize(("stitch", "ratio"), [("101", 5.0), ("103", 4.5), ("301", 2.5), ("304", 5.5)])
def test_where_sources_disagree_the_maker_chooses(stitch: str, ratio: float) -> None:
    found = consumption(Stitching(stitch, None, None), GUIDE)
    assert found is not None
    assert (found.by, found.ratio) == (GUIDE, ratio)


@against(Known.READ, "guide of a thread maker", "needle to bobbin of a lockstitch is 1 to 1")
def test_a_seam_of_half_a_metre_takes_what_its_ratio_says() -> None:
    """Two panels of 40 cm, sewn together twice; a French seam is stitched twice."""
    found = quantities(panels())
    assert found is not None
    uses = [use for use in found.sizes[0].threads if use.on == "side"]
    assert [use.stitch for use in uses] == ["301", "301"]
    assert [use.length for use in uses] == pytest.approx([800.0, 800.0])
    for use in uses:
        assert use.needle_length == pytest.approx(800.0 * 1.25)
        assert use.other_length == pytest.approx(use.needle_length)
