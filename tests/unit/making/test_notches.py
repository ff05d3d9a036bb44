"""Notches: found on all sides of a seam by walking it, and at limits. What is notched: common practice."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.gather import read
from specc.making.course import course
from specc.making.notches import NEAR, notches
from specc.making.topology import Topology
from specc.pattern.measure import stitched_length
from specc.pipeline import check
from specc.world import Folder
from tests.made import made, sheath, sizes

if TYPE_CHECKING:
    from specc.making.assembly import NotchMark
    from specc.pipeline import Result

ROOT = Path(__file__).resolve().parents[3]
GARMENTS = sorted((*ROOT.glob("examples/*/*.garment"), *ROOT.glob("tests/garments/*.garment")))


def found(result: Result, piece: str, edge: str) -> list[NotchMark]:
    assert result.garment is not None
    return [
        mark for mark in notches(result.garment, sizes(result)[0]) if (mark.piece, mark.edge) == (piece, edge)
    ]


def checked(file: Path) -> Result:
    source, _ = read(file.name, file.read_bytes(), "")
    assert source is not None
    return check(source, Folder(file.parent))


@pytest.mark.parametrize("file", GARMENTS, ids=lambda file: file.stem)
def test_a_notch_of_one_side_has_its_like_on_every_other(file: Path) -> None:
    result = checked(file)
    assert result.garment is not None
    for size in sizes(result):
        marks = notches(result.garment, size)
        topology = Topology(size.pieces, result.garment.seams)
        for seam in result.garment.seams:
            laid = course(seam, size.pieces, topology)
            if laid is None:
                continue
            ease = max(abs(side.length - laid.sides[0].length) for side in laid.sides)
            for mark in (mark for mark in marks if mark.by == seam.name):
                index = next(
                    i
                    for i, side in enumerate(laid.sides)
                    if any((step.piece, step.edge) == (mark.piece, mark.edge) for step in side.steps)
                )
                place = next(laid.sides[index].places(mark.piece, mark.edge, mark.at))
                for other, side in enumerate(laid.sides):
                    wanted = laid.carried(place, start=index, to=other)
                    there = [
                        abs(each - wanted)
                        for one in marks
                        for each in side.places(one.piece, one.edge, one.at)
                    ]
                    corners = [abs(step.start - wanted) for step in side.steps] + [abs(side.length - wanted)]
                    assert min((*there, *corners)) <= NEAR + ease, (seam.name, mark)


@pytest.mark.parametrize("file", GARMENTS, ids=lambda file: file.stem)
def test_the_sides_of_a_course_are_as_long_as_the_seam_was_walked(file: Path) -> None:
    result = checked(file)
    assert result.garment is not None
    for size in sizes(result):
        topology = Topology(size.pieces, result.garment.seams)
        for seam, walk in zip(result.garment.seams, size.walks, strict=True):
            laid = course(seam, size.pieces, topology)
            if laid is not None and seam.first != seam.second:
                # Inseams left and right meet at the crotch: their course is one, sewn there and back.
                times = round(laid.sides[0].length / walk.first_length)
                assert times in {1, 2}
                assert laid.sides[0].length == pytest.approx(times * walk.first_length)
                assert laid.sides[1].length == pytest.approx(times * walk.second_length)
            if laid is None:
                continue
            for low, high in pairwise(laid.knots):
                middle = (low[0] + high[0]) / 2
                assert low[1] <= laid.carried(middle, start=0, to=1) <= high[1]


def test_lines_that_end_at_a_seam_are_notched_on_both_sides_double_at_the_back() -> None:
    result = sheath("seam side joins front.side to back.side by french\n")
    front, back = found(result, "front", "side"), found(result, "back", "side")

    assert len(front) == len(back) > 1
    assert not any(mark.double for mark in front)
    assert all(mark.double for mark in back)


# A straight piece has a line across its middle, which ends at its sides, and none at its ends.
@pytest.mark.parametrize(("wide", "notched"), [("30 cm", [150.0]), ("15 cm", [])])
def test_a_long_seam_without_lines_is_notched_in_its_middle(wide: str, notched: list[float]) -> None:
    result = made(
        'garment bag "Bag" { style "B"; sizes M }\n'
        f"use block rectangle as one {{ wide {wide}; long 20 cm }}\n"
        f"use block rectangle as two {{ wide {wide}; long 20 cm }}\n"
        "cloth calico { width 150 cm; is stable }\n"
        "seam low joins one.top to two.bottom by french\n"
    )

    assert [mark.at for mark in found(result, "one", "top")] == notched
    assert [mark.at for mark in found(result, "two", "bottom")] == notched


def test_the_centre_is_notched_where_a_sewn_edge_comes_to_the_fold() -> None:
    result = sheath("finish neck along front.neck by elastic-bound { binding edging }\n")
    piece = next(piece for piece in sizes(result)[0].pieces if piece.name == "front")
    edge = next(edge for edge in piece.edges if edge.name == "neck")
    fold = next(edge for edge in piece.edges if edge.name == piece.fold)
    centre = 0.0 if edge.start in {fold.start, fold.end} else stitched_length(edge)

    assert [mark.at for mark in found(result, "front", "neck") if mark.by == "fold"] == [centre]


def test_the_limits_of_what_is_held_in_are_notched() -> None:
    finish = (
        "finish neck along front.neck by elastic-bound {\n"
        "  binding edging\n  hold 6% along front.neck from 2 cm to 5 cm\n}\n"
    )
    marks = found(sheath(finish), "front", "neck")

    assert [mark.at for mark in marks if mark.by == "neck"] == [pytest.approx(20.0), pytest.approx(50.0)]


def test_the_centre_of_two_halves_is_notched_on_the_whole_band_that_is_sewn_over_them() -> None:
    result = sheath(
        "alter {\n  leave out sleeve\n  crop front at waist-line\n  band front.hem by 4 cm as band\n}\n"
        "seam low joins band.top to front.hem by french\n"
    )
    band = next(piece for piece in sizes(result)[0].pieces if piece.name == "band")
    length = stitched_length(next(edge for edge in band.edges if edge.name == "top"))

    assert length / 2 in [pytest.approx(mark.at) for mark in found(result, "band", "top")]
