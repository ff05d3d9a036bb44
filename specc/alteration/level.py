"""Owns a level across a piece: its line, heights above it, where it cuts the outline; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.alteration.refusal import Refusal, missing
from specc.alteration.runs import NEAR, Run, parted
from specc.geometry.crossing import crossings
from specc.geometry.offset import parallel
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.region import contains
from specc.geometry.segment import Line
from specc.model.expression import PartRef
from specc.pattern.lookup import line_named
from specc.pattern.measure import stitched_at
from specc.pattern.outline import bounds, flat_outline, grain_direction

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point
    from specc.model.alteration import Level as Asked
    from specc.model.expression import Expression
    from specc.pattern.piece import Dart, Piece

ON: Final = 1e-5  # mm; a point this near to the level lies on it


@dataclass(frozen=True, slots=True)
class Level:
    """A level: `line` runs across the piece and straight on beyond it; `up` is the way of the grain."""

    line: Path
    up: Point

    def height(self, point: Point) -> float:
        """How far the point lies above the level along the grain; negative below."""
        met = (
            (segment.point_at(t) - point).dot(self.up)
            for segment in self.line.segments
            for t in segment.crossings_of_line(point, self.up)
        )
        # A level may turn back on itself: its highest place counts.
        return -max(met, default=-float("inf"))

    def lowered(self, by: float) -> Level:
        """The same level further down the grain."""
        return Level(self.line.transformed(Rigid.moving(self.up * -by)), self.up)


@dataclass(frozen=True, slots=True)
class CutEdge:
    """Where a level cuts an edge: stitched length from its start, and length along the level's line."""

    edge: str
    stitched: float
    across: float
    at: Point


@dataclass(frozen=True, slots=True)
class Cut:
    """The outline cut by a level: `above` runs from `back` to `down`, `below` from `down` to `back`.

    Where the level meets the outline at a corner, no run is cut there.
    """

    level: Level
    above: tuple[Run, ...]
    below: tuple[Run, ...]
    down: CutEdge
    back: CutEdge

    def across(self) -> Path:
        """The stretch of the level inside the piece, from `down` to `back`."""
        low, high = sorted((self.down.across, self.back.across))
        path = self.level.line.between(low, high)
        path = path if self.down.across < self.back.across else path.reversed()
        return path.between_points(self.down.at, self.back.at)


def level_of(piece: Piece, asked: Asked, evaluate: Callable[[Expression], float]) -> Level | Refusal:
    """The level that a reference line, or a distance from one, draws through the piece."""
    line = line_named(piece, asked.line)
    if line is None:
        return missing(piece, PartRef(piece.name, asked.line, asked.origin))
    up = grain_direction(piece)
    above = evaluate(asked.above) if asked.above is not None else 0.0
    shifted = [_shifted(part, above, up) for part in line.parts]
    chain = shifted[0]
    for part in shifted[1:]:
        chain = _met(chain, part)
    low, high = bounds(piece)
    reach = low.distance(high) + abs(above)
    return Level(chain.extended(reach, reach), up)


def _shifted(part: Path, above: float, up: Point) -> Path:
    """The part of a reference line moved parallel to itself, upward when `above` is positive."""
    if above == 0.0:
        return part
    left = part.direction_at(0.5 * part.length()).left()
    return parallel(part, above if left.dot(up) > 0.0 else -above)


def _met(chain: Path, part: Path) -> Path:
    """Two neighbouring parts of a level as one: at their crossing, else joined straight across."""
    crossing = crossings(chain, part)
    inside = [
        c
        for c in crossing
        if NEAR < c.along < chain.length() - NEAR and NEAR < c.across < part.length() - NEAR
    ]
    if inside:
        before = chain.between(0.0, inside[-1].along)
        after = part.between(inside[-1].across, part.length())
        return before.joined(after.between_points(before.end, after.end))
    if chain.end.distance(part.start) > NEAR:
        chain = chain.joined(Path((Line(chain.end, part.start),)))
    return chain.joined(part.between_points(chain.end, part.end))


