"""Owns how the parts of a piece are found by their names; knows nothing of measures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.pattern.measure import dart_tip

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.point import Point
    from specc.pattern.piece import Dart, Edge, Piece, ReferenceLine, TwoPointedDart

TIP = "-tip"  # the tip of dart `d` is the point `d-tip`


def piece_named(pieces: Iterable[Piece], name: str) -> Piece | None:
    """The piece of that name, if it is among them."""
    return next((piece for piece in pieces if piece.name == name), None)


def edge_named(piece: Piece, name: str) -> Edge | None:
    """The edge of that name, if the piece has it."""
    return next((edge for edge in piece.edges if edge.name == name), None)


def part_of(pieces: Iterable[Piece], piece: str, edge: str) -> tuple[Piece, Edge]:
    """The piece and its edge, which are known to be there; else KeyError."""
    owner = piece_named(pieces, piece)
    found = edge_named(owner, edge) if owner else None
    if owner is None or found is None:
        raise KeyError(f"{piece}.{edge}")
    return owner, found


def dart_named(piece: Piece, name: str) -> Dart | TwoPointedDart | None:
    """The dart of that name, of either kind, if the piece has it."""
    darts: tuple[Dart | TwoPointedDart, ...] = (*piece.darts, *piece.two_pointed)
    return next((dart for dart in darts if dart.name == name), None)


def line_named(piece: Piece, name: str) -> ReferenceLine | None:
    """The reference line of that name, if the piece has it."""
    return next((line for line in piece.lines if line.name == name), None)


def corner_named(piece: Piece, name: str) -> Point | None:
    """The corner of the outline of that name, if the piece has it."""
    for edge in piece.edges:
        if edge.start == name:
            return edge.parts[0].start
        if edge.end == name:
            return edge.parts[-1].end
    return None


def point_named(piece: Piece, name: str) -> Point | None:
    """The point of that name: a corner, else a point inside, else the tip of the dart `<dart>-tip`."""
    corner = corner_named(piece, name)
    if corner is not None:
        return corner
    for point in piece.points:
        if point.name == name:
            return point.at
    if name.endswith(TIP):
        dart = next((dart for dart in piece.darts if dart.name == name.removesuffix(TIP)), None)
        return dart_tip(dart) if dart is not None else None
    return None


def edges_at(piece: Piece, corner: str) -> tuple[Edge | None, Edge | None]:
    """The edge that ends at the corner and the edge that starts there."""
    ending = next((edge for edge in piece.edges if edge.end == corner), None)
    starting = next((edge for edge in piece.edges if edge.start == corner), None)
    return ending, starting


def names_of(piece: Piece) -> tuple[str, ...]:
    """Every name that the piece has, each once: edges, corners, darts, lines, points."""
    names = [edge.name for edge in piece.edges]
    for edge in piece.edges:
        names += (edge.start, edge.end)
    names += (dart.name for dart in piece.darts)
    names += (dart.name for dart in piece.two_pointed)
    names += (line.name for line in piece.lines)
    names += (point.name for point in piece.points)
    return tuple(dict.fromkeys(names))
