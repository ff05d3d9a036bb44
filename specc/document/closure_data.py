"""Owns closures, fastenings and openings for programs, as trees of plain values.

Knows nothing of JSON. Lengths are millimetres under names that end in `_mm`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import Members

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.making.assembly import Opening
    from specc.making.closed import Closed, FasteningPlace
    from specc.quantities.pieces import PieceCount


def closure_data(closed: Closed) -> Members:
    """A closure in one size."""
    return Members(
        (
            ("count", closed.count),
            ("first_mm", closed.first),
            ("second_mm", closed.second),
            ("laps_mm", closed.laps),
            ("from", closed.corner),
            ("places", tuple(map(_place, closed.places))),
        )
    )


def _place(place: FasteningPlace) -> Members:
    hole = None if place.hole is None else tuple(map(_point, place.hole))
    return Members(
        (
            ("number", place.number),
            ("piece", place.piece),
            ("edge", place.edge),
            ("along_mm", place.along),
            ("at", _point(place.at)),
            ("hole", hole),
        )
    )


def _point(point: Point) -> tuple[float, float]:
    return (point.x, point.y)


def fastening_data(count: PieceCount) -> Members:
    """Fastenings counted for one closure of one garment."""
    return Members(
        (
            ("trim", count.trim),
            ("used_on", count.used_on),
            ("count", count.count),
            ("length_mm", None if count.length is None else float(count.length.value)),
            ("opening_mm", count.opening),
        )
    )


def opening_data(opening: Opening) -> Members:
    """A round of edges that stays open."""
    return Members(
        (
            ("edges", opening.edges),
            ("by", opening.by),
            ("seam", opening.seam),
            ("central", opening.central),
            ("flat_mm", opening.flat),
            ("sewn_mm", opening.sewn),
            ("passes_mm", opening.passes),
        )
    )
