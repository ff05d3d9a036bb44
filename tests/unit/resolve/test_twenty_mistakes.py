"""One spec with twenty separate mistakes is given exactly twenty answers, in one run."""

from __future__ import annotations

from tests.worlds import resolved

SPEC = """\
use chart misses
use block sheath {
  bust-ease 3 deg
  hip-easy  2 in
}
garment shell "Shell" {
  style     "ES-07"
  sizes     8, 10, 11
  units     inch
  revision  B "…"
}
cloth leno "cotton leno" {
  fibre     90% cotton
  width     54
  is        open, shear
  price     14.50 USD per roll
}
trim edging "fold-over elastic" {
  kind      fold-over elastik
  width     1 in
}
trim strip {
  kind      bias strip
  cut-from  lawn
}
alter {
  leave out slieve
  release   front.waist-dart
  release   front.waist-dart
  swing     back.shoulder-dart into front.hem
}
seam side joins front.side to back.sid by overlocked
seam side joins front.shoulder to back.shoulder by french
finish neckline along back.neck, front.neck by elastic-bound {
  binding   edging
  hold      100% along front.neck
}
hem bottom along hem by single-turned
measure bust = girth at bust-line + 2
label main at back.neck { }
"""

ANSWERS = [
    ("SPC204", 3, "3 deg"),
    ("SPC206", 4, "hip-easy"),
    ("SPC201", 8, "11"),
    ("SPC210", 9, "inch"),
    ("SPC207", 10, 'B "…"'),
    ("SPC306", 13, "90% cotton"),
    ("SPC207", 14, "54"),
    ("SPC210", 15, "shear"),
    ("SPC210", 16, "roll"),
    ("SPC210", 19, "fold-over elastik"),
    ("SPC201", 24, "lawn"),
    ("SPC201", 27, "slieve"),
    ("SPC205", 29, "front.waist-dart"),
    ("SPC219", 30, "front.hem"),
    ("SPC201", 32, "sid"),
    ("SPC202", 33, "side"),
    ("SPC211", 36, "100%"),
    ("SPC212", 38, "hem"),
    ("SPC203", 39, "2"),
    ("SPC302", 40, "main"),
]


def test_each_mistake_has_one_answer_in_its_place() -> None:
    garment, said = resolved(SPEC)
    found = [(each.code.id, each.span.line, each.span.text) for each in said if each.span]

    assert garment is None
    assert found == ANSWERS
    assert len(ANSWERS) == 20


def test_an_answer_comes_with_a_cure_where_the_message_does_not_hold_it() -> None:
    _, said = resolved(SPEC)
    without = [each.span.text for each in said if each.span and not each.helps and each.fix is None]

    assert without == ["3 deg", 'B "…"', "front.waist-dart", "100%"]
