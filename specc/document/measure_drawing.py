"""Owns the drawing that shows where a garment is measured: lettered lines along what each measure takes.

Knows nothing of the values.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.document.drawing import Drawing, Stroke, Trace
from specc.document.garment_drawing import garment_strokes, standing
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import arrow_head
from specc.document.placement import Place, Placer
from specc.document.view import said
from specc.flat.chains import distinct, joined, measured, moved_off
from specc.flat.laid import Mark
from specc.geometry.point import Point
from specc.geometry.region import centroid
from specc.model.construction import Finish
from specc.model.expression import Applied, Arithmetic, Asked, Geometric

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Label
    from specc.document.garment_drawing import Bands, Seen
    from specc.flat.laid import Chain, Flat, LaidPiece
    from specc.model.construction import Seam
    from specc.model.expression import Expression, PartRef

_OFF: Final = 2.2  # from an edge to its line, millimetres of paper
_LETTER: Final = 2.4  # from a line to its letter
_HEADED: Final = 6.0  # a line at least so long has arrow heads
_MIDDLE: Final = 2.0  # mm of garment: what begins so near the middle goes on in its mirror image
_ROOM_ROUND: Final = 6.0  # for lines and letters outside the garment, millimetres of paper


@dataclass(frozen=True, slots=True)
class Lettered:
    """A measure: its letter, and what it takes on the pieces."""

    letter: str
    value: Expression


def measure_drawing(
    flat: Flat, measures: tuple[Lettered, ...], made: tuple[Seam | Finish, ...], bands: Bands, *, room: Point
) -> tuple[Drawing | None, tuple[str, ...]]:
    """The garment with a line for every measure that can be shown on it, and the letters of the others."""
    stands = standing(flat, room=Point(room.x - 2 * _ROOM_ROUND, room.y - 2 * _ROOM_ROUND))
    if stands is None:
        return None, tuple(each.letter for each in measures)
    seen = tuple(each.moved(Point(_ROOM_ROUND, _ROOM_ROUND)) for each in stands.seen)
    width, height = stands.width + 2 * _ROOM_ROUND, stands.height + 2 * _ROOM_ROUND
    garment = [stroke for each in seen for stroke in garment_strokes(each, bands)]
    placer = Placer(width, height)
    placer.put(*(name.moved(Point(_ROOM_ROUND, _ROOM_ROUND)) for name in stands.names))
    for stroke in garment:
        if stroke.line not in {LineKind.CLOTH, LineKind.SHADE}:
            placer.avoid(stroke.traces, 2.0 if stroke.line is LineKind.GARMENT else 1.0)
    drawn: list[Stroke | Label] = []
    hidden: list[str] = []
    beside: Counter[tuple[str, str]] = Counter()
    lines = [(each, tuple(_lines(each.value, seen, made, beside))) for each in measures]
    for _, chains in lines:
        placer.avoid(tuple(_trace(chain) for chain in chains), 3.0)
    for each, chains in lines:
        if not chains:
            hidden.append(each.letter)
        for chain in chains:
            drawn += _dimension(chain)
            placer.place(each.letter, Lettering.NAME, _places(chain), ground=True)
    scale = stands.scale.scale
    items: tuple[Stroke | Label, ...] = (*garment, *drawn, *placer.labels)
    title = f"Where it is measured, scale {said(scale)}"
    return Drawing("points-of-measure-drawing", title, width, height, scale, items), tuple(hidden)


def _lines(
    value: Expression,
    seen: tuple[Seen, ...],
    made: tuple[Seam | Finish, ...],
    beside: Counter[tuple[str, str]],
) -> Iterator[Chain]:
    """The chains on paper along which a measure is taken; `beside` is how many lie by each edge already."""
    shown: set[tuple[str, str]] = set()
    for asked, ref in _asked(value):
        if asked is Asked.OPENING:
            refs = [(each.piece or "", each.name) for each in _round(ref.name, made)]
        else:
            refs = [(ref.piece or "", ref.name)]
        for each in seen:
            found = tuple(_parts(each, refs, shown, beside))
            yield from found
            if found and asked is Asked.GIRTH:
                break


def _round(name: str, made: tuple[Seam | Finish, ...]) -> tuple[PartRef, ...]:
    """The edges of the round that a finish or seam of that name closes."""
    for each in made:
        if each.name == name:
            return each.along if isinstance(each, Finish) else each.stays_open or each.first
    return ()


def _asked(value: Expression) -> Iterator[tuple[Asked, PartRef]]:
    """What the expression asks of the pieces, in the order of the text."""
    match value:
        case Arithmetic(left=left, right=right):
            yield from _asked(left)
            yield from _asked(right)
        case Applied(arguments=arguments):
            for each in arguments:
                yield from _asked(each)
        case Geometric(asked=Asked.LENGTH | Asked.GIRTH | Asked.OPENING, of=of):
            for ref in of:
                yield value.asked, ref
        case _:
            return


def _parts(
    each: Seen, refs: list[tuple[str, str]], shown: set[tuple[str, str]], beside: Counter[tuple[str, str]]
) -> Iterator[Chain]:
    for piece, name in refs:
        across: list[Chain] = []
        whole = False
        for laid in each.side.pieces:
            if piece not in {"", laid.name} or (laid.name, name) in shown:
                continue
            line = [one.points for one in laid.lines if one.mark is Mark.LINE and one.name == name]
            edge = laid.edge(name)
            if line:
                across.append(joined(line))
                whole = laid.whole
                shown.add((laid.name, name))
            elif edge is not None and piece:
                shown.add((piece, name))
                beside[piece, name] += 1
                yield _beside(each, laid, edge.points, beside[piece, name])
        if across:
            ordered = sorted(across, key=lambda chain: min(point.x for point in chain))
            yield tuple(map(each.at, joined(ordered))) if whole else _whole(each, ordered)


def _whole(each: Seen, chains: list[Chain]) -> Chain:
    """Lines that follow each other from the middle outward, with their mirror image, on paper."""
    half = joined(chains)
    half = half if abs(half[0].x) <= abs(half[-1].x) else half[::-1]
    return (
        *(each.at(point, mirrored=True) for point in reversed(half)),
        *(each.at(point) for point in half),
    )


def _beside(each: Seen, piece: LaidPiece, chain: Chain, count: int) -> Chain:
    """The line number `count` beside an edge, off the piece; along the middle of the garment, on it.

    Where the edge goes on in its mirror image, so does the line.
    """
    points = distinct(chain)
    upright = not piece.whole and all(abs(point.x) <= _MIDDLE for point in points)
    off = _OFF * count / float(each.view.scale)
    if upright:
        line = points
    else:
        middle = points[len(points) // 2]
        way = points[-1] - points[0]
        line = moved_off(points, off, left=way.cross(centroid(piece.outline) - middle) < 0.0)
    if not upright and not piece.whole and _goes_on(points):
        return _whole(each, [line])
    return tuple(each.at(point) for point in line)


def _goes_on(points: Chain) -> bool:
    """Whether a chain ends at the middle of the garment, and not along it."""
    points = points if abs(points[0].x) <= abs(points[-1].x) else points[::-1]
    way = points[1] - points[0]
    return abs(points[0].x) <= _MIDDLE and abs(way.x) > abs(way.y)


def _dimension(chain: Chain) -> Iterator[Stroke]:
    """A thin line with a head at both ends, pointing outward."""
    points = distinct(chain)
    yield Stroke(LineKind.THIN, (_trace(points),))
    if measured(points).length >= _HEADED:
        first, last = (points[0] - points[1]).unit(), (points[-1] - points[-2]).unit()
        yield Stroke(LineKind.ARROW, (arrow_head(points[0], first), arrow_head(points[-1], last)))


def _places(chain: Chain) -> tuple[Place, ...]:
    """On the line, first at its middle; else beside it."""
    line = measured(distinct(chain))
    places = []
    for order, share in enumerate((0.5, 0.38, 0.62, 0.28, 0.72, 0.18, 0.82)):
        at = line.at(share * line.length)
        before, after = line.at((share - 0.02) * line.length), line.at((share + 0.02) * line.length)
        aside = (after - before).unit().left() if after.distance(before) > 0.0 else Point(0.0, 1.0)
        for far, own in ((0.0, -3.0), (_LETTER, 0.0), (-_LETTER, 0.0)):
            places.append(Place(at + aside * far, 0.0, 3.0 + own + 0.2 * order))
    return tuple(places)


def _trace(points: Chain) -> Trace:
    return Trace(points[0], points[1:])
