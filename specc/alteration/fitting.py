"""Owns how what lies inside a piece follows when its outline was moved; knows no verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.grain import grain_across
from specc.alteration.runs import NEAR, parted
from specc.geometry.crossing import crossings
from specc.geometry.region import bounds, contains
from specc.pattern.measure import stitched_length
from specc.pattern.outline import drawn_outline, flat_outline
from specc.pattern.piece import ReferenceLine

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.pattern.piece import Piece

TOUCH: Final = 0.1  # mm; a line that ends this near to the outline ends on it


def fitted_inside(before: Piece, after: Piece) -> Piece:
    """The piece with its lines, marks and points made to fit its new outline.

    Lines that ended on the old outline end on the new one; what lies outside is cut off; a grain line that
    leaves the piece is drawn anew in its middle; notches and gathers that lie beyond the end of their edge,
    and points outside, are dropped.
    """
    polygon = flat_outline(after)
    low, high = bounds(polygon)
    reach = low.distance(high)
    old, new = drawn_outline(before), drawn_outline(after)
    lines = []
    for line in before.lines:
        parts = list(line.parts)
        if old.is_near(parts[0].start, TOUCH) and not new.is_near(parts[0].start, NEAR):
            parts[0] = parts[0].extended(reach, 0.0)
        if old.is_near(parts[-1].end, TOUCH) and not new.is_near(parts[-1].end, NEAR):
            parts[-1] = parts[-1].extended(0.0, reach)
        kept = [
            stretch
            for part, whole in zip(parts, line.parts, strict=True)
            for stretch in _inside(part, whole, new, polygon)
        ]
        if kept:
            lines.append(ReferenceLine(line.name, tuple(kept)))
    grain = after.grain
    if grain is not None and not all(
        contains(polygon, end) or new.is_near(end, TOUCH) for end in (grain.start, grain.end)
    ):
        grain = grain_across(polygon, grain.end - grain.start)
    whole = {edge.name: stitched_length(edge) for edge in after.edges}
    return replace(
        after,
        lines=tuple(lines),
        grain=grain,
        notches=tuple(notch for notch in after.notches if -NEAR <= notch.at <= whole[notch.edge] + NEAR),
        points=tuple(
            point for point in after.points if contains(polygon, point.at) or new.is_near(point.at, TOUCH)
        ),
    )


def _inside(part: Path, whole: Path, outline: Path, polygon: tuple[Point, ...]) -> list[Path]:
    """The stretches of a line inside the outline that belong to what the line was, or go on from it."""
    kept = []
    middle = whole.point_at(0.5 * whole.length())
    stretches = parted(part, (crossing.along for crossing in crossings(part, outline)))
    for stretch in stretches:
        inside = stretch.point_at(0.5 * stretch.length())
        belongs = whole.is_near(inside, TOUCH) or stretch.is_near(middle, TOUCH)
        if belongs and (contains(polygon, inside) or outline.is_near(inside, NEAR)):
            kept.append(stretch)
    return kept
