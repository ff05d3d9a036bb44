"""Small drafts whose answers a person can reckon."""

from __future__ import annotations

from math import pi, sqrt
from typing import TYPE_CHECKING

import pytest

from specc.drafting import Evaluator, FinishedPieces, draft
from specc.drafting.evaluate import EvaluationError
from specc.geometry.point import Point
from specc.pattern.lookup import corner_named, dart_named, edge_named, point_named
from specc.pattern.measure import stitched_length
from specc.pattern.piece import NotchKind
from tests.drafting import drafted, faults_of, garment, named, written

if TYPE_CHECKING:
    from specc.model.garment import Measure
    from specc.pattern.piece import Piece

FRAME = """
    point a at 0 mm, 0 mm
    point b at bust / 4, 0 mm
    point c at bust / 4, 30 cm
    point d at 0 mm, 30 cm
    edge hem from a { line to b }
    edge side from b, out of sight { line to c }
    edge top from c { line to d }
    edge centre from d { line to a }
"""


def panel(more: str, *, before: str = "", cut: str = "cut 2") -> Piece:
    found = written(f'{before}\npiece panel "panel" {{\n{cut}\n{FRAME}\n{more}\n}}')
    return named(drafted(found, "L"))["panel"]


def at(piece: Piece, name: str) -> tuple[float, float]:
    point = point_named(piece, name)
    assert point is not None
    return round(point.x, 9), round(point.y, 9)


@pytest.mark.parametrize(
    ("how", "x", "y"),
    [
        ("at bust / 10, 2 in", 100.0, 50.8),
        ("from c left 4 cm", 210.0, 300.0),
        ("from c right 1 cm, up 2 cm, left 3 cm, down 4 cm", 230.0, 280.0),
        ("from a going 30 deg by 10 cm", 50.0 * sqrt(3.0), 50.0),
        ("from a going up - 90 deg by 1 cm", 10.0, 0.0),
        ("from a going direction from a to c by distance from a to c", 250.0, 300.0),
        ("from b toward d by 0 mm", 250.0, 0.0),
        ("from d toward c by 25 mm", 25.0, 300.0),
        ("b turned 90 deg around a", 0.0, 250.0),
        ("c turned - 90 deg around b", 550.0, 0.0),
        ("on side at 10 cm", 250.0, 100.0),
        ("on side at 25%", 250.0, 75.0),
        ("on side at 25% from c", 250.0, 225.0),
        ("on side at 10 cm from c", 250.0, 200.0),
        ("on hem at 0 mm", 0.0, 0.0),
        ("on slant at 50%", 125.0, 150.0),
        ("on slant at 20% from c", 200.0, 240.0),
        ("at across from c to a, height from c to a", -250.0, -300.0),
        ("at size of across from c to a, larger of 1 cm and 2 cm", 250.0, 20.0),
        ("at half of bust, smaller of 1 cm and 2 cm", 500.0, 10.0),
        ("at root of (30 cm * 30 cm + 40 cm * 40 cm), 10 cm * sine of 30 deg", 500.0, 50.0),
        ("at 10 cm * cosine of 60 deg, 10 cm * tangent of 45 deg", 50.0, 100.0),
        ("from a going arc-sine of 0.5 by 10 cm", 50.0 * sqrt(3.0), 50.0),
        ("from a going arc-tangent of 1 by 10 cm", 50.0 * sqrt(2.0), 50.0 * sqrt(2.0)),
        ("at length of hem, length of slant", 250.0, sqrt(250.0**2 + 300.0**2)),
    ],
)
def test_a_point_lies_where_it_is_described(how: str, x: float, y: float) -> None:
    assert at(panel(f"line slant from a to c\npoint p {how}"), "p") == pytest.approx((x, y), abs=1e-8)


def test_the_outline_keeps_the_order_and_the_names_of_the_text() -> None:
    piece = panel("")

    assert [(edge.name, edge.start, edge.end) for edge in piece.edges] == [
        ("hem", "a", "b"),
        ("side", "b", "c"),
        ("top", "c", "d"),
        ("centre", "d", "a"),
    ]
    assert [edge.out_of_sight for edge in piece.edges] == [False, True, False, False]
    assert (piece.cut, piece.fold, piece.grain) == (2, None, None)


