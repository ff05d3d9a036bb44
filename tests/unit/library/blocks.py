"""Owns drafting a block of the library in a test from any chart of the library."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from specc.drafting import Evaluator, FinishedPieces
from specc.model.expression import Asked, Geometric, PartRef
from specc.source import SourceFile
from specc.units import Dimension
from tests.drafting import SIZES, drafted, garment, named

if TYPE_CHECKING:
    from specc.drafting import Drafted
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

INCH = 25.4
MISSES = "misses"
WOMEN = "ansur-women"
MEN = "ansur-men"
CHILDREN = "children"
IN = {
    MISSES: SIZES,
    WOMEN: ("p5", "p50", "p95"),
    MEN: ("p5", "p50", "p95"),
    CHILDREN: tuple(str(age) for age in range(2, 13)),
}
"""The sizes of each chart, smallest first."""

_GARMENT = """garment trial "Trial" {{ style "T-1" }}
use chart {chart}
use block {block} {{ {settings} }}
cloth sheeting {{ fibre 100% cotton; width 150 cm; weight 150 g/m2 }}
"""
_NOWHERE = SourceFile("nowhere", "").span(0, 0)


@cache
def checked(block: str, settings: str = "", chart: str = MISSES) -> Garment:
    """A garment of every size of the chart that uses the block."""
    return garment(_GARMENT.format(chart=chart, block=block, settings=settings))


@cache
def value(block: str, size: str, settings: str = "", chart: str = MISSES) -> Drafted:
    """The block in one size of the chart."""
    return drafted(checked(block, settings, chart), size)


def pieces(block: str, size: str, settings: str = "", chart: str = MISSES) -> dict[str, Piece]:
    """Its pieces by name."""
    return named(value(block, size, settings, chart))


def body(size: str, measurement: str, chart: str = MISSES) -> float:
    """A measurement of the chart, in millimetres."""
    return value("rectangle", size, "", chart).measurements[measurement]


def girth(block: str, size: str, line: str, settings: str = "", chart: str = MISSES) -> float:
    """The way round the garment at a reference line, in millimetres."""
    found = value(block, size, settings, chart)
    asked = Geometric(Asked.GIRTH, (PartRef(None, line, _NOWHERE),), Dimension.LENGTH, _NOWHERE)
    return Evaluator(found.measurements.__getitem__, FinishedPieces(found.pieces)).value(asked)
