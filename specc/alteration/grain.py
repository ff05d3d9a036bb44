"""Owns where the grain line of a new or altered piece is drawn; knows no verb."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.geometry.crossing import line_crossings
from specc.geometry.path import Path
from specc.geometry.region import centroid, contains
from specc.geometry.tolerance import SAME
from specc.pattern.outline import flat_outline

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.geometry.point import Point
    from specc.pattern.piece import Piece


def grain_across(polygon: Sequence[Point], along: Point) -> Path:
    """The grain line in a direction through the middle of a piece: a third of the longest way inside it."""
    middle, direction = centroid(polygon), along.unit()
    outline = Path.through(*polygon, polygon[0])
    stops = sorted(met.across for met in line_crossings(outline, middle, direction))
    # A line through the centre of gravity has cloth on both sides, so it runs through cloth somewhere.
    ways = [
        (low, high)
        for low, high in pairwise(stops)
        if high - low > SAME and contains(polygon, middle + direction * (0.5 * (low + high)))
    ]
    low, high = max(ways, key=lambda way: way[1] - way[0])
    third = (high - low) / 3.0
    return Path.through(middle + direction * (low + third), middle + direction * (high - third))


def grain_on_fold(before: Piece, after: Piece) -> Piece:
    """The altered piece, its grain line as it was if it lies on the fold: there the fold tells the grain.

    Where the line no longer lies on the piece it is drawn anew, in the same direction.
    """
    if after.fold is None or before.grain is None or after.grain == before.grain:
        return after
    polygon = flat_outline(after)
    kept = before.grain
    if not (contains(polygon, kept.start) and contains(polygon, kept.end)):
        kept = grain_across(polygon, kept.end - kept.start)
    return replace(after, grain=kept)
