"""Amounts of real garments, reckoned a second way by hand."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from shapely import Polygon

from specc.pipeline import lay_out, quantities
from tests.compiling import Here, roughly
from tests.made import CLOTH, SHARED, SHOULDERS, SIDES, length, made, sheath, top

if TYPE_CHECKING:
    from specc.quantities.quantities import BillLine, Quantities, SizeQuantities, TrimCut

NECK = (
    "finish neck along front.neck, back.neck by elastic-bound { binding edging; overlap 2 cm; turn 1 cm }\n"
)
PRICED = """cloth calico "calico" {
  width 160 cm, usable 150 cm; is stable
  shrinks 5% length, 4% width; price 3.10 EUR per m
}
"""


def amounts(rest: str, *, cloth: str = CLOTH, seams: str = SHOULDERS + SIDES, order: str = "") -> Quantities:
    found = quantities(top(rest, cloth=cloth, seams=seams, head=f"order {order}; " if order else ""))
    assert found is not None
    return found


def cut(size: SizeQuantities, used_on: str) -> TrimCut:
    (found,) = (one for one in size.trims if one.used_on == used_on)
    return found


def line(of: Quantities, name: str) -> BillLine:
    (found,) = (one for one in of.bill if one.name == name)
    return found


def test_a_closed_round_is_lapped_once() -> None:
    result = top(NECK)
    whole = 2 * (length(result, "front.neck") + length(result, "back.neck"))

    neck = cut(amounts(NECK).sizes[0], "neck")

    assert (neck.closed, neck.count, neck.cut_width) == (True, 1, None)
    (overlap,) = neck.additions
    assert overlap.what == "overlap"
    assert overlap.length == pytest.approx(20.0)
    assert neck.cut_length == pytest.approx(whole + 20.0)


def test_an_open_run_is_turned_at_both_ends() -> None:
    seams = SIDES + "hem shoulders along front.shoulder, back.shoulder by double-turned\n"

    neck = [one for one in amounts(NECK, seams=seams).sizes[0].trims if one.used_on == "neck"]

    # Front and back each have a neck of their own, open at the shoulders.
    assert [(one.closed, one.count) for one in neck] == [(False, 1), (False, 1)]
    for one in neck:
        assert one.cut_length == pytest.approx(one.seam_length + 2 * 10.0)


def test_what_is_held_in_is_saved() -> None:
    held = NECK.replace("turn 1 cm", "turn 1 cm; hold 10% along front.neck")
    plain, drawn_in = cut(amounts(NECK).sizes[0], "neck"), cut(amounts(held).sizes[0], "neck")

    assert drawn_in.held == pytest.approx(0.1 * 2 * length(top(NECK), "front.neck"))
    assert drawn_in.cut_length == pytest.approx(plain.cut_length - drawn_in.held)


def test_a_hold_may_be_reckoned_so_that_the_trim_fits_a_measurement() -> None:
    """The trim along the front comes to a fifth of the bust, in every size."""
    reckoned = "hold 1 - bust / 5 / (2 * length of front.neck) along front.neck"
    text = NECK.replace("turn 1 cm", f"turn 1 cm; {reckoned}")
    for size, bust in zip(amounts(text).sizes, (880.0, 1000.0), strict=True):
        neck = cut(size, "neck")
        front = sum(
            (zone.end - zone.start) * (1.0 - zone.held) for zone in neck.zones if zone.piece == "front"
        )
        assert front == pytest.approx(bust / 5.0)


def test_a_bound_seam_is_there_on_both_sides() -> None:
    shoulders = "seam shoulder joins front.shoulder to back.shoulder by bound-outside { binding edging }\n"

    shoulder = cut(amounts("", seams=shoulders + SIDES).sizes[0], "shoulder")

    assert (shoulder.count, shoulder.closed) == (2, False)
    assert shoulder.cut_length == pytest.approx(length(top(""), "front.shoulder"))


def test_cloth_is_the_area_of_both_halves_with_what_is_cut_on() -> None:
    size = amounts("hem bottom along front.hem, back.hem by double-turned\n" + NECK).sizes[0]

    area = sum(2 * Polygon([(p.x, p.y) for p in piece.cut]).area for piece in size.cuts)

    assert [use.area for use in size.cloths] == [pytest.approx(area)]
    assert area > sum(2 * Polygon([(p.x, p.y) for p in piece.net]).area for piece in size.cuts)


def test_a_pair_counts_twice_and_strips_count_with_their_cloth() -> None:
    result = sheath(
        'cloth lawn "lawn" { for bias strips; width 140 cm; weight 90 g/m2 }\n'
        'trim strip "strip" { kind bias strip; cut-from lawn }\n'
        + SHOULDERS
        + "seam side joins front.side to back.side by french\n"
        "finish armhole along front.armhole, back.armhole by bias-bound { binding strip; finished 1 cm }\n"
    )
    found = quantities(result)
    assert found is not None
    size = found.sizes[0]

    areas = {piece.piece: Polygon([(p.x, p.y) for p in piece.cut]).area for piece in size.cuts}
    strip = cut(size, "armhole")

    assert {use.cloth: use.area for use in size.cloths} == {
        # front and back lie on the fold, the sleeve is cut twice
        "calico": pytest.approx(2 * (areas["front"] + areas["back"] + areas["sleeve"])),
        "lawn": pytest.approx(2 * strip.cut_length * 40.0),
    }
    assert strip.cut_width == pytest.approx(40.0)  # four times the finished width
    strips = next(line for line in found.bill if line.name == "strip")
    assert strips.per_garment[0] == pytest.approx(2 * strip.cut_length / 1000.0)
    assert strips.buy is None  # it comes with the lawn


def test_the_order_is_the_sum_of_its_sizes_with_shrinkage_and_in_quarters() -> None:
    found = amounts("", cloth=PRICED, order="S: 3, L: 2")
    calico = line(found, "calico")
    areas = [sum(use.area for use in size.cloths) for size in found.sizes]

    lengths = [area / (0.95 * 0.96) / 1500.0 / 1000.0 for area in areas]

    assert calico.per_garment == pytest.approx(lengths)
    assert calico.order == pytest.approx(3 * lengths[0] + 2 * lengths[1])
    assert calico.buy is not None
    assert calico.order is not None
    assert 0 <= calico.buy - calico.order < 0.25
    assert calico.buy * 4 == round(calico.buy * 4)
    assert calico.cost == Fraction("3.10") * Fraction(round(calico.buy * 4), 4)


def test_rolls_are_bought_whole() -> None:
    result = made(
        'garment top "Top" { style "T"; sizes S, L; units cm; order S: 40 }\n'
        'use "shared/top.garment"\nuse chart two-sizes\nuse block top\n'
        + CLOTH
        + SHOULDERS
        + SIDES
        + 'trim tape "tape" { kind fold-over elastic; width 2 cm; stretch 50%\n'
        + "price 0.40 EUR per m; sold in rolls of 25 m }\n"
        + "finish neck along front.neck, back.neck by elastic-bound { binding tape }\n"
    )
    found = quantities(result)
    assert found is not None
    tape = line(found, "tape")

    assert tape.order is not None
    assert tape.order > 25.0
    assert tape.buy == 50.0
    assert tape.cost == 20


def test_a_demand_and_a_measure_come_out_of_the_pieces() -> None:
    found = amounts(
        "measure chest = girth at bust-line, tolerance plus 1 cm minus 5 mm\n"
        "expect girth at bust-line - bust >= 20 cm\n"
    )

    (chest,) = found.points_of_measure
    (demand,) = found.expects

    assert chest.values == pytest.approx((1080.0, 1200.0))  # bust and 20 cm of ease
    assert chest.steps == pytest.approx((120.0,))
    assert (chest.plus, chest.minus) == pytest.approx((10.0, 5.0))
    assert demand.met == (True, True)


def test_rolls_of_cloth_are_bought_whole_and_no_lay_is_longer_than_one() -> None:
    cloth = "cloth calico { width 150 cm; is stable; price 3.00 EUR per m; sold in rolls of 2 m }\n"
    neck = "finish neckline along front.neck, back.neck by elastic-bound { binding edging }\n"
    checked = top(neck, head="order S: 9, L: 9; cutting stacked plies; ", cloth=cloth)
    result = lay_out(checked, Here(SHARED), roughly)
    assert not [each for each in result.diagnostics if each.code.id == "SPC605"]
    assert result.cut_out is not None
    (lays,) = result.cut_out.lays
    assert max(lay.length for lay in lays.lays) <= 2000.0
    found = quantities(result)
    assert found is not None
    line = next(line for line in found.bill if line.name == "calico")
    assert line.buy is not None
    assert line.order is not None
    assert line.buy % 2.0 == 0.0
    assert line.order <= line.buy < line.order + 2.0
