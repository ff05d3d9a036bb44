"""Lays of a garment: which shapes lie on which cloth, by the numbers of pieces whose areas are known."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.geometry.region import bounds, polygon_area
from specc.laying import layers
from specc.laying.lay_file import read, written
from specc.making import cut
from specc.pipeline import lay_out, quantities
from specc.source import SourceFile
from tests.compiling import Here, roughly
from tests.made import SHARED, panels, top

if TYPE_CHECKING:
    from specc.laying import ClothLays
    from specc.packing import Layout, Shape, Strip
    from specc.pipeline import Result

HEM = "hem bottom along front.hem, back.hem by double-turned\n"


def laid(result: Result) -> tuple[ClothLays, ...]:
    found = lay_out(result, Here(SHARED), roughly)
    assert found.cut_out is not None, [each.message for each in found.diagnostics]
    return found.cut_out.lays


def shapes(result: Result) -> dict[str, Shape]:
    """The shapes of one garment of the first size, by name."""
    assert result.garment is not None, [each.message for each in result.diagnostics]
    assert result.assembly is not None
    (layer,) = layers(result.garment, result.assembly, cut(result.assembly))
    _, wanted = next(iter(layer.wanted("one garment at a time")))
    return {shape.name: shape for shape in wanted.strip.shapes}


def calico(lines: str) -> str:
    return f'cloth calico "cotton calico" {{ is stable; {lines} }}\n'


def size_of(shape: Shape) -> tuple[float, float]:
    low, high = bounds(shape.outline)
    return high.x - low.x, high.y - low.y


def test_a_pair_is_mirrored_on_open_cloth() -> None:
    found = shapes(panels())
    assert {name: shape.count for name, shape in found.items()} == {
        "S front": 1,
        "S front mirrored": 1,
        "S back": 1,
        "S back mirrored": 1,
    }
    one, other = found["S front"], found["S front mirrored"]
    assert polygon_area(one.outline) == pytest.approx(-polygon_area(other.outline))
    assert one.angles == (0.0, 180.0)


def test_on_folded_cloth_a_pair_is_laid_once_and_half_of_the_width_is_there() -> None:
    result = top(HEM, cloth=calico("width 150 cm; spread folded"))
    found = shapes(result)
    assert {shape.count for shape in found.values()} == {1}
    assert all(shape.pinned for shape in found.values()), "both pieces are cut on the fold"
    (lays,) = laid(result)
    assert lays.lays[0].width == pytest.approx(750.0)


def test_a_piece_on_the_fold_is_opened_on_open_cloth() -> None:
    open_, folded = (
        shapes(top(HEM, cloth=calico(f"width 150 cm; spread {how}"))) for how in ("open", "folded")
    )
    for name in ("S front", "S back"):
        assert not open_[name].pinned
        assert size_of(open_[name])[1] == pytest.approx(2.0 * size_of(folded[name])[1])
        assert abs(polygon_area(open_[name].outline)) == pytest.approx(
            2.0 * abs(polygon_area(folded[name].outline))
        )


def test_what_shrinks_is_cut_larger_by_the_rest() -> None:
    plain = shapes(top(HEM, cloth=calico("width 150 cm")))
    grown = shapes(top(HEM, cloth=calico("width 150 cm; shrinks 4% length, 20% width")))
    for name, shape in plain.items():
        along, across = size_of(shape)
        assert size_of(grown[name]) == pytest.approx((along / 0.96, across / 0.8))


@pytest.mark.parametrize(
    ("lines", "angles"),
    [
        ("is napped", (0.0,)),
        ("is one-way", (0.0,)),
        ("across front", (90.0, 270.0)),
        ("on-bias front", (45.0, 315.0, 135.0, 225.0)),
        ("may-lean 2 deg", (0.0, 1.0, 359.0, 2.0, 358.0, 180.0, 181.0, 179.0, 182.0, 178.0)),
    ],
)
def test_a_piece_may_be_turned_as_the_cloth_says(lines: str, angles: tuple[float, ...]) -> None:
    cloth = f'cloth calico "cotton calico" {{ width 150 cm; {lines} }}\n'
    assert shapes(top(HEM, cloth=cloth))["S front"].angles == angles


def test_a_piece_that_lies_as_it_fits_may_lie_any_way() -> None:
    found = shapes(top(HEM, cloth=calico("width 150 cm; any-way front")))["S front"]
    assert found.angles == tuple(15.0 * step for step in range(24))


def test_an_interfacing_without_allowance_has_a_lay_of_its_own() -> None:
    cloth = calico("width 150 cm") + 'cloth firm "interfacing" { for interfacing; width 90 cm }\n'
    shell, firm = laid(top(HEM + "also cut front from firm without allowance\n", cloth=cloth))
    assert [piece.piece for piece in firm.lays[0].pieces] == ["front"]
    own = next(piece for piece in shell.lays[0].pieces if piece.piece == "front")
    assert abs(polygon_area(firm.lays[0].pieces[0].outline)) < abs(polygon_area(own.outline))


def test_the_order_is_the_sum_of_the_lays_and_the_bill_says_so() -> None:
    result = lay_out(top(HEM, cloth=calico("width 150 cm"), head="order S: 3, L: 2; "), Here(SHARED), roughly)
    assert result.cut_out is not None
    (lays,) = result.cut_out.lays
    assert [(lay.ratio[0].size, lay.times) for lay in lays.lays] == [("S", 3), ("L", 2)]
    assert lays.order == pytest.approx(sum(lay.length * lay.plies * lay.times for lay in lays.lays))
    assert lays.per_garment == pytest.approx([lay.length for lay in lays.lays])
    amounts = quantities(result)
    assert amounts is not None
    line = next(line for line in amounts.bill if line.name == "calico")
    assert lays.order is not None
    assert line.order == pytest.approx(lays.order / 1000.0)
    assert line.per_garment == pytest.approx([length / 1000.0 for length in lays.per_garment])


@pytest.mark.parametrize("cutting", ["one of each size", "stacked plies"])
def test_what_garments_take_adds_up_to_the_order(cutting: str) -> None:
    head = f"order S: 5, L: 3; cutting {cutting}; "
    (lays,) = laid(top(HEM, cloth=calico("width 150 cm"), head=head))
    small, large = lays.per_garment
    assert lays.cutting == cutting
    assert 5 * small + 3 * large == pytest.approx(lays.order)


def test_a_size_that_nobody_ordered_takes_its_share_at_the_average() -> None:
    (lays,) = laid(top(HEM, cloth=calico("width 150 cm"), head="order S: 2; "))
    (lay,) = lays.lays
    small, large = lays.per_garment
    assert small == pytest.approx(lay.length)
    assert large > small


def test_without_an_order_there_is_one_garment_of_each_size_and_no_amount_to_buy() -> None:
    (lays,) = laid(top(HEM, cloth=calico("width 150 cm")))
    assert (lays.order, lays.ways) == (None, ())
    assert [lay.ratio[0].size for lay in lays.lays] == ["S", "L"]


def test_a_cloth_that_does_not_say_its_width_is_not_laid() -> None:
    assert laid(top(HEM, cloth=calico("weight 100 g/m2"))) == ()


def test_what_was_written_is_read_again_and_believed() -> None:
    result = top(HEM, cloth=calico("width 150 cm"))
    assert result.garment is not None
    assert result.assembly is not None
    (layer,) = layers(result.garment, result.assembly, cut(result.assembly))
    wanted = [one for _, one in layer.wanted("one garment at a time")]
    kept = [(one, roughly(one.strip)) for one in wanted]
    layouts, said = read(SourceFile("top.lay", written(kept).decode()))
    assert said == ()
    assert layouts == {one.key: layout for one, layout in kept}
    assert all(key in written(kept).decode() for key in layouts or ())


def test_a_lay_file_of_another_form_is_not_read() -> None:
    layouts, (said,) = read(SourceFile("top.lay", '{"form": "lays 9", "lays": []}'))
    assert layouts is None
    assert said.code.id == "SPC603"


def test_nothing_is_planned_that_is_known(monkeypatch: pytest.MonkeyPatch) -> None:
    result = top(HEM, cloth=calico("width 150 cm"))
    assert result.garment is not None
    assert result.assembly is not None
    (layer,) = layers(result.garment, result.assembly, cut(result.assembly))
    kept = [(one, roughly(one.strip)) for _, one in layer.wanted("one garment at a time")]
    monkeypatch.setattr(Here, "project", lambda *_: written(kept))

    def plan(strip: Strip) -> Layout:
        raise AssertionError(strip)

    found = lay_out(result, Here(SHARED), plan)
    assert found.cut_out is not None
    assert all(lay.searched for lay in found.cut_out.lays[0].lays)
    assert found.diagnostics == result.diagnostics
