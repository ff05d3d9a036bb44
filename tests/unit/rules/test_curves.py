"""What curves ask of trims and of turned edges: by how much, where, in which sizes, and the cure."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.made import CLOTH, codes, made

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic

HEAD = """garment pad "Round pad" {{ style "P"; sizes S, L; units mm }}
chart two-sizes {{ sizes S, L; measurement bust = 80, 100 mm }}
block disc {{
  piece disc "disc" {{
    cut 1
    point low at 0 mm, 0 mm
    point right at bust, 0 mm
    point top at 0 mm, bust
    {outline}
    grain from low to top
  }}
}}
use chart two-sizes
use block disc
{cloth}
{rest}
"""
# A disc of 80 and of 100 mm radius, and a square that lacks a quarter of that circle at one corner.
DISC = HEAD.replace(
    "{outline}",
    """point left at 0 mm - bust, 0 mm
    point bottom at 0 mm, 0 mm - bust
    edge rim from right {{ arc to left, through top }}
    edge under from left {{ arc to right, through bottom }}""",
)
HOLLOW = HEAD.replace(
    "{outline}",
    """point between at bust * root of 0.5, bust * root of 0.5
    point near at 300 mm, 0 mm
    point far at 300 mm, 300 mm
    point off at 0 mm, 300 mm
    edge rim from top {{ arc to right, through between }}
    edge floor from right {{ line to near }}
    edge wall from near {{ line to far }}
    edge roof from far {{ line to off }}
    edge side from off {{ line to top }}""",
)
TRIM = 'trim strip "strip" {{ kind {kind}; width 40 mm; {more}}}\n'
BIND = "finish rim along disc.rim by bias-bound {{ binding strip; finished {finished} }}\n"
HEM = "hem rim along disc.rim by single-turned {{ deep {deep} }}\n"


def told(spec: str, rest: str, code: str, *, cloth: str = CLOTH) -> tuple[Diagnostic, ...]:
    """The diagnostics of the code about a disc, or a square with a hollow."""
    result = made(spec.format(cloth=cloth, rest=rest))
    return tuple(each for each in result.diagnostics if each.code.id == code)


def bound(spec: str, finished: str, *, kind: str = "bias strip", more: str = "") -> tuple[Diagnostic, ...]:
    return told(spec, TRIM.format(kind=kind, more=more) + BIND.format(finished=finished), "SPC560")


@pytest.mark.parametrize(
    ("spec", "finished", "asks"),
    [
        (HOLLOW, "30 mm", "its inner edge is 37.5% longer than its outer one"),  # 30 / 80
        (DISC, "24 mm", "its outer edge is 42.9% longer than its inner one"),  # 24 / (80 - 24)
        (DISC, "80 mm", "next to nothing is left of its inner edge"),
        (DISC, "90 mm", "next to nothing is left of its inner edge"),
    ],
)
def test_by_how_much_one_edge_is_longer_is_told(spec: str, finished: str, asks: str) -> None:
    (fault,) = bound(spec, finished)

    assert asks in fault.message
    assert "it takes 33.3%" in fault.message


def test_each_size_has_its_radius_and_a_size_that_can_be_is_left_out() -> None:
    """A third of 80 mm is 26.7 mm, a third of 100 mm is 33.3 mm."""
    (small,) = bound(HOLLOW, "30 mm")
    (both,) = bound(HOLLOW, "40 mm")

    assert [note.split(",")[0] for note in small.notes] == ["size S: a radius of 80 mm"]
    assert [note.split(",")[0] for note in both.notes] == [
        "size S: a radius of 80 mm",
        "size L: a radius of 100 mm",
    ]


@pytest.mark.parametrize(("spec", "deep"), [(HOLLOW, 26), (DISC, 20)])
def test_the_depth_that_is_proposed_is_let_pass_and_two_millimetres_more_are_not(
    spec: str, deep: int
) -> None:
    """80 / 3 is 26.7 mm inward; outward w / (80 - w) is a third at 20 mm."""
    (fault,) = bound(spec, "30 mm")

    assert fault.helps[0] == f"let it lie {deep} mm deep or less"
    assert bound(spec, f"{deep} mm") == ()
    assert len(bound(spec, f"{deep + 2} mm")) == 1


def test_a_straight_trim_is_told_where_a_strip_on_the_bias_is_not() -> None:
    (fault,) = bound(HOLLOW, "12 mm", kind="tape")

    assert "12 mm deep" in fault.notes[0]
    assert "it takes 2%" in fault.message
    assert "take a strip cut on the bias, which takes 33.3%" in fault.helps
    assert bound(HOLLOW, "12 mm") == ()


def test_a_trim_that_stretches_as_told_is_let_pass() -> None:
    """30 / 80 is 37.5 %."""
    (fault,) = bound(HOLLOW, "30 mm")

    assert "take a trim that stretches by 37.5%, and write its `stretch`" in fault.helps
    assert bound(HOLLOW, "30 mm", kind="elastic", more="stretch 37.5%") == ()
    assert len(bound(HOLLOW, "30 mm", kind="elastic", more="stretch 36%")) == 1


def test_what_is_held_in_asks_for_more_on_an_inward_curve_and_not_on_an_outward_one() -> None:
    """(1 + 20 / 80) / 0.9 is 1.389, the stretch 37 %; outward 20 / 60 is a third either way."""
    held = "binding strip; hold 10% along disc.rim"

    def told_held(spec: str) -> tuple[Diagnostic, ...]:
        bind = BIND.replace("binding strip", held).format(finished="20 mm")
        return told(spec, TRIM.format(kind="elastic", more="stretch 37%") + bind, "SPC560")

    (fault,) = told_held(HOLLOW)
    assert "its inner edge, held in, is 38.9% longer than its outer one" in fault.message
    assert "hold it in less there" in fault.helps
    assert told_held(DISC) == ()
    assert bound(HOLLOW, "20 mm", kind="elastic", more="stretch 37%") == ()


@pytest.mark.parametrize(
    ("cut", "lying", "deep"),
    [
        ("40 mm", "", "40"),  # laid flat as it is bought
        ("30 mm", "", None),  # cut to a width, and nobody says how it is folded
        ("30 mm", ", as tape", "30"),
        ("32 mm", ", as binding turned in", "8"),
        ("30 mm", ", as doubled-binding turned in", "5"),
        ("30 mm", ", as folded-binding", "15"),
        ("30 mm", ", as facing turned in", "20"),  # less 5 mm for the seam and 5 mm turned under
        ("30 mm", ", as filling", None),
    ],
)
def test_how_deep_a_trim_lies_follows_from_how_it_is_laid(cut: str, lying: str, deep: str | None) -> None:
    method = f"""method own "bound" makes finish {{
  material binding "strip"
  allowance 5 mm
  takes binding, cut {cut} wide{lying}
  raw-edge covered
  shows yes
  pass "Sew" stitch 301 at 3 mm
}}
"""
    finish = "finish rim along disc.rim by own { binding strip }\n"
    found = told(HOLLOW, TRIM.format(kind="tape", more="") + method + finish, "SPC560")

    assert [f"lies {deep} mm deep" in each.notes[0] for each in found] == ([] if deep is None else [True])


@pytest.mark.parametrize(
    ("spec", "asks"),
    [
        (DISC, "the turned edge is 28.6% longer than the line that it is sewn to"),  # 90 / 70
        (HOLLOW, "the turned edge has to stretch by 28.6% to the line that it is sewn to"),
    ],
)
def test_a_turned_edge_differs_from_its_line_by_depth_and_turning(spec: str, asks: str) -> None:
    """All along a quarter of a circle 2 times 10 mm times a right angle is 31.4 mm, along a half 62.8 mm."""
    (fault,) = told(spec, HEM.format(deep="10 mm"), "SPC561")

    assert asks in fault.message
    assert "10% can be worked in" in fault.message
    in_all = "63 mm longer in all" if spec is DISC else "31 mm shorter in all"
    assert all(note.endswith(in_all) for note in fault.notes)
    assert [note[:27] for note in fault.notes] == [
        "size S: a radius of 80 mm, ",
        "size L: a radius of 100 mm,",
    ]


def test_a_hem_as_deep_as_proposed_is_let_pass() -> None:
    """80 times 0.1 / 2.1 is 3.8 mm."""
    (fault,) = told(DISC, HEM.format(deep="10 mm"), "SPC561")

    assert "turn it back by 3 mm or less" in fault.helps
    assert told(DISC, HEM.format(deep="3 mm"), "SPC561") == ()
    assert told(DISC, HEM.format(deep="3.8 mm"), "SPC561") == ()
    assert len(told(DISC, HEM.format(deep="4.2 mm"), "SPC561")) == 1


def test_a_cloth_that_stretches_takes_a_deeper_hem() -> None:
    jersey = 'cloth jersey "jersey" { width 150 cm; is knit; stretch 30% }\n'

    assert told(HOLLOW, HEM.format(deep="10 mm"), "SPC561", cloth=jersey) == ()


def test_a_casing_that_is_drawn_in_is_passed_over() -> None:
    casing = "hem rim along disc.rim by elastic-casing { elastic strip }\n"
    trim = TRIM.format(kind="elastic", more="stretch 100%")

    assert told(DISC, trim + casing, "SPC561") == ()


def test_a_hem_on_a_straight_edge_is_let_pass() -> None:
    hem = "hem floor along disc.floor by single-turned { deep 100 mm }\n"

    assert "SPC561" not in codes(made(HOLLOW.format(cloth=CLOTH, rest=hem)))
