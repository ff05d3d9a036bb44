"""The sheath is a block that a pattern cutter accepts, in every size and with other ease than its own."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

import pytest

from specc.drafting import Evaluator, FinishedPieces
from specc.geometry.region import contains
from specc.model.expression import Asked, Geometric, PartRef
from specc.pattern.lookup import line_named, point_named
from specc.pattern.measure import (
    dart_angle,
    dart_tip,
    dart_width,
    line_length,
    place_on_edge,
    stitched_at,
    two_pointed_outline,
)
from specc.pattern.outline import flat_outline
from specc.pattern.piece import NotchKind
from specc.source import SourceFile
from specc.units import Dimension
from tests.drafting import SIZES, in_size, named
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

INCH = 25.4
OWN = ""
LOOSE = "bust-ease 3 in; hip-ease 2 1/2 in"
SETTINGS = (
    OWN,
    LOOSE,
    "bust-ease 5 in; waist-ease 4 in; hip-ease 4 in; armhole-ease 1 1/2 in; cap-ease 1/2 in",
)
EVERY = [
    pytest.param(size, settings, id=f"{size}, {settings or 'own ease'}")
    for settings in SETTINGS
    for size in SIZES
]

RIGHT_ANGLES = {
    "back": ("centre-neck", "neck-point", "shoulder-tip", "underarm", "hem-side", "hem-centre"),
    "front": ("centre-neck", "neck-point", "shoulder-tip", "underarm", "hem-side", "hem-centre"),
    "sleeve": ("underarm-back", "underarm-front", "wrist-back", "wrist-front"),
}
NOWHERE = SourceFile("nowhere", "").span(0, 0)


def pieces(size: str, settings: str = OWN) -> dict[str, Piece]:
    return named(in_size("sheath", size, settings))


def measurement(size: str, name: str) -> float:
    return in_size("sheath", size).measurements[name]


def girth(size: str, line: str, settings: str = OWN) -> float:
    value = in_size("sheath", size, settings)
    asked = Geometric(Asked.GIRTH, (PartRef(None, line, NOWHERE),), Dimension.LENGTH, NOWHERE)
    return Evaluator(value.measurements.__getitem__, FinishedPieces(value.pieces)).value(asked)


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_corners_are_square_where_they_meet_folds_shoulders_sides_and_hems(size: str, settings: str) -> None:
    for name, piece in pieces(size, settings).items():
        for corner in RIGHT_ANGLES[name]:
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{name}.{corner}"


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_no_edge_has_a_kink_open_or_with_its_darts_closed(size: str, settings: str) -> None:
    found = [kink for piece in pieces(size, settings).values() for kink in kinks(piece)]

    assert len(found) >= 9
    assert [(where, turn) for where, turn in found if abs(turn) > 0.5] == []
    assert angle(pieces(size, settings)["sleeve"], "crown") == pytest.approx(180.0, abs=0.5)


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_seams_walk(size: str, settings: str) -> None:
    of = pieces(size, settings)

    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.1)
    assert sewn(of["front"], "shoulder") == pytest.approx(sewn(of["back"], "shoulder"), abs=0.1)
    assert sewn(of["sleeve"], "seam-front") == pytest.approx(sewn(of["sleeve"], "seam-back"), abs=0.1)


@pytest.mark.parametrize(("size", "settings", "ease"), [
    *((size, OWN, 1.25) for size in SIZES),
    *((size, "cap-ease 1/2 in", 0.5) for size in SIZES),
    *((size, "cap-ease 0 in", 0.0) for size in SIZES),
])  # fmt: skip
def test_the_cap_is_longer_than_the_armhole_by_its_ease_and_more_so_behind(
    size: str, settings: str, ease: float
) -> None:
    of = pieces(size, settings)
    front = sewn(of["sleeve"], "cap-front") - sewn(of["front"], "armhole")
    back = sewn(of["sleeve"], "cap-back") - sewn(of["back"], "armhole")

    assert front + back == pytest.approx(ease * INCH, abs=0.1)
    assert -0.1 <= front <= back + 0.1


@pytest.mark.parametrize("size", SIZES)
def test_the_shoulder_is_straight_and_as_long_as_planned_with_the_dart_closed(size: str) -> None:
    """The chart's shoulder less what the neckline takes, and what the trade adds in large sizes."""
    wanted = measurement(size, "shoulder-length") - INCH / 4 + (measurement(size, "bust") - 34 * INCH) / 32

    assert sewn(pieces(size)["front"], "shoulder") == pytest.approx(wanted, abs=0.01)
    assert sewn(pieces(size)["back"], "shoulder") == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("line", "measure", "eases"), [
    ("bust-line", "bust", (2.0, 3.0, 5.0)),
    ("waist-line", "waist", (1.0, 1.0, 4.0)),
    ("hip-line", "hip", (2.0, 2.5, 4.0)),
])  # fmt: skip
def test_girths_are_those_of_the_body_and_the_ease(
    size: str, line: str, measure: str, eases: tuple[float, ...]
) -> None:
    for settings, ease in zip(SETTINGS, eases, strict=True):
        wanted = measurement(size, measure) + ease * INCH
        assert girth(size, line, settings) == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize("size", SIZES)
