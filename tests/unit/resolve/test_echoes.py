"""One mistake is told once: what only follows from another is left out."""

from __future__ import annotations

import pytest

from tests.worlds import resolved, told

# Speaks of the chart, of the block's pieces, of a cloth, a trim, a method and a finish.
GARMENT = """\
garment dress "Dress" {
  style     "DRESS"
  sizes     8, 10
  sample    10
  order     8: 1, 10: 2
}
"""
CHART = "use chart misses\n"
BLOCK = "use block sheath { bust-ease 3 in }\n"
MATERIALS = """\
cloth lawn { fibre 100% cotton }
trim edging { kind elastic; width 1 in }
trim strip { kind bias strip; cut-from lawn }
"""
SEWN = """\
alter {
  leave out sleeve
  lower front.neck at centre-neck by bust / 20
  crop front, back at hip-line
}
seam side joins front.side to back.side by overlocked
finish neckline along back.neck, front.neck by elastic-bound {
  binding edging
  hold 6% along front.neck from 40% to centre-neck
}
measure bust = girth at bust-line - bust
measure neck = opening of neckline
expect girth at hip-line >= hip
label main at back.neck { says "DRESS" }
note "Press." on front.hem
"""


def test_the_text_that_stands_around_the_mistakes_is_sound() -> None:
    assert told(GARMENT + CHART + BLOCK + MATERIALS + SEWN) == []


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        pytest.param(GARMENT + BLOCK + MATERIALS + SEWN, ("SPC308", "sheath"), id="no chart"),
        pytest.param(GARMENT + CHART + MATERIALS + SEWN, ("SPC309", "dress"), id="no block"),
        pytest.param(
            GARMENT + "use chart mises\n" + BLOCK + MATERIALS + SEWN, ("SPC201", "mises"), id="unknown chart"
        ),
        pytest.param(
            GARMENT + CHART + "use block sheet\n" + MATERIALS + SEWN, ("SPC201", "sheet"), id="unknown block"
        ),
        pytest.param(
            GARMENT
            + CHART
            + BLOCK
            + MATERIALS
            + SEWN
            + 'use "more.garment"\nhem b along front.hem by mine { t tape }\n',
            ("SPC224", '"more.garment"'),
            id="missing file",
        ),
        pytest.param(
            GARMENT.replace("8, 10\n", "8 10\n") + CHART + BLOCK + MATERIALS + SEWN,
            ("SPC207", "8 10"),
            id="sizes that cannot be known",
        ),
        pytest.param(
            GARMENT + CHART + BLOCK.replace("3 in", "3 deg") + MATERIALS + SEWN,
            ("SPC204", "3 deg"),
            id="a parameter with a fault",
        ),
        pytest.param(
            GARMENT
            + CHART
            + BLOCK
            + MATERIALS.replace("1 in", "1")
            + SEWN
            + "seam s joins front.shoulder to "
            "back.shoulder by bound-outside { binding edging }\n",
            ("SPC207", "1"),
            id="a trim with a fault",
        ),
        pytest.param(
            GARMENT + CHART + BLOCK + MATERIALS.replace("cloth lawn", "cloth") + SEWN,
            ("SPC312", "cloth"),
            id="a cloth without a name",
        ),
        pytest.param(
            GARMENT + CHART + BLOCK + MATERIALS + SEWN.replace("out sleeve", "out sleeve, front, back"),
            ("SPC311", "leave out sleeve, front, back"),
            id="nothing is left",
        ),
        pytest.param(
            GARMENT
            + CHART
            + BLOCK
            + MATERIALS
            + SEWN.replace("front.neck by", "front.nek by").replace(
                "along front.neck from", "along front.nek from"
            ),
            ("SPC201", "nek"),
            id="an edge that is also held",
        ),
        pytest.param(
            GARMENT + CHART + BLOCK + MATERIALS + SEWN.replace("binding edging", "bindng edging"),
            ("SPC206", "bindng"),
            id="a setting that must be set, misspelt",
        ),
        pytest.param(
            GARMENT + CHART + BLOCK + MATERIALS + SEWN.replace("says", "say"),
            ("SPC206", "say"),
            id="a property that must be there, misspelt",
        ),
    ],
)
def test_what_follows_from_a_mistake_is_not_told(text: str, answer: tuple[str, str]) -> None:
    assert told(text) == [answer]


@pytest.mark.parametrize(
    ("sound", "broken"),
    [
        ("use chart misses", "use chart misses misses"),
        ("use block sheath", "use block block sheath"),
        ("trim edging {", "trim edging ( {"),
        ("cloth lawn {", "cloth lawn lawn {"),
        ("says", "says ="),
        ("binding edging", "binding = edging"),
        ("finish neckline along", "finish neckline alng along"),
        ("width 1 in", "width 1 ="),
    ],
)
def test_a_statement_that_cannot_be_read_is_told_by_the_syntax_alone(sound: str, broken: str) -> None:
    text = GARMENT + CHART + BLOCK + MATERIALS + SEWN
    assert sound in text

    garment, said = resolved(text.replace(sound, broken, 1))

    assert [each.code.id[:4] for each in said] == ["SPC1"]
    assert garment is None or sound == "finish neckline along"


def test_a_measurement_with_a_fault_is_told_where_it_is_declared_and_nowhere_else() -> None:
    chart = "chart mine { sizes 8, 10; measurement bust = 30, 32, 34 in; measurement less = bust / 2 }\n"
    block = """block b { let w = less + bust; piece p {
      point a at 0, 0; point b at w, 0; point c at w, bust
      edge ab from a { line to b }; edge bc from b { line to c }; edge ca from c { line to a } } }
    """
    text = GARMENT + "use chart mine\nuse block b\n" + MATERIALS + chart + block + "measure m = less - bust\n"

    assert told(text) == [("SPC303", "bust")]


def test_a_value_made_from_itself_is_told() -> None:
    chart = "chart mine { sizes 8, 10; measurement bust = bust + 1 in; measurement waist = 20, 22 in }\n"
    text = GARMENT + "use chart mine\nuse block sheath\n" + MATERIALS + chart

    assert ("SPC201", "bust") in told(text)


def test_a_name_sought_in_many_places_is_told_once_with_all_of_them() -> None:
    measures = "".join(f"measure m{number} = length of sleve.hem\n" for number in range(9))
    _, said = resolved(GARMENT + CHART + BLOCK + MATERIALS + SEWN + measures)

    (answer,) = said
    assert answer.message == "there is no piece `sleve`"
    assert [label.text for label in answer.related] == ["and here"] * 5
    assert answer.notes == ("and in 3 more places",)


def test_what_one_faulty_method_lacks_is_told_once_however_often_it_is_used() -> None:
    method = 'method m makes hem { allowance 1 cm; raw-edge rough; pass "{what}" stitch 301 at 3 mm }\n'
    hems = "hem one along front.hem by m\nhem two along back.hem by m\n"

    assert told(GARMENT + CHART + BLOCK + MATERIALS + hems + method) == [
        ("SPC210", "rough"),
        ("SPC217", "{what}"),
    ]
