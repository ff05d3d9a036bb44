"""Owns the expressions of a checked garment: names are resolved, dimensions are known, nothing is evaluated.

Knows nothing of text beyond the place each expression came from, and nothing of geometry's methods.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.source import Span
    from specc.units import Dimension, Quantity


@dataclass(frozen=True, slots=True)
class Constant:
    """A value written in the text."""

    value: Quantity
    origin: Span


@dataclass(frozen=True, slots=True)
class Named:
    """A measurement of the chart, a parameter, or a value named with `let` or `find`."""

    name: str
    dimension: Dimension
    origin: Span


class Operator(StrEnum):
    """Arithmetic between two values."""

    PLUS = "+"
    MINUS = "-"
    TIMES = "*"
    OVER = "/"


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """Two values joined by an operator; dimensions were checked when it was built."""

    operator: Operator
    left: Expression
    right: Expression
    dimension: Dimension
    origin: Span


class Function(StrEnum):
    """What can be asked of numbers: `larger of a, b`, `square root of a`, `sine of a`, ..."""

    LARGER = "larger"
    SMALLER = "smaller"
    ROOT = "square root"
    SINE = "sine"
    COSINE = "cosine"
    TANGENT = "tangent"
    ARC_SINE = "arc sine"
    ARC_TANGENT = "arc tangent"
    SIZE_OF = "size"  # absolute value
    RADIUS = "radius"  # of a circle that is so long round
    CIRCUMFERENCE = "circumference"  # of a circle with that radius


@dataclass(frozen=True, slots=True)
class Applied:
    """A function of one or two numbers."""

    function: Function
    arguments: tuple[Expression, ...]
    dimension: Dimension
    origin: Span


class Asked(StrEnum):
    """What can be asked of geometry.

    LENGTH: stitched length of edges (darts closed, gathers drawn in). DRAWN: length along the paper, dart
    mouths included. DISTANCE, ACROSS, HEIGHT, DIRECTION: between two points (straight, horizontal, vertical,
    angle). GIRTH: round the garment at a reference line. WIDTH: of a dart's mouth. DEPTH: from a dart's mouth
    to its pivot.
    """

    LENGTH = "length"
    DRAWN = "drawn length"
    DISTANCE = "distance"
    ACROSS = "across"
    HEIGHT = "height"
    DIRECTION = "direction"
    GIRTH = "girth"
    WIDTH = "width"
    DEPTH = "depth"
    OPENING = "opening"  # of a finish: the round it closes, with what is held in, as sewn


@dataclass(frozen=True, slots=True)
class PartRef:
    """A part of a piece by name: an edge, corner, point, line or dart.

    `piece` is None for a line of the whole garment.
    """

    piece: str | None
    name: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Geometric:
    """A question to the pieces as they are at that moment."""

    asked: Asked
    of: tuple[PartRef, ...]
    dimension: Dimension
    origin: Span


Expression = Constant | Named | Arithmetic | Applied | Geometric
