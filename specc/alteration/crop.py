"""Owns the verb `crop`: what lies below a level is cut off; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.level import ON, cut_by, dart_cut, level_of
from specc.alteration.marks import cut_to
from specc.alteration.refusal import Refusal, found, line_of
from specc.alteration.runs import edges_from, parted, regrouped, replaced, with_gone
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.region import centroid
from specc.geometry.tolerance import SAME
from specc.pattern.outline import flat_outline, grain_direction
from specc.pattern.piece import Dart, Edge, ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from specc.alteration.level import Cut, Level
    from specc.model.alteration import Crop
    from specc.model.alteration import Level as Asked
    from specc.model.expression import Expression
    from specc.pattern.piece import Notch, Piece, TwoPointedDart


def apply(
    pieces: tuple[Piece, ...], step: Crop, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces above the level; the new edge bears the name of the lowest edge that the cut replaces."""
    for ref in step.pieces:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        level = level_of(piece, step.at, evaluate)
        if isinstance(level, Refusal):
            return level
        if abs(min(level.height(point) for point in flat_outline(piece))) <= ON:
            continue  # the piece ends at the level already
        cropped = _cropped(piece, level, step.at, f"cropped away {line_of(step.origin)}")
        if isinstance(cropped, Refusal):
            return cropped
        pieces = replaced(pieces, cropped)
    return pieces


def _cropped(piece: Piece, level: Level, asked: Asked, how: str) -> Piece | Refusal:
    cut = cut_by(piece, level, asked)
    if isinstance(cut, Refusal):
        return cut
    kept = {run.edge for run in cut.above}
    lost = [run for run in cut.below if run.edge not in kept]
    if not lost:
        facts = (("piece", piece.name), ("edge", cut.down.edge))
        return Refusal("level-cuts-one-edge", facts, asked.origin, "lengthen or shorten that edge instead")
    if piece.fold is not None and piece.fold not in kept:
        cure = "take a level that leaves some of the fold"
        return Refusal("fold-cut-away", (("piece", piece.name),), asked.origin, cure)
    darts = _darts(piece, cut, asked)
    if isinstance(darts, Refusal):
        return darts
    inner, opened = _two_pointed(piece, level, asked)
    if isinstance(inner, Refusal):
        return inner
    lowest = min(lost, key=lambda run: min(p.dot(level.up) for p in run.path.flattened())).edge
    bottom, on_bottom = _bottom(piece, cut, lowest, (*darts, *opened))
    edges = _kept_edges(piece, cut, bottom)
    cropped = replace(
        piece,
        edges=edges,
        darts=(*(d for d in darts if d.name not in bottom.darts), *on_bottom),
        two_pointed=inner,
        lines=_lines(piece, level),
        points=tuple(point for point in piece.points if level.height(point.at) >= -ON),
        notches=tuple(_notches(piece, cut)),
    )
    return with_gone(piece, replace(cropped, grain=_grain(cropped, level)), how)


def _bottom(piece: Piece, cut: Cut, name: str, darts: Iterable[Dart]) -> tuple[Edge, tuple[Dart, ...]]:
    """The new edge along the level, and the darts whose mouths now lie on it."""
    path = cut.across()
    mouths: list[tuple[float, float, Dart]] = []
    for dart in darts:
        met = [crossings(path, Path.through(dart.pivot, end)) for end in (dart.first, dart.second)]
        if all(met):
            low, high = sorted(m[0].along for m in met)
            mouths.append((low, high, dart))
    mouths.sort(key=lambda mouth: mouth[0])
    stops = [0.0, *(stop for low, high, _ in mouths for stop in (low, high)), path.length()]
    parts = tuple(path.between(low, high) for low, high in zip(stops[::2], stops[1::2], strict=True))
    moved = tuple(
        replace(dart, edge=name, first=parts[index].end, second=parts[index + 1].start)
        for index, (_, _, dart) in enumerate(mouths)
    )
    old = next(edge for edge in piece.edges if edge.name == name)
    before = next(edge for edge in piece.edges if edge.name == cut.above[-1].edge)
    after = next(edge for edge in piece.edges if edge.name == cut.above[0].edge)
    edge = Edge(
        name,
        before.end,
        after.start,
        parts,
        tuple(dart.name for dart in moved),
        out_of_sight=old.out_of_sight,
    )
    return edge, moved