def cut_by(piece: Piece, level: Level, asked: Asked) -> Cut | Refusal:
    """The outline cut where the level enters and leaves the piece, or why it cannot be."""
    runs: list[Run] = []
    cuts: list[tuple[float, int, CutEdge]] = []  # along the level, the run that follows the cut, the place
    for edge in piece.edges:
        for index, (part, dart) in enumerate(zip(edge.parts, (*edge.darts, None), strict=True)):
            met = crossings(part, level.line)
            pieces = parted(part, (crossing.along for crossing in met))
            for crossing in met:
                place = CutEdge(
                    edge.name, stitched_at(edge, index, crossing.along), crossing.across, crossing.at
                )
                following = len(runs) + min(
                    range(len(pieces) + 1),
                    key=lambda i: abs(crossing.along - sum(p.length() for p in pieces[:i])),
                )
                cuts.append((crossing.across, following, place))
            runs += (Run(edge.name, path, None) for path in pieces[:-1])
            runs.append(Run(edge.name, pieces[-1], dart))
    refused = _through_mouth(piece, level, asked)
    if refused is not None:
        return refused
    return _halved(piece, level, asked, runs=tuple(runs), cuts=_single(cuts, len(runs)))


def _single(cuts: list[tuple[float, int, CutEdge]], count: int) -> list[tuple[float, int, CutEdge]]:
    """The cuts in order along the level, a corner that was found on both its edges once."""
    kept: list[tuple[float, int, CutEdge]] = []
    for across, following, place in sorted(cuts, key=lambda cut: (cut[0], cut[1] % count)):
        if not (kept and abs(kept[-1][0] - across) <= NEAR):
            kept.append((across, following % count, place))
    return kept


def _through_mouth(piece: Piece, level: Level, asked: Asked) -> Refusal | None:
    for dart in piece.darts:
        if crossings(Path.through(dart.first, dart.second), level.line):
            return dart_cut(piece, dart, asked)
    return None


def dart_cut(piece: Piece, dart: Dart, asked: Asked) -> Refusal:
    """The refusal for a level that cuts a dart in a way that leaves no dart."""
    facts = (("piece", piece.name), ("dart", dart.name))
    return Refusal(
        "level-cuts-dart", facts, asked.origin, "swing or release `{dart}` first, or take another level"
    )


def _halved(
    piece: Piece,
    level: Level,
    asked: Asked,
    *,
    runs: tuple[Run, ...],
    cuts: list[tuple[float, int, CutEdge]],
) -> Cut | Refusal:
    polygon = flat_outline(piece)
    inside = [
        (a, b)
        for a, b in pairwise(cuts)
        if b[0] - a[0] > NEAR and contains(polygon, level.line.point_at(0.5 * (a[0] + b[0])))
    ]
    if not inside:
        heights = [level.height(point) for point in polygon]
        facts = (("piece", piece.name), ("lowest", min(heights)), ("highest", max(heights)))
        cure = "take a level that lies inside: the piece reaches from {lowest} to {highest} above this one"
        return Refusal("level-outside-piece", facts, asked.origin, cure)
    if len(inside) > 1:
        cure = "take a level that crosses the piece once"
        return Refusal("level-crosses-twice", (("piece", piece.name),), asked.origin, cure)
    (first, second) = inside[0]
    one = _ring(runs, first[1], second[1])
    other = _ring(runs, second[1], first[1])
    if _top(one, level.up) > _top(other, level.up):
        return Cut(level, one, other, down=second[2], back=first[2])
    return Cut(level, other, one, down=first[2], back=second[2])


def _ring(runs: tuple[Run, ...], start: int, stop: int) -> tuple[Run, ...]:
    return runs[start:stop] if start < stop else (*runs[start:], *runs[:stop])


def _top(runs: tuple[Run, ...], up: Point) -> float:
    return max(point.dot(up) for run in runs for segment in run.path.segments for point in segment.extremes())