def test_points_that_are_no_corners_stay_with_the_piece() -> None:
    piece = panel("point p from a up 1 cm")

    assert [point.name for point in piece.points] == ["p"]
    assert corner_named(piece, "c") == Point(250.0, 300.0)


def test_a_quarter_of_an_ellipse_is_what_a_curve_draws_unless_told_otherwise() -> None:
    """A circle's quarter of radius 10 cm, which a cubic meets to 0.03 % of the radius."""
    piece = panel("").edges[0]
    round_hem = FRAME.replace("line to b }", "curve to b, leaving up, arriving right }")
    found = written(f"piece panel {{\n{round_hem.replace('bust / 4, 0 mm', '10 cm, 10 cm')}\n}}")
    hem = named(drafted(found, "S"))["panel"].edges[0]

    assert stitched_length(piece) == 250.0
    assert stitched_length(hem) == pytest.approx(100.0 * pi / 2.0, rel=3e-4)


def test_a_direction_holds_as_far_as_is_said() -> None:
    curve = "curve to b, leaving up for 4 cm, arriving down for bust / 20"
    found = written(f"piece panel {{\n{FRAME.replace('line to b', curve)}\n}}")
    run = named(drafted(found, "L"))["panel"].edges[0].parts[0].segments[0]

    assert (run.leaving, run.arriving) == (Point(0.0, 40.0), Point(250.0, 50.0))  # type: ignore[union-attr]


def test_a_curve_passes_through_the_point_that_is_named() -> None:
    curve = "curve to b, leaving up, arriving down, through p"
    found = written(f"piece panel {{\npoint p at bust / 8, 6 cm\n{FRAME.replace('line to b', curve)}\n}}")
    hem = named(drafted(found, "L"))["panel"].edges[0]

    assert hem.parts[0].distance_to(Point(125.0, 60.0)) < 1e-6


def test_a_dart_parts_its_edge_and_a_two_pointed_dart_lies_square_to_its_line() -> None:
    frame = FRAME.replace(
        "line to c }",
        "line to low\ndart bust-dart to high, pointing at tip, stopping 2 cm short\nline to c\n}",
    )
    text = f"""piece panel {{
      {frame}
      point low at bust / 4, 10 cm
      point tip at 10 cm, 10 cm
      point high low turned 20 deg around tip
      point upper at 5 cm, 25 cm
      point bottom at 5 cm, 5 cm
      point middle at 5 cm, 15 cm
      two-pointed dart waist-dart from upper to bottom, bust / 50 wide at middle
    }}"""
    piece = named(drafted(written(text), "L"))["panel"]
    dart, inner = piece.darts[0], piece.two_pointed[0]
    side = edge_named(piece, "side")

    assert side is not None
    assert (len(side.parts), side.darts, dart.edge, dart.short) == (2, ("bust-dart",), "side", 20.0)
    assert dart.first.distance(dart.pivot) == pytest.approx(dart.second.distance(dart.pivot))
    assert {(p.x, p.y) for p in (inner.first, inner.second)} == {(60.0, 150.0), (40.0, 150.0)}


def test_notches_are_measured_along_the_stitched_edge_from_its_start() -> None:
    piece = panel("notch side at 10 cm\nnotch side at 10 cm from c, double\nnotch side at 20%")

    assert [(n.edge, n.at, n.kind) for n in piece.notches] == [
        ("side", 100.0, NotchKind.SINGLE),
        ("side", 200.0, NotchKind.DOUBLE),
        ("side", 60.0, NotchKind.SINGLE),
    ]


def test_a_choice_decides_how_often_a_piece_is_cut() -> None:
    body = f"""choice way = fold or seam
      piece panel {{ cut 1 on fold along centre when way is fold; cut 2 when way is seam
      {FRAME} }}"""
    piece = named(drafted(written(body), "S"))["panel"]

    assert (piece.cut, piece.fold) == (1, "centre")


def test_what_is_found_by_trying_makes_both_sides_equal() -> None:
    """A rope of 40 cm over a span of 25 cm, fixed at equal height, its middle pulled straight: Pythagoras."""
    piece = panel(
        "point peak at bust / 8, rise\nline left from a to peak\nline right from peak to b",
        before="find rise between 0 mm and 50 cm,"
        " so that length of panel.left + length of panel.right = 40 cm",
    )

    assert at(piece, "peak")[1] == pytest.approx(sqrt(200.0**2 - 125.0**2), abs=1e-6)


