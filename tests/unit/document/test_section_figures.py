"""The cross-section of each seam, finish and hem stands beside its facts, and says what it does not show."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from specc.document.document import Figure, Group
from specc.document.drawing import Label
from specc.pipeline import document
from tests.made import made

if TYPE_CHECKING:
    from specc.document.document import Page

SPEC = """
garment skirt "Skirt" { style "S"; sizes 12; sample 12; units in }
use chart misses
use block pull-on-skirt
cloth lawn { fibre 100% cotton; width 60 in; weight 90 g/m2 }
trim band "the elastic" { kind elastic; width 1 in; stretch 60% }
method plain "plain seam" makes seam {
  allowance 1/2 in
  raw-edge  raw
  pass "Sew" stitch 301 at 3 mm, 1/2 in from "the raw edges"
  pass "Sew again" stitch 301 at 3 mm, 1/4 in from "the selvage"
}
seam side joins front.side to back.side by plain
hem waist along front.waist, back.waist by elastic-casing { elastic band }
hem bottom along front.hem, back.hem by double-turned
"""


@cache
def figures() -> dict[str, Figure]:
    found = document(made(SPEC))
    assert found is not None
    page = next(page for page in found.pages if page.kind == "making")
    return {figure.drawing.name: figure for figure in _figures(page)}


def _figures(of: Page | Group) -> list[Figure]:
    found: list[Figure] = []
    for block in of.blocks:
        if isinstance(block, Group):
            found += _figures(block)
        elif isinstance(block, Figure):
            found.append(block)
    return found


def said(name: str) -> set[str]:
    return {item.text for item in figures()[name].drawing.items if isinstance(item, Label)}


def test_each_has_one_and_the_key_stands_before_them() -> None:
    names = [name for name in figures() if name.startswith("section-")]

    assert names == ["section-key", "section-side", "section-waist", "section-bottom"]
    assert figures()["section-bottom"].drawing.title == "Bottom, cross-section, not to scale"


def test_rows_bear_the_number_of_their_operation_and_stitch() -> None:
    assert "3.3: 301" in said("section-bottom")
    assert {"1.1: 301", "front", "back"} <= said("section-side")


def test_what_is_not_known_is_said() -> None:
    """The fold of a seam of one's own is not declared; where a row runs from the selvage cannot be drawn."""
    side = str(figures()["section-side"].caption)

    assert side.startswith("As it is sewn")
    assert side.endswith("Drawn from what is declared; not shown: 1.2.")
    assert figures()["section-waist"].caption == "Drawn from what is declared; not shown: 2.4, 2.5."
    assert figures()["section-bottom"].caption == ""
