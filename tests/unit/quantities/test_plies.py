"""Trims of a stated length, allowances that differ, pieces that are cut again from another cloth."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.pipeline import quantities
from specc.units import UNITS
from tests.made import length, rounds, sizes, top

if TYPE_CHECKING:
    from specc.pipeline import Result
    from specc.quantities.quantities import Quantities, TrimCut

INCH = float(UNITS["in"].size)
SOFT = "trim soft {{ kind elastic; width 20 mm; stretch {stretch} }}\n"
CASING = (
    SOFT + "hem bottom along front.hem, back.hem by elastic-casing {{ elastic soft; overlap 1 in; {how} }}\n"
)


def amounts(result: Result) -> Quantities:
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return found


def cut(result: Result, used_on: str, *, size: int = 0) -> TrimCut:
    (found,) = (one for one in amounts(result).sizes[size].trims if one.used_on == used_on)
    return found


# --- how long a trim is ---


def test_elastic_is_as_long_as_is_stated_in_each_size_and_laps() -> None:
    """Bust 88 and 100 cm: 75% of it, and an inch."""
    result = top(CASING.format(stretch="120%", how="cut elastic 75% * bust long"))

    for index, bust in enumerate((880.0, 1000.0)):
        found = cut(result, "bottom", size=index)
        assert found.stated
        assert found.cut_length == pytest.approx(0.75 * bust + INCH)
        assert found.seam_length - found.held == pytest.approx(0.75 * bust)


def test_a_length_may_be_reckoned_from_the_pieces() -> None:
    half = "cut elastic 90% * (length of front.hem + length of back.hem) long"
    result = top(CASING.format(stretch="120%", how=half))

    around = 2 * (length(result, "front.hem") + length(result, "back.hem"))
    assert cut(result, "bottom").seam_length == pytest.approx(around)
    assert cut(result, "bottom").held == pytest.approx(0.55 * around)


def test_a_stated_length_is_held_in_evenly_and_says_what_passes() -> None:
    stable = 'cloth calico "calico" { width 150 cm; is stable }\n'
    around = 2 * sum(length(top(""), edge) for edge in ("front.hem", "back.hem"))
    result = top(CASING.format(stretch="50%", how="cut elastic 60 cm long"), cloth=stable)
    (laid,) = rounds(result, "bottom")
    opening = next(one for one in sizes(result)[0].openings if "bottom" in one.by)

    assert [zone.held for zone in laid.zones] == [pytest.approx(1 - 600 / around)] * len(laid.zones)
    assert opening.sewn == pytest.approx(600)
    assert opening.passes == pytest.approx(900)


@pytest.mark.parametrize(("stretch", "told"), [("79%", True), ("81%", False)])
def test_a_trim_must_stretch_to_the_edge_that_it_is_shorter_than(stretch: str, *, told: bool) -> None:
    """The hem of size S is 108 cm and that of L 120 cm (edges of the shared top); 120 / 66.5 = 1.8045."""
    result = top(CASING.format(stretch=stretch, how="cut elastic 66.5 cm long"))
    said = [each for each in result.diagnostics if each.code.id == "SPC508"]

    assert bool(said) == told
    assert all(each.span is not None and each.span.text == "66.5 cm" for each in said)


def test_elastic_in_a_folded_band_is_cut_once_round_and_says_what_passes() -> None:
    """A seam that goes round has one trim, whichever pieces lie in halves."""
    result = top(
        "alter { band front.hem, back.hem by 6 cm as waistband }\n"
        "seam ends joins waistband.start to waistband.end by pressed-open\n"
        + SOFT.format(stretch="60%")
        + "method elasticated makes seam {\n"
        "  material elastic\n  allowance 1 cm\n  takes elastic, cut width of elastic wide, overlapping 2 cm\n"
        '  raw-edge overlocked\n  pass "Sew"\n}\n'
        "seam waist joins front.hem, back.hem to waistband.bottom with waistband.top by elasticated {\n"
        "  elastic soft\n  cut elastic 60 cm long\n}\n"
    )
    found = cut(result, "waist")
    opening = next(one for one in sizes(result)[0].openings if "waist" in one.by)

    assert (found.count, found.closed) == (1, True)
    assert found.cut_length == pytest.approx(620)
    assert opening.sewn == pytest.approx(600)
    assert opening.passes == pytest.approx(960)


LOOP = """method looped makes finish {{
  material tape
  allowance 0 cm
  takes tape, cut width of tape wide, {length}turning 1 cm{beyond}
  raw-edge covered
  pass "Sew"
}}
trim tape {{ kind tape; width 1 cm }}
finish armhole along front.side by looped {{ tape tape }}
"""


def test_a_method_may_state_the_length_of_its_trim() -> None:
    result = top(LOOP.format(length="12 cm long, ", beyond=""), seams="")

    assert cut(result, "armhole").cut_length == pytest.approx(120 + 20)


def test_a_stated_length_may_be_longer_than_the_edge() -> None:
    loop = LOOP.format(length="", beyond="").replace("{ tape tape }", "{ tape tape; cut tape 3 m long }")
    found = cut(top(loop, seams=""), "armhole")

    assert found.held < 0
    assert found.cut_length == pytest.approx(3000 + 20)
    assert {zone.held for zone in found.zones} == {0.0}


def test_a_trim_may_run_on_past_both_ends_as_ties() -> None:
    result = top(LOOP.format(length="", beyond=", 30 cm beyond"), seams="")
    found = cut(result, "armhole")

    assert found.cut_length == pytest.approx(found.seam_length + 20 + 600)


# --- how much is cut on ---


def allowance(result: Result, edge: str) -> float:
    return next(use.allowance for use in sizes(result)[0].uses if f"{use.piece}.{use.edge}" == edge)


def test_an_edge_may_have_an_allowance_of_its_own() -> None:
    seams = (
        "seam shoulder joins front.shoulder to back.shoulder by flat-felled {\n"
        "  allow 15 mm\n  allowance 6 mm on back.shoulder\n}\n"
    )
    result = top("", seams=seams)

    assert allowance(result, "front.shoulder") == pytest.approx(15)
    assert allowance(result, "back.shoulder") == pytest.approx(6)


def test_a_method_may_want_different_allowances_on_both_sides() -> None:
    method = (
        "method uneven makes seam {\n  choice wide = first or second\n"
        "  allowance 2 cm on first when wide is first\n  allowance 1 cm on second when wide is first\n"
        "  allowance 1 cm on first when wide is second\n  allowance 2 cm on second when wide is second\n"
        '  raw-edge raw\n  pass "Sew"\n}\n'
    )
    for wide, first, second in (("first", 20, 10), ("second", 10, 20)):
        seams = f"seam shoulder joins front.shoulder to back.shoulder by uneven {{ wide {wide} }}\n"
        result = top(method, seams=seams)
        assert (allowance(result, "front.shoulder"), allowance(result, "back.shoulder")) == (first, second)


def test_of_a_hem_turned_twice_what_is_turned_under_stays() -> None:
    result = top(
        "hem bottom along front.hem, back.hem by double-turned {\n"
        "  deep 3 cm\n  under 1 cm\n  allowance 6 cm on back.hem\n}\n"
    )
    turned = {use.piece: use.turned for use in sizes(result)[0].uses if use.edge == "hem"}

    assert turned == {"front": (30.0, 10.0), "back": (pytest.approx(50.0), 10.0)}


def test_wider_allowances_are_cut() -> None:
    plain, wider = (
        amounts(
            top(
                "hem bottom along front.hem, back.hem by single-turned { deep 2 cm" + more + " }\n",
            )
        ).sizes[0]
        for more in ("", "; allowance 4 cm on back.hem")
    )
    cuts = {one.piece: one.cut_area for one in plain.cuts}, {one.piece: one.cut_area for one in wider.cuts}

    assert cuts[0]["front"] == cuts[1]["front"]
    assert cuts[0]["back"] < cuts[1]["back"]


# --- from what else a piece is cut ---


CLOTHS = """cloth calico "calico" { width 150 cm; is stable }
cloth silk "silk" { for lining; width 140 cm; price 20 EUR per m }
cloth fusible "fusible" { for interfacing; width 90 cm }
"""


def test_a_lining_is_counted_as_often_as_the_shell_and_interfacing_as_is_said() -> None:
    result = top(
        "also cut front, back from silk\nalso cut 1 of back from fusible without allowance\n", cloth=CLOTHS
    )
    found = amounts(result)
    size = found.sizes[0]
    cuts = {one.piece: one for one in size.cuts}
    areas = {use.cloth: use.area for use in size.cloths}
    whole = 2 * (cuts["front"].cut_area + cuts["back"].cut_area)

    assert areas["calico"] == pytest.approx(whole)
    assert areas["silk"] == pytest.approx(whole)
    assert areas["fusible"] == pytest.approx(2 * cuts["back"].net_area)
    silk = next(line for line in found.bill if line.name == "silk")
    assert silk.per_garment[0] == pytest.approx(whole / 1400 / 1000)


def test_a_cloth_that_nothing_is_cut_from_takes_nothing() -> None:
    assert {use.cloth for use in amounts(top("", cloth=CLOTHS)).sizes[0].cloths} == {"calico"}
