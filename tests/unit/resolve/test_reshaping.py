"""Alterations that make new edges and pieces, by name: what each leaves behind."""

from __future__ import annotations

import pytest

from tests.worlds import resolved, told

SPEC = """\
garment dress { }
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
trim edging { kind elastic; width 1 in }
"""
SPLIT = "split front along princess from shoulder at 50% to hem at 50% into centre-front, side-front"


def altered(*steps: str, more: str = "") -> str:
    return f"{SPEC}alter {{\n" + "\n".join(steps) + f"\n}}\n{more}\n"


@pytest.mark.parametrize(
    ("step", "more"),
    [
        (SPLIT, "seam s joins centre-front.princess to side-front.princess by overlocked"),
        (SPLIT + "\nlower centre-front.hem at princess-end by 1 in", ""),
        ("unfold front", "hem h along front.hem-left, front.hem-right by raw"),
        ("unfold front\nlower front.neck-left at centre-neck by 1 in", ""),
        ("mirror front as left-front", "seam s joins left-front.side to back.side by overlocked"),
        ("join front.side to back.side as body", "hem h along body.front-hem, body.back-hem by raw"),
        ("extend front.centre by 1 in\ncrop front at centre-line", ""),
        (
            "band 90% of front.hem, back.hem by 2 in as cuff",
            "seam s joins cuff.top to front.hem by overlocked",
        ),
        ("face front.neck by 2 in as facing", "finish f along facing.neck-inner by raw"),
        ("take in front.side by 1 in at hem-side and 0 in at underarm", ""),
        ("spread from front.neck at 50% to front.hem at 50% by 1 in as pleat", ""),
        ("spread from front.neck-point to front.hem at 50% by 0 in and 1 in", ""),
        ("split front along yoke from neck-point to side at 40% into top, bottom", ""),
        ("sew front.bust-dart as tuck", ""),
    ],
)
def test_what_an_alteration_makes_can_be_spoken_of(step: str, more: str) -> None:
    assert told(altered(step, more=more)) == []


@pytest.mark.parametrize(
    ("step", "more", "message"),
    [
        (
            SPLIT,
            "hem h along front.hem by raw",
            "`front` is gone: it was split into `centre-front` and `side-front` on line 7",
        ),
        (
            "join front.side to back.side as body",
            "hem h along back.hem by raw",
            "`back` is gone: it was joined into `body` on line 7",
        ),
        (
            "sew front.bust-dart as pleat",
            "measure m = width of front.bust-dart",
            "`front.bust-dart` is gone: it was sewn as pleat on line 7",
        ),
    ],
)
def test_what_it_takes_away_is_gone(step: str, more: str, message: str) -> None:
    _, said = resolved(altered(step, more=more))

    assert [answer.message for answer in said] == [message]


@pytest.mark.parametrize(
    ("step", "answer"),
    [
        ("mirror front as back", ("SPC202", "back")),
        ("mirror frnt as left", ("SPC201", "frnt")),
        ("unfold front, front", ("SPC221", "front")),
        ("round front at hem-sid by 2 in", ("SPC201", "hem-sid")),
        ("round front at hem-side by 2", ("SPC204", "2")),
        ("scallop front.hem every 2 by 1 in", ("SPC204", "2")),
        ("band front.hem by 2 in as front", ("SPC202", "front")),
        ("band 90 in of front.hem by 2 in as cuff", ("SPC204", "90 in")),
        ("band front.hem, front.hem by 2 in as cuff", ("SPC221", "front.hem")),
        ("extend front.centr by 1 in", ("SPC201", "centr")),
        ("sew front.neck as pleat", ("SPC220", "front.neck")),
        ("sew front.waist-dart, front.waist-dart as pleat", ("SPC221", "front.waist-dart")),
        ("take in front.side by 1 in at hem-side and 2 in at nowhere", ("SPC201", "nowhere")),
        ("let out front.side, front.side by 1 in", ("SPC221", "front.side")),
        ("spread from front.nek at 50% to front.hem at 50% by 2 in", ("SPC201", "nek")),
        ("spread from front.neck to front.hem at 50% by 2 in", ("SPC220", "front.neck")),
        ("split front along yoke from neck to side at 40% into top, bottom", ("SPC220", "neck")),
        (SPLIT.replace("side-front", "back"), ("SPC202", "back")),
        (SPLIT.replace("side-front", "centre-front"), ("SPC202", "centre-front")),
        (SPLIT.replace("from shoulder", "from sholder"), ("SPC201", "sholder")),
        ("join front.side to back.sid as body", ("SPC201", "sid")),
        ("join front.side to back.side as sleeve", ("SPC202", "sleeve")),
        ("face front.neck by 2 in as sleeve", ("SPC202", "sleeve")),
    ],
)
def test_a_slip_is_told_once_at_its_own_place(step: str, answer: tuple[str, str]) -> None:
    assert told(altered(step)) == [answer]
