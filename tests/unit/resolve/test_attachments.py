"""What `attach` speaks of must be there; what cannot be meant is told."""

from __future__ import annotations

import pytest

from tests.attaching import pocketed
from tests.made import codes

AT = "with top-left at bust-line, 2 cm from centre"


@pytest.mark.parametrize(
    ("attach", "code", "message"),
    [
        (f"attach poket on front {AT} by patch", "SPC201", "there is no piece `poket`"),
        (f"attach pocket on frnt {AT} by patch", "SPC201", "there is no piece `frnt`"),
        (f"attach pocket on front {AT.replace('left', 'lft')} by patch", "SPC201", "no point `top-lft`"),
        (f"attach pocket on front {AT.replace('bust', 'chest')} by patch", "SPC201", "no line `chest-line`"),
        (f"attach pocket on front {AT.replace('centre', 'middle')} by patch", "SPC201", "no edge `middle`"),
        (f"attach pocket on front {AT} by pach", "SPC201", "there is no method `pach`"),
        ("attach pocket on front with top-left at pocket-mark by patch", "SPC201", "no point `pocket-mark`"),
        (f"attach pocket on pocket {AT} by patch", "SPC207", "`attach` takes another piece to sew it onto"),
        (f"attach pocket.top on front {AT} by patch", "SPC220", "`pocket.top` is an edge, not a piece"),
        (f"attach pocket, back on front {AT} by patch", "SPC208", "`attach … on` takes one piece"),
        (f"attach pocket on front {AT} by french", "SPC216", "makes a seam, not an attachment"),
        (
            f"attach pocket on front {AT} along front.hem by patch",
            "SPC207",
            "takes edges of `pocket`",
        ),
        (f"attach pocket on front {AT}, turned 3 cm by patch", "SPC204", "a turn must be an angle"),
        (f"attach pocket on front {AT}, square to bust-line by patch", "SPC220", "`front.bust-line` is a"),
        (f"attach pocket on front {AT.replace('2 cm', '2')} by patch", "SPC204", "a distance from an edge"),
        ("attach pocket.top-left to front.hem at 50%", "SPC220", "`pocket.top-left` is a point, not an edge"),
        ("attach pocket to front.hem at 50%", "SPC220", "`pocket` is a piece, not an edge"),
        ("attach pocket.bottom to front.hem at neck-point", "SPC201", "there is no corner `neck-point`"),
        ("attach pocket.bottom, pocket.bottom to front.hem at 50%", "SPC221", "stands twice in one list"),
        ("attach pocket.bottom to front.hem at 50% by patch { width 2 cm }", "SPC206", "no setting `width`"),
    ],
)
def test_what_cannot_be_meant_is_told(attach: str, code: str, message: str) -> None:
    (told,) = [each for each in pocketed(f"{attach}\n").diagnostics if each.code.id == code]

    assert message in told.message


def test_two_of_one_kind_are_told_apart_by_a_number() -> None:
    result = pocketed(
        f"attach pocket on left front {AT} by patch\n"
        "attach pocket on left front with top-left at 17 cm below bust-line, 2 cm from centre by patch\n"
    )
    assert result.garment is not None

    assert [one.name for one in result.garment.attachments] == [
        "pocket-on-left-front",
        "pocket-on-left-front-2",
    ]
    assert codes(result) == []


def test_a_piece_that_is_left_out_cannot_be_attached() -> None:
    result = pocketed(f"alter {{ leave out pocket }}\nattach pocket on front {AT} by patch\n")

    assert "SPC205" in codes(result)


def test_a_seam_does_not_use_a_way_of_attaching() -> None:
    result = pocketed("seam odd joins front.hem to back.hem by patch\n")
    (told,) = [each for each in result.diagnostics if each.code.id == "SPC216"]

    assert told.message == "method `patch` makes an attachment, not a seam"
