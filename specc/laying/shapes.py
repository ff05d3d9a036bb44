"""Owns the shapes of a lay: cut pieces turned to the grain, grown by shrinkage, opened, mirrored.

Knows nothing of how shapes are placed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.geometry.point import Point, Rigid
from specc.geometry.region import bounds, polygon_area
from specc.model.spreading import ACROSS, ANY, BIAS, OPEN
from specc.packing import Shape
from specc.pattern.lookup import edge_named

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.laying.cutting import Cut
    from specc.model.material import Cloth
    from specc.pattern.piece import Piece

_ALONG = 0.02  # how far a fold edge may lean from the grain, as a share: more is not a fold along the cloth
_ANY_STEP = 15  # degrees between the angles of a piece that may lie as it fits
_STRAIGHT = 1e-3  # mm
_STAYS = Rigid.moving(Point(0.0, 0.0))
_OVER = Rigid.mirroring(Point(0.0, 0.0), Point(1.0, 0.0))


@dataclass(frozen=True, slots=True)
class Laid:
    """A shape of a lay and whose it is; `grain` are the ends of its grain line, where one is drawn."""

    shape: Shape
    size: str
    piece: str
    mirrored: bool
    grain: tuple[Point, ...]


def shapes(size: str, cloth: Cloth, cuts: Iterable[Cut], garments: int) -> tuple[Laid, ...]:
    """What so many garments of a size need of the cloth.

    On open cloth pairs are mirrored and pieces on the fold opened. On cloth that lies double a pair is laid
    once, and a piece on the fold once along the fold.
    """
    names: dict[str, int] = {}
    found: list[Laid] = []
    for cut in cuts:
        times = names[cut.piece.name] = names.get(cut.piece.name, 0) + 1
        name = f"{size} {cut.piece.name}" + (f" {times}" if times > 1 else "")
        found += _laid(name, size, cloth, cut, garments)
    return tuple(found)


def _laid(name: str, size: str, cloth: Cloth, cut: Cut, garments: int) -> Iterator[Laid]:
    piece, count = cut.piece, cut.count * garments
    along = _grain(piece)
    drawn = tuple(_straightened(p, along) for p in cut.outline)
    ends = () if piece.grain is None else (piece.grain.start, piece.grain.end)
    line = tuple(_straightened(end, along) for end in ends)
    fold = _fold(piece, along)
    double = cloth.spreading.spread != OPEN
    angles = _angles(cloth, piece.name)

    def laid(
        outline: tuple[Point, ...], moved: Rigid, times: int, *, mirrored: bool = False, pinned: bool = False
    ) -> Laid:
        grown = tuple(_grown(p, cloth) for p in outline)
        grain = tuple(_grown(moved(end), cloth) for end in line)
        called = f"{name} mirrored" if mirrored else name
        shape = Shape(called, grown, times, (0.0,) if pinned else angles, pinned)
        return Laid(shape, size, piece.name, mirrored, grain)

    if fold is not None and double and 0.0 in angles and abs(fold[1].y) <= _ALONG * abs(fold[1].x):
        onto = _onto_fold(drawn, fold[0])
        yield laid(tuple(map(onto, drawn)), onto, count, pinned=True)
    elif fold is not None:
        yield laid(_opened(drawn, Rigid.mirroring(*fold)), _STAYS, count)
    else:
        yield laid(drawn, _STAYS, (count + 1) // 2)
        if count > 1 and not double:
            yield laid(tuple(map(_OVER, drawn)), _OVER, count // 2, mirrored=True)


def _angles(cloth: Cloth, piece: str) -> tuple[float, ...]:
    """The angles by which the piece may be turned, its grain lying along the cloth at none."""
    spreading = cloth.spreading
    way = spreading.way_of(piece)
    if way == ANY:
        return tuple(float(angle) for angle in range(0, 360, _ANY_STEP))
    one_way = bool({"napped", "one-way"} & set(cloth.traits))
    if way is None and "bias-cut" in cloth.traits:
        way = BIAS
    straight = {None: (0.0, 180.0), ACROSS: (90.0, 270.0), BIAS: (45.0, 315.0, 135.0, 225.0)}[way]
    lean = float(spreading.lean.value) if spreading.lean else 0.0
    kept = straight[: len(straight) // 2] if one_way else straight
    off = dict.fromkeys((0.0, lean / 2.0, -lean / 2.0, lean, -lean))
    return tuple((angle + each) % 360.0 for angle in kept for each in off)


def _grain(piece: Piece) -> Point:
    """The direction of the grain line; without one the height of the drawing lies along the cloth."""
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


def _onto_fold(half: tuple[Point, ...], on: Point) -> Rigid:
    """The motion that takes the fold edge to y = 0 and the half above it."""
    low, high = bounds(half)
    down = Rigid.moving(Point(0.0, -on.y))
    return down if high.y - on.y >= on.y - low.y else _OVER.after(down)


def area(laid: Iterable[Laid]) -> float:
    """Of all shapes, each as often as it is laid."""
    return sum(abs(polygon_area(one.shape.outline)) * one.shape.count for one in laid)
