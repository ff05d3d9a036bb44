"""Methods filled in for their use, and what goes along which edge."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specc.model.construction import Setting
from specc.model.expression import Constant
from specc.units import UNITS, Quantity
from tests.worlds import garment_of, resolved, told

SPEC = """\
garment dress { }
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
trim edging "fold-over elastic" { kind fold-over elastic; width 1 in }
trim strip "bias strip" { kind bias strip; cut-from lawn }
"""
SEAM = "seam s joins front.shoulder to back.shoulder by "
FINISH = "finish f along front.neck, back.neck by "
METHOD = """
method m "by trial" makes seam {
  parameter allow "seam allowance" = 3/8 in
  choice lay = to-back or to-front
  material tape "a tape"
  allowance half of width of tape - allow
  takes tape, cut width of tape wide, overlapping 1/2 in
  raw-edge covered
  shows yes
  press "{lay}"
  pass "Sew {tape} {allow} from the edge" stitch 301 at 3 mm, allow from "the edge"
  pass "Turn it" when lay is to-front
}
"""


def inches(numerator: int, denominator: int = 1) -> Quantity:
    return Quantity.of(Fraction(numerator, denominator), UNITS["in"])


def test_a_method_is_filled_in_from_its_settings() -> None:
    (seam,) = garment_of(SPEC + METHOD + SEAM + "m { tape edging; allow 1/8 in; lay to front }\n").seams
    making = seam.making

    assert isinstance(making.allowance, Constant)
    assert making.allowance.value == inches(3, 8)
    assert making.settings == (
        Setting("allow", "3.2 mm"),
        Setting("lay", "to front"),
        Setting("tape", "fold-over elastic"),
    )
    assert [done.text for done in making.passes] == ["Sew fold-over elastic 3.2 mm from the edge", "Turn it"]
    assert making.press == "to front"
    assert (making.raw_edge, making.shows, making.faces) == ("covered", True, None)
    (takes,) = making.takes
    assert (takes.trim, takes.material) == ("edging", "tape")
    assert isinstance(takes.cut_width, Constant)
    assert takes.cut_width.value == inches(1)
    assert takes.turning is None


def test_what_is_not_set_has_its_default() -> None:
    (seam,) = garment_of(SPEC + METHOD + SEAM + "m { tape edging }\n").seams

    assert [done.text for done in seam.making.passes] == ["Sew fold-over elastic 9.5 mm from the edge"]
    assert (seam.ease, seam.gathered) == (None, False)
    assert isinstance(seam.tolerance, Constant)
    assert seam.tolerance.value == Quantity.of(1, UNITS["mm"])


@pytest.mark.parametrize(
    ("setting", "gathered"),
    [("ease 4%", False), ("gathers 50%", True), ("ease to fit", False), ("gathers to fit", True)],
)
def test_a_longer_side_is_eased_or_gathered(setting: str, gathered: bool) -> None:  # noqa: FBT001 a row of the table
    (seam,) = garment_of(f"{SPEC}{SEAM}overlocked {{ {setting} }}\n").seams

    assert seam.ease is not None
    assert seam.gathered is gathered


@pytest.mark.parametrize(
    ("sewn", "answer"),
    [
        (SEAM + "overloked", ("SPC201", "overloked")),
        (SEAM + "raw", ("SPC216", "raw")),
        (SEAM + "elastic-bound", ("SPC216", "elastic-bound")),
        (FINISH + "french", ("SPC216", "french")),
        (SEAM + "overlocked { allow 3/8 }", ("SPC204", "3/8")),
        (SEAM + "overlocked { allow wide }", ("SPC207", "wide")),
        (SEAM + "overlocked { allow 3/8 in, 1/2 in }", ("SPC207", "3/8 in, 1/2 in")),
        (SEAM + "overlocked { alow 3/8 in }", ("SPC206", "alow")),
        (SEAM + "overlocked { allow 3/8 in; allow 3/8 in }", ("SPC202", "allow")),
        (SEAM + "overlocked { allow 30 in }", ("SPC211", "30 in")),
        (SEAM + "overlocked { stitch-length 0 mm }", ("SPC211", "0 mm")),
        (SEAM + "overlocked { stitch-length 3 in }", ("SPC211", "3 in")),
        (SEAM + "overlocked { threads two }", ("SPC210", "two")),
        (SEAM + "overlocked { ease 5 }", ("SPC207", "5")),
        (SEAM + "overlocked { ease 5%; gathers 50% }", ("SPC208", "gathers 50%")),
        (SEAM + "overlocked { tolerance 3 in }", ("SPC211", "3 in")),
        (SEAM + "overlocked { hold 3% along front.shoulder }", ("SPC206", "hold")),
        (SEAM + "bound-outside", ("SPC305", "bound-outside")),
        (SEAM + "bound-outside { binding edgin }", ("SPC201", "edgin")),
        (SEAM + "bound-outside { binding lawn }", ("SPC201", "lawn")),
        (SEAM + 'bound-outside { binding "edging" }', ("SPC207", '"edging"')),
        (SEAM + "bound-outside { binding strip }", ("SPC307", "bound-outside")),
        (SEAM + "bound-outside { binding edging; inset 1 in }", ("SPC211", "bound-outside")),
        ("seam s joins front.side, front.side to back.side by overlocked", ("SPC221", "front.side")),
        ("seam s joins front.sid to back.side by overlocked", ("SPC201", "sid")),
        ("seam s joins front to back.side by overlocked", ("SPC220", "front")),
        ("seam s joins side to back.side by overlocked", ("SPC212", "side")),
        (FINISH + "elastic-bound { binding edging; hold 0% along front.neck }", ("SPC211", "0%")),
        (FINISH + "elastic-bound { binding edging; hold 6 along front.neck }", ("SPC204", "6")),
        (FINISH + "elastic-bound { binding edging; hold bust along front.neck }", ("SPC204", "bust")),
        (FINISH + "elastic-bound { binding edging; hold 6% along front.hem }", ("SPC222", "front.hem")),
        (
            FINISH + "elastic-bound { binding edging; hold 6% along front.neck from 0 to mid }",
            ("SPC201", "mid"),
        ),
    ],
)
def test_a_slip_is_told_once_at_its_own_place(sewn: str, answer: tuple[str, str]) -> None:
    assert told(f"{SPEC}{sewn}\n") == [answer]


@pytest.mark.parametrize(
    ("sound", "faulty", "answer"),
    [
        ("raw-edge covered", "raw-edge rough", ("SPC210", "rough")),
        ("  raw-edge covered\n", "", ("SPC302", "m")),
        ("shows yes", "shows maybe", ("SPC210", "maybe")),
        ("  allowance half of width of tape - allow\n", "", ("SPC302", "m")),
        ("raw-edge covered", "raw-edge covered\nallowance 1 in", ("SPC208", "allowance 1 in")),
        ("takes tape", "takes tpe", ("SPC201", "tpe")),
        ("width of tape - allow", "width of tpe - allow", ("SPC201", "tpe")),
        ("tape - allow", "tape - alow", ("SPC201", "alow")),
        ("tape - allow", "tape - length of front.hem", ("SPC209", "length of front.hem")),
        ("choice lay", "choice allow", ("SPC202", "allow")),
        ("to-back or to-front", "to-back or to-front or to-back", ("SPC202", "to-back")),
        ("lay is to-front", "lay is to-frnt", ("SPC201", "to-frnt")),
        ("lay is to-front", "ly is to-front", ("SPC201", "ly")),
        ("stitch 301 at 3 mm", "stitch 999 at 3 mm", ("SPC201", "999")),
        ("stitch 301 at 3 mm", "stitch 301 at 3", ("SPC204", "3")),
        ("= 3/8 in", "= 3/8 in / 0", ("SPC211", "3/8 in / 0")),
        ("{allow}", "{alow}", ("SPC217", "{alow}")),
        ('"Turn it"', '""', ("SPC207", '""')),
        ("shows yes", "showing yes", ("SPC206", "showing")),
    ],
)
def test_a_slip_in_a_method_is_told_alike_whether_it_is_used_or_not(
    sound: str, faulty: str, answer: tuple[str, str]
) -> None:
    method = METHOD.replace(sound, faulty, 1)
    assert method != METHOD
    used = SPEC + SEAM + "m { tape edging }\nseam t joins front.side to back.side by m { tape edging }\n"

    answers = told(SPEC + method)

    assert answer in answers
    assert told(used + method) == answers
    if answer != ("SPC202", "allow"):  # the choice that is no more is also asked for
        assert answers == [answer]


def test_parameters_that_double_each_other_cost_nothing() -> None:
    """Each is reckoned once: sixty doublings are not 2 to the power of sixty terms."""
    doubled = "".join(f"  parameter n{number} = n{number - 1} + n{number - 1}\n" for number in range(1, 60))
    method = METHOD.replace("  choice lay", f"  parameter n0 = 1 mm\n{doubled}  choice lay", 1)
    (seam,) = garment_of(SPEC + method + SEAM + "m { tape edging }\n").seams

    assert seam.making.settings[60] == Setting("n59", f"{2**59} mm")


def test_a_length_that_is_reckoned_is_told_with_the_place_where() -> None:
    _, said = resolved(f"{SPEC}{SEAM}bound-outside {{ binding edging; inset 1 in }}\n")

    (answer,) = said
    assert answer.message == "an allowance must be 0 mm to 500 mm, not -1/2 in"
    assert [label.span.text for label in answer.related] == ["half of width of binding - inset"]


def test_a_blank_is_pointed_at_within_its_text() -> None:
    text = SPEC + METHOD.replace("{allow}", "{alow}")
    _, said = resolved(text)

    assert [each.span.text for each in said if each.span] == ["{alow}"]


def test_an_edge_is_held_between_places_or_corners() -> None:
    settings = "binding edging; hold 6% along front.neck from 2 in to centre-neck"
    (finish,) = garment_of(f"{SPEC}{FINISH}elastic-bound {{ {settings} }}\n").finishes
    (hold,) = finish.holds

    assert isinstance(hold.start, Constant)
    assert hold.end == "centre-neck"
