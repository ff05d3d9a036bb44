"""Owns the verbs `lengthen` and `shorten`, at a level or at an edge; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.level import ON, cut_by, level_of
from specc.alteration.marks import drawn_in_at
from specc.alteration.moving_edge import edge_moved
from specc.alteration.refusal import Refusal, found, line_of
from specc.alteration.runs import NEAR, linked, parted, replaced, with_gone
from specc.geometry.crossing import crossings
from specc.geometry.fit import blend
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.tolerance import SAME
from specc.pattern.measure import place_on_edge
from specc.pattern.piece import NamedPoint, ReferenceLine, TwoPointedDart

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.level import Level
    from specc.geometry.point import Point
    from specc.model.alteration import Lengthen
    from specc.model.alteration import Level as Asked
    from specc.model.expression import Expression
    from specc.pattern.piece import Dart, Edge, Piece

LEGS_APART: Final = 0.5  # mm by which a dart's legs may come to differ
STRAIGHT: Final = 1e-6  # sine of the angle below which two runs are one straight run


def apply(
    pieces: tuple[Piece, ...], step: Lengthen, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces longer or shorter by the amount: below a level, or by moving an edge."""
    by = evaluate(step.by)
    if by < 0.0:
        cure = (
            "use `lengthen` instead of `shorten`" if step.shorten else "use `shorten` instead of `lengthen`"
        )
        return Refusal("amount-not-positive", (("by", by),), step.origin, cure)
    if by <= SAME:
        return pieces
    for ref in step.pieces:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        altered: Piece | Refusal
        if isinstance(step.at, str):
            how = f"trimmed away {line_of(step.origin)}"
            altered = edge_moved(piece, step.at, -by if step.shorten else by, origin=step.origin, how=how)
        else:
            altered = _at_level(piece, step.at, by, step=step, evaluate=evaluate)
        if isinstance(altered, Refusal):
            return altered
        pieces = replaced(pieces, altered)
    return pieces


def _at_level(
    piece: Piece, asked: Asked, by: float, *, step: Lengthen, evaluate: Callable[[Expression], float]
) -> Piece | Refusal:
    level = level_of(piece, asked, evaluate)
    if isinstance(level, Refusal):
        return level
    band = Band(level, -by if step.shorten else by)
    for one in (level, level.lowered(by)) if step.shorten else (level,):
        cut = cut_by(piece, one, asked)
        if isinstance(cut, Refusal):
            return cut
    held = _held(piece, band)
    if held is not None:
        facts = (("piece", piece.name), ("name", held))
        return Refusal("band-holds-part", facts, asked.origin, "take another level, or a smaller amount")
    altered = _banded(piece, band)
    crooked = next((dart for dart in altered.darts if _grew_crooked(piece, dart)), None)
    if crooked is not None:
        cure = "swing or release `{dart}` first, or take another level"
        return Refusal("level-cuts-dart", (("piece", piece.name), ("dart", crooked.name)), asked.origin, cure)
    return with_gone(piece, altered, f"taken out {line_of(step.origin)}")


def _held(piece: Piece, band: Band) -> str | None:
    """The name of a corner, or of a dart whose mouth, lies in a band that is taken out."""
    for edge in piece.edges:
        if band.holds(edge.parts[0].start):
            return edge.start
    for dart in piece.darts:
        if band.holds(dart.first) or band.holds(dart.second):
            return dart.name
    return None


def _grew_crooked(piece: Piece, dart: Dart) -> bool:
    before = next(old for old in piece.darts if old.name == dart.name)
    return _unequal(dart) > _unequal(before) + LEGS_APART


def _unequal(dart: Dart) -> float:
    return abs(dart.first.distance(dart.pivot) - dart.second.distance(dart.pivot))


