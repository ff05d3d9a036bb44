"""Owns the step from Lark's tree to ours for alterations, and how every rule's place is found.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Any

from lark import Token, Transformer, v_args

from specc.syntax import tree

if TYPE_CHECKING:
    from lark.tree import Meta

    from specc.source import SourceFile, Span


def present(children: tuple[Any, ...]) -> tuple[Any, ...]:
    """Leave out the places that Lark keeps for optional parts that are not there."""
    return tuple(child for child in children if child is not None)


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerAlterations(Transformer[Token, Any]):
    """Turns the rules of alterations into nodes."""

    def __init__(self, source: SourceFile) -> None:
        super().__init__()
        self._source = source

    def _span(self, place: Meta | Token) -> Span:
        start, end = place.start_pos, place.end_pos
        if start is None or end is None:
            raise AssertionError("only an empty rule has no place, and the grammar has none")
        return self._source.span(start, end)

    def _word(self, token: Token) -> tree.Word:
        return tree.Word(str(token), self._span(token))

    def alter(self, meta: Meta, *steps: Any) -> tree.Alter:
        return tree.Alter(present(steps), self._span(meta))

    def leave_out(self, meta: Meta, *pieces: tree.Word) -> tree.LeaveOut:
        return tree.LeaveOut(pieces, self._span(meta))

    def swing(self, meta: Meta, *parts: Any) -> tree.Swing:
        share, dart, first, *others = parts
        return tree.Swing(dart, (first._replace(share=share), *others), self._span(meta))

    def swing_target(self, meta: Meta, part: tree.Ref, place: Any, form: Any) -> tree.SwingTarget:
        return tree.SwingTarget(None, part, place, form, self._span(meta))

    def further_target(self, meta: Meta, share: Any, target: tree.SwingTarget) -> tree.SwingTarget:
        return target._replace(share=share, span=self._span(meta))

    def rest(self, meta: Meta) -> tree.Rest:
        return tree.Rest(self._span(meta))

    def half(self, meta: Meta) -> tree.Number:
        return tree.Number(Fraction(1, 2), None, self._span(meta))

    def form(self, _meta: Meta, form: Token) -> tree.Word:
        return self._word(form)

    def place(self, meta: Meta, at: tree.Expression, corner: Any) -> tree.Place:
        return tree.Place(at, corner, self._span(meta))

    def release(self, meta: Meta, *darts: tree.Ref) -> tree.Release:
        return tree.Release(darts, self._span(meta))

    def crop(self, meta: Meta, *pieces_and_level: Any) -> tree.Crop:
        *pieces, level = pieces_and_level
        return tree.Crop(tuple(pieces), level, self._span(meta))

    def lengthen(self, meta: Meta, verb: tree.Word, *parts: Any) -> tree.Lengthen:
        *pieces, by, level = parts
        return tree.Lengthen(verb, tuple(pieces), by, level, self._span(meta))

    def longer_or_shorter(self, _meta: Meta, verb: Token) -> tree.Word:
        return self._word(verb)

    def move_corner(self, meta: Meta, verb: tree.Word, *parts: Any) -> tree.MoveCorner:
        *edges, corner, by = parts
        return tree.MoveCorner(verb, tuple(edges), corner, by, self._span(meta))

    def mover(self, _meta: Meta, verb: Token) -> tree.Word:
        return self._word(verb)

    def line_level(self, meta: Meta, line: tree.Word) -> tree.Level:
        return tree.Level(line, None, None, self._span(meta))

    def offset_level(self, meta: Meta, offset: tree.Expression, side: str, line: tree.Word) -> tree.Level:
        return tree.Level(line, offset, side, self._span(meta))

    def above_or_below(self, _meta: Meta, side: Token) -> str:
        return str(side)

    def spread(self, meta: Meta, *parts: Any) -> tree.Spread:
        start, start_place, end, end_place, by, and_by, form = parts
        return tree.Spread(start, start_place, end, end_place, by, and_by, form, self._span(meta))

    def taper(self, meta: Meta, let_out: bool, *parts: Any) -> tree.Taper:  # noqa: FBT001  Lark calls by position
        *edges, by, tapering = parts
        return tree.Taper(let_out, tuple(edges), by, tapering, self._span(meta))

    def in_or_out(self, _meta: Meta, verb: Token, _way: Token) -> bool:
        return str(verb) == "let"

    def tapering(
        self, meta: Meta, at: tree.Word, and_by: tree.Expression, and_at: tree.Word
    ) -> tree.Tapering:
        return tree.Tapering(at, and_by, and_at, self._span(meta))

    def extend(self, meta: Meta, edge: tree.Ref, by: tree.Expression, slanting: Any) -> tree.Extend:
        return tree.Extend(edge, by, slanting, self._span(meta))

    def sew_as(self, meta: Meta, *parts: Any) -> tree.SewAs:
        *darts, form = parts
        return tree.SewAs(tuple(darts), form, self._span(meta))

    def round_corner(
        self, meta: Meta, piece: tree.Word, corner: tree.Word, by: tree.Expression
    ) -> tree.RoundCorner:
        return tree.RoundCorner(piece, corner, by, self._span(meta))

    def scallop(
        self, meta: Meta, edge: tree.Ref, every: tree.Expression, by: tree.Expression
    ) -> tree.Scallop:
        return tree.Scallop(edge, every, by, self._span(meta))

    def band(self, meta: Meta, share: Any, *parts: Any) -> tree.Band:
        *edges, by, lapping, in_one, across, name = parts
        marks = in_one is not None, across is not None
        return tree.Band(share, tuple(edges), by, lapping, *marks, name, self._span(meta))

    def in_one(self, _meta: Meta) -> bool:
        return True

    def across(self, _meta: Meta) -> bool:
        return True

    def split(self, meta: Meta, *parts: Any) -> tree.Split:
        piece, line, start, through, end, first, second = parts
        return tree.Split(piece, line, start, through or (), end, (first, second), self._span(meta))

    def split_end(self, meta: Meta, part: tree.Word, place: Any) -> tree.SplitEnd:
        return tree.SplitEnd(part, place, self._span(meta))

    def through(self, _meta: Meta, *points: tree.Word) -> tuple[tree.Word, ...]:
        return points

    def join(self, meta: Meta, first: tree.Ref, second: tree.Ref, name: tree.Word) -> tree.Join:
        return tree.Join(first, second, name, self._span(meta))

    def unfold(self, meta: Meta, *pieces: tree.Word) -> tree.Unfold:
        return tree.Unfold(pieces, self._span(meta))

    def mirror(self, meta: Meta, piece: tree.Word, name: tree.Word) -> tree.Mirror:
        return tree.Mirror(piece, name, self._span(meta))

    def face(self, meta: Meta, *parts: Any) -> tree.Face:
        *edges, by, name = parts
        return tree.Face(tuple(edges), by, name, self._span(meta))

    def divide(self, meta: Meta, *parts: Any) -> tree.Divide:
        *edges, at, first, second = parts
        return tree.Divide(tuple(edges), at, (first, second), self._span(meta))
