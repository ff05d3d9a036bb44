"""Owns the key to the drawings of cross-sections. Knows nothing of any one section."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label
from specc.document.lettering import Lettering, width_of
from specc.document.section_lines import section_strokes
from specc.document.section_paths import Frame
from specc.geometry.point import Point
from specc.making.section import ON, CutEdge, Node, Overlock, Row, Section, Strand

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.drawing import Stroke

_WIDE, _HIGH, _MIDDLE = 180.0, 8.0, 4.0
_SAMPLE, _GAP, _NEXT = 12.0, 1.5, 5.0
_PLY = Strand("ply", (Node(-ON, 0), Node(0.0, 0)), None)
_SAMPLES = (
    ("ply, ticks on its right side", Section((Strand("ply", _PLY.nodes, True),))),
    ("trim", Section((Strand("trim", _PLY.nodes, trim=True),))),
    ("needle and thread", Section((_PLY,), (Row(0, "301", (-5.0,), 0, 0, (("ply",),)),))),
    ("overlock", Section((_PLY,), (), (Overlock(0, "504", (CutEdge(0.0, -1, 0, 0),), ("ply",), None),))),
)


def section_key() -> Drawing:
    """What the lines of the drawings mean, in one row."""
    title = "Key to the cross-sections"
    return Drawing("section-key", title, _WIDE, _HIGH, None, tuple(_items()))


def _items() -> Iterator[Stroke | Label]:
    left = 1.0
    for text, section in _SAMPLES:
        yield from section_strokes(section, Frame(1.0, left + _SAMPLE, left, 0.0, _MIDDLE, 0.0))
        wide = width_of(text, Lettering.SMALL)
        start = left + _SAMPLE + 2 * _GAP
        yield Label(text, Point(start + wide / 2, _MIDDLE), Lettering.SMALL)
        left = start + wide + _NEXT