def test_the_neck_is_as_long_as_the_base_of_the_neck_and_its_ease(size: str) -> None:
    of = pieces(size)
    neck = 2.0 * (sewn(of["front"], "neck") + sewn(of["back"], "neck"))

    assert neck == pytest.approx(measurement(size, "neck-base-girth") + INCH / 2, abs=0.01)


@pytest.mark.parametrize("size", SIZES)
def test_the_armhole_passes_the_ends_of_across_back_and_across_front_and_comes_no_nearer(size: str) -> None:
    for name, measure, sign in (("back", "across-back", 1.0), ("front", "across-front", -1.0)):
        armhole = edge(pieces(size)[name], "armhole").parts[0]
        least = min(sign * point.x for point in armhole.flattened())

        assert least == pytest.approx(measurement(size, measure) / 2.0, abs=0.05)


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_the_armhole_turns_one_way_below_and_the_front_is_scooped_out_deeper(
    size: str, settings: str
) -> None:
    """From the underarm up the back turns right all the way, the front left; the front runs in further."""
    of = pieces(size, settings)
    back, front = (edge(of[name], "armhole").parts[0] for name in ("back", "front"))

    assert [run.turning() < 0.0 for run in back.segments] == [True, True]
    assert [run.turning() > 0.0 for run in front.segments] == [True, True]
    low = 0.25 * (back.length() + front.length()) / 2.0
    assert abs(front.point_at(low).x - front.start.x) > abs(back.point_at(low).x - back.start.x)


@pytest.mark.parametrize("size", SIZES)
def test_the_armhole_is_as_long_as_arm_and_bust_let_expect(size: str) -> None:
    """Common practice, no source: both together 40 to 50 % of the bust, 3 1/2 to 6 in over the arm."""
    of = pieces(size)
    whole = sewn(of["front"], "armhole") + sewn(of["back"], "armhole")

    assert 0.40 <= whole / measurement(size, "bust") <= 0.50
    assert 3.5 * INCH <= whole - measurement(size, "upper-arm") <= 6.0 * INCH
    assert 0.9 <= sewn(of["front"], "armhole") / sewn(of["back"], "armhole") <= 1.1


@pytest.mark.parametrize("size", SIZES)
def test_the_cap_is_about_a_third_of_the_armhole_high(size: str) -> None:
    """Common practice, no source."""
    of = pieces(size)
    crown = point_named(of["sleeve"], "crown")
    whole = sewn(of["front"], "armhole") + sewn(of["back"], "armhole")

    assert crown is not None
    assert 0.27 <= crown.y / whole <= 0.37


@pytest.mark.parametrize("size", SIZES)
def test_the_bust_dart_points_at_the_bust_point_and_stops_an_inch_short(size: str) -> None:
    front = pieces(size)["front"]
    dart = front.darts[0]

    assert dart.pivot == point_named(front, "bust-point")
    assert dart_tip(dart).distance(dart.pivot) == pytest.approx(INCH, abs=1e-6)
    assert abs(dart.pivot.x) == pytest.approx(measurement(size, "bust-span") / 2.0, abs=1e-9)


@pytest.mark.parametrize("size", SIZES)
def test_the_bust_line_is_clear_of_the_mouth_of_the_bust_dart(size: str) -> None:
    front = pieces(size)["front"]
    line = line_named(front, "bust-line")

    assert line is not None
    assert line.parts[0].end.y > max(front.darts[0].first.y, front.darts[0].second.y) + INCH / 4
    assert line.parts[0].end.y < edge(front, "side").parts[-1].end.y - INCH


def test_the_bust_dart_grows_with_the_bust_within_what_is_usual() -> None:
    """Common practice, no source: 12 to 25 degrees."""
    angles = [degrees(dart_angle(pieces(size)["front"].darts[0])) for size in SIZES]

    assert rising(angles)
    assert angles[0] > 12.0
    assert angles[-1] < 25.0


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_waist_darts_take_in_what_is_usual_and_lie_inside(size: str, settings: str) -> None:
    """Common practice, no source: 1/2 to 1 1/2 in each, the back no less than the front."""
    widths = {}
    for name in ("back", "front"):
        piece = pieces(size, settings)[name]
        (dart,) = piece.two_pointed
        corners = flat_outline(piece)
        widths[name] = dart_width(dart)
        assert all(contains(corners, point) for point in two_pointed_outline(dart).flattened())
        assert abs(dart.top.x - dart.bottom.x) < 1e-9
    if settings != SETTINGS[2]:
        assert all(0.5 * INCH <= width <= 1.5 * INCH for width in widths.values())
    assert widths["back"] >= widths["front"]


