"""Owns what a pattern cutter looks at on any block: corners, joins, darts closed, seams of equal length."""

from __future__ import annotations

from itertools import pairwise
from math import degrees, pi
from typing import TYPE_CHECKING

from specc.pattern.lookup import edge_named, edges_at
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.pattern.piece import Dart, Edge, Piece


def edge(piece: Piece, name: str) -> Edge:
    found = edge_named(piece, name)
    assert found is not None, f"{piece.name} has no edge {name}"
    return found


def sewn(piece: Piece, *names: str) -> float:
    """The length of edges as sewn, in millimetres."""
    return sum(stitched_length(edge(piece, name)) for name in names)


def angle(piece: Piece, corner: str) -> float:
    """The angle between the two edges that meet in a corner, in degrees, up to 180."""
    before, after = edges_at(piece, corner)
    assert before is not None
    assert after is not None
    turn = before.parts[-1].end_direction().angle_to(after.parts[0].start_direction())
    return degrees(pi - abs(turn))


def kinks(piece: Piece) -> Iterator[tuple[str, float]]:
    """Every join within an edge, open or across a closed dart, and by how many degrees it breaks."""
    darts = {dart.name: dart for dart in piece.darts}
    for each in piece.edges:
        for part in each.parts:
            for run, following in pairwise(part.segments):
                yield each.name, degrees(run.end_direction().angle_to(following.start_direction()))
        for name, (before, after) in zip(each.darts, pairwise(each.parts), strict=True):
            closed = before.end_direction().turned(closing(darts[name]))
            yield f"{each.name} over {name}", degrees(closed.angle_to(after.start_direction()))


def closing(dart: Dart) -> float:
    """The turn about the pivot that brings the first end of the mouth to the second, in radians."""
    return (dart.first - dart.pivot).angle_to(dart.second - dart.pivot)


def rising(values: list[float]) -> bool:
    """Whether every value is larger than the one before it."""
    return all(low < high for low, high in pairwise(values))
