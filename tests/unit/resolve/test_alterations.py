"""Alterations by name: what each leaves behind, and where a name has gone."""

from __future__ import annotations

import pytest

from specc.model.alteration import Crop, Form, LeaveOut, Lengthen, Level, MoveCorner, Release, Swing
from tests.worlds import garment_of, resolved, told

SPEC = """\
garment dress { }
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
"""


def altered(*steps: str, more: str = "") -> str:
    return f"{SPEC}alter {{\n" + "\n".join(steps) + f"\n}}\n{more}\n"


def test_each_verb_is_given_its_meaning() -> None:
    steps = garment_of(
        altered(
            "leave out sleeve",
            "release front.waist-dart, back.waist-dart",
            "swing half of front.bust-dart into front.hem at 45% from hem-side as flare",
            "crop front, back at 4 in below waist-line",
            "lengthen front, back by 2 in at hip-line",
            "shorten front, back by 1 in at hem",
            "lower front.neck, back.neck at centre-neck by 1 in",
        )
    ).alterations

    kinds = [type(step) for step in steps]
    assert kinds == [LeaveOut, Release, Swing, Crop, Lengthen, Lengthen, MoveCorner]
    _, _, swing, crop, lengthen, shorten, lower = steps
    assert isinstance(swing, Swing)
    (target,) = swing.into
    assert target.form is Form.FLARE
    assert target.place is not None
    assert target.place.from_corner == "hem-side"
    assert isinstance(crop, Crop)
    assert isinstance(lengthen, Lengthen)
    assert isinstance(lengthen.at, Level)
    assert isinstance(shorten, Lengthen)
    assert (shorten.at, shorten.shorten) == ("hem", True)
    assert isinstance(lower, MoveCorner)
    assert [(edge.piece, edge.name) for edge in lower.edges] == [("front", "neck"), ("back", "neck")]


@pytest.mark.parametrize(
    ("step", "answer"),
    [
        ("leave out slieve", ("SPC201", "slieve")),
        ("release waist-dart", ("SPC212", "waist-dart")),
        ("release front.neck", ("SPC220", "front.neck")),
        ("release front.waistdart", ("SPC201", "waistdart")),
        ("release front.waist-dart, front.waist-dart", ("SPC221", "front.waist-dart")),
        ("swing front.waist-dart into front.hem", ("SPC218", "front.waist-dart")),
        ("swing front.bust-dart into back.hem", ("SPC219", "back.hem")),
        ("swing front.bust-dart into front.bust-dart", ("SPC219", "front.bust-dart")),
        ("swing front.bust-dart into front.bust-point", ("SPC220", "front.bust-point")),
        ("swing 0% of front.bust-dart into front.hem", ("SPC211", "0%")),
        ("swing 101% of front.bust-dart into front.hem", ("SPC211", "101%")),
        ("swing 3 in of front.bust-dart into front.hem", ("SPC204", "3 in")),
        ("swing front.bust-dart into front.hem at 3", ("SPC204", "3")),
        ("swing front.bust-dart into front.hem at 3 in from neck-point", ("SPC201", "neck-point")),
        ("crop front at hem", ("SPC220", "hem")),
        ("crop front at wast-line", ("SPC201", "wast-line")),
        ("crop front at 4 below waist-line", ("SPC204", "4")),
        ("crop front, front at waist-line", ("SPC221", "front")),
        ("lengthen front by 2 at hem", ("SPC204", "2")),
        ("lengthen front by 2 in at hm", ("SPC201", "hm")),
        ("widen front.neck, back.neck at shoulder-tip by 1 in", ("SPC201", "shoulder-tip")),
        ("lower front.neck, front.neck at centre-neck by 1 in", ("SPC221", "front.neck")),
        ("lower front.neck at centre-neck by 10%", ("SPC204", "10%")),
        ("lower front.neck at centre-neck by bst", ("SPC201", "bst")),
    ],
)
def test_a_slip_is_told_once_at_its_own_place(step: str, answer: tuple[str, str]) -> None:
    assert told(altered(step)) == [answer]


@pytest.mark.parametrize(
    ("step", "name", "how"),
    [
        ("leave out front", "front.bust-dart", "`front` is gone: it was left out on line 6"),
        (
            "release front.bust-dart",
            "front.bust-dart",
            "`front.bust-dart` is gone: it was released on line 6",
        ),
        (
            "swing front.bust-dart into front.hem as flare",
            "front.bust-dart",
            "`front.bust-dart` is gone: it was swung into `front.hem` on line 6",
        ),
        (
            "swing front.bust-dart into front.hem as gathers",
            "front.bust-dart",
            "`front.bust-dart` is gone: it was swung into `front.hem` on line 6",
        ),
    ],
)
def test_what_has_gone_is_told_with_what_became_of_it(step: str, name: str, how: str) -> None:
    _, said = resolved(altered(step, more=f"measure x = width of {name}"))

    (answer,) = said
    assert answer.message == how
    assert [label.span.line for label in answer.related] == [6]


def test_a_dart_swung_whole_as_a_dart_keeps_its_name() -> None:
    assert (
        told(altered("swing front.bust-dart into front.hem", more="measure x = width of front.bust-dart"))
        == []
    )


def test_a_part_of_a_dart_that_is_swung_is_a_dart_of_its_own() -> None:
    steps = ("release front.waist-dart", "swing half of front.bust-dart into front.hem")
    more = "measure x = width of front.bust-dart\nmeasure y = width of front.bust-dart-into-hem"

    assert told(altered(*steps, more=more)) == []


def test_a_dart_swung_to_several_places_leaves_a_dart_for_each_share() -> None:
    steps = (
        "release front.waist-dart",
        "swing half of front.bust-dart into front.hem at 20%, 30% into front.hem, the rest into front.neck",
    )
    more = "\n".join(
        f"measure {x} = width of front.bust-dart-into-{where}"
        for x, where in (("x", "hem"), ("y", "hem-2"), ("z", "neck"))
    )

    assert told(altered(*steps, more=more)) == []
    _, said = resolved(altered(*steps, more="measure x = width of front.bust-dart"))
    assert "it was swung into `front.hem`, `front.hem` and `front.neck` on line 7" in said[0].message


def test_a_lone_name_is_told_with_all_the_pieces_that_have_it() -> None:
    _, said = resolved(altered("lower neck at centre-neck by 1 in"))

    assert said[0].helps == ("write `back.neck` or `front.neck`",)


def test_a_reference_line_that_went_with_its_piece_is_gone() -> None:
    assert told(altered("leave out sleeve", more="measure x = girth at upper-arm-line")) == [
        ("SPC205", "upper-arm-line")
    ]


def test_the_tip_of_a_dart_is_a_point_once_the_piece_is_drawn() -> None:
    more = "measure x = height from front.bust-dart-tip to front.waist-centre"

    assert told(SPEC + more) == []
    assert told(altered("release front.bust-dart", more=more)) == [("SPC201", "bust-dart-tip")]
