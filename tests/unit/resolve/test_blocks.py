"""Blocks by name: settings, values, pieces and their parts."""

from __future__ import annotations

import pytest

from specc.drafting import Evaluator, FinishedPieces
from specc.model.block import Let
from specc.model.expression import Constant
from tests.worlds import garment_of, resolved, told

REST = """\
garment g { }
use chart mine
cloth lawn { fibre 100% cotton }
chart mine { sizes S, L; measurement bust = 88, 100 cm }
"""
BLOCK = """\
block b {
  for mine
  parameter ease = 2 in
  choice back = fold or seam
  let w = (bust + ease) / 4
  piece p "panel" {
    cut 1 on fold along side when back is fold
    cut 2 when back is seam
    point x at 0 in, 0 in
    point y at w, 0 in
    point z at w, 10 in
    point u at 0 in, 10 in
    edge bottom from x { line to y }
    edge right from y, out of sight { line to z }
    edge top from z { line to u }
    edge side from u { line to x }
    line mid from x to z
    grain from x to u
    notch top at 2 in from u, double
  }
}
"""


def spec(settings: str = "", block: str = BLOCK) -> str:
    return f"{REST}use block b {{ {settings} }}\n{block}"


def test_a_block_takes_its_settings() -> None:
    (block,) = garment_of(spec("ease 3 in; back seam")).blocks
    (piece,) = block.pieces
    ease = block.definitions[0]

    assert isinstance(ease, Let)
    assert isinstance(ease.value, Constant)
    assert str(ease.value.value) == "3 in"
    assert (piece.cut, piece.fold) == (2, None)
    assert [edge.out_of_sight for edge in piece.edges] == [False, True, False, False]
    assert (piece.notches[0].corner, piece.notches[0].double) == ("u", True)
    assert piece.grain == ("x", "u")


def test_the_first_option_is_the_default() -> None:
    (piece,) = garment_of(spec()).blocks[0].pieces

    assert (piece.cut, piece.fold) == (1, "side")


@pytest.mark.parametrize(
    ("settings", "answer"),
    [
        ("eas 3 in", ("SPC206", "eas")),
        ("ease 3", ("SPC204", "3")),
        ("ease 3 deg", ("SPC204", "3 deg")),
        ("ease 3 in, 4 in", ("SPC207", "3 in, 4 in")),
        ("ease much", ("SPC207", "much")),
        ("ease 3 in; ease 4 in", ("SPC202", "ease")),
        ("back sem", ("SPC210", "sem")),
        ("hold 3% along p.top", ("SPC206", "hold")),
    ],
)
def test_a_slip_in_a_setting_is_told_once(settings: str, answer: tuple[str, str]) -> None:
    assert told(spec(settings)) == [answer]


@pytest.mark.parametrize(
    ("sound", "faulty", "answer"),
    [
        ("bust + ease", "bst + ease", ("SPC201", "bst")),
        ("bust + ease", "bust + 2", ("SPC203", "2")),
        ("let w =", "let w2 = w + 1 in\n  let w =", ("SPC201", "w")),
        ("let w =", "let w = 3 in\n  let w =", ("SPC202", "w")),
        ("parameter ease", "parameter bust = 1 in\n  parameter ease", ("SPC202", "bust")),
        ("fold or seam", "fold or seam or fold", ("SPC202", "fold")),
        ("when back is fold", "when bck is fold", ("SPC201", "bck")),
        ("when back is fold", "when back is folded", ("SPC201", "folded")),
        ("when back is seam", "when back is fold", ("SPC208", "cut 2 when back is fold")),
        ("when back is fold", "when back is seam", ("SPC302", "p")),
        ("cut 2 when", "cut 0 when", ("SPC211", "0")),
        ("cut 2 when", "cut 1.5 when", ("SPC211", "1.5")),
        ("cut 2 when", "cut 21 when", ("SPC211", "21")),
        ("along side", "along sied", ("SPC201", "sied")),
        ("along side", "along mid", ("SPC220", "mid")),
        ("w, 10 in", "w, 10", ("SPC204", "10")),
        ("line to z", "line to zz", ("SPC201", "zz")),
        ("from y, out", "from yy, out", ("SPC201", "yy")),
        ("{ line to u }", "{ }", ("SPC304", "top")),
        ("line mid", "line top", ("SPC202", "top")),
        ("from x to z", "from x to q", ("SPC201", "q")),
        ("grain from x to u", "grain from x to q", ("SPC201", "q")),
        ("grain from x to u", "grain from x to u\n    grain from x to z", ("SPC208", "grain from x to z")),
        ("notch top", "notch tp", ("SPC201", "tp")),
        ("notch top at 2 in", "notch top at 2", ("SPC204", "2")),
        ("from u, double", "from x, double", ("SPC201", "x")),
        ("point u at 0 in, 10 in", "point u on bottom at 3 in from z", ("SPC201", "z")),
        ("point u at 0 in, 10 in", "point u from x going 3 in by 3 in", ("SPC204", "3 in")),
        ("point u at 0 in, 10 in", "point u from x toward q by 3 in", ("SPC201", "q")),
        ("line to z", "curve to z, leaving 3, arriving up", ("SPC204", "3")),
        ("line to z", "curve to z, leaving up, arriving up, full 3 in", ("SPC204", "3 in")),
        ("line to z", "dart d to z, pointing at q", ("SPC201", "q")),
        ("for mine", "for other", ("SPC227", "b")),
        ("for mine", "four mine", ("SPC206", "four")),
        ('piece p "panel"', "piece q { }\n  piece p", ("SPC304", "q")),
    ],
)
def test_a_slip_in_a_block_is_told_once(sound: str, faulty: str, answer: tuple[str, str]) -> None:
    block = BLOCK.replace(sound, faulty, 1)
    assert block != BLOCK

    assert told(spec(block=block)) == [answer]


