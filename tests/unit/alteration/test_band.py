"""Straight bands, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import band
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.reshaping import Band
from specc.pattern.lookup import corner_named
from specc.pattern.piece import Gathers
from tests.altering import ORIGIN, altered, evaluate, length, part, rectangle, refused, sewn, share

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

# Edges a hem, b side, c waist, d centre on the fold.
FRONT = rectangle(180.0, 300.0, fold="d")
BACK = replace(rectangle(200.0, 300.0, fold="d"), name="back")
SLEEVE = replace(rectangle(240.0, 500.0, cut=2), name="sleeve")
PIECES = (FRONT, BACK, SLEEVE)


def made(
    *edges: tuple[str, str],
    by: float = 40.0,
    of: float | None = None,
    across: bool = False,
    pieces: tuple[Piece, ...] = PIECES,
) -> Piece:
    ratio = None if of is None else share(of)
    refs = tuple(part(name, piece) for piece, name in edges)
    step = Band(refs, length(by), ratio, "waistband", ORIGIN, across=across)
    return altered(band.apply(pieces, step, evaluate))


def test_a_waistband_goes_round() -> None:
    """Both halves of the front and of the back: 2 x 180 + 2 x 200, in one piece."""
    waistband = made(("front", "c"), ("back", "c"))
    assert [(e.name, e.start, e.end) for e in waistband.edges] == [
        ("bottom", "bottom-start", "bottom-end"),
        ("end", "bottom-end", "top-end"),
        ("top", "top-end", "top-start"),
        ("start", "top-start", "bottom-start"),
    ]
    assert corner_named(waistband, "top-end") == Point(760, 40)
    assert waistband.cut == 1
    assert waistband.fold is None
    assert waistband.grain is not None
    assert waistband.grain == Path.through(Point(190, 20), Point(570, 20))


def test_the_grain_of_a_band_of_rib_runs_across_it() -> None:
    rib = made(("front", "c"), ("back", "c"), of=0.5, across=True)

    assert rib.grain == Path.through(Point(190, 10), Point(190, 30))


def test_a_rib_is_cut_to_a_share() -> None:
    assert sewn(made(("front", "c"), ("back", "c"), of=0.85), "top") == pytest.approx(646.0)


def test_cuffs_are_a_pair() -> None:
    cuff = made(("sleeve", "a"))
    assert (cuff.cut, sewn(cuff, "top")) == (2, 240.0)


def test_sides_that_do_not_reach_the_fold_take_a_band_each() -> None:
    side = made(("front", "b"), ("back", "b"))
    assert (side.cut, sewn(side, "top")) == (2, 600.0)


def test_the_fold_itself_is_there_once() -> None:
    along = made(("front", "d"))
    assert (along.cut, sewn(along, "top")) == (1, 300.0)


def test_an_edge_counts_as_sewn() -> None:
    waist = replace(FRONT.edges[2], gathers=(Gathers(20.0, 120.0, 30.0),))
    gathered = replace(FRONT, edges=(*FRONT.edges[:2], waist, FRONT.edges[3]))
    assert sewn(made(("front", "c"), pieces=(gathered,)), "top") == 300.0


def test_an_open_front_and_a_back_on_the_fold() -> None:
    open_front = replace(rectangle(190.0, 300.0, cut=2), name="front")
    neck = made(("front", "c"), ("back", "c"), pieces=(open_front, BACK))
    assert (neck.cut, sewn(neck, "top")) == (1, 780.0)


def test_one_band_goes_round_what_a_seam_joins_left_to_right() -> None:
    """The sleeve is cut as a pair, 240 long at a: two bands of one sleeve each, or one of both."""
    step = Band((part("a", "sleeve"),), length(40.0), None, "round", ORIGIN)
    pair, one = (altered(band.apply(PIECES, each, evaluate)) for each in (step, replace(step, in_one=True)))

    assert (pair.cut, sewn(pair, "top")) == (2, 240.0)
    assert (one.cut, sewn(one, "top")) == (1, 480.0)


def test_refusals() -> None:
    def why(step: Band) -> str:
        return refused(band.apply(PIECES, step, evaluate))

    plain = Band((part("c"),), length(40.0), None, "band", ORIGIN)
    assert why(replace(plain, name="back")) == "piece-name-taken"
    assert why(replace(plain, by=length(0.0))) == "amount-not-positive"
    assert why(replace(plain, share=share(0.0))) == "share-of-band"
    assert why(replace(plain, edges=(part("neck"),))) == "part-gone"
    assert why(replace(plain, edges=(part("neck", "collar"),))) == "piece-gone"
