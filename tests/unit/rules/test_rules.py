"""Rules fire where they should and are silent elsewhere; that each can fire `tests/errors` shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.made import CLOTH, SHOULDERS, SIDES, codes, made, panels, sheath, top

if TYPE_CHECKING:
    from specc.pipeline import Result

NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
HEM = "hem bottom along front.hem, back.hem by double-turned\n"
SHEER = 'cloth voile "voile" { width 150 cm; is sheer }\n'
OPEN = 'cloth leno "leno" { width 150 cm; is open, ravel-free }\n'
HEAD = "puts-on over the head; "
CORD = CLOTH + 'trim string "cord" { kind cord; width 8 mm }\n'
DRAWN = "hem bottom along front.hem, back.hem by drawstring-casing { cord string; tie 8 cm }\n"
POCKETS = """use block rectangle as pocket {{ wide 14 cm; long 15 cm; cutting {cutting} }}
hem opening along pocket.top by double-turned
attach pocket on front with top-left at bust-line, 4 cm from centre by patch
"""

ZIP = CLOTH + 'trim zip "zip" { kind zip; lengths 10 cm, 12 cm }\n'
BUTTON = CLOTH + 'trim button "button" { kind button; diameter 2 cm; thickness 3 mm }\n'

STRAIGHT = CLOTH + 'trim tape "tape" { kind tape; width 4 cm }\n'
BOUND = (
    "finish neck along front.neck by bias-bound {{ binding tape; finished {finished} }}\n"
    "finish nape along back.neck by elastic-bound {{ binding edging }}\n"
)
ROLLS = 'trim soft "soft" {{ kind fold-over elastic; width 2 cm; stretch 60%; sold in rolls of {long} }}\n'


def zipped(front: str, back: str) -> Result:
    """A zip in the side of the top, its two sides so long."""
    return top(
        f"alter {{ divide front.side at {front} from waist-side into zip-opening, side\n"
        f"divide back.side at {back} from waist-side into zip-opening, side }}\n"
        "closure zip along front.zip-opening to back.zip-opening by zip-centred { zip zip }\n" + NECK + HEM,
        cloth=ZIP,
    )


def buttoned(stand: str) -> Result:
    """A shoulder that is buttoned, with so wide a stand."""
    body = f"{{ button button; places 2; stand {stand} }}"
    return top(
        f"closure row along front.shoulder to back.shoulder by buttoned {body}\n" + NECK + HEM,
        cloth=BUTTON,
        seams=SIDES,
    )


FIRES = {
    "SPC501": (top("alter { lengthen front by 1 cm at bust-line }\n" + NECK + HEM), top(NECK + HEM)),
    "SPC503": (
        top(NECK + "hem bottom along front.hem, back.hem by single-turned\n", cloth=SHEER),
        top(NECK + HEM, cloth=SHEER, seams=SHOULDERS + SIDES.replace("french", "overlocked")),
    ),
    "SPC504": (
        top(NECK + "hem bottom along front.hem, back.hem by raw\n"),
        top(NECK + "hem bottom along front.hem, back.hem by raw\n", cloth=OPEN),
    ),
    "SPC505": (
        top("alter { raise front.neck at centre-neck by 9 cm }\n" + NECK + HEM, head=HEAD),
        top("alter { raise front.neck at centre-neck by 9 cm }\n" + NECK + HEM, head="puts-on opens; "),
    ),
    "SPC507": (
        top(NECK.replace("edging }", "edging; stitch-length 2.9 mm }") + HEM),
        top(NECK.replace("edging }", "edging; stitch-length 3 mm }") + HEM),
    ),
    "SPC508": (
        top(NECK.replace("edging }", "edging; hold 38% along front.neck }") + HEM),  # 0.38 / 0.62 is 61.3 %
        top(NECK.replace("edging }", "edging; hold 37% along front.neck }") + HEM),  # 0.37 / 0.63 is 58.7 %
    ),
    "SPC509": (top(NECK + HEM, cloth=OPEN), top(NECK + HEM, cloth=SHEER)),
    "SPC515": (top(NECK), top(NECK + HEM)),
    "SPC537": (
        top(NECK + HEM + POCKETS.format(cutting="once")),
        top(NECK + HEM + POCKETS.format(cutting="once").replace("on front", "on left front")),
    ),
    "SPC516": (top("expect bust >= 90 cm\n" + NECK + HEM), top("expect bust >= 80 cm\n" + NECK + HEM)),
    "SPC538": (top(NECK + DRAWN, cloth=CORD, head="worn-by child; "), top(NECK + DRAWN, cloth=CORD)),
    "SPC523": (
        panels(on_front="notch side at 15 cm from b", on_back="notch side at 15.4 cm from b"),
        panels(on_front="notch side at 15 cm from b", on_back="notch side at 17 cm from b"),
    ),
    "SPC525": (zipped("11 cm", "10 cm"), zipped("11 cm", "11 cm")),
    "SPC527": (zipped("13 cm", "13 cm"), zipped("12 cm", "12 cm")),
    "SPC528": (buttoned("14 mm"), buttoned("15 mm")),  # three quarters of 2 cm
    "SPC560": (
        top(BOUND.format(finished="10 mm") + HEM, cloth=STRAIGHT),
        top(BOUND.format(finished="10 mm") + HEM, cloth=STRAIGHT.replace("kind tape", "kind bias strip")),
    ),
    "SPC568": (
        top(NECK + "finish low along front.hem, back.hem, front.flank by bias-bound { binding tape }\n",
            cloth=STRAIGHT, seams=SHOULDERS + SIDES.splitlines()[0] + "\n"),
        top(NECK + HEM, cloth=STRAIGHT),
    ),
    "SPC561": (
        top(NECK.replace("finish", "hem").replace("elastic-bound { binding edging }", "double-turned") + HEM),
        top(NECK + HEM),
    ),
    "SPC502": (
        sheath("", cloth=SHEER),
        sheath(
            "alter { release front.bust-dart, front.waist-dart, back.waist-dart, back.shoulder-dart }\n",
            cloth=SHEER,
        ),
    ),
    "SPC621": (
        top(NECK.replace("edging", "soft") + HEM + ROLLS.format(long="64 cm")),
        top(NECK.replace("edging", "soft") + HEM + ROLLS.format(long="70 cm")),
    ),
}  # fmt: skip


INCHES = """garment top "Top" { style "T"; sizes S, L; units in }
use "shared/top.garment"
use chart two-sizes
use block top
cloth calico "calico" { width 150 cm; is stable }
"""
TIGHT = INCHES.replace("sizes S", "puts-on over the head; sizes S").replace(
    "top\ncloth", "top { ease 4 cm }\ncloth"
) + (SHOULDERS + SIDES + NECK + HEM)
BARE = "leave out sleeve; release front.waist-dart, back.waist-dart; "
CURES = {
    "SPC502": (
        sheath("alter { " + BARE + "}\n", cloth=SHEER),
        (
            sheath(
                "alter { " + BARE + "swing front.bust-dart into front.hem as flare; "
                "swing back.shoulder-dart into back.hem as flare }\n",
                cloth=SHEER,
            ),
            ("swing front.bust-dart into front.hem as flare",),
        ),
    ),
    "SPC503": (
        top(NECK + HEM, cloth=SHEER, seams=SHOULDERS.replace("french", "overlocked") + SIDES),
        (top(NECK + HEM, cloth=SHEER), ("by french",)),
    ),
    "SPC504": (
        top(NECK + HEM.replace("double-turned", "raw")),
        (top(NECK + HEM), ("by double-turned",)),
    ),
    "SPC507": (
        top(NECK.replace("edging }", "edging; stitch-length 2 mm }") + HEM),
        (top(NECK.replace("edging }", "edging; stitch-length 3 mm }") + HEM), ("stitch-length 3 mm",)),
    ),
    "SPC537": (
        top(NECK + HEM + POCKETS.format(cutting="once")),
        (top(NECK + HEM + POCKETS.format(cutting="twice")), ("cut `pocket` twice",)),
    ),
    "SPC515": (
        top(NECK),
        (
            top(
                NECK + "hem front-hem along front.hem by double-turned\n"
                "hem back-hem along back.hem by double-turned\n"
            ),
            ("hem front-hem along front.hem by double-turned",),
        ),
    ),
}  # fmt: skip


@pytest.mark.parametrize("code", FIRES)
def test_a_rule_fires_and_is_silent(code: str) -> None:
    guilty, innocent = FIRES[code]

    assert code in codes(guilty)
    assert code not in codes(innocent)


def test_an_answer_takes_a_warning_from_what_stands_and_keeps_the_reason() -> None:
    raw = NECK + "hem bottom along front.hem, back.hem by raw\n"
    result = top(raw + 'accept SPC504 because "it is cut clean"\n')

    assert "SPC504" not in codes(result)
    assert result.judgement is not None
    assert [(one.diagnostic.code.id, one.accept.because) for one in result.judgement.accepted] == [
        ("SPC504", "it is cut clean")
    ]


def test_an_answer_takes_a_note_too() -> None:
    result = top(NECK + HEM + 'accept SPC509 on leno because "the cutter has weights"\n', cloth=OPEN)

    assert codes(result) == []


def test_an_answer_about_another_part_is_idle() -> None:
    result = top(NECK + 'accept SPC515 on front.neck because "the selvage stays"\n')

    assert sorted(codes(result)) == ["SPC515", "SPC515", "SPC517"]


def test_an_answer_finds_its_part_within_the_words_of_a_warning() -> None:
    shoulders = top(NECK + HEM + 'accept SPC520 on bust-line because "arms go first"\n', head=HEAD)

    assert "SPC517" in codes(shoulders)
    tight = made(TIGHT + 'accept SPC520 on bust-line because "arms go first"\n')
    assert codes(tight) == ["SPC520"]  # that of the hem stands


def test_what_differs_is_never_printed_alike() -> None:
    """1.2 mm is 0.047 in: nothing in eighths of an inch, 1/16 in sixteenths."""
    result = top("alter { lengthen front by 1.2 mm at bust-line }\n" + NECK + HEM)
    assert result.judgement is not None
    inches = made(
        INCHES + "alter { lengthen front by 1.2 mm at bust-line }\n" + SHOULDERS + SIDES + NECK + HEM
    )

    assert "differ by up to 0.1 cm" in result.diagnostics[0].message
    assert "differ by up to 1/16 in" in inches.diagnostics[0].message


def test_the_cure_for_a_head_speaks_of_the_trim_only_where_the_trim_holds() -> None:
    """Without its stiff strip the jersey would open by half."""
    high = "alter { raise front.neck at centre-neck by 9 cm }\n"
    jersey = 'cloth jersey "jersey" { width 150 cm; is knit; stretch 50% }\n'
    strip = 'trim strip "strip" { kind bias strip; cut-from jersey }\n'
    stiff = top(high + NECK + HEM, head=HEAD)
    bound = top(
        high + strip + NECK.replace("elastic", "bias").replace("edging", "strip") + HEM,
        head=HEAD,
        cloth=jersey,
    )
    elastic = top(high + NECK + HEM, head=HEAD, cloth=jersey)

    assert [("trim" in each.helps[0]) for each in stiff.diagnostics if each.code.id == "SPC505"] == [False]
    assert [("trim" in each.helps[0]) for each in bound.diagnostics if each.code.id == "SPC505"] == [True]
    assert "SPC505" not in codes(elastic)


def test_a_zigzag_on_elastic_may_be_short_for_it_gives_by_itself() -> None:
    """A lockstitch is 301 in ISO 4915, a two-step zigzag 304."""
    method = """method shown "edge bound" makes finish {{
  material binding "elastic"
  allowance 0 mm
  takes binding, cut width of binding wide
  raw-edge covered
  shows yes
  pass "Sew" stitch {stitch} at 2 mm
}}
"""
    neck = NECK.replace("elastic-bound", "shown")

    assert "SPC507" in codes(top(method.format(stitch=301) + neck + HEM))
    assert codes(top(method.format(stitch=304) + neck + HEM)) == []


def test_a_seam_with_raw_edges_is_told_in_cloth_that_is_said_to_ravel() -> None:
    seams = SHOULDERS.replace("french", "pressed-open") + SIDES
    tweed = 'cloth tweed "tweed" { width 150 cm; is ravels }\n'

    assert codes(top(NECK + HEM, cloth=tweed, seams=seams)) == ["SPC504"]
    assert codes(top(NECK + HEM, seams=seams)) == []


def test_a_hold_at_the_very_stretch_of_its_trim_is_let_pass() -> None:
    """0.375 / 0.625 is 60 %, what the edging stretches by."""
    hold = NECK.replace("edging }", "edging; hold 2% along back.neck; hold 37.5% along front.neck }")
    result = top(hold + HEM)
    beyond = top(hold.replace("37.5%", "37.6%") + HEM)

    assert codes(result) == []
    assert [each.span.text for each in beyond.diagnostics if each.span] == ["hold 37.6% along front.neck"]


@pytest.mark.parametrize("code", ["SPC502", "SPC503", "SPC504", "SPC507", "SPC515"])
def test_the_cure_that_is_told_cures(code: str) -> None:
    wrong, cured = CURES[code]
    told = [each for each in wrong.diagnostics if each.code.id == code]

    assert told
    for words in cured[1]:
        assert any(f"`{words}`" in line for each in told for line in each.helps), told
    assert code not in codes(cured[0])


def test_an_answer_about_one_part_answers_for_that_part() -> None:
    result = top(NECK + 'accept SPC515 on front.hem because "the selvage stays"\n')

    told = [each.message for each in result.diagnostics if each.code.id == "SPC515"]

    assert told == ["nothing joins or finishes `back.hem`"]


def test_an_error_cannot_be_accepted_and_an_idle_answer_is_told() -> None:
    wrong = top('expect bust >= 90 cm\naccept SPC516 because "it will do"\n' + NECK + HEM)
    idle = top('accept SPC504 because "it is cut clean"\n' + NECK + HEM)

    assert {"SPC516", "SPC518"} <= set(codes(wrong))
    assert codes(idle) == ["SPC517"]


def test_what_is_attached_is_looked_at_too() -> None:
    """A patch whose edges stay raw ravels as a hem does, and elastic is sewn on with no shorter a stitch."""
    method = """method laid "edges left raw" makes attachment {
      parameter stitch-length = 2 mm
      material  band "soft elastic"
      allowance 0 mm
      takes     band, cut 2 cm wide
      raw-edge  raw
      pass      "Sew" stitch 301 at stitch-length
    }
    """
    attached = POCKETS.format(cutting="twice").replace("by patch", "by laid { band edging }")
    result = top(NECK + HEM + method + attached)
    said = {each.code.id: each.message for each in result.diagnostics}

    assert said["SPC504"] == "attachment `pocket-on-front` leaves a raw edge in cloth `calico`, which ravels"
    assert said["SPC507"].startswith("`pocket-on-front` is sewn on elastic")
