"""Owns giving meaning to the alterations that put cloth in along an edge.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.alteration import Form
from specc.model.fullness import Gather, Lay, Pleat, Slashed
from specc.resolve.codes import out_of_range
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import PartRef
    from specc.model.fullness import Fullness
    from specc.resolve.parts import Parts
    from specc.resolve.reshaping import Finder

_MOST = 100  # pleats in one statement


class Fuller:
    """Resolves these alterations in order; `parts` are as those before have left them."""

    def __init__(self, finder: Finder, parts: Parts, say: Collector) -> None:
        self._finder = finder
        self._parts = parts
        self._say = say

    def step(self, node: tree.Fullness) -> Fullness | None:
        """What the statement asks for; None after a fault."""
        edge = self._edge(node.edge)
        slashed = self._slashed(node.slashed)
        if isinstance(node, tree.Pleat):
            return self._pleat(node, edge, slashed)
        by = self._finder.length(node.by, "how much")
        if edge is None:
            return None
        start, end = (self._finder.place(place, edge) for place in (node.start, node.end))
        if slashed is None or by is None or start is None or end is None:
            return None
        return Gather(edge, start, end, by, slashed, node.span)

    def _pleat(self, node: tree.Pleat, edge: PartRef | None, slashed: Slashed | None) -> Pleat | None:
        deep = self._finder.length(node.deep, "the depth of a pleat")
        count = self._count(node)
        if edge is None:
            return None
        start = self._finder.place(node.start, edge)
        end = None if node.end is None else self._finder.place(node.end, edge)
        lay, toward = Lay.KNIFE, None
        if node.lay is not None and node.lay.toward is not None:
            toward = self._parts.corner(node.lay.toward, edge, self._say)
            if toward is None:
                return None
        elif node.lay is not None:
            lay = Lay(node.lay.kind)
        if (
            count is None
            or deep is None
            or slashed is None
            or start is None
            or (node.end is not None and end is None)
        ):
            return None
        return Pleat(Form(node.verb.text), edge, count, start, end, deep, lay, toward, slashed, node.span)

    def _count(self, node: tree.Pleat) -> int | None:
        """How many; a count that is none is reported."""
        if node.times is None:
            return 1
        times = node.times.value
        if times.denominator != 1 or not 2 <= times <= _MOST:
            bounds = f"a whole number from 2 to {_MOST}"
            what = f"how many {node.verb.text}s are laid"
            told = out_of_range(node.times.span, what, bounds, found=node.times.span.text)
            self._say.add(told.help(f"write `{node.verb.text} … at PLACE, …` for a single one"))
            return None
        return int(times)

    def _edge(self, ref: tree.Ref) -> PartRef | None:
        return self._parts.find(ref, ("edge",), self._say)

    def _slashed(self, node: tree.Slashed | None) -> Slashed | None:
        if node is None:
            return Slashed()
        if node.to is None:
            return Slashed(hinged=node.hinged)
        to = self._edge(node.to)
        return None if to is None else Slashed(to, node.hinged)
