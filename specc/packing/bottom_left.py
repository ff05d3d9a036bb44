"""Owns a plain placement that needs no library: the largest first, each as far back on the strip as it goes.

Knows nothing of better ways. Shapes are laid on squares of cloth, which they may only touch from inside: so
what comes out never overlaps.
"""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.region import bounds, polygon_area
from specc.packing.problem import Layout, Placed, outline_of, turned

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    from specc.packing.problem import Shape, Strip

_EXACT: Final = 1e-6  # of a square: what fits exactly fits


def bottom_left(strip: Strip, *, squares: int = 300) -> Layout:
    """All shapes placed, in an order and at places that depend on nothing but the strip.

    All must fit the strip's width, which is laid out in `squares`.
    """
    import numpy as np  # noqa: PLC0415 - slow to import, rarely needed

    side = (strip.width - strip.gap) / squares
    taken = np.zeros((squares, 0), dtype=bool)
    placed = []
    for shape in _largest_first(strip.shapes):
        masks = [
            (angle, *_mask(turned(shape.outline, angle), side, strip.gap, pinned=shape.pinned))
            for angle in shape.angles
        ]
        masks = [mask for mask in masks if mask[1].shape[0] <= squares]
        for _ in range(shape.count):
            angle, mask, corner, (column, row) = min(
                (
                    (angle, mask, corner, _first_free(taken[: len(mask)] if shape.pinned else taken, mask))
                    for angle, mask, corner in masks
                ),
                key=lambda found: (found[3][0] + found[1].shape[1], found[3], found[0]),
            )
            high, wide = mask.shape
            if column + wide > taken.shape[1]:
                more = np.zeros((squares, column + wide - taken.shape[1]), dtype=bool)
                taken = np.concatenate((taken, more), axis=1)
            taken[row : row + high, column : column + wide] |= mask
            x, y = strip.gap / 2.0 + column * side - corner.x, strip.gap / 2.0 + row * side - corner.y
            at = Point(round(x, 3), round(y, 3))
            placed.append(Placed(shape.name, angle, at))
    ends = [bounds(outline_of(strip, one))[1].x for one in placed]
    return Layout(round(max(ends, default=0.0) + strip.gap, 3), tuple(placed))


def _largest_first(shapes: Sequence[Shape]) -> list[Shape]:
    return sorted(shapes, key=lambda shape: (not shape.pinned, -abs(polygon_area(shape.outline)), shape.name))


def _mask(
    outline: tuple[Point, ...], side: float, gap: float, *, pinned: bool
) -> tuple[NDArray[np.bool_], Point]:
    """The squares that the shape touches, gap included, and their lower left corner in its outline.

    The squares begin half a gap above the strip's edge: so far above its own lowest side where it is pinned.
    """
    import numpy as np  # noqa: PLC0415
    from shapely import Polygon, box, intersects, prepare  # noqa: PLC0415

    shape = Polygon([(p.x, p.y) for p in outline])
    # Half of the gap all round, so that two shapes keep the whole of it.
    grown = shape.buffer(gap / 2.0, join_style="mitre") if gap else shape
    left, bottom, right, top = grown.bounds
    bottom += gap if pinned else 0.0
    wide, tall = ceil((right - left) / side - _EXACT), ceil((top - bottom) / side - _EXACT)
    xs, ys = np.meshgrid(left + np.arange(wide) * side, bottom + np.arange(tall) * side)
    inner = side * _EXACT
    prepare(grown)
    touched = intersects(grown, box(xs + inner, ys + inner, xs + side - inner, ys + side - inner))
    return touched, Point(left, bottom)


def _first_free(taken: NDArray[np.bool_], mask: NDArray[np.bool_]) -> tuple[int, int]:
    """The first column, and in it the lowest row, at which the mask meets nothing that is taken."""
    import numpy as np  # noqa: PLC0415

    high, wide = mask.shape
    rows, columns = taken.shape
    # Beyond what is taken there is room for a whole mask.
    field = np.zeros((rows, columns + wide), dtype=np.float32)
    field[:, :columns] = taken
    size = (rows + high, columns + 2 * wide)
    met = np.fft.irfft2(np.fft.rfft2(field, size) * np.conj(np.fft.rfft2(mask, size)), size)
    free = met[: rows - high + 1, : columns + 1] < 0.5  # counts are whole numbers
    column = int(np.argmax(free.any(axis=0)))
    return column, int(np.argmax(free[:, column]))
