"""Pleats and gathers on the sheet: marked on the drawing, told in a table, and in the result."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

import pytest

from specc.document.document import Group
from specc.document.drawn_in_data import drawn_in_data
from specc.document.fullness_lines import fullness_lines
from specc.document.fullness_table import has_fullness, height_of_table
from specc.document.line import LineKind
from specc.document.table import Table
from specc.document.view import View
from specc.gather import read
from specc.geometry.point import Point
from specc.pattern.piece import Fold, FoldKind, Gathers
from specc.pipeline import check, document
from tests.altering import rectangle
from tests.compiling import Here

if TYPE_CHECKING:
    from specc.document.document import Document, Page
    from specc.pattern.piece import Piece

GARMENTS = FilePath(__file__).parents[2] / "garments"
FULL_SIZE = View(Fraction(1), Point(0, 300), Point(0, 0))


def with_hem(piece: Piece, gathers: tuple[Gathers, ...] = (), folds: tuple[Fold, ...] = ()) -> Piece:
    hem = replace(piece.edges[0], gathers=gathers, folds=folds)
    return replace(piece, edges=(hem, *piece.edges[1:]))


PLEATED = with_hem(
    rectangle(260.0, 300.0),
    folds=(
        Fold(100.0, 20.0, FoldKind.PLEAT, onto_after=False),
        Fold(100.0, 40.0, FoldKind.PLEAT, onto_after=True),
    ),
)
GATHERED = with_hem(rectangle(260.0, 300.0), gathers=(Gathers(50.0, 100.0, 60.0),))


def traces(piece: Piece, kind: LineKind) -> list[tuple[Point, tuple[object, ...]]]:
    return [
        (trace.start, trace.runs)
        for stroke in fullness_lines(piece, FULL_SIZE)
        for trace in stroke.traces
        if stroke.line is kind
    ]


def test_a_fold_is_two_strokes_and_an_arrow_to_where_it_faces() -> None:
    """An inverted pleat: folds of 20 and 40 side by side, which meet where the first one ends."""
    strokes = [start for start, _ in traces(PLEATED, LineKind.DART)]
    # Paper runs down: the hem at the garment's 0 lies at 300. The arrow's target comes first.
    assert strokes == [Point(120, 300), Point(100, 300), Point(120, 300), Point(160, 300)]
    ends = [runs[-1] for _, runs in traces(PLEATED, LineKind.DART)]
    assert ends == [Point(start.x, 240) for start in strokes]
    assert [start for start, _ in traces(PLEATED, LineKind.DART_MIDDLE)] == [Point(110, 300), Point(140, 300)]
    arrows = [(start.x, runs[-1].x) for start, runs in traces(PLEATED, LineKind.GRAIN)]  # type: ignore[attr-defined]
    assert arrows == [(100, 120), (160, 120)]


def test_what_is_gathered_has_a_wave_inside_along_its_cloth() -> None:
    ((start, runs),) = traces(GATHERED, LineKind.THIN)
    points = [start, *runs]
    across = [point.x for point in points if isinstance(point, Point)]
    assert (min(across), max(across)) == pytest.approx((50.0, 160.0))
    assert all(296.0 < point.y < 300.0 for point in points if isinstance(point, Point))


def test_the_result_says_where_and_how_much() -> None:
    (_, gathers), (_, folds) = drawn_in_data(PLEATED.edges[0])
    assert gathers == ()
    assert isinstance(folds, tuple)
    assert [dict(each.items) for each in folds] == [  # type: ignore[union-attr]
        {"kind": "pleat", "at_mm": 100.0, "takes_up_mm": 20.0, "faces": "B"},
        {"kind": "pleat", "at_mm": 100.0, "takes_up_mm": 40.0, "faces": "A"},
    ]
    (_, gathers), _ = drawn_in_data(GATHERED.edges[0])
    assert isinstance(gathers, tuple)
    assert [dict(each.items) for each in gathers] == [  # type: ignore[union-attr]
        {"start_mm": 50.0, "end_mm": 100.0, "takes_up_mm": 60.0, "eased": False}
    ]


def test_a_piece_without_fullness_has_no_table() -> None:
    assert not has_fullness(rectangle(200.0, 300.0))
    assert height_of_table(rectangle(200.0, 300.0)) == 0.0
    assert has_fullness(PLEATED)
    assert height_of_table(PLEATED) > height_of_table(GATHERED) - 6.0


@cache
def skirt() -> Document:
    path = GARMENTS / "pleated-skirt.garment"
    source, faults = read(path.name, path.read_bytes())
    assert not faults
    made = document(check(source, Here(GARMENTS)))
    assert made is not None
    return made


def blocks(of: Page | Group) -> list[object]:
    found: list[object] = []
    for block in of.blocks:
        found += blocks(block) if isinstance(block, Group) else [block]
    return found


def table(name: str) -> Table:
    found = [each for page in skirt().pages for each in blocks(page) if isinstance(each, Table)]
    return next(each for each in found if each.name == name)


def cells(name: str) -> list[tuple[str, ...]]:
    return [tuple(str(cell) for cell in row.cells) for row in table(name).rows]


def test_the_sheet_tells_pleats_in_every_size() -> None:
    front = cells("drawn-in-front")
    pleats = [row for row in front if row[2].startswith(("1", "2", "3", "4", "each"))]
    assert [row[:3] for row in pleats][:2] == [
        ("4 pleats", "waist", "1 begins, from waist-side"),
        ("", "", "2 begins, from waist-side"),
    ]
    assert len(pleats[0]) == 3 + 8
    back = cells("drawn-in-back")
    assert [row[0] for row in back if row[0]] == ["ease", "ease", "gathers"]


def test_an_alteration_that_keeps_what_is_sewn_shows_what_is_drawn() -> None:
    waist = cells("edges-changed-3")[:3]
    assert [row[1] for row in waist] == ["drawn before", "drawn after", "change"]
    assert all(cell.startswith("+1") for cell in waist[2][2:])
    hem = cells("edges-changed-3")[3:6]
    assert [row[1] for row in hem] == ["before", "after", "change"]
