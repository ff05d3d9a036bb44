"""Where a trim has to be folded round a corner, and which way."""

from __future__ import annotations

import pytest

from tests.made import made, top

STRIP = """cloth calico "calico" { width 150 cm; is stable }
trim strip "strip" { kind %s; width 3 cm; cut-from calico }
"""
HEAD = """garment pad "Pad" {{ style "P"; sizes S; units cm }}
chart one {{ sizes S, L; measurement bust = 80, 100 cm }}
use chart one
{pieces}
finish rim along {along} by bias-bound {{ binding strip }}
"""
# Half of a front on its fold, whose neck comes down to it at an angle; and two panels that a seam joins.
HALF = """piece half "half" {{
  cut 1 on fold along centre
  point low at 0 cm, 0 cm
  point side at 30 cm, 0 cm
  point shoulder at 30 cm, 60 cm
  point collar at 15 cm, 60 cm
  point tip at 0 cm, {deep} cm
  edge hem from low {{ line to side }}
  edge flank from side {{ line to shoulder }}
  edge top from shoulder {{ line to collar }}
  edge neck from collar {{ line to tip }}
  edge centre from tip {{ line to low }}
  grain from low to tip
}}
"""
PANELS = """piece one "one" {{
  cut 1
  point low at 0 cm, 0 cm
  point right at 20 cm, 0 cm
  point high at 20 cm, 30 cm
  point left at 0 cm, 30 cm
  edge hem from low {{ line to right }}
  edge join from right {{ line to high }}
  edge top from high {{ line to left }}
  edge side from left {{ line to low }}
  grain from low to left
}}
piece two "two" {{
  cut 1
  point right at 0 cm, 0 cm
  point far at {right} cm, {lower} cm
  point end at {right} cm, 30 cm
  point high at 0 cm, 30 cm
  edge hem from right {{ line to far }}
  edge side from far {{ line to end }}
  edge top from end {{ line to high }}
  edge join from high {{ line to right }}
  grain from right to high
}}
seam joined joins one.join to two.join by french
"""
WITHIN = """piece star "star" {{
  cut 1
  point low at 0 cm, 0 cm
  point right at 20 cm, 0 cm
  point inner at 10 cm, 10 cm
  point high at 20 cm, 20 cm
  point left at 0 cm, 20 cm
  edge rim from low {{ line to right; line to inner; line to high; line to left }}
  edge side from left {{ line to low }}
  grain from low to left
}}
"""


def corners(pieces: str, along: str, *, kind: str = "bias strip") -> list[str]:
    result = made(
        HEAD.format(pieces=(STRIP % kind) + pieces.replace("{{", "{").replace("}}", "}"), along=along)
    )
    return [note for each in result.diagnostics if each.code.id == "SPC568" for note in each.notes]


@pytest.mark.parametrize(
    ("deep", "told"),
    [
        (45, ["`half.tip`: inward, by 90.0°"]),  # 15 cm in and 15 cm down: 45 degrees on either side
        (58, []),  # 7.6 degrees on either side
        (60, []),
        (75, ["`half.tip`: outward, by 90.0°"]),
    ],
)
def test_at_the_fold_the_halves_make_one_corner(deep: int, told: list[str]) -> None:
    assert corners(HALF.replace("{deep}", str(deep)), "half.neck") == told


@pytest.mark.parametrize(
    ("right", "lower", "told"),
    [
        (20, 0, []),  # straight on
        (
            10,
            -10,
            ["`one.right`: inward, by 45.0°"],
        ),  # the second hem goes down: the garment's corner is hollow
        (10, 10, ["`one.right`: outward, by 45.0°"]),
    ],
)
def test_at_a_seam_the_angles_of_both_pieces_count(right: int, lower: int, told: list[str]) -> None:
    pieces = PANELS.replace("{right}", str(right)).replace("{lower}", str(lower).replace("-", "0 cm - "))
    assert corners(pieces, "one.hem, two.hem") == told


def test_within_an_edge_every_corner_has_its_place() -> None:
    assert corners(WITHIN, "star.rim") == [
        "`star.rim`, 20.0 cm from `low`: outward, by 135.0°",
        "`star.rim`, 34.1 cm from `low`: inward, by 90.0°",
        "`star.rim`, 48.3 cm from `low`: outward, by 135.0°",
    ]


@pytest.mark.parametrize("kind", ["elastic", "cord"])
def test_what_bends_any_way_is_passed_over(kind: str) -> None:
    assert corners(WITHIN, "star.rim", kind=kind) == []


def test_a_round_neck_has_no_corner() -> None:
    """Its quarter circles meet the fold at a right angle, and those of front and back at the shoulder."""
    rest = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
    assert "SPC568" not in [each.code.id for each in top(rest).diagnostics]


def test_a_band_that_is_closed_to_a_ring_has_no_corner_where_its_ends_meet() -> None:
    band = """piece band "band" {{
  cut 1
  point low at 0 cm, 0 cm
  point right at 80 cm, 0 cm
  point high at 80 cm, 6 cm
  point left at 0 cm, 6 cm
  edge under from low {{ line to right }}
  edge one from right {{ line to high }}
  edge over from high {{ line to left }}
  edge other from left {{ line to low }}
  grain from low to left
}}
seam ring joins band.one to band.other by french
"""
    assert corners(band, "band.over") == []
