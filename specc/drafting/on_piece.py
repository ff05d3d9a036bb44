"""Owns one piece within its environment: what drawing it may ask for, and what grading it may.

Knows nothing of how anything is found.
"""

# What each method gives is said in the protocols: `Finder` and `specc.drafting.grading.OnePiece`.
# ruff: noqa: D102

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.drafting.environment import Environment
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.geometry.svg import Drawn
    from specc.model.block import On
    from specc.model.expression import Expression, PartRef
    from specc.model.tracing import Along
    from specc.pattern.piece import Edge
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class OnPiece:
    """What drafting one piece may ask for: the Finder of points and edges."""

    environment: Environment
    piece: str

    def at(self, name: str) -> Point:
        return self.environment.point_of(self.piece, name)

    def referred(self, ref: PartRef) -> Point:
        return self.environment.point(ref)

    def value(self, expression: Expression) -> float:
        return self.environment.value(self.piece, expression)

    def drawn(self, path: str) -> Drawn:
        return self.environment.drawn(self.piece, path)

    def along(self, run: Along, start: str) -> Path:
        return self.environment.along(self.piece, run, start)

    def placed(self, on: On, origin: Span) -> Point:
        return self.environment.placed(self.piece, on, origin)


@dataclass(frozen=True, slots=True)
class AsMeasured:
    """One piece as measured and graded: what grading asks of it."""

    environment: Environment
    piece: str

    def at(self, name: str) -> Point:
        return self.environment.measured_point(self.piece, name)

    def edge(self, name: str) -> Edge:
        return self.environment.edge_of(self.piece, name)[0]

    def value(self, expression: Expression) -> float:
        return self.environment.value(self.piece, expression)
