"""The grain line of a piece that was altered, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace

from specc.alteration.grain import grain_on_fold
from specc.geometry.path import Path
from specc.geometry.point import Point
from tests.altering import rectangle

GRAIN = Path.through(Point(180, 50), Point(180, 250))
TURNED = Path.through(Point(150, 50), Point(170, 250))
PIECE = replace(rectangle(200.0, 300.0, fold="d"), grain=GRAIN)


def test_on_the_fold_it_is_as_it_was() -> None:
    assert grain_on_fold(PIECE, replace(PIECE, grain=TURNED)).grain == GRAIN


def test_where_it_no_longer_lies_on_the_piece_it_is_drawn_in_the_middle() -> None:
    narrow = replace(rectangle(120.0, 300.0, fold="d"), grain=TURNED)
    assert grain_on_fold(PIECE, narrow).grain == Path.through(Point(60, 100), Point(60, 200))


def test_without_a_fold_it_has_turned_with_the_cloth() -> None:
    free = replace(PIECE, fold=None)
    turned = replace(free, grain=TURNED)
    assert grain_on_fold(free, turned) == turned
