"""Owns the map of the garment: where each numbered seam, finish, hem and closure lies.

Knows nothing of how they are made.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.document.document import Figure
from specc.document.drawing import Drawing, Stroke
from specc.document.garment_bands import bands
from specc.document.garment_drawing import garment_strokes, standing
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.marks import line
from specc.document.placement import Place, Placer
from specc.document.view import said
from specc.flat.chains import distinct, measured
from specc.flat.laid import Role
from specc.geometry.point import Point
from specc.model.construction import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.document.drawing import Label
    from specc.document.garment_drawing import Bands, Seen
    from specc.document.sheet import Sheet
    from specc.flat.chains import Measured
    from specc.flat.laid import Flat

_ROUND: Final = 6.0  # for numbers outside the garment, millimetres of paper
_ROOM: Final = Point(170.0, 70.0)
_AWAY: Final = (3.4, 4.6, 6.0)  # from an edge to the middle of its number
_SAME: Final = 1.0  # millimetres of paper: edges that lie nearer than that to each other are one seam
_SHARES: Final = (0.5, 0.36, 0.64, 0.24, 0.76, 0.14, 0.86)


def map_of(sheet: Sheet) -> Iterator[Figure]:
    """The map of a garment, as the page shows it that counts what is made."""
    edges: dict[str, tuple[tuple[str, str], ...]] = {}
    for number, each in enumerate(sheet.made, start=1):
        refs = each.along if isinstance(each, Finish) else tuple(ref for side in each.sides for ref in side)
        edges[str(number)] = tuple((ref.piece or "", ref.name) for ref in refs)
    drawing, hidden = making_map(sheet.flat, edges, bands(sheet), room=_ROOM)
    if drawing is not None:
        caption = f"{drawing.title}. The numbers are those of the headings below."
        yield Figure(drawing, caption + (f" Not seen from outside: {', '.join(hidden)}." if hidden else ""))


def making_map(
    flat: Flat, numbers: Mapping[str, tuple[tuple[str, str], ...]], bands: Bands, *, room: Point
) -> tuple[Drawing | None, tuple[str, ...]]:
    """The garment with a number at each place, and the numbers that are not seen on it.

    `numbers` are the edges of each, by piece and name; None where nothing is laid flat.
    """
    stands = standing(flat, room=Point(room.x - 2 * _ROUND, room.y - 2 * _ROUND))
    if stands is None:
        return None, tuple(numbers)
    aside = Point(_ROUND, _ROUND)
    seen = tuple(each.moved(aside) for each in stands.seen)
    width, height = stands.width + 2 * _ROUND, stands.height + 2 * _ROUND
    garment = [stroke for each in seen for stroke in garment_strokes(each, bands)]
    placer = Placer(width, height)
    placer.put(*(name.moved(aside) for name in stands.names))
    for stroke in garment:
        if stroke.line not in {LineKind.CLOTH, LineKind.SHADE}:
            placer.avoid(stroke.traces, 4.0)
    leaders: list[Stroke] = []
    hidden: list[str] = []
    for number, edges in numbers.items():
        spots = [spot for each in seen for spot in _spots(each, frozenset(edges))]
        if not spots:
            hidden.append(number)
        for on in spots:
            label = placer.place(number, Lettering.NAME, [place for place, _ in on])
            end = next(end for place, end in on if place.at == label.at)
            leader = line(end, end.toward(label.at, 0.55))
            leaders.append(Stroke(LineKind.THIN, (leader,)))
            placer.avoid((leader,), 4.0)
    scale = stands.scale.scale
    items: tuple[Stroke | Label, ...] = (*garment, *leaders, *placer.labels)
    title = f"Where each seam, finish and hem lies, scale {said(scale)}"
    return Drawing("making-map", title, width, height, scale, items), tuple(hidden)


def _spots(each: Seen, edges: frozenset[tuple[str, str]]) -> Iterator[list[tuple[Place, Point]]]:
    """The places that a number may take, and what it points at: once where edges lie on each other."""
    found: list[Measured] = []
    for piece in each.side.pieces:
        chains = [
            measured(distinct(tuple(map(each.at, edge.points))))
            for edge in piece.edges
            if (piece.name, edge.name) in edges and edge.role is not Role.NOTHING
        ]
        if not chains:
            continue
        longest = max(chains, key=lambda chain: chain.length)
        middle = longest.at(0.5 * longest.length)
        if all(other.nearest(middle)[1] > _SAME for other in found):
            found.append(longest)
            yield list(_around(longest))


def _around(run: Measured) -> Iterator[tuple[Place, Point]]:
    for order, share in enumerate(_SHARES):
        at = run.at(share * run.length)
        before, after = run.at((share - 0.03) * run.length), run.at((share + 0.03) * run.length)
        square = (after - before).unit().left() if before.distance(after) > 0.0 else Point(0.0, 1.0)
        for far, away in enumerate(_AWAY):
            for side in (1.0, -1.0):
                yield Place(at + square * (away * side), 0.0, 0.3 * order + 0.8 * far), at
