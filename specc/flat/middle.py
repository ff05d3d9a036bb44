"""Owns how a piece comes to lie at the middle of the garment: its middle edge on x = 0, its side beyond.

Knows nothing of seams.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.flat.chains import joined
from specc.geometry.point import Point, Rigid
from specc.geometry.region import bounds, centroid
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from specc.flat.laid import Chain, LaidPiece

_SPREAD: Final = 0.11  # legs spread by 6 degrees from upright, which shows both. Common practice, no source


def on_fold(piece: LaidPiece, fold: Chain) -> LaidPiece:
    """The piece with its fold upright at the middle."""
    way = fold[-1] - fold[0]
    if way.y < 0.0:
        way = -way
    turn = Rigid.turning(fold[0], way.angle_to(Point(0.0, 1.0))) if way.norm() > SAME else None
    turned = piece.mapped(turn) if turn else piece
    return _shifted(_outward(turned, fold[0].x), fold[0].x)


def on_seam(piece: LaidPiece, middle: Chain) -> LaidPiece:
    """The piece with the seam that joins it to its mirror image at the middle.

    Both ends of the seam are brought there by a slant that keeps all widths, so far as legs may spread; what
    lies off the middle between them, and of the fork below, is evened out toward the side. What runs beyond
    the middle lies behind it.
    """
    top, foot = sorted((middle[0], middle[-1]), key=lambda point: -point.y)
    away = centroid(piece.outline).x - top.x
    if away < 0.0:
        mirror = Rigid.mirroring(top, Point(0.0, 1.0))
        piece, middle = piece.mapped(mirror), tuple(map(mirror, middle))
        foot = mirror(foot)
    high = top.y - foot.y
    lean = max(-_SPREAD, min(_SPREAD, (foot.x - top.x) / high)) if high > SAME else 0.0

    def slanted(point: Point) -> Point:
        return Point(point.x - top.x + lean * (point.y - top.y), point.y)

    piece, middle = piece.mapped(slanted), tuple(map(slanted, middle))
    reach = max(point.x for point in piece.outline)
    low = min(point.y for point in piece.outline)

    def evened(point: Point) -> Point:
        bow = _bow(middle, low, point.y)
        share = min(1.0, max(0.0, 1.0 - (point.x - bow) / (reach - bow))) if reach - bow > SAME else 1.0
        return Point(max(0.0, point.x - bow * share), point.y)

    return piece.mapped(evened)


def on_edge(piece: LaidPiece, middle: Chain, lap: float) -> LaidPiece:
    """The piece with an edge that closes on its mirror image, and runs beyond the middle by half its lap."""
    chain = joined((middle,))
    at = (
        min(point.x for point in chain) if centroid(piece.outline).x > chain[0].x else max(p.x for p in chain)
    )
    laid = _outward(piece, at)
    return _shifted(laid, at + 0.5 * lap)


def across(piece: LaidPiece) -> LaidPiece:
    """A piece that is there once, with the middle of its width at the middle of the garment."""
    low, high = bounds(piece.outline)
    return replace(_shifted(piece, 0.5 * (low.x + high.x)), whole=True)


def _outward(piece: LaidPiece, at: float) -> LaidPiece:
    """The piece mirrored where it lies at lesser x."""
    if centroid(piece.outline).x >= at:
        return piece
    return piece.mapped(Rigid.mirroring(Point(at, 0.0), Point(0.0, 1.0)))


def _shifted(piece: LaidPiece, at: float) -> LaidPiece:
    return piece.mapped(Rigid.moving(Point(-at, 0.0)))


def _bow(middle: Chain, lowest: float, level: float) -> float:
    """How far off the middle a level is: where the seam lies; below it, less and less of its end."""
    foot = min((middle[0], middle[-1]), key=lambda point: point.y)
    if lowest <= level < foot.y:
        return foot.x * (level - lowest) / (foot.y - lowest)
    for before, after in pairwise(middle):
        low, high = sorted((before.y, after.y))
        if low <= level <= high and high - low > SAME:
            return before.toward(after, (level - before.y) / (after.y - before.y)).x
    return 0.0
