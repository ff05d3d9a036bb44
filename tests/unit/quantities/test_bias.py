"""Which strips are planned, and what the bill says of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from shapely import Polygon, box

from specc.pipeline import lay_out, quantities
from tests.compiling import Here, roughly
from tests.made import SHARED, made, top

if TYPE_CHECKING:
    from specc.pipeline import Result
    from specc.quantities.quantities import Quantities

CLOTHS = """cloth calico "cotton calico" {{ width 150 cm; is stable }}
cloth lawn "lawn" {{ for bias strips; width 110 cm; {lawn} }}
trim strip "strip of the lawn" {{ kind bias strip; cut-from lawn; {strip} }}
"""
NECK = "finish neck along front.neck, back.neck by bias-bound { binding strip; finished 8 mm }\n"


def counted(*, head: str = "", lawn: str = "", strip: str = "") -> Quantities:
    result = top(NECK, head=head, cloth=CLOTHS.format(lawn=lawn, strip=strip))
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


def test_every_piece_of_the_order_is_cut_and_the_cloth_is_on_the_bill() -> None:
    found = counted(head="order S: 6, L: 4; ")
    (plan,) = found.bias
    assert [size for size, _, _ in plan.pieces] == ["S"] * 6 + ["L"] * 4  # one closed round each
    line = next(line for line in found.bill if line.name == "lawn")
    assert line.order == pytest.approx(plan.chosen.length / 1000.0)
    small, large = line.per_garment
    assert 6 * small + 4 * large == pytest.approx(line.order)
    assert plan.chosen.length == min(cut.length for cut in plan.cuts)


@pytest.mark.parametrize("way", ["joined strips", "whole strips", "tube"])
def test_the_maker_chooses_the_way(way: str) -> None:
    (plan,) = counted(head="order S: 6; ", strip=f"cut-as {way}").bias
    assert plan.chosen.way == way


def test_cloth_that_shrinks_is_narrower_and_bought_longer() -> None:
    (plain,), (shrunk,) = (
        counted(head="order S: 60; ", lawn=lawn).bias for lawn in ("", "shrinks 10% length, 10% width")
    )
    assert shrunk.grown == pytest.approx(1.0 / 0.9)
    assert shrunk.chosen.length >= plain.chosen.length


def test_without_an_order_one_of_each_size_is_planned_and_nothing_is_bought() -> None:
    found = counted()
    (plan,) = found.bias
    assert not plan.ordered
    assert dict.fromkeys(size for size, _, _ in plan.pieces) == {"S": None, "L": None}
    line = next(line for line in found.bill if line.name == "lawn")
    assert (line.order, line.buy) == (0.0, 0.0)


def test_a_cloth_that_does_not_say_its_width_has_no_plan() -> None:
    result = top(NECK, cloth=CLOTHS.format(lawn="", strip="").replace("width 110 cm; ", ""))
    found = quantities(result)
    assert found is not None
    assert found.bias == ()


STRAPS = """garment bag "Bag" {{ style "B"; sizes S; units cm; order S: 10 }}
chart one {{ sizes S, L; measurement bust = 88, 100 cm }}
use chart one
use block rectangle as body {{ wide 40 cm; long 40 cm; cutting twice }}
use block rectangle as strap "strap" {{ wide 3 cm; long {long} cm; cutting twice }}
cloth lawn "lawn" {{ width 110 cm; {strips}}}
seam side joins body.left-edge to body.right-edge by french
seam strap-long joins strap.left-edge to strap.right-edge by turned-tube {{ allow 5 mm }}
hem low along body.bottom by double-turned
hem high along body.top by double-turned
attach strap.top, strap.bottom to body.top at 50%
{more}"""


WITH_ENDS = 600.0 + 2.0 * 19.05  # at both ends what the hem takes that catches the strap


def laid_out(result: Result) -> Result:
    return lay_out(result, Here(SHARED), roughly)


def straps(*, long: float = 60.0, strips: str = "in-strips strap", more: str = "") -> Quantities:
    result = laid_out(made(STRAPS.format(long=long, strips=strips, more=more)))
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


def test_straps_in_strips_are_planned_as_bindings_are_and_lie_in_no_lay() -> None:
    (plan,) = straps().bias
    assert (plan.name, plan.piece, plan.cloth) == ("strap", True, "lawn")
    assert plan.wide == pytest.approx(40.0)  # 3 cm and 5 mm on both sides
    assert [length for _, _, length in plan.pieces] == pytest.approx([WITH_ENDS] * 20)
    assert plan.chosen.way == "whole strips"
    (lays,) = straps().lays
    assert {piece.piece for lay in lays.lays for piece in lay.pieces} == {"body"}


def test_the_bill_counts_the_lays_and_the_strips_and_each_but_once() -> None:
    found = straps()
    (line,), (plan,), (lays,) = found.bill, found.bias, found.lays
    assert line.order == pytest.approx(((lays.order or 0.0) + plan.chosen.length * plan.grown) / 1000.0)
    in_lay = straps(strips="")
    assert in_lay.bias == ()
    assert {piece.piece for lay in in_lay.lays[0].lays for piece in lay.pieces} == {"body", "strap"}


def test_a_strap_longer_than_any_strip_is_joined() -> None:
    """A strip from edge to edge of 110 cm is 155.6 cm long; the ends of the strap take 3.8 cm."""
    (short,), (long,) = straps(long=151.0).bias, straps(long=152.5).bias
    assert (short.chosen.way, any(short.chosen.joins)) == ("whole strips", False)
    assert long.chosen.way != "whole strips"
    assert all(long.chosen.joins)


def test_strips_too_many_to_be_planned_are_counted_by_area() -> None:
    found = straps(more="", strips="in-strips strap, body")
    planned = {plan.name for plan in found.bias}
    assert planned == {"body", "strap"}
    many = quantities(
        laid_out(made(STRAPS.format(long=60, strips="in-strips strap", more="").replace("S: 10", "S: 1500")))
    )
    assert many is not None
    assert many.bias == ()
    (line,), (lays,) = many.bill, many.lays
    by_area = 40.0 * WITH_ENDS * 2 * 1500 / 1100.0
    assert line.order == pytest.approx(((lays.order or 0.0) + by_area) / 1000.0)


def test_a_piece_on_the_fold_takes_a_strip_as_long_as_the_whole() -> None:
    band = """use block rectangle as band { wide 30 cm; long 4 cm; cutting on-fold }
