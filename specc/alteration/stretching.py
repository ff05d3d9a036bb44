"""Owns a piece stretched square to the grain between two lines along the grain; knows no verb.

That is the limit of ever more and ever narrower parallel slashes: every cubic stays a cubic.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.bending import without_kinks
from specc.alteration.fitting import fitted_inside
from specc.alteration.runs import linked, parted
from specc.geometry.crossing import line_crossings
from specc.geometry.tolerance import SAME
from specc.pattern.measure import place_on_edge
from specc.pattern.piece import NamedPoint, ReferenceLine, TwoPointedDart

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.pattern.piece import Edge, Piece

SMOOTH: Final = 1e-3  # radians; runs that meet at a smaller turn meet smoothly


@dataclass(frozen=True, slots=True)
class Stretch:
    """The band that is stretched: it begins at the line along the grain through `on`.

    `across` is the unit direction from there into the band, square to the grain. All before the band stays,
    all behind it moves by `by`, and what lies in it, `width` wide, gets wider by as much.
    """

    on: Point
    across: Point
    width: float
    by: float

    def depth(self, point: Point) -> float:
        """How far into the band the point lies: negative before it, more than the width behind it."""
        return (point - self.on).dot(self.across)

    def holds(self, *points: Point) -> bool:
        """Whether some of what spans the points lies in the band."""
        depths = [self.depth(point) for point in points]
        return min(depths) < self.width - SAME and max(depths) > SAME

    def __call__(self, point: Point) -> Point:
        """Where the point moves."""
        return point + self.across * (self.by * min(1.0, max(0.0, self.depth(point) / self.width)))

    def stretches(self, path: Path) -> tuple[Path, ...]:
        """The path where it moves, in stretches that end at the lines of the band."""
        along = self.across.left()
        lines = (self.on, self.on + self.across * self.width)
        cuts = (crossing.along for on in lines for crossing in line_crossings(path, on, along))
        return tuple(self._moved(stretch) for stretch in parted(path, cuts))

    def path(self, path: Path) -> Path:
        """The path where it moves; where it was smooth at the lines of the band, it stays so, and as long."""
        stretches = self.stretches(path)
        kinked = linked(stretches)
        if len(stretches) == 1 or _turns(path):
            return kinked
        smooth = without_kinks(stretches, length=kinked.length())
        return kinked if smooth is None else smooth

    def growth(self, path: Path, along: float) -> float:
        """By how much the path grows up to a length from its start."""
        if along <= SAME:
            return 0.0
        start = path.between(0.0, along)
        return sum(stretch.length() for stretch in self.stretches(start)) - start.length()

    def edge_growth(self, edge: Edge, stitched: float) -> float:
        """By how much the cloth along an edge grows up to a stitched length from its start."""
        place = place_on_edge(edge, stitched)
        before = sum(self.growth(part, part.length()) for part in edge.parts[: place.part])
        return before + self.growth(edge.parts[place.part], place.along)

    def _moved(self, stretch: Path) -> Path:
        """A stretch that lies before, in or behind the band, every point moved as is usual there."""
        depth = self.depth(stretch.point_at(0.5 * stretch.length()))
        if depth <= 0.0:
            return stretch
        inside = depth < self.width

        def where(point: Point) -> Point:
            share = self.depth(point) / self.width if inside else 1.0
            return point + self.across * (self.by * share)

        return stretch.mapped(where)


def _turns(path: Path) -> bool:
    """Whether the path has corners of its own."""
    return any(
        abs(a.end_direction().angle_to(b.start_direction())) > SMOOTH
        for a, b in zip(path.segments, path.segments[1:], strict=False)
    )


def stretched(piece: Piece, stretch: Stretch) -> Piece:
    """The piece where it moves; notches, and what is drawn in, still count as they did on the edges before.

    Darts lie before or behind the band.
    """
    kinked = replace(
        piece,
        edges=tuple(
            _with_parts(edge, [linked(stretch.stretches(part)) for part in edge.parts])
            for edge in piece.edges
        ),
        darts=tuple(
            replace(dart, first=stretch(dart.first), second=stretch(dart.second), pivot=stretch(dart.pivot))
            for dart in piece.darts
        ),
        two_pointed=tuple(
            TwoPointedDart(
                dart.name, stretch(dart.top), stretch(dart.bottom), stretch(dart.first), stretch(dart.second)
            )
            for dart in piece.two_pointed
        ),
        lines=tuple(
            ReferenceLine(line.name, tuple(linked(stretch.stretches(part)) for part in line.parts))
            for line in piece.lines
        ),
        points=tuple(NamedPoint(point.name, stretch(point.at)) for point in piece.points),
        grain=linked(stretch.stretches(piece.grain)) if piece.grain else None,
    )
    edges = tuple(_with_parts(edge, [stretch.path(part) for part in edge.parts]) for edge in piece.edges)
    return fitted_inside(kinked, replace(kinked, edges=edges))


def _with_parts(edge: Edge, parts: list[Path]) -> Edge:
    return replace(edge, parts=tuple(parts))