def _kept_edges(piece: Piece, cut: Cut, bottom: Edge) -> tuple[Edge, ...]:
    """The edges in their old order: those above, as short as they were cut, and the new one in place."""
    above = {edge.name: edge for edge in edges_from(piece, cut.above)}
    above = {name: cut_to(edge, *_span(cut, name)) for name, edge in above.items()}
    above[bottom.name] = bottom
    return tuple(above[edge.name] for edge in piece.edges if edge.name in above)


def _span(cut: Cut, edge: str) -> tuple[float, float]:
    """The stretch of an edge that is kept, in its old stitched length."""
    low = cut.back.stitched if edge == cut.back.edge and cut.above[0].edge == edge else 0.0
    high = cut.down.stitched if edge == cut.down.edge and cut.above[-1].edge == edge else float("inf")
    return low, high


def _notches(piece: Piece, cut: Cut) -> Iterable[Notch]:
    kept = {run.edge for run in cut.above}
    for notch in piece.notches:
        low, high = _span(cut, notch.edge)
        if notch.edge in kept and low - SAME <= notch.at <= high + SAME:
            yield replace(notch, at=max(0.0, notch.at - low))


def _darts(piece: Piece, cut: Cut, asked: Asked) -> tuple[Dart, ...] | Refusal:
    """The edge darts that are left: wholly above, or with both legs cut and the pivot above."""
    above = {run.dart for run in cut.above}
    path = cut.across()
    kept: list[Dart] = []
    for dart in piece.darts:
        legs = [bool(crossings(path, Path.through(dart.pivot, end))) for end in (dart.first, dart.second)]
        high = cut.level.height(dart.pivot) > ON
        if dart.name in above:
            if any(legs) or not high:
                return dart_cut(piece, dart, asked)
            kept.append(dart)
        elif all(legs) and high:
            kept.append(dart)
        elif any(legs) and high:
            return dart_cut(piece, dart, asked)
    return tuple(kept)


def _two_pointed(
    piece: Piece, level: Level, asked: Asked
) -> tuple[tuple[TwoPointedDart, ...] | Refusal, tuple[Dart, ...]]:
    """The darts inside the piece that stay whole, and those that the level opens."""
    whole: list[TwoPointedDart] = []
    opened: list[Dart] = []
    for dart in piece.two_pointed:
        top, widest = level.height(dart.top), min(level.height(dart.first), level.height(dart.second))
        if min(top, widest, level.height(dart.bottom)) >= -ON:
            whole.append(dart)
        elif top > ON and max(level.height(dart.first), level.height(dart.second)) <= ON:
            opened.append(Dart(dart.name, "", dart.first, dart.second, dart.top))
        elif top > ON:
            facts = (("piece", piece.name), ("dart", dart.name))
            cure = "release `{dart}` first, or take another level"
            return Refusal("level-cuts-dart", facts, asked.origin, cure), ()
    return tuple(whole), tuple(opened)


def _lines(piece: Piece, level: Level) -> tuple[ReferenceLine, ...]:
    kept = []
    for line in piece.lines:
        parts = [
            stretch
            for part in line.parts
            for stretch in parted(part, (c.along for c in crossings(part, level.line)))
            if level.height(stretch.point_at(0.5 * stretch.length())) >= -ON
        ]
        if parts:
            kept.append(ReferenceLine(line.name, regrouped(parts)))
    return tuple(kept)


def _grain(piece: Piece, level: Level) -> Path | None:
    """The grain line above the level; if nothing is left of it, one in the middle, a third of the height."""
    if piece.grain is None:
        return None
    stretches = parted(piece.grain, (c.along for c in crossings(piece.grain, level.line)))
    kept = [s for s in stretches if level.height(s.point_at(0.5 * s.length())) >= -ON]
    if kept:
        return max(kept, key=Path.length)
    polygon = flat_outline(piece)
    middle, up = centroid(polygon), grain_direction(piece)
    heights = [point.dot(up) for point in polygon]
    half = (max(heights) - min(heights)) / 6.0
    drawn = Path.through(middle - up * half, middle + up * half)
    along = piece.grain.end - piece.grain.start
    return drawn if along.dot(up) >= 0.0 else drawn.reversed()
