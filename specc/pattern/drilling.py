"""Owns where cloth is drilled or thread-marked: short of a dart's tip and inside of its legs.

Knows nothing of drawing. So far from tip and stitching that sewing covers the hole (common practice, no
source).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.pattern.measure import dart_tip

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.geometry.point import Point
    from specc.pattern.piece import Piece

SHORT: Final = 12.7  # mm, 1/2 in: of a dart's tip
INSIDE: Final = 3.2  # mm, 1/8 in: of the legs of a dart inside the piece, where it is widest
_MOST: Final = 1.0 / 3.0  # of a small dart's depth or half width


def drill_marks(piece: Piece) -> Iterator[Point]:
    """One mark for a dart on an edge; for a dart inside, one at each tip and two where it is widest."""
    for dart in piece.darts:
        yield _toward(dart_tip(dart), dart.first.toward(dart.second, 0.5), SHORT)
    for inner in piece.two_pointed:
        middle = inner.first.toward(inner.second, 0.5)
        for tip in (inner.top, inner.bottom):
            yield _toward(tip, middle, SHORT)
        for leg in (inner.first, inner.second):
            yield _toward(leg, middle, INSIDE)


def _toward(start: Point, end: Point, by: float) -> Point:
    far = start.distance(end)
    return start.toward(end, min(by / far, _MOST)) if far else start
