"""Owns giving closures their meaning: which sides they close, and how their fastenings are spaced.

Knows nothing of lengths on pieces.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.closing import Closing, Spacing
from specc.model.expression import Constant
from specc.resolve.codes import MORE_THAN_ONE, UNKNOWN_PROPERTY, out_of_range
from specc.resolve.expressions import FIGURES, meaning
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.construction import Making
    from specc.model.expression import Expression, PartRef
    from specc.resolve.parts import Parts
    from specc.source import Span

NO_PLACES = declare(
    "SPC314",
    "closure-without-places",
    Severity.ERROR,
    "closure `{name}` does not say where each `{what}` lies",
)

ONE_END = declare(
    "SPC315",
    "one-end-of-places",
    Severity.ERROR,
    "the places say where the {one} lies, but not the {other}",
)

_LENGTH = (Dimension.LENGTH,)
_MOST = 100  # fastenings along one closure

Sides = tuple[tuple["PartRef", ...], tuple["PartRef", ...]]


def resolve_closing(
    node: tree.Closure, sides: Sides, making: Making, parts: Parts, say: Collector
) -> Closing | None:
    """What the closure closes, by a method that is filled in; None after a fault."""
    spacings = tuple(item for item in node.settings if isinstance(item, tree.Spacing))
    wanted = tuple(one.material for one in making.pieces if one.each_place)
    for more in spacings[1:]:
        told = MORE_THAN_ONE.at(word_of(more), owner=f"closure `{node.name.text}`", what="`places`")
        say.add(told.see(word_of(spacings[0]), "the first"))
    if spacings and not wanted:
        owner = f"method `{making.method}`"
        told = UNKNOWN_PROPERTY.at(word_of(spacings[0]), owner=owner, what="setting", name="places")
        say.add(told.help("it takes nothing that lies at places, such as buttons"))
        return None
    if wanted and not spacings:
        told = NO_PLACES.at(node.method.span, name=node.name.text, what=wanted[0])
        example = "places 5, first 1/2 in from CORNER, last 4 in from CORNER"
        say.add(told.help(f"write a line such as `{example}`, or `places every 3 in`"))
        return None
    spacing = _spacing(spacings[0], sides[0], parts, say) if spacings else None
    return None if spacings and spacing is None else Closing(*sides, spacing)


def _spacing(node: tree.Spacing, side: tuple[PartRef, ...], parts: Parts, say: Collector) -> Spacing | None:
    count = None if node.number is None else _count(node.number, say)
    every = meaning(node.every, FIGURES, say, what="a distance", wanted=_LENGTH)
    if node.every is not None and isinstance(every, Constant) and every.value.value <= 0:
        told = out_of_range(node.every.span, "a distance", "more than nothing", found=every.value)
        say.add(told)
        every = None
    ends = [_from_corner(end, side, parts, say) for end in (node.first, node.last)]
    if (node.first is None) is not (node.last is None) and count != 1:
        one, other = ("first", "last") if node.first else ("last", "first")
        told = ONE_END.at(node.span, one=one, other=other)
        say.add(told.help("say where both lie, or neither; one alone needs no last"))
        return None
    line = None if node.line is None else parts.line(node.line, say)
    asked = ((node.first, ends[0]), (node.last, ends[1]), (node.line, line))
    if (count is None and every is None) or any(said is not None and got is None for said, got in asked):
        return None
    if node.first is None:
        ends.reverse()  # one alone may be called the last
    return Spacing(count, every, ends[0], ends[1], None if line is None else line.name, node.span)


def _count(node: tree.Number, say: Collector) -> int | None:
    if node.value.denominator == 1 and 0 < node.value <= _MOST:
        return int(node.value)
    bounds = f"a whole number from 1 to {_MOST}"
    say.add(out_of_range(node.span, "a number of places", bounds, found=node.value))
    return None


def _from_corner(
    node: tree.FromCorner | None, side: tuple[PartRef, ...], parts: Parts, say: Collector
) -> tuple[Expression, str] | None:
    """A distance from a corner at either end of the side."""
    if node is None:
        return None
    by = meaning(node.by, FIGURES, say, what="a distance", wanted=_LENGTH)
    first, last = side[0], side[-1]
    ends = parts.pieces[first.piece or ""].ends.get(first.name, ())
    corner = node.corner.text if node.corner.text in ends else parts.corner(node.corner, last, say)
    return None if by is None or corner is None else (by, corner)


def word_of(node: tree.Spacing) -> Span:
    """The place of the word it begins with."""
    return node.span.file.span(node.span.start, node.span.start + len("places"))
