"""Owns what drafting one piece may ask for; knows nothing of how it is found."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.geometry.point import Point
    from specc.geometry.svg import Drawn
    from specc.model.block import On
    from specc.model.expression import Expression, PartRef
    from specc.model.tracing import Along
    from specc.source import Span


class Finder(Protocol):
    """Points and values of one piece in one size; each method raises EvaluationError where there is none."""

    def at(self, name: str) -> Point:
        """The point of that name on this piece."""

    def referred(self, ref: PartRef) -> Point:
        """The point of that piece and name."""

    def value(self, expression: Expression) -> float:
        """The value in millimetres, radians or a plain number."""

    def drawn(self, path: str) -> Drawn:
        """A path of the drawing that the piece is taken from."""

    def along(self, run: Along, start: str) -> Path:
        """The run from a point that follows a path of the drawing."""

    def placed(self, on: On, origin: Span) -> Point:
        """The place on an edge or reference line."""
