"""The percentile charts: what they lack is said, and blocks with a bust dart stand on the women's."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.compiling import said
from tests.unit.library.blocks import IN, INCH, MEN, WOMEN, body, checked, pieces
from tests.unit.library.quality import kinks, sewn

if TYPE_CHECKING:
    from pathlib import Path

    from specc.model.chart import Measurement

DERIVED = ("axilla-depth", "scye-depth", "waist-to-hip", "across-front")
LACKING = ("bust-span", "bust-depth", "front-waist-length")


def named(chart: str) -> dict[str, Measurement]:
    """The measurements of a chart of the library by name."""
    found = checked("rectangle", "", chart).chart
    assert found is not None
    return {each.name: each for each in found.measurements}


@pytest.mark.parametrize("chart", [WOMEN, MEN])
def test_every_measurement_grows_and_says_where_it_is_from(chart: str) -> None:
    measurements = named(chart)

    assert {"bust", "waist", "hip", *DERIVED} <= measurements.keys()
    for each in measurements.values():
        low, middle, high = (body(size, each.name, chart) for size in IN[chart])
        assert low < middle < high, each.name
        assert each.source, each.name


def test_what_a_bust_dart_needs_is_for_women_only() -> None:
    women, men = (named(chart).keys() for chart in (WOMEN, MEN))

    assert women - men == set(LACKING)
    assert men < women


@pytest.mark.parametrize("block", ["sheath", "bodice"])
def test_a_block_with_a_bust_dart_says_what_the_chart_of_men_lacks(block: str, tmp_path: Path) -> None:
    text = f'garment g "G" {{ style "G" }}\nuse chart ansur-men\nuse block {block}\n'
    (fault,) = said(text + "cloth c { fibre 100% cotton }\n", folder=tmp_path)

    assert fault.code.id == "SPC313"
    assert all(f"`{name}`" in " ".join(fault.notes) for name in LACKING)


@pytest.mark.parametrize("size", IN[WOMEN])
def test_the_sheath_can_be_drafted_from_the_chart_of_women(size: str) -> None:
    of = pieces("sheath", size, "", WOMEN)

    assert [turn for piece in of.values() for _, turn in kinks(piece) if abs(turn) > 0.5] == []
    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.1)
    assert 2.0 * (sewn(of["front"], "neck") + sewn(of["back"], "neck")) == pytest.approx(
        body(size, "neck-base-girth", WOMEN) + INCH / 2.0, abs=0.01
    )
