"""A block used under another name: its pieces renamed, and all that it says of them."""

from __future__ import annotations

import pytest

from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from tests.drafting import drafted, garment, named
from tests.made import codes, made

_HEAD = """garment t "T" {{ style "T"; sizes 12; units cm }}
use chart misses
cloth lawn {{ fibre 100% cotton; width 44 in }}
{uses}
"""
# Its `find` and its `let` speak of its pieces by name; the one of a piece is a name of that piece.
_PAIR = """block pair "two halves" {
  parameter deep = 20 cm
  find more between 0 cm and 10 cm, so that length of one.side = length of two.side
  piece one "first" {
    point a at 0 cm, 0 cm
    point b at 10 cm, 0 cm
    point c at 10 cm, deep
    let high = height from two.a to two.c
    point d at 0 cm, high
    edge low from a { line to b }
    edge side from b { line to c }
    edge top from c { line to d }
    edge back from d { line to a }
  }
  piece two {
    point a at 0 cm, 0 cm
    point b at 10 cm, 0 cm
    point c at 10 cm, deep - 4 cm + more
    point d at 0 cm, deep
    edge low from a { line to b }
    edge side from b { line to c }
    edge top from c { line to d }
    edge back from d { line to a }
  }
}
"""


def test_the_one_piece_of_a_block_bears_the_name_and_the_title() -> None:
    found = garment(
        _HEAD.format(
            uses="""use block rectangle as pocket "patch pocket" { wide 15 cm; long 17 cm }
            use block rectangle as waist-tie { wide 5 cm; long 80 cm; cutting twice }
            use block rectangle { wide 40 cm; long 50 cm }"""
        )
    )
    pieces = named(drafted(found, "12"))

    assert [(piece.name, piece.title, piece.cut) for piece in pieces.values()] == [
        ("pocket", "patch pocket", 1),
        ("waist-tie", "waist tie", 2),
        ("rectangle", "straight piece", 1),
    ]
    for name, wide in (("pocket", 150.0), ("waist-tie", 50.0), ("rectangle", 400.0)):
        edge = edge_named(pieces[name], "top")
        assert edge is not None
        assert stitched_length(edge) == pytest.approx(wide)


def test_each_of_several_pieces_bears_the_name_before_its_own() -> None:
    uses = f'{_PAIR}use block pair\nuse block pair as lining "lining" {{ deep 30 cm }}'
    pieces = named(drafted(garment(_HEAD.format(uses=uses)), "12"))

    assert [(piece.name, piece.title) for piece in pieces.values()] == [
        ("one", "first"),
        ("two", "two"),
        ("lining-one", "lining, first"),
        ("lining-two", "lining, two"),
    ]
    for name, deep in (("one", 200.0), ("two", 200.0), ("lining-one", 300.0), ("lining-two", 300.0)):
        side = edge_named(pieces[name], "side")
        assert side is not None
        assert stitched_length(side) == pytest.approx(deep, abs=1e-6), name


def test_seams_alterations_and_measures_speak_of_the_new_names() -> None:
    result = made(
        _HEAD.format(
            uses="""use block rectangle as bag { wide 30 cm; long 70 cm }
            use block rectangle as handle { wide 8 cm; long 50 cm; cutting twice }
            alter { shorten bag by 10 cm at top }
            seam sides joins bag.left-edge to bag.right-edge by french
            seam strap joins handle.left-edge to handle.right-edge by folded-strap
            hem opening along bag.top, bag.bottom by double-turned
            hem ends along handle.top, handle.bottom by double-turned
            measure deep = length of bag.left-edge"""
        )
    )

    assert codes(result) == []
    assert result.measures is not None
    assert result.measures.points_of_measure[0].values == pytest.approx((600.0,))


@pytest.mark.parametrize(
    ("uses", "code", "cure"),
    [
        ("use block rectangle\nuse block rectangle", "SPC208", "use block rectangle as NAME"),
        ("use block rectangle as a\nuse block sheath as a", "SPC208", "use block sheath as NAME"),
        ("use block sheath\nuse block rectangle as front", "SPC202", "use block rectangle as NAME"),
    ],
)
def test_two_pieces_of_one_name_are_told_with_their_cure(uses: str, code: str, cure: str) -> None:
    (told,) = [each for each in made(_HEAD.format(uses=uses)).diagnostics if each.code.id == code]

    assert any(cure in text for text in told.helps), told


def test_what_a_block_lacks_is_told_by_the_name_of_the_block() -> None:
    result = made(_HEAD.format(uses="use block rectangle as pocket { wyde 6 in }"))

    assert [each.message for each in result.diagnostics] == ["block `rectangle` has no setting `wyde`"]


def test_a_chart_has_no_other_name() -> None:
    result = made('garment t "T" { style "T" }\nuse chart misses as ours\nuse block rectangle\n')

    assert "SPC206" in codes(result)
