"""What curves ask of bindings and of hems."""

from __future__ import annotations

from math import degrees, pi, sqrt

import pytest

from specc.rules.curve_beyond_trim import BIAS_TAKES
from tests.made import CLOTH, made
from tests.sources import Known, against

WAIST, LONG = 26.0, 26.0  # inches: a skirt that the sources leave open

# A quarter of a skirt that is a part of a ring, its waist and its hem arcs about one point.
SKIRT = """garment skirt "Skirt" {{ style "C"; sizes S; units in }}
chart one {{ sizes S, L; measurement waist = 26, 28 in }}
block cone {{
  piece panel "panel" {{
    cut 4
    point middle at 0 in, 0 in
    point waist-low at {inner:.6f} in, 0 in
    point hem-low at {outer:.6f} in, 0 in
    point hem-middle hem-low turned {half:.6f} deg around middle
    point hem-high hem-low turned {whole:.6f} deg around middle
    point waist-high waist-low turned {whole:.6f} deg around middle
    point waist-middle waist-low turned {half:.6f} deg around middle
    edge hem from hem-low {{ arc to hem-high, through hem-middle }}
    edge one from hem-high {{ line to waist-high }}
    edge waist from waist-high {{ arc to waist-low, through waist-middle }}
    edge other from waist-low {{ line to hem-low }}
    grain from waist-low to hem-low
  }}
}}
use chart one
use block cone
{cloth}
hem hem along panel.hem by double-turned {{ deep {deep} in }}
"""


def hem_is_told(round_the_hem: float, deep: str) -> bool:
    """Whether a hem so deep is too deep for a skirt so wide round its hem; all in inches."""
    angle = (round_the_hem - WAIST) / LONG
    inner, quarter = WAIST / angle, degrees(angle / 4.0)
    spec = SKIRT.format(
        inner=inner, outer=inner + LONG, half=quarter / 2.0, whole=quarter, cloth=CLOTH, deep=deep
    )
    result = made(spec)
    assert result.judgement is not None
    return "SPC561" in [each.code.id for each in result.diagnostics]


@against(Known.READ, "Texas A&M Extension L-359", "gored skirts 60 to 70 in round the hem: 2 in")
@pytest.mark.parametrize("round_the_hem", [60.0, 65.0, 70.0])
def test_a_gored_skirt_takes_the_published_hem_and_none_much_deeper(round_the_hem: float) -> None:
    assert not hem_is_told(round_the_hem, "2")
    assert hem_is_told(round_the_hem, "3")


@against(
    Known.READ,
    "T. Johnson, 4-H bulletin (Michigan State)",
    "circles 1/4 in; flared 1 1/2 in; heavy at most 2",
)
def test_a_circle_takes_a_quarter_of_an_inch_and_not_the_hem_of_a_straight_skirt() -> None:
    circle = WAIST + 2.0 * pi * LONG

    assert not hem_is_told(circle, "1/4")
    assert not hem_is_told(90.0, "1 1/2")
    assert hem_is_told(circle, "2")


@against(
    Known.DERIVED, "a hem d deep at a radius r: (r + d) / (r - d)", "a circle of 28 in: 2 in differ by 15 %"
)
def test_the_difference_of_a_circular_hem_is_that_of_its_two_circles() -> None:
    radius = 28.0
    round_the_hem = 2.0 * pi * radius
    angle = (round_the_hem - WAIST) / LONG
    spec = SKIRT.format(
        inner=radius - LONG,
        outer=radius,
        half=degrees(angle / 8.0),
        whole=degrees(angle / 4.0),
        cloth=CLOTH,
        deep="2",
    )
    (fault,) = (each for each in made(spec).diagnostics if each.code.id == "SPC561")

    assert "15.4% longer" in fault.message  # 30 / 26


@against(Known.PRACTICE, figures="a binding 1/4 in wide goes round a corner of 1 in, and of no less")
@pytest.mark.parametrize(("radius", "told"), [(1.0, False), (0.95, True)])
def test_a_quarter_inch_binding_goes_round_a_corner_of_one_inch(radius: float, *, told: bool) -> None:
    hem, bound = (
        "hem hem along panel.hem by double-turned {{ deep {deep} in }}",
        (
            'trim strip "strip" {{ kind bias strip; cut-from calico }}\n'
            "finish rim along panel.hem by bias-bound {{ binding strip; finished {deep} in }}"
        ),
    )
    spec = SKIRT.replace(hem, bound).format(
        inner=radius / 2.0, outer=radius, half=45.0, whole=90.0, cloth=CLOTH, deep="1/4"
    )

    assert ("SPC560" in [each.code.id for each in made(spec).diagnostics]) is told


@against(
    Known.DERIVED, "threads that do not stretch: the squares of length and width sum up to 2", "15 %: 0.8231"
)
def test_a_strip_that_takes_so_much_keeps_four_fifths_of_its_width() -> None:
    assert sqrt(2.0 - 1.15**2) == pytest.approx(0.8231, abs=5e-5)
    half = sqrt(1.0 + BIAS_TAKES)  # one edge so much longer, the other so much shorter
    assert half == pytest.approx(1.155, abs=5e-4)
    assert sqrt(2.0 - half**2) > 0.8
