"""Owns drawings as plain data: strokes and labels in millimetres of paper.

Knows nothing of garments or of SVG.

On paper x runs to the right and y runs down from the top left corner; angles are in radians, clockwise as
seen.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.document.lettering import Lettering
    from specc.document.line import LineKind
    from specc.geometry.point import Point


@dataclass(frozen=True, slots=True)
class Bend:
    """A cubic Bezier run: by way of two handles to its end."""

    first: Point
    second: Point
    to: Point


@dataclass(frozen=True, slots=True)
class Trace:
    """A connected run of straight lines (a Point each) and bends."""

    start: Point
    runs: tuple[Point | Bend, ...]
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Stroke:
    """Traces drawn with one kind of line."""

    line: LineKind
    traces: tuple[Trace, ...]


@dataclass(frozen=True, slots=True)
class Label:
    """A line of text: `at` is the middle of its box, which is turned by `angle`.

    `ground` sets it on a white ground, for a label that stands on a line on purpose.
    """

    text: str
    at: Point
    lettering: Lettering
    angle: float = 0.0
    ground: bool = False

    def moved(self, by: Point) -> Label:
        """The same label, so far off."""
        return replace(self, at=self.at + by)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing of `width` by `height` millimetres of paper.

    `name` is unique in the document and makes the file's name; `title` says in words what is seen. `scale` is
    paper over garment, None where the drawing has no single scale. Later items lie on earlier ones.
    """

    name: str
    title: str
    width: float
    height: float
    scale: Fraction | None
    items: tuple[Stroke | Label, ...]
