"""Which strips are planned, and what the bill says of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.pipeline import quantities
from tests.made import top

if TYPE_CHECKING:
    from specc.quantities import Quantities

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
