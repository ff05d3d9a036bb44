"""Owns what goes round the body: lines that close to a round through seams and folds, and openings.

Knows nothing of bodies. A line goes round when each of its ends lies on the fold, on an edge sewn to itself
(left to right), or on an edge sewn to one where the line goes on. It goes round the body, not round an arm or
a leg, when it crosses the middle on its way: on the fold, on an edge sewn left to right, or in one piece. A
seam at which a facing or lining is turned in joins no line to another.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.making.inside import pieces_inside
from specc.pattern.lookup import line_named, piece_named
from specc.pattern.measure import line_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.geometry.point import Point
    from specc.making.assembly import SizeAssembly, Walk
    from specc.pattern.piece import Piece, ReferenceLine
    from specc.rules.subject import Subject

ON = 0.1  # mm: a line that ends this near an edge ends on it
LANDMARKS = ("bust-line", "waist-line", "hip-line")  # the names that the library's blocks give them

_Lines = dict[str, tuple["Piece", "ReferenceLine"]]


@dataclass(frozen=True, slots=True)
class Girth:
    """A way round the body: what it is in words, the greatest girth in mm that passes, where it lies.

    `edges` are `piece.edge` for an opening, and empty for a line. `heights` are, piece by piece, the height
    of the place, the middle of the piece's height, and the heights of its LANDMARKS, all in mm on the paper.
    """

    name: str
    passes: float
    edges: tuple[str, ...]
    pieces: tuple[str, ...]
    heights: tuple[tuple[float, float, tuple[float, ...]], ...]


def girths(subject: Subject, size: SizeAssembly) -> Iterator[Girth]:
    """Every reference line that goes round the body, then every opening that does."""
    turned = {seam.name: seam for seam in subject.garment.seams if seam.making.turns}
    joining = tuple(walk for walk in size.walks if walk.seam not in turned)
    for name in dict.fromkeys(line.name for piece in size.pieces for line in piece.lines):
        lines = {
            piece.name: (piece, line)
            for piece in size.pieces
            if (line := line_named(piece, name)) is not None
        }
        for way in _ways_round(lines, joining):
            passes = sum(
                line_length(*lines[piece])
                * lines[piece][0].cut
                * (2 if lines[piece][0].fold else 1)
                * (1.0 + _stretch(subject, piece))
                for piece in way
            )
            heights = tuple(_heights(lines[piece][0], _height(*_ends(lines[piece][1]))) for piece in way)
            yield Girth(f"the girth at `{name}`", passes, (), way, heights)
    inside = pieces_inside(subject.garment.seams)
    for opening in size.openings:
        heights = tuple(_edge_heights(size, edge) for edge in opening.edges)
        owners = tuple(dict.fromkeys(edge.partition(".")[0] for edge in opening.edges))
        # Of a facing without reference lines it is not known where its inner edge lies.
        unplaced = inside.issuperset(owners) and not any(marks for _, _, marks in heights)
        if opening.central and not unplaced:
            yield Girth(opening.called, opening.passes, opening.edges, owners, heights)


def _ways_round(lines: _Lines, walks: tuple[Walk, ...]) -> Iterator[tuple[str, ...]]:
    """The pieces of each round that the line closes round the body."""
    onward = {name: _both_ends_onward(name, lines, walks) for name in lines}
    left = dict.fromkeys(lines)
    while left:
        way = [next(iter(left))]
        for piece in way:
            left.pop(piece, None)
            way += [other for end in onward[piece] for other in end if other is not None and other not in way]
        ends = [end for piece in way for end in onward[piece]]
        # A single piece off the fold (an asymmetric front) lies across the middle; no arm has just one.
        across = any(piece.cut == 1 and not piece.fold for piece, _ in (lines[name] for name in way))
        if all(ends) and (across or any(None in end for end in ends)):
            yield tuple(way)


def _both_ends_onward(
    name: str, lines: _Lines, walks: tuple[Walk, ...]
) -> tuple[tuple[str | None, ...], ...]:
    """Where the line goes on from its ends; nowhere when both are on one edge, along which it then lies."""
    piece, line = lines[name]
    first, second = (
        [edge.name for edge in piece.edges if any(part.is_near(end, ON) for part in edge.parts)]
        for end in _ends(line)
    )
    if set(first) & set(second):
        return (), ()
    return _onward(piece, first, lines, walks), _onward(piece, second, lines, walks)


def _onward(piece: Piece, edges: list[str], lines: _Lines, walks: tuple[Walk, ...]) -> tuple[str | None, ...]:
    """The pieces in which the line goes on beyond the edges; None where the piece meets its other half."""
    found: list[str | None] = [None for edge in edges if edge == piece.fold]
    for edge in edges:
        here = (piece.name, edge)
        for walk in walks:
            first, second = ([(one.piece, one.edge) for one in side] for side in (walk.first, walk.second))
            if here in first and here in second:
                found.append(None)
            elif here in first or here in second:
                found += [other for other, _ in (second if here in first else first) if other in lines]
    return tuple(dict.fromkeys(found))


def _ends(line: ReferenceLine) -> tuple[Point, Point]:
    return line.parts[0].start, line.parts[-1].end


def _height(start: Point, end: Point) -> float:
    return 0.5 * (start.y + end.y)


def _edge_heights(size: SizeAssembly, edge: str) -> tuple[float, float, tuple[float, ...]]:
    owner, _, name = edge.partition(".")
    piece = piece_named(size.pieces, owner)
    if piece is None:
        raise KeyError(edge)
    found = next(one for one in piece.edges if one.name == name)
    return _heights(piece, _height(found.parts[0].start, found.parts[-1].end))


def _heights(piece: Piece, height: float) -> tuple[float, float, tuple[float, ...]]:
    corners = [edge.parts[0].start.y for edge in piece.edges]
    marks = (line_named(piece, name) for name in LANDMARKS)
    return (
        height,
        0.5 * (min(corners) + max(corners)),
        tuple(_height(*_ends(line)) for line in marks if line is not None),
    )


def _stretch(subject: Subject, piece: str) -> float:
    cloth = subject.cloth(piece)
    return float(cloth.stretch) if cloth else 0.0
