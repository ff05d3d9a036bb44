"""Owns the edge of cloth that is folded away between two places of an outline; knows no darts by name.

Laid, the layers of a fold end with the run that they lie on, so that all are caught in one seam: the paper is
folded, and cut along the seam. Unfolded, the upper layer's end is the mirror image of that run in the line of
the fold, and the under layer's the mirror image of that in the middle of the fold.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.geometry.crossing import line_crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from specc.geometry.point import Point

UNDERLAY: Final = 4.0  # a fold whose underlay runs further than so many openings is drawn straight across
UNEVEN: Final = (
    0.5  # mm; sides that differ by more cannot be laid on each other, and one half is drawn straight
)


def fold_edge(onto: Path, start: Point, end: Point, inner: tuple[Point, Point]) -> Path:
    """The edge of a fold from `start` to `end`, laid onto the run `onto`, which leads away from `start`.

    `inner` are the inner ends of the fold's two sides, the same point twice for a dart.
    """
    gap = start.distance(end)
    middle = start.toward(end, 0.5)
    axis = inner[0].toward(inner[1], 0.5) - middle
    side = inner[0] - start
    if min(gap, axis.norm(), side.norm()) <= SAME:
        return Path.through(start, end)
    image = onto.transformed(Rigid.mirroring(start, side))
    image = image.between_points(start, image.end)
    met = line_crossings(image.extended(0.0, gap), middle, axis)
    if not met or met[0].along > UNDERLAY * gap:
        return Path.through(start, end)
    upper = image.extended(0.0, gap).between(0.0, met[0].along)
    lower = upper.transformed(Rigid.mirroring(middle, axis)).reversed()
    if lower.end.distance(end) > UNEVEN:
        return upper.joined(Path((Line(upper.end, end),)))
    whole = upper.joined(lower.between_points(upper.end, lower.end))
    return whole if whole.end.distance(end) <= SAME else whole.joined(Path((Line(whole.end, end),)))
