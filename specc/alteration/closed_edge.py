"""Owns an edge with its darts shut as one run, and how a new course of it is opened again; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.alteration.runs import linked
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid

if TYPE_CHECKING:
    from specc.pattern.piece import Dart, Edge, Piece

STILL = Rigid.moving(Point(0.0, 0.0))


@dataclass(frozen=True, slots=True)
class ClosedEdge:
    """An edge as it lies with its darts shut: `motions` take each of its parts there, the first one stays.

    `path` is the whole run. `before` leads away from its start along the edge before it, `after` from its end
    along the edge behind it, with the darts shut.
    """

    edge: Edge
    darts: tuple[Dart, ...]
    motions: tuple[Rigid, ...]
    path: Path
    before: Path
    after: Path

    @staticmethod
    def of(piece: Piece, edge: Edge) -> ClosedEdge:
        """The edge of the piece with its darts shut."""
        inner = {dart.name: dart for dart in piece.darts}
        darts = tuple(inner[name] for name in edge.darts)
        motions = [STILL]
        for dart in darts:
            closing = (dart.second - dart.pivot).angle_to(dart.first - dart.pivot)
            motions.append(motions[-1].after(Rigid.turning(dart.pivot, closing)))
        index = piece.edges.index(edge)
        return ClosedEdge(
            edge,
            darts,
            tuple(motions),
            linked(part.transformed(motion) for part, motion in zip(edge.parts, motions, strict=True)),
            piece.edges[index - 1].parts[-1].reversed(),
            piece.edges[(index + 1) % len(piece.edges)].parts[0].transformed(motions[-1]),
        )

    def opened(self, course: Path) -> tuple[tuple[Path, ...], tuple[Dart, ...]] | str:
        """The parts of a new course of the run, and its darts with their legs reaching to it.

        Where the course does not cross the line of a dart's legs on one side of its pivot, the dart's name.
        """
        stops: list[float] = []
        for dart, motion in zip(self.darts, self.motions, strict=False):
            pivot, mouth = motion(dart.pivot), motion(dart.first)
            reach = pivot.distance(mouth) + course.length()
            leg = Path.through(pivot, pivot + (mouth - pivot).unit() * reach)
            met = [crossing.along for crossing in crossings(course, leg)]
            if len(met) != 1 or not (stops or [0.0])[-1] < met[0] < course.length():
                return dart.name
            stops += met
        shut = [course.between(low, high) for low, high in pairwise((0.0, *stops, course.length()))]
        parts = [part.transformed(motion.inverse()) for part, motion in zip(shut, self.motions, strict=True)]
        darts = tuple(
            replace(dart, first=before.end, second=after.start)
            for dart, (before, after) in zip(self.darts, pairwise(parts), strict=True)
        )
        return tuple(parts), darts
