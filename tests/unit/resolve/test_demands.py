"""What is measured, demanded, accepted, labelled, remarked and advised."""

from __future__ import annotations

import pytest

from tests.worlds import garment_of, told

SPEC = """\
garment dress { }
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
finish neckline along front.neck, back.neck by single-turned
"""


def test_what_is_asked_is_kept() -> None:
    garment = garment_of(
        SPEC
        + """
measure chest-round = girth at bust-line, tolerance plus 1/2 in minus 1/4 in
expect girth at bust-line - bust >= 2 in because "it slips over a shirt"
accept SPC502 on front.bust-dart because "they are meant to be seen"
care { iron 150 C; wash 40 C, mild }
label main at back.neck { says "DRESS", "size" }
note "Press it flat."
note "Mind the nap." on front
note "Do not stretch." on front.neck
"""
    )

    (measure,) = garment.measures
    assert measure.title == "chest round"
    assert garment.expects[0].because == "it slips over a shirt"
    assert garment.accepts[0].on == "front.bust-dart"
    assert [(line.process, line.text) for line in garment.care] == [("wash", "40 C, mild"), ("iron", "150 C")]
    assert garment.labels[0].says == ("DRESS", "size")
    assert [note.on for note in garment.notes] == [None, "front", "front.neck"]


@pytest.mark.parametrize(
    ("statement", "answer"),
    [
        ("measure m = girth at bustline", ("SPC201", "bustline")),
        ("measure m = girth at side", ("SPC220", "side")),
        ("measure m = length of centre", ("SPC212", "centre")),
        ("measure m = length of front.centr", ("SPC201", "centr")),
        ("measure m = opening of nekline", ("SPC201", "nekline")),
        ("measure m = distance from front.neck-point to front.hem", ("SPC220", "front.hem")),
        (
            "measure m = height from front.neck-point to back.neck-point",
            ("SPC215", "height from front.neck-point to back.neck-point"),
        ),
        ("measure m = 5 USD", ("SPC204", "5 USD")),
        ("measure m = bust, tolerance 1/2", ("SPC204", "1/2")),
        ("measure m = bust, tolerance 5%", ("SPC204", "5%")),
        ("measure m = bust, tolerance -1/2 in", ("SPC211", "-1/2 in")),
        ("measure m = bust, tolerance 1 in - 2 in", ("SPC211", "1 in - 2 in")),
        ("expect bust >= 2", ("SPC204", "2")),
        ("expect bst >= 2 in", ("SPC201", "bst")),
        ('expect bust >= 2 in because ""', ("SPC207", '""')),
        ('accept SPC502 because " "', ("SPC207", '" "')),
        ('accept spc502 because "x"', ("SPC223", "spc502")),
        ('accept SPC201 because "x"', ("SPC223", "SPC201")),
        ('accept darts because "x"', ("SPC223", "darts")),
        ("care { wahs 40 C }", ("SPC206", "wahs")),
        ("care { wash 40 C }\ncare { iron 150 C }", ("SPC208", "care")),
        ('label main at back.nek { says "x" }', ("SPC201", "nek")),
        ("label main at back.neck { }", ("SPC302", "main")),
        ('label main at back.neck { says "" }', ("SPC207", '""')),
        ('label main at back { says "x" }', ("SPC220", "back")),
        ('note ""', ("SPC207", '""')),
        ('note "x" on frnt', ("SPC201", "frnt")),
        ('note "x" on front.nek', ("SPC201", "nek")),
    ],
)
def test_a_slip_is_told_once_at_its_own_place(statement: str, answer: tuple[str, str]) -> None:
    assert told(f"{SPEC}{statement}\n") == [answer]


@pytest.mark.parametrize(
    "statement", ["measure m = bust, tolerance 0 in", "expect 40% >= 0.2", "expect bust >= 0"]
)
def test_what_is_unusual_but_sound_is_let_be(statement: str) -> None:
    assert told(f"{SPEC}{statement}\n") == []
