"""Owns the step from Lark's tree to ours for alterations that put cloth in along an edge or draw it anew.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from lark import v_args

from specc.syntax import tree
from specc.syntax.lower_alterations import LowerAlterations
from specc.units import parse_number

if TYPE_CHECKING:
    from lark import Token
    from lark.tree import Meta


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerFullness(LowerAlterations):
    """Turns the rules of these alterations into nodes."""

    def pleats(self, meta: Meta, verb: tree.Word, *parts: Any) -> tree.Pleat:
        edge, times, start, end, deep, lay, slashed = parts
        count = tree.Number(parse_number(times), None, self._span(times))
        return tree.Pleat(verb, edge, count, start, end, deep, lay, slashed, self._span(meta))

    def one_pleat(self, meta: Meta, verb: tree.Word, *parts: Any) -> tree.Pleat:
        edge, at, deep, lay, slashed = parts
        return tree.Pleat(verb, edge, None, at, None, deep, lay, slashed, self._span(meta))

    def pleat_or_tuck(self, _meta: Meta, verb: Token) -> tree.Word:
        return self._word(verb)

    def lay(self, meta: Meta, kind: Token, toward: Any = None) -> tree.Lay:
        return tree.Lay(str(kind), toward, self._span(meta))

    def gather(self, meta: Meta, *parts: Any) -> tree.Gather:
        edge, start, end, by, slashed = parts
        return tree.Gather(edge, start, end, by, slashed, self._span(meta))

    def slashed_to(self, meta: Meta, to: tree.Ref) -> tree.Slashed:
        return tree.Slashed(hinged=False, to=to, span=self._span(meta))

    def hinged(self, meta: Meta, at: Any) -> tree.Slashed:
        return tree.Slashed(hinged=True, to=at, span=self._span(meta))

    def shape(self, meta: Meta, *parts: Any) -> tree.Shape:
        *others, full = parts
        edges = tuple(part for part in others if isinstance(part, tree.Ref))
        shifts = tuple(part for part in others if isinstance(part, tree.EndShift))
        return tree.Shape(edges, shifts, full, self._span(meta))

    def shift_of_end(self, meta: Meta, corner: tree.Word, way: str, by: tree.Expression) -> tree.EndShift:
        return tree.EndShift(corner, way, by, self._span(meta))

    def up_or_down(self, _meta: Meta, way: Token) -> str:
        return str(way)

    def move_seam(self, meta: Meta, *parts: Any) -> tree.MoveSeam:
        first, second, by, tapering, toward = parts
        return tree.MoveSeam(first, second, by, tapering, toward, self._span(meta))
