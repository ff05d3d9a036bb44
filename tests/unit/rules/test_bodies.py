"""What goes round the body lets it through on the way on, and nothing else has to."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.rules import Subject
from specc.rules.girths import girths
from tests.made import made, sheath

if TYPE_CHECKING:
    from specc.pipeline import Result

HEAD = """garment tube "Tube" {{ style "T"; puts-on {on}; sizes S; units cm }}
use "shared/top.garment"
use chart two-sizes
cloth calico "calico" {{ width 150 cm; is stable }}
"""
PANEL = """
block panel {{
  piece {name} "panel" {{
    cut 1 on fold along centre
    point low-centre at 0 cm, 0 cm
    point low-side at {low} cm, 0 cm
    point middle-side at {middle} cm, 30 cm
    point high-side at {high} cm, 60 cm
    point high-centre at 0 cm, 60 cm
    point middle-centre at 0 cm, 30 cm
    point inside at 20 cm, 30 cm
    edge bottom from low-centre {{ line to low-side }}
    edge back from low-side {{ line to middle-side; line to high-side }}
    edge top from high-side {{ line to high-centre }}
    edge centre from high-centre {{ line to low-centre }}
    line {line} from middle-centre to {end}
  }}
}}
use block panel
{sewn}
"""
SEWN = "seam back joins panel.back to panel.back by french\n"


def tube(
    on: str, *, low: int, middle: int, high: int, line: str, end: str = "middle-side", sewn: str = SEWN
) -> list[str]:
    """The places that size S (bust 88, hip 94, shoulders 96, head 56 cm) does not pass, by code."""
    given = {"name": "panel", "low": low, "middle": middle, "high": high, "line": line, "end": end}
    result = made(HEAD.format(on=on) + PANEL.format(sewn=sewn, **given))
    assert result.judgement is not None, [each.message for each in result.diagnostics]
    told = (each for each in result.diagnostics if each.code.id in {"SPC506", "SPC520"})
    return [f"{each.code.id} {each.message.split(' does')[0].split(' hardly')[0]}" for each in told]


def test_stepping_in_what_is_at_or_above_the_hip_must_pass_it() -> None:
    """The hip is 94 cm: twice 47."""
    assert tube("stepping in", low=50, middle=47, high=47, line="hip-line") == []
    assert tube("stepping in", low=50, middle=46, high=50, line="hip-line") == [
        "SPC506 the girth at `hip-line`"
    ]
    assert tube("stepping in", low=50, middle=50, high=46, line="hip-line") == [
        "SPC506 the opening of `panel.top`"
    ]


def test_a_pegged_hem_may_be_narrower_than_the_hip() -> None:
    assert tube("stepping in", low=35, middle=50, high=48, line="hip-line") == []


def test_over_the_head_what_is_at_or_below_the_bust_must_pass_it_and_the_shoulders() -> None:
    """The bust is 88 cm, twice 44, the shoulders 96 cm, twice 48."""
    assert tube("over the head", low=48, middle=48, high=30, line="bust-line") == []
    assert tube("over the head", low=43, middle=48, high=30, line="bust-line") == [
        "SPC506 the opening of `panel.bottom`"
    ]
    assert tube("over the head", low=48, middle=46, high=30, line="bust-line") == [
        "SPC520 the girth at `bust-line`"
    ]


def test_without_a_line_to_tell_the_height_the_way_in_is_the_end_that_is_put_on_first() -> None:
    assert tube("stepping in", low=35, middle=35, high=48, line="middle-line") == []
    assert tube("stepping in", low=48, middle=35, high=35, line="middle-line") != []
    assert tube("over the head", low=35, middle=35, high=48, line="middle-line") != []


def test_a_line_that_ends_inside_the_piece_goes_round_nothing() -> None:
    assert tube("stepping in", low=50, middle=50, high=50, line="hip-line", end="inside") == []


def test_a_line_along_the_fold_goes_round_nothing() -> None:
    assert tube("stepping in", low=50, middle=50, high=50, line="hip-line", end="low-centre") == []


def test_what_is_open_at_the_back_lets_the_body_through() -> None:
    assert tube("stepping in", low=40, middle=40, high=40, line="hip-line", sewn="") == []
    assert tube("stepping in", low=40, middle=40, high=40, line="hip-line") != []


def test_a_garment_that_opens_passes_everything() -> None:
    assert tube("opens", low=30, middle=30, high=30, line="hip-line") == []


PANELS = """
block panels {
  piece front "front" {
    cut 1 on fold along centre
    point a at 0 cm, 0 cm
    point b at 12 cm, 0 cm
    point c at 12 cm, 40 cm
    point d at 0 cm, 40 cm
    edge bottom from a { line to b }
    edge side from b { line to c }
    edge top from c { line to d }
    edge centre from d { line to a }
    point line-a at 0 cm, 20 cm
    point line-b at 12 cm, 20 cm
    line hip-line from line-a to line-b
  }
  piece flank "side panel" {
    cut 2
    point a at 0 cm, 0 cm
    point b at 10 cm, 0 cm
    point c at 10 cm, 40 cm
    point d at 0 cm, 40 cm
    edge bottom from a { line to b }
    edge to-back from b { line to c }
    edge top from c { line to d }
    edge to-front from d { line to a }
    point line-a at 0 cm, 20 cm
    point line-b at 10 cm, 20 cm
    line hip-line from line-a to line-b
  }
  piece back "back" {
    cut 1 on fold along centre
    point a at 0 cm, 0 cm
    point b at 14 cm, 0 cm
    point c at 14 cm, 40 cm
    point d at 0 cm, 40 cm
    edge bottom from a { line to b }
    edge side from b { line to c }
    edge top from c { line to d }
    edge centre from d { line to a }
    point line-a at 0 cm, 20 cm
    point line-b at 14 cm, 20 cm
    line hip-line from line-a to line-b
  }
}
use block panels
seam front joins front.side to flank.to-front by french
seam back joins back.side to flank.to-back by french
"""


def ways(result: Result) -> dict[str, float]:
    """Every way round the body in the first size, with what passes in centimetres."""
    assert result.shaped is not None
    assert result.assembly is not None
    assert result.garment is not None
    assert result.measures is not None
    subject = Subject(result.garment, result.shaped, result.assembly, result.measures)
    return {way.name: round(way.passes / 10.0, 3) for way in girths(subject, result.assembly.sizes[0])}


def test_side_panels_lie_on_the_way_round_though_they_have_no_middle() -> None:
    """Twice 12, 10 and 14 cm."""
    assert ways(made(HEAD.format(on="stepping in") + PANELS))["the girth at `hip-line`"] == 72.0


def test_a_single_piece_wrapped_round_is_a_way_round() -> None:
    """Off the fold, its two sides sewn together: 80 cm and nothing twice."""
    wrapped = HEAD.format(on="stepping in") + PANEL.format(
        name="panel", low=80, middle=80, high=80, line="hip-line", end="middle-side",
        sewn="seam back joins panel.back to panel.centre by french\n",
    ).replace("cut 1 on fold along centre", "cut 1")  # fmt: skip

    assert ways(made(wrapped))["the girth at `hip-line`"] == 80.0


def test_a_lining_is_a_way_round_of_its_own() -> None:
    """Two tubes that are not sewn to each other: neither makes the other wider."""
    shell = {"low": 50, "middle": 50, "high": 50, "line": "hip-line", "end": "middle-side"}
    lining = shell | {"middle": 40}
    inside = SEWN.replace("panel", "inner").replace("seam back", "seam inside")
    text = (
        HEAD.format(on="stepping in")
        + PANEL.format(name="panel", sewn=SEWN, **shell)
        + PANEL.format(name="inner", sewn=inside, **lining)
        .replace("block panel", "block inner")
    )  # fmt: skip
    told = [each.message for each in made(text).diagnostics if each.code.id == "SPC506"]

    assert told == ["the girth at `hip-line` does not pass the hip in size S; it lacks up to 14.0 cm"]


@pytest.mark.parametrize("on", ["over the head", "stepping in"])
def test_a_sleeve_does_not_go_round_the_body(on: str) -> None:
    """The line at the upper arm closes to a round, but one that never crosses the middle."""
    sewn = """seam under joins sleeve.seam-front to sleeve.seam-back by french
seam side joins front.side to back.side by french
"""
    result = sheath(sewn, head=f"puts-on {on}; ")

    assert {"the girth at `bust-line`", "the girth at `hip-line`"} <= set(ways(result))
    assert "the girth at `upper-arm-line`" not in ways(result)
