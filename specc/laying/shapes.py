"""Owns the shapes that a lay is made of: cut pieces turned to the grain, grown by shrinkage, opened, mirrored.

Knows nothing of how shapes are placed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.geometry.point import Point, Rigid
from specc.geometry.region import bounds, polygon_area
from specc.model.spreading import OPEN
from specc.packing import Shape
from specc.pattern.lookup import edge_named

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.making.assembly import CutPiece
    from specc.model.material import Cloth
    from specc.pattern.piece import Piece

_ALONG = 0.02  # how far a fold edge may lean from the grain, as a share: more is not a fold along the cloth
_STRAIGHT = 1e-3  # mm


@dataclass(frozen=True, slots=True)
class Laid:
    """A shape of a lay and whose it is."""

    shape: Shape
    size: str
    piece: str
    mirrored: bool


def shapes(size: str, cloth: Cloth, pieces: Iterable[tuple[Piece, CutPiece, int]], garments: int) -> tuple[Laid, ...]:
    """What so many garments of a size need: a piece, its cut outline and how many are cut of it, each.

    On open cloth pairs are mirrored and pieces on the fold opened. On cloth that lies double a pair is laid
    once, and a piece on the fold once along the fold.
    """
    return tuple(laid for piece, cut, count in pieces for laid in _laid(size, cloth, piece, cut, count * garments))


def _laid(size: str, cloth: Cloth, piece: Piece, cut: CutPiece, count: int) -> Iterator[Laid]:
    along = _grain(piece)
    drawn = tuple(_straightened(p, along) for p in cut.cut)
    fold = _fold(piece, along)
    double = cloth.spreading.spread != OPEN
    angles = (0.0,) if {"napped", "one-way"} & set(cloth.traits) else (0.0, 180.0)
    name = f"{size} {piece.name}"

    def laid(outline: tuple[Point, ...], times: int, *, mirrored: bool = False, pinned: bool = False) -> Laid:
        grown = tuple(_grown(p, cloth) for p in outline)
        shape = Shape(f"{name} mirrored" if mirrored else name, grown, times, (0.0,) if pinned else angles, pinned)
        return Laid(shape, size, piece.name, mirrored)

    if fold is not None and double and abs(fold[1].y) <= _ALONG * abs(fold[1].x):
        yield laid(_on_fold(drawn, fold[0]), count, pinned=True)
    elif fold is not None:
        yield laid(_opened(drawn, Rigid.mirroring(*fold)), count)
    else:
        yield laid(drawn, (count + 1) // 2)
        if count > 1 and not double:
            yield laid(tuple(Point(p.x, -p.y) for p in reversed(drawn)), count // 2, mirrored=True)


def _grain(piece: Piece) -> Point:
    """The direction of the grain line; without one a piece lies as it is drawn, its height along the cloth."""
    if piece.grain is None or piece.grain.start.distance(piece.grain.end) < _STRAIGHT:
        return Point(0.0, 1.0)
    return (piece.grain.end - piece.grain.start).unit()


def _straightened(point: Point, along: Point) -> Point:
    """The point with the grain turned to run along x."""
    return Point(point.dot(along), point.dot(along.left()))


def _grown(point: Point, cloth: Cloth) -> Point:
    """Cut larger by what the cloth shrinks: wanted / (1 - share)."""
    along, across = 1.0 - float(cloth.shrinks_length), 1.0 - float(cloth.shrinks_width)
    return Point(point.x / along, point.y / across)


def _fold(piece: Piece, along: Point) -> tuple[Point, Point] | None:
    """A point of the fold edge and the way to its end, the grain along x."""
    edge = edge_named(piece, piece.fold) if piece.fold else None
    if edge is None:
        return None
    start, end = (_straightened(p, along) for p in (edge.parts[0].start, edge.parts[-1].end))
    return start, end - start


def _opened(half: tuple[Point, ...], mirror: Rigid) -> tuple[Point, ...]:
    """The outline on both sides of the fold, which is a stretch of the half's outline."""
    on = [mirror(p).distance(p) <= 2.0 * _STRAIGHT for p in half]
    count = len(half)
    first = next(i for i in range(count) if on[i - 1] and on[i] and not on[(i + 1) % count])
    # From the end of the fold round to its start, and back on the other side.
    turned = [(half[(first + i) % count], on[(first + i) % count]) for i in range(count)]
    one = tuple(p for p, _ in turned)
    return one + tuple(mirror(p) for p, stays in reversed(turned) if not stays)


def _on_fold(half: tuple[Point, ...], on: Point) -> tuple[Point, ...]:
    """The half with its fold edge on y = 0, above which it lies."""
    moved = tuple(Point(p.x, p.y - on.y) for p in half)
    low, high = bounds(moved)
    return moved if high.y >= -low.y else tuple(Point(p.x, -p.y) for p in reversed(moved))


def area(laid: Iterable[Laid]) -> float:
    """Of all shapes, each as often as it is laid."""
    return sum(abs(polygon_area(one.shape.outline)) * one.shape.count for one in laid)
