"""Thread of a garment: which passes, which threads, what is bought."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.library.threads import FORMULAS, THREAD_BY, Stitching, consumption, ratios
from specc.pipeline import quantities
from specc.quantities.bill_thread import length_of
from tests.made import sheath, top

if TYPE_CHECKING:
    from specc.pipeline import Result
    from specc.quantities.quantities import Quantities

HEM = "hem bottom along front.hem, back.hem by double-turned\n"
UPPER = "thread upper { for needles; cone 5000 m; price 6.40 EUR per cone }\n"
UNDER = "thread under { for bobbins, loopers; cone 100 m; waste 20%; price 2 EUR per cone }\n"


def counted(result: Result) -> Quantities:
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


def test_each_place_of_a_stitch_has_its_thread() -> None:
    found = counted(top(HEM + UPPER + UNDER))
    uses = found.sizes[0].threads
    assert {use.needle for use in uses} == {"upper"}
    assert {use.other for use in uses if use.other_length} == {"under"}


@pytest.mark.parametrize(
    ("uses", "wanted"),
    [
        (("all", "bottom"), "second"),
        (("hems", "bottom"), "second"),
        (("needles", "hems"), "second"),
        (("all", "needles"), "second"),
        (("needles", "all"), "first"),
    ],
)
def test_the_most_particular_thread_serves(uses: tuple[str, str], wanted: str) -> None:
    threads = f"thread first {{ for {uses[0]} }}\nthread second {{ for {uses[1]} }}\n"
    found = counted(top(HEM + threads))
    assert {use.needle for use in found.sizes[0].threads if use.on == "bottom"} == {wanted}


def test_without_a_thread_that_serves_the_length_is_there_and_no_thread() -> None:
    threads = "thread first { for seams }\nthread second { for closures }\n"
    found = counted(top(HEM + threads))
    hem = [use for use in found.sizes[0].threads if use.on == "bottom"]
    assert hem
    assert {use.needle for use in hem} == {None}
    assert all(use.needle_length for use in hem)


def test_whole_cones_are_bought_for_the_order_with_what_is_lost() -> None:
    found = counted(top(HEM + UPPER + UNDER, head="order S: 3, L: 2; "))
    small, large = found.sizes
    lines = {line.name: line for line in found.bill}
    net = 3 * length_of("under", small) + 2 * length_of("under", large)
    assert lines["under"].order == pytest.approx(net / 1000.0)
    assert lines["under"].gross == pytest.approx(net * 1.2 / 1000.0)
    assert lines["upper"].gross == pytest.approx(
        (3 * length_of("upper", small) + 2 * length_of("upper", large)) * 1.15 / 1000.0
    )
    assert (lines["upper"].buy, lines["upper"].buy_unit) == (1.0, "cone")
    bought = lines["under"].buy
    assert bought is not None
    assert 100.0 * (bought - 1) < (lines["under"].gross or 0.0) <= 100.0 * bought
    assert lines["under"].cost == 2 * int(bought)


def test_a_thread_that_does_not_say_what_is_on_a_cone_is_not_bought() -> None:
    (line,) = (line for line in counted(top(HEM + "thread core { for all }\n")).bill if line.kind == "thread")
    assert (line.buy, line.cost) == (None, None)
    assert line.order is not None
    assert "not said" in line.basis


def test_darts_are_sewn_too() -> None:
    found = counted(sheath("alter { leave out sleeve }\nthread core { for all }\n", block="back-centre fold"))
    (darts,) = (use for use in found.sizes[0].threads if use.on == "darts")
    assert darts.stitch == "301"
    assert darts.length > 4 * 50.0


def test_formulas_ask_for_thickness_and_fall_back_on_ratios() -> None:
    plain = counted(top(HEM + "thread core { for all }\n", head="thread-by formulas; "))
    assert {use.by for use in plain.sizes[0].threads} == {"ratio table"}
    thick = 'cloth calico "cotton calico" { width 150 cm; thickness 0.4 mm; is stable }\n'
    found = counted(top(HEM + "thread core { for all }\n", head="thread-by formulas; ", cloth=thick))
    side = next(use for use in found.sizes[0].threads if use.on == "side")
    assert side.by == FORMULAS
    # Two plies of 0.4 mm; a French seam is sewn with stitches of 2 mm where nothing else is said.
    assert side.ratio == pytest.approx(2.0 + 2.0 * (0.8 / 25.4) * (25.4 / 2.0))


@given(
    st.sampled_from(sorted({row.stitch for row in ratios()})),
    st.floats(3.0, 20.0),
    st.floats(0.0, 20.0),
    st.floats(0.001, 0.2),
    st.floats(0.0, 0.2),
)
def test_denser_and_thicker_take_more(
    stitch: str, per_inch: float, denser: float, thick: float, thicker: float
) -> None:
    less = consumption(Stitching(stitch, per_inch, thick), FORMULAS)
    more = consumption(Stitching(stitch, per_inch + denser, thick + thicker), FORMULAS)
    assert less is not None
    assert more is not None
    assert more.ratio >= less.ratio
    assert less.needle is None or 0.0 < less.needle <= 1.0


@given(st.sampled_from(THREAD_BY), st.sampled_from(["999", "209"]))
def test_a_stitch_of_which_nothing_is_known_has_no_figure(by: str, stitch: str) -> None:
    assert consumption(Stitching(stitch, 10.0, 0.02), by) is None
