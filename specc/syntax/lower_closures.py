"""Owns the step from Lark's tree to ours for closures and what fastens them.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from lark import Token, v_args

from specc.syntax import tree
from specc.syntax.lower_tracing import LowerTracing
from specc.units import parse_number

if TYPE_CHECKING:
    from lark.tree import Meta


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerClosures(LowerTracing):
    """Turns the rules of closures into nodes."""

    def closure(self, meta: Meta, *parts: Any) -> tree.Closure:
        name, title, along, to, method, settings = parts
        return tree.Closure(name, title, along, to or (), method, settings or (), self._span(meta))

    def spacing(self, meta: Meta, how_many: Any, *parts: Any) -> tree.Spacing:
        counted = isinstance(how_many, Token)
        count = tree.Number(parse_number(how_many), None, self._span(how_many)) if counted else None
        first, last, line = parts
        return tree.Spacing(count, None if counted else how_many, first, last, line, self._span(meta))

    def every(self, _meta: Meta, by: tree.Expression) -> tree.Expression:
        return by

    def first(self, meta: Meta, by: tree.Expression, corner: tree.Word) -> tree.FromCorner:
        return tree.FromCorner(by, corner, self._span(meta))

    def last(self, meta: Meta, by: tree.Expression, corner: tree.Word) -> tree.FromCorner:
        return tree.FromCorner(by, corner, self._span(meta))

    def line_met(self, _meta: Meta, line: tree.Word) -> tree.Word:
        return line

    def laps(self, meta: Meta, by: tree.Expression) -> tree.Laps:
        return tree.Laps(by, self._span(meta))

    def takes_pieces(self, meta: Meta, material: tree.Word, count: Token, *parts: Any) -> tree.TakesPieces:
        each, rounding, when = parts
        number = tree.Number(parse_number(count), None, self._span(count))
        return tree.TakesPieces(material, number, each is not None, rounding, when, self._span(meta))

    def each(self, _meta: Meta) -> bool:
        return True

    def shorter_or_longer(self, _meta: Meta, word: Token) -> tree.Word:
        return self._word(word)

    def lies(self, meta: Meta, inset: tree.Expression, *parts: Any) -> tree.Lies:
        other, hole, when = parts
        length, way = hole or (None, None)
        return tree.Lies(inset, other, length, way, when, self._span(meta))

    def other(self, _meta: Meta, inset: tree.Expression) -> tree.Expression:
        return inset

    def hole(self, _meta: Meta, *parts: Any) -> tuple[Any, ...]:
        return parts

    def across_or_along(self, _meta: Meta, way: Token) -> tree.Word:
        return self._word(way)

    def diameter(self, meta: Meta, name: tree.Word) -> tree.Asked:
        return tree.Asked("diameter", (tree.Ref(name, None, name.span),), self._span(meta))

    def thickness(self, meta: Meta, name: tree.Word) -> tree.Asked:
        return tree.Asked("thickness", (tree.Ref(name, None, name.span),), self._span(meta))