@dataclass(frozen=True, slots=True)
class Band:
    """A band put in below a level, `by` millimetres wide along the grain; taken out if negative."""

    level: Level
    by: float

    def holds(self, point: Point) -> bool:
        """Whether the point lies in a band that is taken out."""
        return self.by + ON < self.level.height(point) < -ON

    def moved(self, point: Point) -> Point:
        """Where a point of the piece goes; one in a band that is taken out goes up to the level."""
        height = self.level.height(point)
        if height >= -ON:
            return point
        return point - self.level.up * (self.by if self.by > 0.0 else max(self.by, height))

    def stretches(self, path: Path) -> tuple[Path, ...]:
        """What is left of the path, each stretch where it goes."""
        cuts = [c.along for c in crossings(path, self.level.line)]
        if self.by < 0.0:
            cuts += [c.along for c in crossings(path, self.level.lowered(-self.by).line)]
        kept = []
        motion = Rigid.moving(self.level.up * -self.by)
        for stretch in parted(path, cuts):
            middle = stretch.point_at(0.5 * stretch.length())
            if self.level.height(middle) >= -ON:
                kept.append(stretch)
            elif not self.holds(middle):
                kept.append(stretch.transformed(motion))
        return tuple(kept)

    def outline(self, part: Path) -> Path:
        """A run of the outline with the band put in straight, or taken out and drawn smooth across."""
        kept = self.stretches(part)
        path = kept[0]
        for after in kept[1:]:
            path = linked((path, after)) if self.by > 0.0 else _smooth(path, after)
        # A corner on the level stays while the run below it moves.
        start, end = self.moved(part.start), self.moved(part.end)
        ends = [Path.through(start, path.start)] if start.distance(path.start) > NEAR else []
        beyond = [Path.through(path.end, end)] if end.distance(path.end) > NEAR else []
        return linked((*ends, path, *beyond)).between_points(start, end)


def _smooth(before: Path, after: Path) -> Path:
    """One smooth run: the two joined where they meet straight on, else drawn anew from middle to middle."""
    u, v = before.end_direction(), after.start_direction()
    if before.end.distance(after.start) <= NEAR and abs(u.cross(v)) <= STRAIGHT and u.dot(v) > 0.0:
        return linked((before, after))
    start = before.between(0.0, 0.5 * before.length())
    rest = after.between(0.5 * after.length(), after.length())
    return linked((start, blend(start.end, start.end_direction(), rest.start, rest.start_direction()), rest))


def _banded(piece: Piece, band: Band) -> Piece:
    """The piece with the band put in or taken out, and all inside it moved alike."""
    edges = tuple(
        replace(edge, parts=tuple(band.outline(part) for part in edge.parts)) for edge in piece.edges
    )
    places = {old.name: _Places(old, new, band) for old, new in zip(piece.edges, edges, strict=True)}
    named = {edge.name: edge for edge in edges}
    darts = []
    for dart in piece.darts:
        host = named[dart.edge]
        index = host.darts.index(dart.name)
        first, second = host.parts[index].end, host.parts[index + 1].start
        darts.append(replace(dart, first=first, second=second, pivot=band.moved(dart.pivot)))
    lines = (
        ReferenceLine(line.name, tuple(linked(kept) for part in line.parts if (kept := band.stretches(part))))
        for line in piece.lines
    )
    grain = piece.grain
    return replace(
        piece,
        edges=tuple(drawn_in_at(edge, places[edge.name].stitched) for edge in edges),
        darts=tuple(darts),
        two_pointed=tuple(
            TwoPointedDart(
                d.name, band.moved(d.top), band.moved(d.bottom), band.moved(d.first), band.moved(d.second)
            )
            for d in piece.two_pointed
        ),
        points=tuple(NamedPoint(p.name, band.moved(p.at)) for p in piece.points if not band.holds(p.at)),
        lines=tuple(line for line in lines if line.parts),
        notches=tuple(
            replace(notch, at=places[notch.edge].stitched(notch.at))
            for notch in piece.notches
            if not band.holds(places[notch.edge].at(notch.at))
        ),
        grain=Path.through(band.moved(grain.start), band.moved(grain.end)) if grain else None,
    )


@dataclass(frozen=True, slots=True)
class _Places:
    """Places along an edge before and after a band was put in or taken out."""

    old: Edge
    new: Edge
    band: Band

    def at(self, stitched: float) -> Point:
        return place_on_edge(self.old, stitched).at

    def stitched(self, stitched: float) -> float:
        """Where a place is now, by its stitched length from the start corner."""
        place = place_on_edge(self.old, stitched)
        before = sum(part.length() for part in self.old.parts[: place.part]) + place.along
        along = self.new.parts[place.part].length_at(self.band.moved(place.at))
        return stitched - before + sum(part.length() for part in self.new.parts[: place.part]) + along
