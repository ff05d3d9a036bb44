"""Pieces traced on paper, in sizes whose answers a person can reckon."""

from __future__ import annotations

from math import hypot, radians, tau
from typing import TYPE_CHECKING

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specc.alteration.shape import shape
from specc.geometry.point import Point
from specc.geometry.segment import Line
from specc.pattern.lookup import dart_named, edge_named, line_named, point_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import area
from specc.pattern.piece import Dart
from tests.drafting import drafted, garment, named

if TYPE_CHECKING:
    from specc.drafting import Drafted
    from specc.pattern.piece import Edge, Piece

SIZES = ("8", "10", "12", "14", "16")
HEAD = """garment trial "Trial" {{ style "T"; sizes {sizes}; sample {sample}; units mm }}
{before}
cloth sheeting {{ fibre 100% cotton; width 150 cm; weight 150 g/m2 }}
"""
# 200 by 300 mm, with its origin far from its corners.
SQUARE = """
  point a at 3 cm, 42 cm {a}
  point b at 23 cm, 42 cm {b}
  point c at 23 cm, 12 cm {c}
  point d at 3 cm, 12 cm {d}
"""


def sizes(piece: str, *, before: str = "", made: tuple[str, ...] = SIZES) -> dict[str, Drafted]:
    """Every size of a garment of one piece."""
    head = HEAD.format(sizes=", ".join(made), sample=made[0], before=before)
    found = garment(f'{head}piece panel "panel" {{\n  traced in 12\n{piece}\n}}\n')
    return {size: drafted(found, size) for size in made}


def panels(
    edges: str, *, rest: str = "", before: str = "", made: tuple[str, ...] = SIZES, **graded: str
) -> dict[str, Piece]:
    """The square in every size, with these grades at its corners and these edges."""
    points = SQUARE.format(**{corner: graded.get(corner, "") for corner in "abcd"})
    found = sizes(f"{points}\n{edges}\n{rest}", before=before, made=made)
    return {size: named(value)["panel"] for size, value in found.items()}


ROUND = (
    "edge top from a { line to b }\nedge side from b { line to c }\nedge base from c { line to d; line to a }"
)


def at(piece: Piece, name: str) -> tuple[float, float]:
    point = point_named(piece, name)
    assert point is not None
    return point.x, point.y


def dart_of(piece: Piece) -> Dart:
    found = dart_named(piece, "bust-dart")
    assert isinstance(found, Dart)
    return found


def edge(piece: Piece, name: str) -> Edge:
    found = edge_named(piece, name)
    assert found is not None
    return found


def test_a_corner_moves_by_its_rule_for_each_step_up_and_down() -> None:
    pieces = panels(ROUND, b="graded 5 mm, 2 mm")

    assert {size: at(piece, "b") for size, piece in pieces.items()} == {
        "8": (220.0, 416.0),
        "10": (225.0, 418.0),
        "12": (230.0, 420.0),
        "14": (235.0, 422.0),
        "16": (240.0, 424.0),
    }
    assert {at(piece, "c") for piece in pieces.values()} == {(230.0, 120.0)}


def test_a_named_rule_has_other_amounts_for_other_steps() -> None:
    rule = "grade side { 8 to 12: 5 mm, 0 mm; 12 to 14: 6 mm, - 1 mm; 14 to 16: 1/2 in, 2 mm }"
    pieces = panels(ROUND, before=rule, b="graded by side")

    assert [at(pieces[size], "b") for size in SIZES] == [
        (220.0, 420.0),
        (225.0, 420.0),
        (230.0, 420.0),
        (236.0, 419.0),
        pytest.approx((248.7, 421.0)),
    ]


def test_with_a_chart_a_step_is_one_of_the_chart_made_or_not() -> None:
    chart = "chart figures { sizes 8, 10, 12, 14, 16; measurement bust = 80, 84, 88, 92, 96 cm }"
    pieces = panels(ROUND, before=f"{chart}\nuse chart figures", made=("8", "16"), b="graded 5 mm, 0 mm")

    assert [at(piece, "b") for piece in pieces.values()] == [(220.0, 420.0), (240.0, 420.0)]


def test_a_piece_without_grading_is_the_same_in_every_size() -> None:
    pieces = panels(ROUND)

    assert len(set(pieces.values())) == 1


def test_a_point_that_a_curve_passes_moves_between_its_neighbours_by_length() -> None:
    # The points lie on one line, so the length along the curve is the distance: 50 of 200 mm, and 150.
    curve = ROUND.replace("line to b }", "curve to b, through p, q }")
    points = "point p at 8 cm, 42 cm\npoint q at 18 cm, 42 cm"
    piece = panels(curve, rest=points, a="graded 0 mm, 4 mm", b="graded 8 mm, 0 mm")["14"]

    assert at(piece, "p") == pytest.approx((80.0 + 2.0, 420.0 + 3.0))
    assert at(piece, "q") == pytest.approx((180.0 + 6.0, 420.0 + 1.0))


