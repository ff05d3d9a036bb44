"""Which names may be shared, which may not, and where a name is sought."""

from __future__ import annotations

import pytest

from tests.worlds import garment_of, resolved, told

SPEC = """\
use chart misses
use block sheath
garment dress "Dress" { style "DRESS" }
cloth lawn { fibre 100% cotton }
trim edging { kind elastic; width 1 in }
"""
TAKEN = [("SPC202", "x")]
PIECE = """\
use chart mine
use block b
garment g "G" { style "G" }
cloth lawn { fibre 100% cotton }
chart mine { sizes S, L; measurement bust = 88, 100 cm }
block b {
  piece p {
    point a at 0, 0
    point b at bust, 0
    point c at bust, bust
    edge ab from a { line to b }
    edge bc from b { line to c }
    edge ca from c { line to a }
    @
  }
}
"""


@pytest.mark.parametrize(
    ("first", "second", "answers"),
    [
        ("seam x joins front.side to back.side by overlocked", "hem x along front.hem by raw", TAKEN),
        ("finish x along front.neck by raw", "hem x along front.hem by raw", TAKEN),
        ("trim x { kind tape }", "cloth x { for lining }", TAKEN),
        ("trim x { kind tape }", "thread x { size Tex 27 }", TAKEN),
        ("seam x joins front.side to back.side by overlocked", "trim x { kind tape }", []),
        ("seam x joins front.side to back.side by overlocked", "measure x = girth at bust-line", []),
        ("measure x = girth at bust-line", 'label x at back.neck { says "a" }', []),
        (
            "chart x { sizes 8; measurement bust = 30 in }",
            "method x makes hem { allowance 0; raw-edge raw }",
            [],
        ),
        ("measure bust = girth at bust-line", "hem front along front.hem by raw", []),
    ],
)
def test_what_is_sewn_shares_its_names_and_so_does_what_is_bought(
    first: str, second: str, answers: list[tuple[str, str]]
) -> None:
    assert told(f"{SPEC}{first}\n{second}\n") == answers


@pytest.mark.parametrize(
    "statement", ["line ab from a to b", "point ca at 0, 0", "edge a from a { line to b }"]
)
def test_a_part_has_its_name_to_itself_in_its_piece(statement: str) -> None:
    _, said = resolved(PIECE.replace("@", statement))

    assert [each.code.id for each in said] == ["SPC202"]


def test_a_declaration_of_ones_own_goes_before_that_of_the_library() -> None:
    method = "method raw makes hem { turned by 2 cm; raw-edge turned }\n"
    garment = garment_of(f"{SPEC}hem h along front.hem by raw\n{method}")

    assert garment.finishes[0].making.raw_edge == "turned"


def test_a_file_that_is_used_declares_before_the_spec() -> None:
    _, said = resolved(
        'use "cloths.garment"\n' + SPEC, {"cloths.garment": "cloth lawn { fibre 100% silk }\n"}
    )

    (answer,) = said
    assert answer.span is not None
    assert answer.span.file.name == "spec.garment"
    assert [label.span.file.name for label in answer.related] == ["cloths.garment"]


def test_values_of_a_piece_hide_those_of_the_block() -> None:
    text = PIECE.replace("  piece p {", "  let w = 3 cm\n  piece p {\n    let w = 4 cm").replace(
        "@", "point d at w, 0"
    )
    (block,) = garment_of(text).blocks

    assert [definition.name for definition in block.definitions] == ["w", "p.w"]


def test_a_chart_is_not_a_block_and_the_answer_says_so() -> None:
    _, said = resolved(SPEC.replace("use chart misses", "use chart sheath"))

    (answer,) = said
    assert answer.notes == ("`sheath` is a block",)
    assert answer.helps == (
        "there are `ansur-men`, `ansur-women`, `children`, `misses`, `sleepwear-boys` and `sleepwear-girls`",
    )


def test_sizes_are_listed_in_the_order_of_the_chart_and_not_guessed_by_their_figures() -> None:
    _, said = resolved(SPEC.replace('style "DRESS"', "sizes 8, 11"))

    (answer,) = said
    assert answer.helps == ("there are `6`, `8`, `10`, `12`, `14`, `16`, `18` and `20`",)


@pytest.mark.parametrize(
    "declaration",
    [
        "method m makes seam { allowance 1 cm; raw-edge raw; wrong no }",
        "chart c { sizes 8; measurement bust = 30 in; wrong no }",
        "block c { wrong no; piece q { point a at 0, 0; edge a-a from a { line to a } } }",
    ],
)
def test_what_nothing_uses_is_checked_all_the_same(declaration: str) -> None:
    assert told(f"{SPEC}{declaration}\n") == [("SPC206", "wrong")]


def test_an_unused_block_may_speak_of_measurements_of_another_chart() -> None:
    block = """block child { let w = height-of-child / 4; piece q {
      point a at 0, 0; point b at w, 0; point c at w, w
      edge ab from a { line to b }; edge bc from b { line to c }; edge ca from c { line to a } } }\n"""

    assert told(SPEC + block) == []
