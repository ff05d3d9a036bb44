"""Every rule fires where it should and is silent where it should be."""

from __future__ import annotations

import pytest

from specc.rules import RULES
from tests.made import SHOULDERS, SIDES, codes, made, sheath, top

NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
HEM = "hem bottom along front.hem, back.hem by double-turned\n"
SHEER = 'cloth voile "voile" { width 150 cm; is sheer }\n'
OPEN = 'cloth leno "leno" { width 150 cm; is open, ravel-free }\n'
HEAD = "puts-on over the head; "

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
    "SPC516": (top("expect bust >= 90 cm\n" + NECK + HEM), top("expect bust >= 80 cm\n" + NECK + HEM)),
    "SPC502": (
        sheath("", cloth=SHEER),
        sheath(
            "alter { release front.bust-dart, front.waist-dart, back.waist-dart, back.shoulder-dart }\n",
            cloth=SHEER,
        ),
    ),
}  # fmt: skip


@pytest.mark.parametrize("code", FIRES)
def test_a_rule_fires_and_is_silent(code: str) -> None:
    guilty, innocent = FIRES[code]

    assert code in codes(guilty)
    assert code not in codes(innocent)


def test_every_rule_is_tried() -> None:
    """The two rules about bodies have tests of their own below."""
    assert len(FIRES) + 1 == len(RULES)


def tube(head: str, block: str = "") -> list[str]:
    return codes(
        made(
            f'garment top "Top" {{ style "T"; puts-on {head}; sizes S, L; units cm }}\n'
            'use "shared/top.garment"\nuse chart two-sizes\n'
            f'use block top {{ {block} }}\ncloth calico "calico" {{ width 150 cm; is stable }}\n'
            + SHOULDERS + SIDES + NECK + HEM
        )
    )  # fmt: skip


def test_a_body_that_does_not_pass_is_told_and_one_that_does_is_not() -> None:
    assert "SPC506" in tube("stepping in", "ease 1 cm")
    assert "SPC506" not in tube("stepping in", "ease 7 cm")
    assert "SPC520" in tube("over the head", "ease 4 cm")
    assert "SPC520" not in tube("over the head", "ease 9 cm")


def test_a_sleeve_does_not_go_round_the_body() -> None:
    """The line at the upper arm is narrower than any bust."""
    result = sheath("", head=HEAD, block="bust-ease 8 in")

    told = [each.message for each in result.diagnostics if each.code.id in {"SPC506", "SPC520"}]

    assert not [message for message in told if "upper-arm" in message]


def test_an_answer_takes_a_warning_from_what_stands_and_keeps_the_reason() -> None:
    raw = NECK + "hem bottom along front.hem, back.hem by raw\n"
    result = top(raw + 'accept SPC504 because "it is cut clean"\n')

    assert "SPC504" not in codes(result)
    assert result.judgement is not None
    assert [(one.diagnostic.code.id, one.accept.because) for one in result.judgement.accepted] == [
        ("SPC504", "it is cut clean")
    ]


def test_an_answer_about_one_part_answers_for_that_part() -> None:
    result = top(NECK + 'accept SPC515 on front.hem because "the selvage stays"\n')

    told = [each.message for each in result.diagnostics if each.code.id == "SPC515"]

    assert told == ["nothing joins or finishes `back.hem`"]


def test_an_error_cannot_be_accepted_and_an_idle_answer_is_told() -> None:
    wrong = top('expect bust >= 90 cm\naccept SPC516 because "it will do"\n' + NECK + HEM)
    idle = top('accept SPC504 because "it is cut clean"\n' + NECK + HEM)

    assert {"SPC516", "SPC518"} <= set(codes(wrong))
    assert codes(idle) == ["SPC517"]
