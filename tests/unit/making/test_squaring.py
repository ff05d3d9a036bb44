"""Where allowances end square: at seams that are sharp on one piece and blunt on the other."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.geometry.point import Point
from specc.pipeline import quantities
from tests.made import made, sizes

if TYPE_CHECKING:
    from specc.pipeline import Result

# A panel and its flank, parted by a princess seam that meets the armhole at a slant.
TEXT = """garment vest "Vest" {{ style "V"; sizes S; units cm }}
chart one-size {{ sizes S, L; measurement bust = 88, 100 cm }}
block parted {{
  piece middle "middle" {{
    cut 2
    point a at 0 cm, 0 cm
    point b at 20 cm, 0 cm
    point c at {over}, 40 cm
    point d at 0 cm, 40 cm
    edge low from a {{ line to b }}
    edge princess from b {{ line to c }}
    edge armhole from c {{ line to d }}
    edge centre from d {{ line to a }}
  }}
  piece flank "flank" {{
    cut 2
    point b at 20 cm, 0 cm
    point e at 40 cm, 0 cm
    point f at 40 cm, 40 cm
    point c at {over}, 40 cm
    edge low from b {{ line to e }}
    edge side from e {{ line to f }}
    edge armhole from f {{ line to c }}
    edge princess from c {{ line to b }}
  }}
  piece sleeve "sleeve" {{
    cut 2
    point g at 0 cm, 0 cm
    point h at 40 cm, 0 cm
    point i at 40 cm, 20 cm
    point k at 0 cm, 20 cm
    edge cap from g {{ line to h }}
    edge near from h {{ line to i }}
    edge wrist from i {{ line to k }}
    edge far from k {{ line to g }}
  }}
}}
use chart one-size
use block parted
cloth calico "cotton calico" {{ width 150 cm; is stable }}
{seams}
"""
SEAMS = """seam princess joins middle.princess to flank.princess by pressed-open
seam armhole joins middle.armhole, flank.armhole to sleeve.cap by pressed-open
hem bottom along middle.low, flank.low by single-turned
"""


def vest(over: str, seams: str = SEAMS) -> Result:
    return made(TEXT.format(over=over, seams=seams))


def squared(result: Result) -> dict[str, tuple[str, ...]]:
    return {f"{use.piece}.{use.edge}": use.squared for use in sizes(result)[0].uses if use.squared}


def test_a_seam_that_slants_into_another_is_squared_there_and_not_at_the_hem() -> None:
    assert squared(vest("6 cm")) == {"middle.princess": ("c",), "flank.princess": ("c",)}


def test_corners_alike_are_mitred() -> None:
    assert squared(vest("20 cm")) == {}
    assert squared(vest("17 cm")) == {}


def test_squared_ends_are_as_long_on_both_pieces() -> None:
    """Geometry: where the line of the seam meets the other cut edge, its width over the sine further on."""
    found = quantities(vest("6 cm"))
    assert found is not None
    low, high, width = Point(200.0, 0.0), Point(60.0, 400.0), 15.875
    along = (high - low).unit()
    for cut, out in zip(found.sizes[0].cuts, (-1.0, 1.0), strict=False):
        on_cut_edge = [p for p in cut.cut if abs(out * along.cross(p - low) - width) < 0.01]
        end = max((p - low).dot(along) for p in on_cut_edge)
        assert end == pytest.approx(low.distance(high) + width / along.y, abs=1e-3)
