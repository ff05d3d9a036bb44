"""A drawstring on a child's garment: at the neck always, at waist and hem when its ends are long."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.pipeline import quantities
from tests.made import CLOTH, SHOULDERS, SIDES, codes, length, sizes, top

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.pipeline import Result

CORD = 'trim string "flat cord" { kind cord; width 8 mm }\n'
NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
CHILD, OVER = "worn-by child; ", "worn-by child; puts-on over the head; "


def hemmed(tie: str, *, head: str = CHILD, more: str = "") -> Result:
    hem = f"hem bottom along front.hem, back.hem by drawstring-casing {{ cord string; {tie}{more} }}\n"
    return top(NECK + hem, head=head, cloth=CLOTH + CORD)


def necked(tie: str, *, head: str = CHILD) -> Result:
    neck = f"hem neck along front.neck, back.neck by drawstring-casing {{ cord string; {tie} }}\n"
    return top(neck + "hem bottom along front.hem, back.hem by raw\n", head=head, cloth=CLOTH + CORD)


def about_strings(result: Result) -> tuple[Diagnostic, ...]:
    return tuple(one for one in result.diagnostics if one.code.id == "SPC538")


@pytest.mark.parametrize(("tie", "warned"), [("tie 3 in", 0), ("tie 3 1/8 in", 1), ("", 1)])
def test_long_ends_are_told_with_how_far_they_hang_out(tie: str, warned: int) -> None:
    told = about_strings(hemmed(tie))

    assert len(told) == warned
    if tie == "tie 3 1/8 in":
        (one,) = told
        assert one.message == (
            "`bottom` is a drawstring on a child's garment: its ends hang out by 7.9 cm, more than 7.6 cm"
        )
        assert "check the current text and your local law" in one.notes[0]


def test_a_grown_up_may_wear_it() -> None:
    assert about_strings(hemmed("tie 20 cm", head="")) == ()
    assert about_strings(necked("tie 20 cm", head="")) == ()


@pytest.mark.parametrize("tie", ["tie 1 cm", "tie 20 cm"])
def test_at_the_neck_no_cord_is_short_enough(tie: str) -> None:
    (told,) = about_strings(necked(tie))

    assert told.message.endswith("it lies at hood or neck, where a cord strangles")


def test_a_hood_is_told_by_the_neck_that_it_is_sewn_to() -> None:
    hood = """block rectangle-hood { piece hood { cut 2
      point a at 0 cm, 0 cm
      point b at 31.6 cm, 0 cm
      point c at 31.6 cm, 30 cm
      point d at 0 cm, 30 cm
      edge low from a { line to b }
      edge back from b { line to c }
      edge top from c { line to d }
      edge face from d { line to a } } }
    use block rectangle-hood
    seam hood joins hood.low to front.neck, back.neck by french { tolerance 2 cm }
    seam crown joins hood.back to hood.back by french
    seam middle joins hood.top to hood.top by french
    hem face along hood.face by drawstring-casing { cord string; tie 2 cm }
    hem bottom along front.hem, back.hem by raw
    """
    (told,) = about_strings(top(hood, head=CHILD, cloth=CLOTH + CORD))

    assert told.message.startswith("`face` is a drawstring")
    assert "hood or neck" in told.message


def test_a_string_runs_loose_so_the_edge_opens_to_its_full_width() -> None:
    result = hemmed("tie 5 cm", more="; hold 20% along front.hem; hold 20% along back.hem")
    (opening,) = (one for one in sizes(result)[0].openings if "front.hem" in one.edges)

    assert opening.sewn == pytest.approx(0.8 * opening.flat)
    assert opening.passes == pytest.approx(opening.flat)
    assert "SPC508" not in codes(result)  # no string needs to stretch


def test_a_string_is_cut_to_the_full_round_and_two_ends() -> None:
    result = hemmed("tie 5 cm", more="; hold 20% along front.hem; hold 20% along back.hem")
    found = quantities(result)
    assert found is not None
    (cut,) = (one for one in found.sizes[0].trims if one.used_on == "bottom")
    whole = 2 * (length(result, "front.hem") + length(result, "back.hem"))

    assert (cut.closed, cut.held, cut.count) == (False, 0.0, 1)
    (ends,) = cut.additions
    assert ends.what == "hanging ends"
    assert ends.length == pytest.approx(100.0)
    assert cut.cut_length == pytest.approx(whole + 100.0)
    assert {zone.held for zone in cut.zones} == {0.0}


@pytest.mark.parametrize(
    ("head", "ends", "sewn", "warned"),
    [
        (CHILD, "ties", False, 1),
        (CHILD, "turned-under", False, 0),
        (CHILD, "ties", True, 0),  # the neck is closed: nothing runs on
        ("", "ties", False, 0),
    ],
)
def test_ties_at_a_neck_that_opens_are_told(head: str, ends: str, warned: int, *, sewn: bool) -> None:
    strip = "trim strip { kind bias strip; cut-from calico }\n"
    neck = f"finish neck along front.neck, back.neck by bias-bound {{ binding strip; ends {ends} }}\n"
    shoulder = SHOULDERS if sewn else ""
    told = about_strings(top(strip + neck, head=head, seams=shoulder + SIDES))

    assert len(told) == warned
    assert all("`neck` ends in ties" in one.message for one in told)