def test_a_block_that_is_used_twice_or_bears_pieces_of_another_is_told_at_its_use() -> None:
    other = "use block c\n" + BLOCK.replace("block b", "block c", 1)

    assert told(spec() + "use block b\n") == [("SPC208", "use block b")]
    assert told(spec() + other) == [("SPC202", "c")]


def test_a_garment_without_pieces_is_told_and_nothing_of_what_is_sewn() -> None:
    assert told(spec(block="block b { let w = bust }\n") + "hem h along p.top by raw\n") == [("SPC304", "b")]


def test_a_chart_that_lacks_much_is_told_once_for_a_block_of_the_library() -> None:
    text = f"{REST}use block sheath\n"
    _, said = resolved(text)

    (answer,) = said
    assert answer.code.id == "SPC313"
    assert answer.span is not None
    assert answer.span.text == "sheath"
    assert "`waist`" in answer.notes[0]


def test_there_are_no_more_pieces_than_a_garment_can_need() -> None:
    pieces = "".join(
        f"piece p{number} {{ point a at 0, 0; point b at 1 in, 0; edge e from a {{ line to b }} }}\n"
        for number in range(101)
    )

    assert told(spec(block=f"block b {{\n{pieces}}}\n")) == [("SPC211", "b")]


@pytest.mark.parametrize(
    ("settings", "value"),
    [
        ("ease 3 in + 1/2 in", 88.9),
        ("ease bust / 20 + 1 cm", 54.0),
        ("ease (half of bust) - 38 cm", 60.0),
        ("ease - 1/2 in", -12.7),
        ("ease 2 * (1 in + 1 cm)", 70.8),
    ],
)
def test_a_setting_may_be_reckoned(settings: str, value: float) -> None:
    garment = garment_of(spec(settings))
    (ease,) = (one for one in garment.blocks[0].definitions if one.name == "ease")
    assert isinstance(ease, Let)
    bust = {"bust": 880.0}

    assert Evaluator(bust.__getitem__, FinishedPieces(())).value(ease.value) == pytest.approx(value)


@pytest.mark.parametrize(
    ("settings", "answer"),
    [
        ("ease 3 in + 2", ("SPC203", "2")),
        ("ease bust / 2 in", ("SPC204", "bust / 2 in")),
        ("ease bsut / 20", ("SPC201", "bsut")),
        ("back 3 in + 1 in", ("SPC210", "3 in + 1 in")),
    ],
)
def test_a_slip_in_a_reckoned_setting_is_told_once(settings: str, answer: tuple[str, str]) -> None:
    assert told(spec(settings)) == [answer]


def test_a_name_that_stands_on_a_condition_says_so_where_it_is_missing() -> None:
    block = BLOCK.replace("let w = (bust + ease) / 4", "let w = (bust + ease) / 4 when back is seam")
    _, said = resolved(spec(block=block))
    (fault,) = said

    assert fault.code.id == "SPC201"
    assert fault.helps == ("`w` is there only when `back` is `seam`; give it a value for every option",)


def test_a_condition_on_no_choice_is_told() -> None:
    block = BLOCK.replace("line mid from x to z", "line mid from x to z when front is fold")

    assert told(spec(block=block)) == [("SPC201", "front")]
