"""Owns the check of a layout against its strip: all there, nothing beyond the cloth, nothing overlapping.

Knows nothing of where the layout is from: whatever found it is not believed.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Final

from specc.geometry.region import bounds
from specc.packing.problem import outline_of, turned

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.packing.problem import Layout, Shape, Strip

SLACK: Final = 0.1  # mm by which two shapes may come nearer than the gap
_EXACT: Final = 1e-6  # mm, or degrees


def faults(strip: Strip, layout: Layout) -> tuple[str, ...]:
    """What is wrong with the layout, in words, each kind once; nothing when it can be cut."""
    named = {shape.name: shape for shape in strip.shapes}
    unknown = sorted({placed.shape for placed in layout.placed} - set(named))
    if unknown:
        return (f"it places `{unknown[0]}`, which is not among the pieces",)
    counts = Counter(placed.shape for placed in layout.placed)
    found = [
        f"it has `{shape.name}` {counts[shape.name]} times instead of {shape.count}"
        for shape in strip.shapes
        if counts[shape.name] != shape.count
    ]
    found += [
        f"`{placed.shape}` is turned by {placed.angle:g} degrees, which its grain does not allow"
        for placed in layout.placed
        if not any(
            abs((placed.angle - angle + 180.0) % 360.0 - 180.0) < 1e-6 for angle in named[placed.shape].angles
        )
    ]
    outlines = [outline_of(strip, placed) for placed in layout.placed]
    for placed, outline in zip(layout.placed, outlines, strict=True):
        low, high = bounds(outline)
        if named[placed.shape].pinned and abs(low.y) > SLACK:
            found.append(f"`{placed.shape}` does not lie on the fold")
        if low.x < -SLACK or high.x > layout.length + SLACK:
            found.append(f"`{placed.shape}` lies beyond an end of the lay")
        if low.y < -SLACK or high.y > strip.width + SLACK:
            found.append(f"`{placed.shape}` lies beyond an edge of the cloth")
    return tuple(dict.fromkeys((*found, *_overlaps(strip, layout, outlines))))


def _alike(one: float, other: float) -> bool:
    return abs((one - other + 180.0) % 360.0 - 180.0) < _EXACT


def _overlaps(strip: Strip, layout: Layout, outlines: list[tuple[Point, ...]]) -> list[str]:
    from shapely import Polygon, STRtree  # noqa: PLC0415 - slow to import, rarely needed

    shapes = [Polygon([(p.x, p.y) for p in outline]) for outline in outlines]
    near = max(strip.gap - SLACK, 0.0)
    pairs = STRtree(shapes).query(shapes, predicate="dwithin", distance=near) if shapes else ((), ())
    found = []
    for one, other in sorted(zip(map(int, pairs[0]), map(int, pairs[1]), strict=True)):
        if one >= other:
            continue
        names = f"`{layout.placed[one].shape}` and `{layout.placed[other].shape}`"
        shared = shapes[one].buffer(-SLACK / 2).intersects(shapes[other].buffer(-SLACK / 2))
        if shared:
            found.append(f"{names} overlap")
        elif strip.gap > SLACK and shapes[one].distance(shapes[other]) < near:
            found.append(f"{names} are nearer than {strip.gap:g} mm")
    return found


def too_large(strip: Strip) -> tuple[tuple[Shape, float], ...]:
    """The shapes that fit the strip's width at none of their angles, and the width that each would need."""
    found = []
    for shape in strip.shapes:
        needed = min(_across(shape, angle) for angle in shape.angles) + strip.gap * (2 - shape.pinned)
        if needed > strip.width + _EXACT:
            found.append((shape, needed))
    return tuple(found)


def _across(shape: Shape, angle: float) -> float:
    low, high = bounds(turned(shape.outline, angle))
    return high.y - low.y
