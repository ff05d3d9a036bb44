"""What moved seams and shaped hems must keep, on fronts of random dimensions."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specc.alteration import move_seam, shape_edge
from specc.alteration.closed_edge import ClosedEdge
from specc.alteration.refusal import Refusal
from specc.model.recutting import EndShift, MoveSeam, Shape
from specc.pattern.measure import dart_angle, stitched_length
from specc.pattern.outline import area, mirrored
from tests.altering import ORIGIN, altered, edge, evaluate, is_whole, length, part, refused, sewn, share
from tests.strategies import fronts, lengths

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

ways = st.sampled_from(["front", "back"])


def pair(front: Piece, back: Piece) -> tuple[Piece, Piece]:
    """Two pieces with one shoulder: the back is another front, its shoulder drawn to be as long."""
    return front, replace(mirrored(back), name="back", title="Back")


def moved(pieces: tuple[Piece, ...], step: MoveSeam) -> tuple[Piece, ...]:
    """The pieces with the seam moved; cases in which a neighbour does not reach do not count."""
    result = move_seam.apply(pieces, step, evaluate)
    assume(isinstance(result, tuple))
    assert not isinstance(result, Refusal)
    for piece in result:
        is_whole(piece)
    return result


@given(fronts())
def test_an_edge_shut_and_opened_again_is_the_same(piece: Piece) -> None:
    side = edge(piece, "side")
    shut = ClosedEdge.of(piece, side)
    assert shut.path.length() == pytest.approx(stitched_length(side), abs=1e-6)
    opened = shut.opened(shut.path)
    assert not isinstance(opened, str)
    parts, (dart,) = opened
    for part_of, old in zip(parts, side.parts, strict=True):
        assert part_of.start.distance(old.start) < 1e-5
        assert part_of.end.distance(old.end) < 1e-5
    assert dart_angle(dart) == pytest.approx(dart_angle(piece.darts[0]), abs=1e-7)


@given(fronts(), lengths(2, 30), lengths(2, 30), ways)
def test_a_shoulder_moved_keeps_both_areas_together_and_walks(
    front: Piece, first: float, last: float, toward: str
) -> None:
    """Both shoulders are straight: what goes over is one and the same strip of cloth."""
    pieces = pair(front, front)
    step = MoveSeam(
        part("shoulder"),
        part("shoulder", "back"),
        length(first),
        "shoulder-point",
        length(last),
        "neck-point",
        toward,
        ORIGIN,
    )
    after = moved(pieces, step)
    assert sum(map(area, after)) == pytest.approx(sum(map(area, pieces)), rel=1e-7)
    smaller = 0 if toward == "front" else 1
    assert area(after[smaller]) < area(pieces[smaller])
    assert sewn(after[0], "shoulder") == pytest.approx(sewn(after[1], "shoulder"), abs=1e-6)
    for name in ("neck", "armhole"):
        before_and_after = [sum(sewn(piece, name) for piece in both) for both in (pieces, after)]
        assert before_and_after[0] == pytest.approx(before_and_after[1], abs=1e-5)
    for name in ("hem", "side", "centre"):
        assert [edge(p, name) for p in after] == [edge(p, name) for p in pieces]


@given(fronts(), lengths(2, 20), ways)
def test_a_seam_moved_and_moved_back_is_where_it_was(front: Piece, by: float, toward: str) -> None:
    pieces = pair(front, front)
    step = MoveSeam(part("shoulder"), part("shoulder", "back"), length(by), None, None, None, toward, ORIGIN)
    there = moved(pieces, step)
    back = moved(there, replace(step, toward="back" if toward == "front" else "front"))
    for old, new in zip(pieces, back, strict=True):
        assert area(new) == pytest.approx(area(old), rel=1e-7)
        for before in old.edges:
            assert sewn(new, before.name) == pytest.approx(stitched_length(before), abs=1e-3)


@given(fronts(), lengths(2, 20), ways)
def test_a_side_with_darts_still_walks(front: Piece, by: float, toward: str) -> None:
    """Sides with a dart bend in ways that no strip of cloth follows; what is sewn stays equal."""
    pieces = pair(front, front)
    step = MoveSeam(part("side"), part("side", "back"), length(by), None, None, None, toward, ORIGIN)
    result = move_seam.apply(pieces, step, evaluate)
    if isinstance(result, Refusal):
        assert refused(result) in {"seam-sides-unlike", "seam-through-dart", "edge-cannot-move"}
        return
    after = moved(pieces, step)
    assert sewn(after[0], "side") == pytest.approx(sewn(after[1], "side"), abs=1e-5)
    for old, new in zip(pieces, after, strict=True):
        (before,), (dart,) = old.darts, new.darts
        assert dart_angle(dart) == pytest.approx(dart_angle(before), abs=1e-9)
        assert dart.pivot.distance(before.pivot) < 1e-9
        legs = [d.first.distance(d.pivot) - d.second.distance(d.pivot) for d in (before, dart)]
        assert legs[1] == pytest.approx(0.0, abs=1e-6 + abs(legs[0]))
    # The strip goes over as it is but for its ends, which fan out beside a dart.
    assert sum(map(area, after)) == pytest.approx(sum(map(area, pieces)), rel=2e-3)


@given(fronts(), lengths(-80, 120), lengths(-80, 120), st.floats(0.15, 0.6))
def test_a_shaped_hem_is_square_to_its_neighbours(
    piece: Piece, centre: float, side: float, full: float
) -> None:
    """Amounts down; up where they are negative."""
    shifts = (
        EndShift("hem-centre", centre < 0.0, length(abs(centre))),
        EndShift("hem-side", side < 0.0, length(abs(side))),
    )
    step = Shape((part("hem"),), shifts, share(full), ORIGIN)
    result = shape_edge.apply((piece,), step, evaluate)
    assume(isinstance(result, tuple))
    shaped = altered(result)
    hem = edge(shaped, "hem").parts[0]
    fold, seam = edge(shaped, "centre").parts[-1], edge(shaped, "side").parts[0]
    assert abs(hem.start_direction().dot(fold.end_direction())) < 1e-9
    assert abs(hem.end_direction().dot(seam.start_direction())) < 1e-9
    assert sewn(shaped, "centre") == pytest.approx(sewn(piece, "centre") + centre, abs=1e-6)
    assert sewn(shaped, "side") == pytest.approx(sewn(piece, "side") + side, abs=1e-6)
    for name in ("armhole", "shoulder", "neck"):
        assert edge(shaped, name) == edge(piece, name)
    back = mirrored(altered(shape_edge.apply((mirrored(piece),), step, evaluate)))
    assert area(back) == pytest.approx(area(shaped), rel=1e-9)
