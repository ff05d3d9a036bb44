"""Owns outlines with fewer points, for a search that is slow with many.

Knows nothing of the search.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterable


def coarse(outlines: Iterable[tuple[Point, ...]], within: float) -> tuple[list[tuple[Point, ...]], float]:
    """Outlines of some of the same points, and how far the true ones stick out of them at most."""
    from shapely import Polygon, distance, points  # noqa: PLC0415 - slow to import, rarely needed

    found, most = [], 0.0
    for outline in outlines:
        all_points = [(p.x, p.y) for p in outline]
        fewer = Polygon(all_points).simplify(within).exterior
        most = max(most, float(distance(fewer, points(all_points)).max()))
        found.append(tuple(Point(x, y) for x, y in fewer.coords[:-1]))
    return found, most