def test_a_passed_point_with_a_rule_carries_those_beside_it() -> None:
    curve = ROUND.replace("line to b }", "curve to b, through p, q }")
    points = "point p at 8 cm, 42 cm\npoint q at 13 cm, 42 cm graded 0 mm, 10 mm"
    piece = panels(curve, rest=points)["14"]

    assert at(piece, "q") == (130.0, 430.0)
    assert at(piece, "p") == pytest.approx((80.0, 425.0))


def test_a_straight_edge_stays_straight_and_stated_directions_stay() -> None:
    edges = ROUND.replace("line to c }", "curve to c, leaving right, arriving 250 deg }")
    for piece in panels(edges, b="graded 7 mm, 3 mm", c="graded 4 mm, - 6 mm").values():
        (top,), (side,) = edge(piece, "top").parts, edge(piece, "side").parts
        assert isinstance(top.segments[0], Line)
        assert side.start_direction().angle() == pytest.approx(0.0)
        assert side.end_direction().angle() % tau == pytest.approx(radians(250.0))


DART = """edge top from a { line to b }
edge side from b { line to high; dart bust-dart to low, pointing at bust; line to c }
edge base from c { line to d; line to a }"""
FOLDED = DART.replace("line to d; line to a }", "line to d }\nedge left from d { line to a }")
DART_POINTS = (
    "point high at 23 cm, 28 cm {high}\npoint low at 23 cm, 26 cm {low}\npoint bust at 15 cm, 27 cm {bust}"
)


def test_a_dart_without_a_rule_goes_with_its_edge_as_it_is() -> None:
    points = DART_POINTS.format(high="", low="", bust="")
    pieces = panels(DART, rest=points, b="graded 6 mm, 0 mm", c="graded 6 mm, 0 mm")

    for steps, size in enumerate(SIZES, start=-2):
        dart = dart_of(pieces[size])
        assert at(pieces[size], "bust") == (150.0 + 6.0 * steps, 270.0)
        assert (dart.first, dart.second) == (
            Point(230.0 + 6.0 * steps, 280.0),
            Point(230.0 + 6.0 * steps, 260.0),
        )


def test_both_legs_of_a_dart_are_carried_alike_since_its_mouth_is_sewn_up() -> None:
    points = DART_POINTS.format(high="", low="", bust="")
    piece = panels(DART, rest=points, b="graded 6 mm, 0 mm")["14"]
    dart = dart_of(piece)

    # The dart opens 140 of 280 sewn mm below b: half of what b moves by.
    for found, x, y in ((dart.first, 233.0, 280.0), (dart.second, 233.0, 260.0), (dart.pivot, 153.0, 270.0)):
        assert (found.x, found.y) == pytest.approx((x, y))


def test_the_legs_of_a_traced_dart_are_trued_to_their_mean() -> None:
    points = "point high at 23 cm, 28 cm\npoint low at 23 cm, 26.1 cm\npoint bust at 15 cm, 27 cm"
    dart = dart_of(panels(DART, rest=points)["12"])

    mean = 0.5 * (hypot(80.0, 10.0) + hypot(80.0, 9.0))
    assert dart.first.distance(dart.pivot) == pytest.approx(mean, abs=1e-9)
    assert dart.second.distance(dart.pivot) == pytest.approx(mean, abs=1e-9)
    assert dart.first.distance(Point(230.0, 280.0)) < 0.1


def test_a_line_from_edge_to_edge_ends_on_them_in_every_size() -> None:
    edges = ROUND.replace("line to c }", "curve to c, through hip }")
    points = """point hip at 24 cm, 25 cm
      point level-in at 3 cm, 20 cm
      point level-out at 23.8 cm, 20 cm
      line level from level-in to level-out"""
    pieces = panels(edges, rest=points, b="graded 9 mm, 3 mm", c="graded 5 mm, - 4 mm")

    for piece in pieces.values():
        line = line_named(piece, "level")
        assert line is not None
        off = edge(piece, "side").parts[0].distance_to(line.parts[0].end)
        assert off == pytest.approx(
            edge(pieces["12"], "side").parts[0].distance_to(Point(238.0, 200.0)), abs=0.02
        )
        assert edge(piece, "base").parts[0].distance_to(line.parts[0].start) < 1e-6


def test_a_line_within_the_piece_is_carried_by_its_ends() -> None:
    points = """point left at 5 cm, 20 cm graded 0 mm, 4 mm
      point middle at 10 cm, 20 cm
      point right at 20 cm, 20 cm graded 6 mm, 0 mm
      line level from left to right, through middle"""
    piece = panels(ROUND, rest=points)["14"]

    assert at(piece, "middle") == pytest.approx((100.0 + 2.0, 200.0 + 4.0 * 2.0 / 3.0))