hem band along band.top, band.bottom, band.right-edge by raw
"""
    plan = next(
        plan for plan in straps(strips="in-strips strap, band", more=band).bias if plan.name == "band"
    )
    assert plan.wide == pytest.approx(40.0)
    assert {length for _, _, length in plan.pieces} == {600.0}


LAID = """cloth calico "cotton calico" {{ width 150 cm; {cloth} }}
trim strip "strip of the calico" {{ kind bias strip; cut-from calico; {strip} }}
trim other "another strip of it" {{ kind bias strip; cut-from calico; {strip} }}
"""


def on_its_own_cloth(strip: str = "cut-as offcuts", cloth: str = "", order: str = "S: 6, L: 4") -> Quantities:
    """A top bound with strips of its own cloth."""
    arms = "finish low along front.hem, back.hem by bias-bound { binding other; finished 6 mm }\n"
    text = NECK + arms
    result = laid_out(top(text, head=f"order {order}; ", cloth=LAID.format(strip=strip, cloth=cloth)))
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


def test_offcuts_are_proposed_and_taken_only_where_the_maker_says_so() -> None:
    (plain, _), (asked, _) = on_its_own_cloth(strip="").bias, on_its_own_cloth().bias
    assert "offcuts" in {cut.way for cut in plain.cuts}
    assert plain.chosen.way != "offcuts"
    assert plain.offcuts == ()
    assert asked.chosen.way == "offcuts"


def test_what_is_not_cut_from_offcuts_is_bought_and_every_piece_is_cut_once() -> None:
    for plan in on_its_own_cloth().bias:
        chosen, there = plan.chosen, [length for each in plan.offcuts for length in each.lengths * each.times]
        bought = chosen.rest
        assert len(chosen.joins) == len(plan.pieces)
        assert chosen.length == (bought.length if bought else 0.0)
        cut = len(plan.pieces) - (len(bought.joins) if bought else 0)
        assert sum(length for _, _, length in plan.pieces[:cut]) <= sum(chosen.strips) <= sum(there) + 1e-6
        assert list(chosen.strips) == sorted(there, reverse=True)[: len(chosen.strips)]


@pytest.mark.parametrize("cloth", ["", "shrinks 8% length, 3% width", "spread folded"])
def test_strips_from_offcuts_lie_on_the_lay_off_its_pieces_and_off_each_other(cloth: str) -> None:
    """Held against shapely, with all strips of both trims."""
    found = on_its_own_cloth(cloth=cloth)
    (lays,) = found.lays
    assert any(plan.offcuts for plan in found.bias)
    for index, lay in enumerate(lays.lays):
        strips = [
            Polygon([(p.x, p.y) for p in outline])
            for plan in found.bias
            if plan.offcuts
            for outline in plan.offcuts[index].outlines
        ]
        pieces = [Polygon([(p.x, p.y) for p in piece.outline]) for piece in lay.pieces]
        cloth_laid = box(0.0, 0.0, lay.length, lay.width)
        for number, strip in enumerate(strips):
            assert strip.difference(cloth_laid.buffer(1e-3)).area < 1e-3
            assert all(strip.distance(piece) > 1.0 for piece in pieces)
            assert all(strip.intersection(other).area < 0.5 for other in strips[:number])


def test_cloth_that_lies_double_gives_each_strip_twice() -> None:
    (plan, _) = on_its_own_cloth(cloth="spread folded").bias
    (lays,) = on_its_own_cloth(cloth="spread folded").lays
    assert [each.times for each in plan.offcuts] == [lay.plies * lay.times * 2 for lay in lays.lays]


def test_the_bill_takes_what_offcuts_save_off_the_cloth() -> None:
    asked, plain = on_its_own_cloth(), on_its_own_cloth(strip="")
    saved = sum(
        (other.chosen.length - plan.chosen.length) * plan.grown
        for plan, other in zip(asked.bias, plain.bias, strict=True)
    )
    orders = [
        next(line.order or 0.0 for line in found.bill if line.name == "calico") for found in (plain, asked)
    ]
    assert saved > 0.0
    assert orders[0] - orders[1] == pytest.approx(saved / 1000.0)
