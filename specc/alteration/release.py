"""Owns the verb `release`: darts are left unsewn and become ease; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.halves import closed_up
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import NEAR, edges_from, replaced, runs_of
from specc.geometry.path import Path
from specc.geometry.segment import Line
from specc.pattern.lookup import dart_named
from specc.pattern.measure import dart_width, stitched_at
from specc.pattern.piece import Dart, Gathers, Gone, ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.alteration import Release
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Edge, Piece

ON_LEG = 0.01  # mm; a line that ends this near to a dart's leg ends at it


def apply(
    pieces: tuple[Piece, ...], step: Release, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces without the darts: an edge grows by the mouth of each, lines by what it took in."""
    for ref in step.darts:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        released = _released(piece, ref, f"released {line_of(step.origin)}")
        if isinstance(released, Refusal):
            return released
        pieces = replaced(pieces, released)
    return pieces


def _released(piece: Piece, ref: PartRef, how: str) -> Piece | Refusal:
    dart = dart_named(piece, ref.name)
    if dart is None:
        return missing(piece, ref)
    gone = (*piece.gone, Gone(dart.name, how))
    if not isinstance(dart, Dart):
        inner = tuple(other for other in piece.two_pointed if other.name != dart.name)
        return replace(piece, two_pointed=inner, gone=gone)
    host = next(edge for edge in piece.edges if dart.name in edge.darts)
    index = host.darts.index(dart.name)
    at = stitched_at(host, index, host.parts[index].length())
    mouth = dart_width(dart)

    def behind(stitched: float) -> float:
        return stitched + mouth if stitched > at else stitched

    edges = edges_from(piece, closed_up(runs_of(piece), dart.name))
    return replace(
        piece,
        edges=tuple(_with_gathers(edge, behind) if edge.name == host.name else edge for edge in edges),
        darts=tuple(other for other in piece.darts if other.name != dart.name),
        lines=tuple(ReferenceLine(line.name, _bridged(line.parts, dart)) for line in piece.lines),
        notches=tuple(
            replace(notch, at=behind(notch.at)) if notch.edge == host.name else notch
            for notch in piece.notches
        ),
        gone=gone,
    )


def _with_gathers(edge: Edge, behind: Callable[[float], float]) -> Edge:
    moved = tuple(Gathers(behind(g.start), behind(g.end), g.amount) for g in edge.gathers)
    return replace(edge, gathers=moved)


def _bridged(parts: tuple[Path, ...], dart: Dart) -> tuple[Path, ...]:
    """The parts of a line with the two on either side of the dart joined straight across it."""
    first, second = Path.through(dart.pivot, dart.first), Path.through(dart.pivot, dart.second)
    kept = [parts[0]]
    for part in parts[1:]:
        before = kept[-1]
        across = any(
            a.distance_to(before.end) <= ON_LEG and b.distance_to(part.start) <= ON_LEG
            for a, b in ((first, second), (second, first))
        )
        if not across:
            kept.append(part)
            continue
        if before.end.distance(part.start) > NEAR:
            before = before.joined(Path((Line(before.end, part.start),)))
        kept[-1] = before.joined(part.between_points(before.end, part.end))
    return tuple(kept)
