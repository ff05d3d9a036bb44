"""The edge of folded cloth: folded and laid it ends with the run it lies on, whatever that run's shape."""

from __future__ import annotations

import pytest

from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.segment import Cubic, Line
from specc.pattern.folding import UNDERLAY, fold_edge
from specc.pattern.outline import capped_outline, laid_onto_second
from specc.pattern.piece import Dart, Edge, Piece

PIVOT = Point(100.0, 300.0)
MOUTH = Point(80.0, 400.0), Point(120.0, 400.0)


def panel(before: Path, after: Path) -> Piece:
    """A panel with an upright dart in its upper edge, which runs from right to left."""
    corners = Point(0, 0), Point(250, 0)
    edges = (
        Edge("low", "a", "b", (Path((Line(*corners),)),)),
        Edge("right", "b", "c", (Path((Line(corners[1], before.start),)),)),
        Edge("waist", "c", "d", (before, after), ("dart",)),
        Edge("left", "d", "a", (Path((Line(after.end, corners[0]),)),)),
    )
    return Piece(
        "panel", "panel", edges, darts=(Dart("dart", "waist", MOUTH[1], MOUTH[0], PIVOT),), fold="left"
    )


@pytest.mark.parametrize("sink", [-30.0, 0.0, 12.0])
def test_a_dart_pressed_over_ends_with_the_curved_seam_that_it_lies_on(sink: float) -> None:
    """By reflection: the upper half of the cap, mirrored in the leg, lies on the waist beyond that leg."""
    before = Path((Cubic(Point(250, 420), Point(210, 420), Point(160, 400 + sink), MOUTH[1]),))
    after = Path((Cubic(MOUTH[0], Point(50, 400 + sink), Point(20, 420), Point(0, 420)),))
    piece = panel(before, after)

    # An upright dart is laid toward the centre, which is the fold at the left: onto the run behind it.
    assert laid_onto_second(piece, *MOUTH[::-1])
    capped = capped_outline(piece)
    cap = [p for p in capped.flattened() if MOUTH[0].x <= p.x <= MOUTH[1].x and p.y > 350]
    mirror = Rigid.mirroring(PIVOT, MOUTH[0] - PIVOT)
    seam = after.extended(0.0, 50.0)
    upper = [p for p in cap if p.x <= 100.0 + 1e-9]
    assert len(upper) > 2 or sink == 0.0
    for place in upper:
        assert seam.distance_to(mirror(place)) < 0.06  # flattened within 0.05 mm
    # Folded along its middle, the lower half lies on the upper.
    for place in cap:
        assert capped.distance_to(Point(200.0 - place.x, place.y)) < 0.06


def test_a_fold_ends_exactly_where_it_should() -> None:
    onto = Path.through(Point(0, 0), Point(-100, 10))
    for end in (Point(20, 0), Point(20, 0.3)):
        path = fold_edge(onto, Point(0, 0), end, (Point(2, -80), Point(18, -80)))
        assert (path.start, path.end) == (Point(0, 0), end)


def test_a_fold_whose_underlay_would_run_away_is_straight() -> None:
    """The run leaves almost along the fold's side: its image never comes near the middle."""
    onto = Path.through(Point(0, 0), Point(-1, 100))
    path = fold_edge(onto, Point(0, 0), Point(20, 0), (Point(10, -80), Point(10, -80)))
    assert path.length() <= UNDERLAY * 20 * 2
    assert fold_edge(onto, Point(0, 0), Point(0, 0), (PIVOT, PIVOT)).length() == 0.0
