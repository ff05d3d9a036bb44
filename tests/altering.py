"""Owns what tests of alterations share: amounts without a text, what every piece must be; knows no verb."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from specc.alteration.refusal import REASONS, Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import crosses_itself
from specc.model.alteration import PieceRef, Place
from specc.model.expression import PartRef
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import drawn_outline, flat_outline, notched_outline
from specc.pattern.piece import Edge, Piece

# Expressions and places in a text belong to other stages: here an expression is a number with a dimension.
ORIGIN: Any = SimpleNamespace(line=41)


def length(value: float) -> Any:
    return SimpleNamespace(number=float(value), dimension=SimpleNamespace(length=1))


def share(value: float) -> Any:
    return SimpleNamespace(number=float(value), dimension=SimpleNamespace(length=0))


def evaluate(expression: Any) -> float:
    return float(expression.number)


def part(name: str, piece: str = "front") -> PartRef:
    return PartRef(piece, name, ORIGIN)


def whole(piece: str = "front") -> PieceRef:
    return PieceRef(piece, ORIGIN)


def at_share(value: float) -> Place:
    return Place(share(value), ORIGIN)


def at_length(value: float, corner: str | None = None) -> Place:
    return Place(length(value), ORIGIN, corner)


def polygon(*corners: Point, fold: str | None = None, cut: int = 1) -> Piece:
    """A piece of straight edges a, b, c, ... between corners A, B, C, ..."""
    names = "abcdefgh"[: len(corners)]
    edges = tuple(
        Edge(n, n.upper(), m.upper(), (Path.through(p, q),))
        for n, m, p, q in zip(names, names[1:] + names[0], corners, corners[1:] + corners[:1], strict=True)
    )
    return Piece("front", "front", edges, fold=fold, cut=cut)


def rectangle(width: float, height: float, *, fold: str | None = None, cut: int = 1) -> Piece:
    """Edges a bottom, b right, c top, d left."""
    corners = (Point(0, 0), Point(width, 0), Point(width, height), Point(0, height))
    return polygon(*corners, fold=fold, cut=cut)


def edge(piece: Piece, name: str) -> Edge:
    found = edge_named(piece, name)
    assert found is not None, name
    return found


def sewn(piece: Piece, name: str) -> float:
    return stitched_length(edge(piece, name))


def altered(result: tuple[Piece, ...] | Refusal) -> Piece:
    """The last of the pieces, which hang together; there is no refusal."""
    assert isinstance(result, tuple), result
    is_whole(result[-1])
    return result[-1]


def refused(result: tuple[Piece, ...] | Refusal) -> str:
    """The name of the reason, whose sentences its facts complete."""
    assert isinstance(result, Refusal)
    (message,) = (reason.message for reason in REASONS if reason.name == result.code_name)
    assert message.format_map(dict(result.facts))
    assert result.help.format_map(dict(result.facts))
    return result.code_name


def is_whole(piece: Piece) -> None:
    """The piece hangs together: a closed outline that does not cross itself, marks and darts on its edges."""
    assert drawn_outline(piece).closed
    assert notched_outline(piece).closed
    assert not crosses_itself(flat_outline(piece))
    for before, after in zip(piece.edges, piece.edges[1:] + piece.edges[:1], strict=True):
        assert before.end == after.start
        assert before.parts[-1].end.distance(after.parts[0].start) < 1e-6
    hosted = [name for e in piece.edges for name in e.darts]
    assert sorted(hosted) == sorted(dart.name for dart in piece.darts)
    for dart in piece.darts:
        host = edge(piece, dart.edge)
        index = host.darts.index(dart.name)
        assert host.parts[index].end.distance(dart.first) < 1e-6
        assert host.parts[index + 1].start.distance(dart.second) < 1e-6
    for notch in piece.notches:
        assert -1e-3 <= notch.at <= sewn(piece, notch.edge) + 1e-3
    for e in piece.edges:
        reach = stitched_length(e) + 1e-6
        assert all(-1e-6 <= g.start < g.end <= reach and g.amount > 0.0 for g in e.gathers)
        assert all(-1e-6 <= fold.at <= reach and fold.amount > 0.0 for fold in e.folds)
