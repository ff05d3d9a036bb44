"""Owns the step from Lark's tree to ours for pieces on paper: what is traced, how it is graded.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from lark import v_args

from specc.syntax import tree
from specc.syntax.lower_alterations import present
from specc.syntax.lower_fullness import LowerFullness
from specc.units import parse_number

if TYPE_CHECKING:
    from lark import Token
    from lark.tree import Meta


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerTracing(LowerFullness):
    """Turns the rules of pieces on paper into nodes."""

    def traced(self, meta: Meta, *parts: Any) -> tree.Traced:
        return tree.Traced(parts[-1], self._span(meta))

    def size(self, _meta: Meta, number: Token) -> tree.Number:
        return tree.Number(parse_number(number), None, self._span(number))

    def graded(self, meta: Meta, by: tree.Shift | tree.Word) -> tree.Graded:
        return tree.Graded(by, self._span(meta))

    def shift(self, meta: Meta, right: tree.Expression, up: tree.Expression) -> tree.Shift:
        return tree.Shift(right, up, self._span(meta))

    def grade_alike(self, meta: Meta, name: tree.Word, shift: tree.Shift) -> tree.Grade:
        return tree.Grade(name, shift, (), self._span(meta))

    def grade_by_stretch(self, meta: Meta, name: tree.Word, *body: Any) -> tree.Grade:
        return tree.Grade(name, None, present(body), self._span(meta))

    def stretch(self, meta: Meta, *parts: Any) -> tree.Stretch:
        low, high, shift = parts
        return tree.Stretch(low, high, shift, self._span(meta))

    def arc(self, meta: Meta, to: tree.Word, through: tree.Ref, when: Any) -> tree.ArcRun:
        return tree.ArcRun(to, through, when, self._span(meta))

    def outline(self, meta: Meta, path: tree.Text, units: Token, length: tree.Number) -> tree.Outline:
        number = tree.Number(parse_number(units), None, self._span(units))
        return tree.Outline(path, number, length, self._span(meta))

    def meeting(self, meta: Meta, first: tree.Text, second: tree.Text) -> tree.Meeting:
        return tree.Meeting(first, second, self._span(meta))

    def near(self, meta: Meta, *parts: Any) -> tree.Near:
        across, up, path = parts
        return tree.Near(across, up, path, self._span(meta))

    def along(self, meta: Meta, path: tree.Text, to: tree.Word, when: Any) -> tree.Along:
        return tree.Along(path, to, when, self._span(meta))