def test_a_piece_names_values_for_itself_and_another_may_use_the_same_name() -> None:
    other = FRAME.replace("bust / 4", "wide")
    found = written(f"piece one {{ let wide = 10 cm\n{other} }}\npiece two {{ let wide = 20 cm\n{other} }}")
    pieces = named(drafted(found, "S"))

    assert stitched_length(pieces["one"].edges[0]) == 100.0
    assert stitched_length(pieces["two"].edges[0]) == 200.0


def test_the_way_round_counts_each_piece_as_often_as_it_is_cut_and_darts_sewn() -> None:
    body = f"""piece back {{ cut 1 on fold along centre
        {FRAME}
        point m at 0 mm, 15 cm
        point n at bust / 4, 15 cm
        line waist-line from m to n
      }}
      piece front {{ cut 2
        {FRAME}
        point m at 0 mm, 15 cm
        point n at bust / 4, 15 cm
        point upper at 10 cm, 25 cm
        point bottom at 10 cm, 5 cm
        point middle at 10 cm, 15 cm
        two-pointed dart waist-dart from upper to bottom, 3 cm wide at middle
        line waist-line from m to n
      }}"""
    value = drafted(written(body), "L")
    measure = garment(
        f"""garment t "T" {{ style "T"; sizes S, L; sample S }}
        use chart sizes
        use block drawn
        cloth c {{ fibre 100% cotton; width 1 m; weight 150 g/m2 }}
        chart sizes {{ sizes S, L; measurement bust = 80, 100 cm }}
        block drawn {{ {body} }}
        measure waist = girth at waist-line
        measure dart = width of front.waist-dart + depth of front.waist-dart
        measure body = bust - length of front.waist-line"""
    ).measures

    def value_of(wanted: Measure) -> float:
        return Evaluator(value.measurements.__getitem__, FinishedPieces(value.pieces)).value(wanted.value)

    assert value_of(measure[0]) == pytest.approx(2 * 250.0 + 2 * (250.0 - 30.0), abs=1e-6)
    assert value_of(measure[1]) == pytest.approx(30.0 + 200.0, abs=1e-6)
    assert value_of(measure[2]) == pytest.approx(1000.0 - 220.0, abs=1e-6)


def test_one_run_tells_every_fault_that_does_not_follow_from_another() -> None:
    found = written(
        f"""let none = bust / (bust - bust)
        piece panel {{ {FRAME}
          point p from a up 1 mm * none
          point q from p up 1 mm
          point far from a up 30 m
          notch hem at 2 m
        }}"""
    )

    assert [fault.code.id for fault in faults_of(found)] == ["SPC405", "SPC407", "SPC411"]


def test_what_is_asked_of_a_lost_part_says_what_became_of_it() -> None:
    value = drafted(written(f"piece panel {{ {FRAME}\n line low-line from a to b }}"), "S")
    evaluator = Evaluator(value.measurements.__getitem__, FinishedPieces(()))
    measures = garment(
        f"""garment t "T" {{ style "T"; sizes S, L; sample S }}
        use chart sizes
        use block drawn
        cloth c {{ fibre 100% cotton; width 1 m; weight 150 g/m2 }}
        chart sizes {{ sizes S, L; measurement bust = 80, 100 cm }}
        block drawn {{ piece panel {{ {FRAME}\n line low-line from a to b }} }}
        measure one = length of panel.hem
        measure two = girth at low-line"""
    ).measures

    for measure in measures:
        with pytest.raises(EvaluationError) as caught:
            evaluator.value(measure.value)
        assert caught.value.diagnostic.code.id == "SPC416"


def test_a_size_that_the_chart_has_not_is_a_fault_of_the_program() -> None:
    found = written(f"piece panel {{ {FRAME} }}")

    with pytest.raises(ValueError, match="tuple"):
        draft(found.blocks, found.chart, "XXL")


def test_two_drafts_of_one_text_are_the_same_to_the_last_bit() -> None:
    found = written(f"piece panel {{ {FRAME} point p from a going 30 deg by bust / 7 }}")

    assert drafted(found, "S") == drafted(found, "S")
    assert dart_named(named(drafted(found, "S"))["panel"], "none") is None