@pytest.mark.parametrize("size", SIZES)
def test_the_front_waist_dart_lies_below_the_bust_point_and_ends_an_inch_below_it(size: str) -> None:
    front = pieces(size)["front"]
    (dart,) = front.two_pointed
    bust_point = front.darts[0].pivot

    assert dart.top.x == pytest.approx(bust_point.x)
    assert bust_point.y - dart.top.y == pytest.approx(INCH)


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_the_side_seams_of_front_and_back_are_one_curve_below_the_waist(size: str, settings: str) -> None:
    of = pieces(size, settings)
    back, front = (edge(of[name], "side").parts[0] for name in ("back", "front"))
    for along in (0.0, 150.0, 300.0, 400.0, 450.0, 500.0, 550.0):
        first, second = back.point_at(along) - back.start, front.point_at(along) - front.start
        assert (first.x, first.y) == pytest.approx((-second.x, second.y), abs=1e-6)


@pytest.mark.parametrize(("size", "settings"), EVERY)
def test_notches_meet_when_the_seams_are_walked(size: str, settings: str) -> None:
    of = pieces(size, settings)

    def at(piece: str, name: str, kind: NotchKind = NotchKind.SINGLE) -> list[float]:
        return [n.at for n in of[piece].notches if n.edge == name and n.kind is kind]

    assert at("back", "side") == pytest.approx(at("front", "side"), abs=0.1)
    assert at("back", "armhole", NotchKind.DOUBLE) == at("sleeve", "cap-back", NotchKind.DOUBLE)
    cap = sewn(of["sleeve"], "cap-front")
    assert [0.0, cap - at("front", "armhole")[0]] == pytest.approx(
        sorted(at("sleeve", "cap-front")), abs=1e-6
    )


@pytest.mark.parametrize("size", SIZES)
def test_the_waist_notch_lies_where_the_waist_line_meets_the_side(size: str) -> None:
    for name in ("back", "front"):
        piece = pieces(size)[name]
        side = edge(piece, "side")
        line = line_named(piece, "waist-line")
        heights = [place_on_edge(side, notch.at).at.y for notch in piece.notches if notch.edge == "side"]

        assert line is not None
        assert min(abs(height) for height in heights) < 0.01
        assert stitched_at(side, 0, side.parts[0].length_at(line.parts[0].end)) == pytest.approx(
            next(n.at for n in piece.notches if n.edge == "side"), abs=0.05
        )


GROWING = (
    ("back", "armhole"), ("front", "armhole"), ("back", "neck"), ("front", "neck"), ("back", "shoulder"),
    ("back", "centre"), ("front", "centre"), ("back", "side"), ("back", "hem"), ("front", "hem"),
    ("sleeve", "cap-back"), ("sleeve", "cap-front"), ("sleeve", "hem"),
)  # fmt: skip


@pytest.mark.parametrize(("piece", "name"), GROWING)
def test_edges_grow_with_the_size(piece: str, name: str) -> None:
    assert rising([sewn(pieces(size)[piece], name) for size in SIZES])


@pytest.mark.parametrize("line", ["bust-line", "waist-line", "hip-line"])
def test_girths_grow_with_the_size(line: str) -> None:
    assert rising([girth(size, line) for size in SIZES])


def test_shoulders_grow_little() -> None:
    """Shoulders hardly grow with the bust (ANSUR II); the trade lets the seam grow by 1/16 in a size."""
    lengths = [sewn(pieces(size)["back"], "shoulder") for size in SIZES]

    assert lengths[-1] - lengths[0] < 5 / 8 * INCH


def test_a_seam_in_the_centre_back_makes_two_pieces_of_one() -> None:
    folded, sewn_up = in_size("sheath", "12"), in_size("sheath", "12", "back-centre seam")
    back, halves = named(folded)["back"], named(sewn_up)["back"]

    assert (back.cut, back.fold, halves.cut, halves.fold) == (1, "centre", 2, None)
    assert (named(folded)["front"].fold, named(sewn_up)["front"].fold) == ("centre", "centre")
    assert back.edges == halves.edges


def test_the_upper_arm_has_its_ease() -> None:
    for size in SIZES:
        sleeve = pieces(size)["sleeve"]
        line = line_named(sleeve, "upper-arm-line")
        assert line is not None
        assert line_length(sleeve, line) == pytest.approx(measurement(size, "upper-arm") + 1.5 * INCH)


def test_front_and_back_name_their_edges_and_corners_alike() -> None:
    back, front = (pieces("12")[name] for name in ("back", "front"))
    order = ["neck", "centre", "hem", "side", "armhole", "shoulder"]

    assert [each.name for each in back.edges] == [each.name for each in front.edges] == order
    assert [(e.start, e.end) for e in back.edges] == [(e.start, e.end) for e in front.edges]
    assert [each.name for each in back.edges if each.out_of_sight] == ["side"]
