"""Owns edges and pieces told another way: backward, two as one, with other names; knows no verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.pattern.measure import stitched_length
from specc.pattern.piece import NamedPoint, ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.geometry.path import Path
    from specc.pattern.piece import Dart, Edge, Notch, Piece


def edge_backward(edge: Edge) -> Edge:
    """The edge from its end to its start: the same cloth, counted from the other corner."""
    whole = stitched_length(edge)
    return replace(
        edge,
        start=edge.end,
        end=edge.start,
        parts=line_backward(edge.parts),
        darts=edge.darts[::-1],
        gathers=tuple(replace(g, start=whole - g.end, end=whole - g.start) for g in reversed(edge.gathers)),
        folds=tuple(
            replace(fold, at=whole - fold.at, onto_after=not fold.onto_after) for fold in reversed(edge.folds)
        ),
    )


def line_backward(parts: tuple[Path, ...]) -> tuple[Path, ...]:
    """The parts of a line from its end to its start."""
    return tuple(part.reversed() for part in reversed(parts))


def dart_backward(dart: Dart) -> Dart:
    """The dart on an edge that is travelled the other way."""
    return replace(dart, first=dart.second, second=dart.first)


def notch_backward(notch: Notch, edge: Edge) -> Notch:
    """The notch counted from the other corner of its edge."""
    return replace(notch, at=stitched_length(edge) - notch.at)


def piece_backward(piece: Piece) -> Piece:
    """The piece with its outline travelled the other way; nothing has moved."""
    edges = {edge.name: edge for edge in piece.edges}
    return replace(
        piece,
        edges=tuple(edge_backward(edge) for edge in reversed(piece.edges)),
        darts=tuple(dart_backward(dart) for dart in piece.darts),
        notches=tuple(notch_backward(notch, edges[notch.edge]) for notch in piece.notches),
    )


def one_edge(before: Edge, after: Edge, name: str) -> Edge:
    """Two edges that follow one another as one edge; the second is made to begin where the first ends."""
    whole = stitched_length(before)
    return replace(
        before,
        name=name,
        end=after.end,
        parts=one_line(before.parts, after.parts),
        darts=(*before.darts, *after.darts),
        gathers=(
            *before.gathers,
            *(replace(g, start=g.start + whole, end=g.end + whole) for g in after.gathers),
        ),
        folds=(*before.folds, *(replace(fold, at=fold.at + whole) for fold in after.folds)),
    )


def one_line(before: tuple[Path, ...], after: tuple[Path, ...]) -> tuple[Path, ...]:
    """The parts of two lines as those of one; the second is made to begin where the first ends."""
    joint = before[-1].joined(after[0].between_points(before[-1].end, after[0].end))
    return (*before[:-1], joint, *after[1:])


def renamed(piece: Piece, names: Mapping[str, str]) -> Piece:
    """The piece with other names for some of its parts, whatever they are; its own name and history stay."""

    def new(name: str) -> str:
        return names.get(name, name)

    return replace(
        piece,
        edges=tuple(
            replace(
                edge,
                name=new(edge.name),
                start=new(edge.start),
                end=new(edge.end),
                darts=tuple(new(dart) for dart in edge.darts),
            )
            for edge in piece.edges
        ),
        darts=tuple(replace(dart, name=new(dart.name), edge=new(dart.edge)) for dart in piece.darts),
        two_pointed=tuple(replace(dart, name=new(dart.name)) for dart in piece.two_pointed),
        lines=tuple(ReferenceLine(new(line.name), line.parts) for line in piece.lines),
        points=tuple(NamedPoint(new(point.name), point.at) for point in piece.points),
        notches=tuple(replace(notch, edge=new(notch.edge)) for notch in piece.notches),
        fold=new(piece.fold) if piece.fold is not None else None,
    )
