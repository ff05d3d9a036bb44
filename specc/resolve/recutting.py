"""Owns giving meaning to the alterations that draw edges anew.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.recutting import EndShift, MoveSeam, Shape
from specc.resolve.codes import NAMED_TWICE, one_of
from specc.resolve.expressions import FIGURES, meaning
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import Expression, PartRef
    from specc.model.recutting import Recutting
    from specc.resolve.parts import Parts
    from specc.resolve.reshaping import Finder

NOT_OF_SEAM = declare(
    "SPC427", "not-a-piece-of-the-seam", Severity.ERROR, "the seam cannot move toward `{toward}`, {reason}"
)
_SHARE = (Dimension.RATIO, Dimension.NUMBER)


class Recutter:
    """Resolves these alterations in order; `parts` are as those before have left them."""

    def __init__(self, finder: Finder, parts: Parts, say: Collector) -> None:
        self._finder = finder
        self._parts = parts
        self._say = say

    def step(self, node: tree.Recutting) -> Recutting | None:
        """What the statement asks for; None after a fault."""
        return self._shape(node) if isinstance(node, tree.Shape) else self._move_seam(node)

    def _edge(self, ref: tree.Ref) -> PartRef | None:
        return self._parts.find(ref, ("edge",), self._say)

    def _shape(self, node: tree.Shape) -> Shape | None:
        found = tuple(edge for ref in node.edges if (edge := self._edge(ref)) is not None)
        edges = self._finder.once(found)
        full: Expression | None = None
        if node.full is not None:
            full = meaning(node.full, FIGURES, self._say, what="how full a curve is", wanted=_SHARE)
        shifts = [self._shift(shift, edges) for shift in node.shifts]
        first, *others = node.shifts
        if others and others[0].corner.text == first.corner.text:
            name = first.corner.text
            self._say.add(
                NAMED_TWICE.at(others[0].corner.span, name=name).see(first.corner.span, "first here")
            )
            return None
        done = tuple(shift for shift in shifts if shift is not None)
        if (
            len(found) < len(node.edges)
            or len(done) < len(shifts)
            or (node.full is not None and full is None)
        ):
            return None
        return Shape(edges, done, full, node.span)

    def _shift(self, node: tree.EndShift, edges: tuple[PartRef, ...]) -> EndShift | None:
        by = self._finder.length(node.by, "how much")
        corners = [self._parts.corner(node.corner, edge, self._say) for edge in edges]
        if by is None or None in corners:
            return None
        return EndShift(node.corner.text, node.way == "up", by)

    def _move_seam(self, node: tree.MoveSeam) -> MoveSeam | None:
        first, second = self._edge(node.first), self._edge(node.second)
        by = self._finder.length(node.by, "how much")
        if first is None or second is None:
            return None
        pieces = (first.piece or "", second.piece or "")
        toward = node.toward.text
        if pieces[0] == pieces[1]:
            one = "both of whose edges are on one piece"
            told = NOT_OF_SEAM.at(node.second.span, toward=toward, reason=one)
            self._say.add(told.help("name an edge of each of two pieces that are sewn together"))
            return None
        if toward not in pieces:
            told = NOT_OF_SEAM.at(node.toward.span, toward=toward, reason="which is none of its two pieces")
            self._say.add(told.help(one_of(pieces)))
            return None
        if node.tapering is None:
            return None if by is None else MoveSeam(first, second, by, None, None, None, toward, node.span)
        loses = first if first.piece == toward else second
        and_by = self._finder.length(node.tapering.and_by, "how much")
        ends = [self._parts.corner(c, loses, self._say) for c in (node.tapering.at, node.tapering.and_at)]
        if by is None or and_by is None or None in ends:
            return None
        at, and_at = node.tapering.at.text, node.tapering.and_at.text
        return MoveSeam(first, second, by, at, and_by, and_at, toward, node.span)
