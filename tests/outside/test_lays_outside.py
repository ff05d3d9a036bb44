"""Lays and the cloth they take."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from shapely import Polygon, STRtree

from specc.laying import layers
from specc.making import cut
from specc.packing import bottom_left
from specc.pipeline import check_bytes, lay_out, quantities
from tests.compiling import Here, roughly
from tests.made import top
from tests.sources import Known, against

if TYPE_CHECKING:
    from specc.packing import Layout, Strip
    from specc.pipeline import Result

ROOT = Path(__file__).parents[2]
GARMENTS = sorted((*ROOT.joinpath("tests/garments").glob("*.garment"), *ROOT.glob("examples/*/*.garment")))
YARD = 914.4


def compiled(path: Path) -> Result:
    return check_bytes(path.name, path.read_bytes(), Here(path.parent))


@against(Known.PROGRAM, "shapely", "areas, distances")
@pytest.mark.parametrize("path", GARMENTS, ids=lambda path: path.stem)
def test_a_lay_has_all_that_is_cut_and_nothing_lies_on_anything_else(path: Path) -> None:
    """The area of what lies there is what is counted of the cloth, grown by what it shrinks."""
    result = lay_out(compiled(path), Here(path.parent), roughly)
    amounts = quantities(result)
    assert result.garment is not None
    assert result.cut_out is not None
    assert amounts is not None
    for lays in result.cut_out.lays:
        cloth = next(each for each in result.garment.cloths if each.name == lays.cloth)
        used = {
            size.size: sum(use.area for use in size.cloths if use.cloth == lays.cloth)
            for size in amounts.sizes
        }
        strips = {trim.name for trim in result.garment.trims if trim.cut_from == lays.cloth}
        for size in amounts.sizes:
            used[size.size] -= sum(
                one.cut_length * (one.cut_width or 0.0) * one.count
                for one in size.trims
                if one.trim in strips
            )
        grown = 1.0 / (1.0 - float(cloth.shrinks_length)) / (1.0 - float(cloth.shrinks_width))
        sides = 1.0 if lays.spread == "open" else 2.0
        gap = float(cloth.spreading.gap.value)
        for lay in lays.lays:
            shapes = [Polygon([(p.x, p.y) for p in piece.outline]) for piece in lay.pieces]
            assert sides * sum(shape.area for shape in shapes) == pytest.approx(
                sum(used[each.size] * each.count for each in lay.ratio) * grown, rel=1e-6
            )
            bounds = [shape.bounds for shape in shapes]
            assert min(low for _, low, _, _ in bounds) >= -0.1
            assert max(high for _, _, _, high in bounds) <= lay.width + 0.1
            assert min(left for left, _, _, _ in bounds) >= gap - 0.1
            assert max(right for _, _, right, _ in bounds) <= lay.length + 0.1
            near = STRtree(shapes).query(shapes, predicate="dwithin", distance=gap - 0.1)
            assert all(one == other for one, other in near.T)


def finely(strip: Strip) -> Layout:
    return bottom_left(strip, squares=150)


SKIRT = """garment skirt "Skirt" {{ style "SK"; puts-on opens; sizes 8, 12, 16; sample 12; units in }}
use chart misses
use block {block} {{ skirt-length 24 in }}
cloth calico "calico" {{ width {width} in, usable {usable} in; is stable }}
"""


@against(
    Known.SECOND_HAND,
    "home-sewing yardage tables",
    "straight skirt 2 yd at 35-36 in, 1 1/4 yd at 58-60 in; A-line skirt 2 1/4 and 1 3/8 yd",
)
@pytest.mark.parametrize(
    ("block", "width", "published"),
    [
        ("straight-skirt", 36, 2.0),
        ("straight-skirt", 60, 1.25),
        ("a-line-skirt", 36, 2.25),
        ("a-line-skirt", 60, 1.375),
    ],
)
def test_a_skirt_takes_no_more_than_is_told_to_buy(block: str, width: int, published: float) -> None:
    """Tables are for the largest size and a waistband; so less than half of it would be wrong, too."""
    text = SKIRT.format(block=block, width=width, usable=width - 1).encode()
    result = lay_out(check_bytes("skirt.garment", text, Here(ROOT)), Here(ROOT), finely)
    assert result.cut_out is not None, [each.message for each in result.diagnostics]
    (lays,) = result.cut_out.lays
    assert 0.4 * published * YARD < max(lays.per_garment) <= published * YARD


@against(
    Known.SECOND_HAND,
    "fabric width conversion chart, usually credited to the Extension Service of New Jersey",
    "3 1/8 yd at 35-36 in; 2 1/2 at 44-45; 2 at 52-54; 1 7/8 at 58-60",
)
def test_many_garments_on_other_widths_take_what_the_chart_says() -> None:
    """Nine garments in one lay, since the chart is of equal area and one garment has too few pieces."""
    chart = {36: 3.125, 45: 2.5, 54: 2.0, 60: 1.875}
    found = {}
    for width in chart:
        text = SKIRT.format(block="a-line-skirt", width=width, usable=width - 1).replace(
            "units in", "units in; order 8: 3, 12: 3, 16: 3; cutting one of each size"
        )
        data = text.replace("is stable", "is stable; table 30 m").encode()
        result = lay_out(check_bytes("skirt.garment", data, Here(ROOT)), Here(ROOT), finely)
        assert result.cut_out is not None, [each.message for each in result.diagnostics]
        found[width] = result.cut_out.lays[0].order or 0.0
    for width, yards in chart.items():
        assert found[width] / found[36] == pytest.approx(yards / chart[36], rel=0.2)


@against(Known.DERIVED, "cut size = wanted / (1 - share)", "100 cm at 5%: 105.26 cm")
def test_a_metre_that_shrinks_by_a_twentieth_is_cut_longer_by_the_rest() -> None:
    """The square top is 60 cm long from hem to shoulder."""
    cloth = 'cloth calico "calico" {{ width 150 cm; is stable; shrinks {} length }}\n'
    hem = "hem bottom along front.hem, back.hem by double-turned\n"
    lengths = []
    for share in ("0%", "5%"):
        result = top(hem, cloth=cloth.format(share))
        assert result.garment is not None
        assert result.assembly is not None
        (layer,) = layers(result.garment, result.assembly, cut(result.assembly))
        _, wanted = next(iter(layer.wanted("one garment at a time")))
        (front,) = (shape for shape in wanted.strip.shapes if shape.name == "S front")
        lengths.append(max(p.x for p in front.outline) - min(p.x for p in front.outline))
    assert lengths[1] / lengths[0] == pytest.approx(105.26 / 100.0, abs=5e-5)
