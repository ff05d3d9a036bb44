"""Reference lines through points and level with points, notches at points: drafts to reckon by hand."""

from __future__ import annotations

from math import hypot, pi
from typing import TYPE_CHECKING

import pytest

from specc.pattern.lookup import edge_named, line_named
from specc.pattern.measure import stitched_length
from tests.drafting import AROUND_BLOCK, drafted, faults_of, garment, named, written

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

# A house: 250 wide, 300 high at the sides, its ridge at 400 over the middle.
HOUSE = """
    point a at 0 mm, 0 mm
    point b at bust / 4, 0 mm
    point c at bust / 4, 30 cm
    point ridge at bust / 8, 40 cm
    point d at 0 mm, 30 cm
    edge hem from a { line to b }
    edge side from b { line to c }
    edge top from c { line to ridge; line to d }
    edge centre from d { line to a }
"""


def house(more: str, before: str = "") -> Piece:
    found = written(f'{before}\npiece house "house" {{\ncut 2\n{HOUSE}\n{more}\n}}')
    return named(drafted(found, "L"))["house"]


def ends(piece: Piece, line: str) -> tuple[tuple[float, float], ...]:
    found = line_named(piece, line)
    assert found is not None
    (path,) = found.parts
    return tuple((round(point.x, 6), round(point.y, 6)) for point in (path.start, path.end))


@pytest.mark.parametrize(
    ("point", "expected"),
    [
        ("at 5 cm, 10 cm", ((0.0, 100.0), (250.0, 100.0))),
        ("at 0 mm, 10 cm", ((0.0, 100.0), (250.0, 100.0))),
        ("on side at 10 cm", ((0.0, 100.0), (250.0, 100.0))),
        # Between eaves and ridge the house is half as wide at half the height.
        ("at 12 cm, 35 cm", ((62.5, 350.0), (187.5, 350.0))),
    ],
)
def test_a_level_line_runs_across_the_piece(point: str, expected: tuple[tuple[float, float], ...]) -> None:
    assert ends(house(f"point here {point}\nline level-line level with here"), "level-line") == expected


def test_a_level_line_ends_at_the_nearest_sides_of_a_piece_with_two_legs() -> None:
    legs = """
    cut 2
    point a at 0 mm, 0 mm
    point b at 40 mm, 0 mm
    point crotch at 60 mm, 200 mm
    point c at 80 mm, 0 mm
    point d at 120 mm, 0 mm
    point e at 120 mm, 300 mm
    point f at 0 mm, 300 mm
    edge hem from a { line to b }
    edge inseam from b { line to crotch; line to c }
    edge other-hem from c { line to d }
    edge side from d { line to e }
    edge waist from e { line to f }
    edge centre from f { line to a }
    point knee at 10 mm, 100 mm
    point knee-other on side at 100 mm
    point low at 10 mm, 0 mm
    line knee-line level with knee
    line other-line level with knee-other
    """
    piece = named(drafted(written(f"piece legs {{ {legs} }}"), "S"))["legs"]

    assert ends(piece, "knee-line") == ((0.0, 100.0), (50.0, 100.0))
    assert ends(piece, "other-line") == ((70.0, 100.0), (120.0, 100.0))


def test_what_lies_outside_of_the_piece_has_no_level_line() -> None:
    found = written(
        f"piece house {{ cut 2\n{HOUSE}\npoint far at 40 cm, 10 cm\nline level-line level with far }}"
    )

    assert [fault.code.id for fault in faults_of(found)] == ["SPC437"]


def test_a_curved_line_passes_its_points_and_three_on_a_circle_give_the_circle() -> None:
    more = """
    point first at 100 mm, 0 mm
    point second first turned 45 deg around a
    point third first turned 90 deg around a
    line dip from first to third, through second
    """
    piece = house(more)
    line = line_named(piece, "dip")
    assert line is not None

    assert line.parts[0].length() == pytest.approx(50.0 * pi, abs=0.02)
    for share in (0.1, 0.3, 0.5, 0.8):
        at = line.parts[0].point_at(share * line.parts[0].length())
        assert hypot(at.x, at.y) == pytest.approx(100.0, abs=0.02)


