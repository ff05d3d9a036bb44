"""Owns the step from Lark's tree to ours for pieces sewn onto pieces and ends caught at an edge.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from lark import v_args

from specc.syntax import tree
from specc.syntax.lower_alterations import LowerAlterations

if TYPE_CHECKING:
    from lark import Token
    from lark.tree import Meta


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerAttachments(LowerAlterations):
    """Turns the rules of `attach` into nodes."""

    def sew_on(self, meta: Meta, *parts: Any) -> tree.SewOn:
        what, title, side, on, corner, at, turn, along, method, settings = parts
        return tree.SewOn(
            what, title, side, on, corner, at, turn, along or (), method, settings or (), self._span(meta)
        )

    def worn_side(self, _meta: Meta, side: Token) -> str:
        return str(side)

    def at_point(self, meta: Meta, point: tree.Word) -> tree.AtPoint:
        return tree.AtPoint(point, self._span(meta))

    def on_line(self, meta: Meta, line: tree.Word, *parts: Any) -> tree.OnLevel:
        distance, edge = parts
        return tree.OnLevel(tree.Level(line, None, None, line.span), distance, edge, self._span(meta))

    def on_level(self, meta: Meta, offset: tree.Expression, side: str, *parts: Any) -> tree.OnLevel:
        line, distance, edge = parts
        level = tree.Level(line, offset, side, self._source.span(offset.span.start, line.span.end))
        return tree.OnLevel(level, distance, edge, self._span(meta))

    def turned_on(self, meta: Meta, by: tree.Expression) -> tree.Turn:
        return tree.Turn(by, None, self._span(meta))

    def square_to(self, meta: Meta, edge: tree.Word) -> tree.Turn:
        return tree.Turn(None, edge, self._span(meta))

    def catch(self, meta: Meta, *parts: Any) -> tree.Catch:
        what, title, side, to, at, by = parts
        method, settings = by or (None, ())
        return tree.Catch(what, title, side, to, at, method, settings, self._span(meta))

    def sewn_by(self, _meta: Meta, method: tree.Word, settings: Any) -> tuple[tree.Word, tuple[Any, ...]]:
        return method, settings or ()