STRAP = """
  outline from "shared/strap.svg", 1 unit is 1 mm
  point a where "left" meets "top" {a}
  point b where "top" meets "right" {b}
  point c near 40 cm, 0 mm on "right" {c}
  point d near 0 cm, 0 mm on "left"
  edge top from a {{ along "top" to b }}
  edge right from b {{ along "right" to c }}
  edge base from c {{ line to d }}
  edge left from d {{ along "left" to a }}
"""


def test_a_drawn_outline_stands_on_its_lower_left_corner_and_is_graded_like_a_measured_one() -> None:
    text = STRAP.format(a="graded 0 mm, 3 mm", b="graded 10 mm, 3 mm", c="graded 10 mm, 0 mm")
    pieces = {size: named(value)["panel"] for size, value in sizes(text).items()}

    for steps, size in enumerate(SIZES, start=-2):
        piece = pieces[size]
        assert at(piece, "d") == (0.0, 0.0)
        assert at(piece, "c") == pytest.approx((400.0 + 10.0 * steps, 0.0))
        assert at(piece, "b") == pytest.approx((400.0 + 10.0 * steps, 100.0 + 3.0 * steps))
        # The drawing leaves 0.4 mm between "left" and "top"; each comes half of the way.
        assert at(piece, "a") == pytest.approx((0.2, 100.0 + 3.0 * steps))
        assert edge(piece, "top").parts[0].start == edge(piece, "left").parts[0].end
        assert [len(each.parts[0].segments) for each in piece.edges] == [1, 1, 1, 1]


def test_a_scale_is_a_scale_whatever_its_units() -> None:
    inches = STRAP.format(a="", b="", c="").replace("1 unit is 1 mm", "96 units are 1 in")
    inches = inches.replace("40 cm", "4.17 in")
    piece = named(sizes(inches)["12"])["panel"]

    assert at(piece, "c") == pytest.approx((400.0 / 96.0 * 25.4, 0.0))


def test_a_traced_piece_is_altered_like_any_other() -> None:
    points = DART_POINTS.format(high="", low="", bust="")
    whole = SQUARE.format(a="", b="graded 6 mm, 0 mm", c="graded 6 mm, 0 mm", d="")
    head = HEAD.format(sizes=", ".join(SIZES), sample="12", before="")
    body = f"traced in 12\ncut 1 on fold along left\n{whole}\n{FOLDED}\n{points}"
    steps = "swing panel.bust-dart into panel.base at 50%\nlengthen panel by 2 cm at base\nunfold panel"
    shaped, said = shape(garment(f"{head}piece panel {{\n{body}\n}}\nalter {{\n{steps}\n}}\n"))

    assert said == ()
    assert shaped is not None
    for one, steps_up in zip(shaped, range(-2, 3), strict=True):
        (piece,) = one.pieces
        # 200 by 300 mm less a dart of 20 by 80, 20 mm longer, and both halves; the swing takes nothing away.
        half = (200.0 + 6.0 * steps_up) * 320.0
        assert piece.fold is None
        assert area(piece) < 2.0 * half
        assert area(piece) == pytest.approx(2.0 * half, rel=0.05)


def test_what_is_described_from_a_graded_point_goes_with_it() -> None:
    piece = panels(ROUND, rest="point mark from b left 3 cm, down 4 cm", b="graded 5 mm, 2 mm")["16"]

    assert at(piece, "mark") == (210.0, 384.0)


@settings(max_examples=15)
@given(st.integers(-40, 40), st.integers(-40, 40), st.integers(-40, 40), st.integers(-40, 40))
def test_corners_are_the_traced_ones_and_whole_steps(bx: int, by: int, cx: int, cy: int) -> None:
    pieces = panels(
        ROUND,
        b=f"graded {bx / 10} mm, {by / 10} mm".replace("-", "- "),
        c=f"graded {cx / 10} mm, {cy / 10} mm".replace("-", "- "),
    )

    for steps, size in enumerate(SIZES, start=-2):
        assert at(pieces[size], "b") == pytest.approx(
            (230.0 + steps * bx / 10, 420.0 + steps * by / 10), abs=1e-9
        )
        assert at(pieces[size], "c") == pytest.approx(
            (230.0 + steps * cx / 10, 120.0 + steps * cy / 10), abs=1e-9
        )


def test_the_traced_size_is_the_paper_to_the_last_digit() -> None:
    piece = panels(ROUND, b="graded 5 mm, 2 mm", d="graded - 3 mm, - 1 mm")["12"]

    assert [at(piece, corner) for corner in "abcd"] == [
        (30.0, 420.0),
        (230.0, 420.0),
        (230.0, 120.0),
        (30.0, 120.0),
    ]
    assert area(piece) == 60_000.0
    assert stitched_length(edge(piece, "base")) == 500.0
