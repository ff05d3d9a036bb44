"""Owns where the names and measures of a piece stand on its drawing.

Knows nothing of lines but to keep off them.
"""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from specc.document.lettering import Lettering, height_of, width_of
from specc.document.piece_lines import on_paper, outward_at
from specc.document.placement import Place
from specc.geometry.point import Point
from specc.pattern.measure import dart_tip, place_on_edge, stitched_length
from specc.pattern.outline import bounds

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.lengths import Lengths
    from specc.document.placement import Placer
    from specc.document.view import View
    from specc.geometry.path import Path
    from specc.pattern.piece import Edge, Piece

_ALONG = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82)
_OFF = 2.4  # from the line to the middle of the letters, millimetres of paper
_LEADING = height_of(Lettering.SMALL) + 2.0  # from line to line of the title, millimetres of paper


def upright(direction: Point) -> float:
    """The angle of a paper direction, so that a text along it reads from below or the right (ISO 129)."""
    angle = direction.angle()
    if angle > pi / 2 - 1e-9:
        return angle - pi
    return angle + pi if angle <= -pi / 2 - 1e-9 else angle


def label_edges(placer: Placer, piece: Piece, view: View, lengths: Lengths) -> None:
    """Every edge has its name and stitched length beside it, inside the piece where there is room."""
    for edge in sorted(piece.edges, key=lambda each: (stitched_length(each), each.name)):
        text = f"{edge.name} {lengths.near(stitched_length(edge))}"
        if edge.name == piece.fold:
            places = tuple(_beside(piece, edge, view, offs=(-2.5, -7.6, _OFF)))
            placer.place(f"{text}, on the fold", Lettering.VALUE, places, ground=True)
        else:
            places = tuple(_beside(piece, edge, view, offs=(-_OFF, -3.4, -4.6, _OFF, 4.0, 6.0, -6.5, 8.0)))
            placer.place(text, Lettering.VALUE, places)


def _beside(piece: Piece, edge: Edge, view: View, *, offs: tuple[float, ...]) -> Iterator[Place]:
    whole = stitched_length(edge)
    spots = tuple(place_on_edge(edge, whole * share) for share in _ALONG)
    outwards = tuple(on_paper(outward_at(piece, spot.direction)) for spot in spots)
    for rank, off in enumerate(offs):
        for order, (spot, outward) in enumerate(zip(spots, outwards, strict=True)):
            yield Place(
                view.point(spot.at) + outward * off,
                upright(on_paper(spot.direction)),
                0.3 * rank + 0.02 * order,
            )


def label_lines(placer: Placer, piece: Piece, view: View) -> None:
    """Every reference line has its name on it, or beside it where it runs along a line that is sewn."""
    for each in piece.lines:
        longest = max(each.parts, key=lambda path: path.length())
        places = tuple(_along(longest, view))
        placer.place(each.name, Lettering.SMALL, places, ground=True)


def _along(path: Path, view: View) -> Iterator[Place]:
    whole = path.length()
    for rank, off in enumerate((0.0, _OFF, -_OFF, 2 * _OFF, -2 * _OFF)):
        for order, share in enumerate((0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.88, 0.12)):
            along = on_paper(path.direction_at(whole * share))
            spot = view.point(path.point_at(whole * share)) + along.left() * off
            yield Place(spot, upright(along), 0.6 * rank + 0.02 * order)


def label_darts(placer: Placer, piece: Piece, view: View) -> None:
    """Every dart has its name near its tip, or near its middle where it has two."""
    spots = [(dart.name, dart_tip(dart)) for dart in piece.darts]
    spots += [(dart.name, dart.top.toward(dart.bottom, 0.5)) for dart in piece.two_pointed]
    for name, spot in spots:
        placer.place(name, Lettering.SMALL, tuple(_around(view.point(spot), 3.6)))


def _around(spot: Point, off: float) -> Iterator[Place]:
    for order, distance in enumerate((off, off * 2, off * 3.2)):
        for turn, (x, y) in enumerate(
            ((0, -1), (0, 1), (2.4, 0), (-2.4, 0), (2, -1), (-2, -1), (2, 1), (-2, 1))
        ):
            yield Place(Point(spot.x + x * distance, spot.y + y * distance), 0.0, 0.2 * order + 0.02 * turn)


def label_grain(placer: Placer, piece: Piece, view: View) -> None:
    """The grain arrow is named along it."""
    if piece.grain is None:
        return
    start, end = view.point(piece.grain.start), view.point(piece.grain.end)
    along = (end - start).unit()
    places = tuple(
        Place(start.toward(end, share) + along.left() * side, upright(along), 0.02 * order)
        for order, (share, side) in enumerate((s, d) for s in (0.5, 0.3, 0.7) for d in (1.9, -1.9))
    )
    placer.place("grain", Lettering.SMALL, places)


def room_beside(size: Point, lines: tuple[str, ...]) -> Point:
    """The paper that the title takes where the piece is too small for it.

    Below a low one, such as a band; right of a narrow one, such as a strap; (0, 0) where it has room inside.
    `size` is how wide and high the piece is on paper.
    """
    wide, high = _extent(lines)
    if size.y < high + 4 * _OFF:
        return Point(0.0, high)
    return Point(wide, 0.0) if size.x < wide + 2 * _OFF else Point(0.0, 0.0)


def label_piece(
    placer: Placer, piece: Piece, view: View, lines: tuple[str, ...], *, outside: Point | None
) -> None:
    """The title and what is said below it stand together inside, as near to the middle as there is room.

    Or outside, where its middle line then begins at a point stated.
    """
    corners = [view.point(corner) for corner in bounds(piece)]
    left, right = min(c.x for c in corners), max(c.x for c in corners)
    top, bottom = min(c.y for c in corners), max(c.y for c in corners)
    places: tuple[Place, ...]
    if outside is not None:
        places = (Place(outside),)
    else:
        places = tuple(
            Place(
                Point(left + (right - left) * x, top + (bottom - top) * y), 0.0, abs(x - 0.5) + abs(y - 0.5)
            )
            for y in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
            for x in (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74)
        )
    placer.place_stack(tuple(zip(lines, _letterings(lines), strict=True)), places, leading=_LEADING)


def _extent(lines: tuple[str, ...]) -> tuple[float, float]:
    wide = max(width_of(line, lettering) for line, lettering in zip(lines, _letterings(lines), strict=True))
    return wide + _OFF, _LEADING * len(lines)


def _letterings(lines: tuple[str, ...]) -> tuple[Lettering, ...]:
    return (Lettering.TITLE, *(Lettering.SMALL for _ in lines[1:]))
