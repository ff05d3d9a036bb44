"""Owns how one closed outline lies on another: how far it reaches beyond, how much they share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Sequence

_SLIVER: Final = 0.002  # area over the square of the length round: less than that is a line, not a part
_STEP: Final = 1.0  # mm; what reaches beyond is sampled so finely, beside its own corners


def reach_beyond(points: Sequence[Point], outline: Sequence[Point]) -> float:
    """How far the polygon `points` reaches beyond the polygon `outline`, in millimetres; 0 when within it."""
    from shapely import Point as Place  # noqa: PLC0415 - slow to import, rarely needed
    from shapely import Polygon, get_coordinates, segmentize  # noqa: PLC0415

    whole = Polygon([(p.x, p.y) for p in outline])
    beyond = Polygon([(p.x, p.y) for p in points]).difference(whole)
    corners = get_coordinates(segmentize(beyond, _STEP))
    return max((float(whole.distance(Place(x, y))) for x, y in corners), default=0.0)


def shared_area(points: Sequence[Point], others: Sequence[Point]) -> float:
    """The area that two polygons have in common, in square millimetres."""
    from shapely import Polygon  # noqa: PLC0415 - slow to import, rarely needed

    first, second = (Polygon([(p.x, p.y) for p in polygon]) for polygon in (points, others))
    return float(first.intersection(second).area)


def beyond(
    points: Sequence[Point], outline: Sequence[Point], *, least: float
) -> tuple[tuple[Point, ...], ...]:
    """The parts of the polygon `points` outside of the polygon `outline`, each by its outer corners.

    Parts smaller than `least`, in square millimetres, are left out, and so are slivers.
    """
    from shapely import Polygon  # noqa: PLC0415 - slow to import, rarely needed

    first, second = (Polygon([(p.x, p.y) for p in polygon]).buffer(0) for polygon in (points, outline))
    found = first.difference(second)
    parts = [part for part in getattr(found, "geoms", (found,)) if part.geom_type == "Polygon"]
    corners = [
        tuple(Point(float(x), float(y)) for x, y in part.exterior.coords[:-1])
        for part in parts
        if not part.is_empty and part.area >= least and part.area >= _SLIVER * part.length**2
    ]
    return tuple(sorted(corners, key=lambda ring: (ring[0].x, ring[0].y)))