def test_girth_and_length_are_measured_along_the_curve() -> None:
    block = f"""
    let round-dip = girth at dip
    piece house {{ cut 2
    {HOUSE}
    point first at 100 mm, 0 mm
    point second first turned 45 deg around a
    point third first turned 90 deg around a
    line dip from first to third, through second
    point far at round-dip, length of dip }}
    """
    piece = named(drafted(written(block), "S"))["house"]
    far = next(point.at for point in piece.points if point.name == "far")

    assert far.y == pytest.approx(50.0 * pi, abs=0.02)
    assert far.x == pytest.approx(2.0 * far.y, abs=1e-9)


@pytest.mark.parametrize(
    ("before", "point", "edge", "along"),
    [
        ("point mark on side at 10 cm", "mark", "side", 100.0),
        ("point mark on side at 25% from c", "mark", "side", 225.0),
        # The ridge joins two runs of one edge, each 125 across and 100 up.
        ("", "ridge", "top", hypot(125.0, 100.0)),
    ],
)
def test_a_notch_at_a_point_stands_where_the_point_lies(
    before: str, point: str, edge: str, along: float
) -> None:
    piece = house(f"{before}\nnotch at {point}, double")
    (notch,) = piece.notches

    assert (notch.edge, notch.kind.value) == (edge, "double")
    assert notch.at == pytest.approx(along, abs=1e-6)


@pytest.mark.parametrize(
    ("written_as", "value"),
    [
        ("radius of (bust / 2)", 500.0 / (2.0 * pi)),
        ("circumference of (bust / 10)", 200.0 * pi),
        ("circumference of radius of bust", 1000.0),
    ],
)
def test_circles_are_reckoned_in_words(written_as: str, value: float) -> None:
    piece = house(f"point far at {written_as}, 0 mm")
    far = next(point.at for point in piece.points if point.name == "far")

    assert far.x == pytest.approx(value, rel=1e-12)


CHOSEN = """
choice back = fold or seam
choice darts = one or none
let extension = 0 cm when back is fold
let extension = 2 cm when back is seam
piece tab "tab" when back is seam { cut 1
  point a at 0 cm, 0 cm
  point b at 5 cm, 0 cm
  point c at 0 cm, 5 cm
  edge ab from a { line to b }
  edge bc from b { line to c }
  edge ca from c { line to a }
}
piece panel { cut 2
  point a at - extension, 0 cm
  point b at 20 cm, 0 cm
  point c at 20 cm, 30 cm
  point d at - extension, 30 cm
  point left at 12 cm, 30 cm
  point right at 8 cm, 30 cm
  point tip at 10 cm, 20 cm
  point notched on hem at 5 cm when back is seam
  edge hem from a { line to b }
  edge side from b { line to c }
  edge top from c {
    line to left when darts is one
    dart waist-dart to right, pointing at tip when darts is one
    line to d
  }
  edge centre from d when back is seam { line to a }
  edge centre from d, out of sight when back is fold { line to a }
  line low from a to b when back is fold
  line high from d to c when back is seam
  notch at notched when back is seam
}
"""


def chosen(settings: str) -> dict[str, Piece]:
    block = f"chart sizes {{ sizes S, L; measurement bust = 80, 100 cm }}\nblock drawn {{\n{CHOSEN}\n}}\n"
    text = AROUND_BLOCK.format(
        sizes="S, L", sample="S", chart="sizes", block="drawn", settings=settings, more=block
    )
    return named(drafted(garment(text), "S"))


def test_only_the_statements_stand_whose_choice_was_made() -> None:
    plain, seamed = chosen(""), chosen("back seam; darts none")
    edges = [edge_named(pieces["panel"], name) for pieces in (plain, seamed) for name in ("top", "centre")]
    top, centre, seamed_top, seamed_centre = (edge for edge in edges if edge is not None)

    assert list(plain) == ["panel"]
    assert list(seamed) == ["tab", "panel"]
    assert (len(top.darts), len(seamed_top.darts)) == (1, 0)
    # 20 cm less the mouth of the dart; 20 cm and the extension.
    assert stitched_length(top) == pytest.approx(160.0)
    assert stitched_length(seamed_top) == pytest.approx(220.0)
    assert (centre.out_of_sight, seamed_centre.out_of_sight) == (True, False)
    assert [line.name for line in plain["panel"].lines] == ["low"]
    assert [line.name for line in seamed["panel"].lines] == ["high"]
    assert (len(plain["panel"].notches), len(seamed["panel"].notches)) == (0, 1)
