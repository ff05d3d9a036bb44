"""Owns the step from Lark's tree to that of `specc.syntax.tree`: one small method for each rule.

Knows nothing of faults: what it is given has been read without one, or stands as `broken`.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from lark import v_args

from specc.syntax import tree
from specc.syntax.lower_alterations import present
from specc.syntax.lower_attachments import LowerAttachments
from specc.syntax.lower_makings import LowerMakings
from specc.units import parse_number

if TYPE_CHECKING:
    from lark import Token
    from lark import Tree as LarkTree
    from lark.tree import Meta

    from specc.source import SourceFile

_NAMES = re.compile(r"""(?:"[^"\n]*"?|\#[^\n]*)|(?P<name>[^\W\d_]\w*(?:-\w+)*)""")
_ESCAPED = re.compile(r'\\(["\\])')


def lower(source: SourceFile, parsed: LarkTree[Token]) -> tree.Tree:
    """Return the tree of a whole file; `parsed` has the shape of the rule `start`."""
    return tree.Tree(source, Lowering(source).transform(parsed))


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class Lowering(LowerAttachments, LowerMakings):
    """Turns each rule into its node. Every span runs from the rule's first character to its last."""

    def NAME(self, token: Token) -> tree.Word:  # noqa: N802  Lark looks the method up by the terminal's name
        return self._word(token)

    def TEXT(self, token: Token) -> tree.Text:  # noqa: N802
        return tree.Text(_ESCAPED.sub(r"\1", token[1:-1]), self._span(token))

    def start(self, _meta: Meta, *declarations: Any) -> tuple[tree.Declaration, ...]:
        return present(declarations)

    def broken(self, meta: Meta) -> tree.Broken:
        span = self._span(meta)
        first_line = span.text.partition("\n")[0]
        words = (
            tree.Word(found["name"], self._source.span(span.start + found.start(), span.start + found.end()))
            for found in _NAMES.finditer(first_line)
            if found["name"]
        )
        return tree.Broken(tuple(words), span)

    # --- sheets of properties ---

    def sheet(self, meta: Meta, kind: tree.Word, name: Any, title: Any, *body: Any) -> tree.Sheet:
        return tree.Sheet(kind, name, title, present(body), self._span(meta))

    def sheet_kind(self, _meta: Meta, kind: Token) -> tree.Word:
        return self._word(kind)

    def label(self, meta: Meta, name: tree.Word, at: tree.Ref, *body: Any) -> tree.Label:
        return tree.Label(name, at, present(body), self._span(meta))

    def note(self, meta: Meta, text: tree.Text, on: Any) -> tree.Note:
        return tree.Note(text, on, self._span(meta))

    def property(self, meta: Meta, name: tree.Word, *values: tuple[tree.Atom, ...]) -> tree.Property:
        return tree.Property(name, values, self._span(meta))

    def value(self, _meta: Meta, *atoms: tree.Atom) -> tuple[tree.Atom, ...]:
        return atoms

    def word(self, _meta: Meta, word: tree.Word) -> tree.Word:
        return word

    def text(self, _meta: Meta, text: tree.Text) -> tree.Text:
        return text

    def date(self, _meta: Meta, date: Token) -> tree.Date:
        return tree.Date(str(date), self._span(date))

    def pair(self, meta: Meta, left: Any, right: tree.Number) -> tree.Pair:
        return tree.Pair(left, right, self._span(meta))

    # --- other files, charts and blocks ---

    def use_file(self, meta: Meta, path: tree.Text) -> tree.UseFile:
        return tree.UseFile(path, self._span(meta))

    def use_library(self, meta: Meta, kind: tree.Word, name: tree.Word, *parts: Any) -> tree.UseLibrary:
        renaming, settings = parts
        return tree.UseLibrary(kind, name, renaming, settings or (), self._span(meta))

    def renaming(self, meta: Meta, name: tree.Word, title: Any) -> tree.Renaming:
        return tree.Renaming(name, title, self._span(meta))

    def usable(self, _meta: Meta, kind: Token) -> tree.Word:
        return self._word(kind)

    def settings(self, _meta: Meta, *body: Any) -> tuple[tree.Setting, ...]:
        return present(body)

    def reckoned(self, meta: Meta, name: tree.Word, value: tree.Expression) -> tree.Property:
        return tree.Property(name, ((tree.Reckoned(value, value.span),),), self._span(meta))

    def lead_name(self, meta: Meta, name: tree.Word) -> tree.Named:
        return tree.Named(name, self._span(meta))

    def chart(self, meta: Meta, name: tree.Word, title: Any, *body: Any) -> tree.Chart:
        return tree.Chart(name, title, present(body), self._span(meta))

    def measured(self, meta: Meta, *parts: Any) -> tree.Measurement:
        name, title, source, column = parts
        return tree.Measurement(name, title, source, column, None, self._span(meta))

    def derived(self, meta: Meta, *parts: Any) -> tree.Measurement:
        name, title, source, expression = parts
        return tree.Measurement(name, title, source, (), expression, self._span(meta))

    def column(self, _meta: Meta, *numbers_and_unit: Token) -> tuple[tree.Number, ...]:
        *numbers, unit = numbers_and_unit
        return tuple(tree.Number(parse_number(number), str(unit), self._span(number)) for number in numbers)

    def block(self, meta: Meta, name: tree.Word, title: Any, *body: Any) -> tree.Block:
        return tree.Block(name, title, present(body), self._span(meta))

    def parameter(self, meta: Meta, name: tree.Word, title: Any, default: tree.Expression) -> tree.Parameter:
        return tree.Parameter(name, title, default, self._span(meta))

    def choice(self, meta: Meta, name: tree.Word, title: Any, *options: tree.Word) -> tree.Choice:
        return tree.Choice(name, title, options, self._span(meta))

    def let(self, meta: Meta, name: tree.Word, value: tree.Expression, when: Any) -> tree.Let:
        return tree.Let(name, value, when, self._span(meta))

    def find(self, meta: Meta, name: tree.Word, *parts: Any) -> tree.Find:
        low, high, left, right, when = parts
        return tree.Find(name, low, high, left, right, when, self._span(meta))

    # --- pieces ---

    def piece(self, meta: Meta, name: tree.Word, title: Any, when: Any, *body: Any) -> tree.Piece:
        return tree.Piece(name, title, when, present(body), self._span(meta))

    def cut(self, meta: Meta, count: Token, fold: Any, when: Any) -> tree.Cut:
        number = tree.Number(parse_number(count), None, self._span(count))
        return tree.Cut(number, fold, when, self._span(meta))

    def when(self, meta: Meta, choice: tree.Word, option: tree.Word) -> tree.When:
        return tree.When(choice, option, self._span(meta))

    def point(self, meta: Meta, name: tree.Word, *parts: Any) -> tree.PointStatement:
        position, graded, when = parts
        return tree.PointStatement(name, position, graded, when, self._span(meta))

    def at(self, meta: Meta, across: tree.Expression, up: tree.Expression) -> tree.At:
        return tree.At(across, up, self._span(meta))

    def moved(self, meta: Meta, origin: tree.Ref, *moves: Any) -> tree.Moved:
        return tree.Moved(origin, moves, self._span(meta))

    def step(self, meta: Meta, side: str, by: tree.Expression) -> tree.Step:
        return tree.Step(side, by, self._span(meta))

    def going(self, meta: Meta, direction: tree.Expression, by: tree.Expression) -> tree.Going:
        return tree.Going(direction, by, self._span(meta))

    def toward(self, meta: Meta, target: tree.Ref, by: tree.Expression) -> tree.Toward:
        return tree.Toward(target, by, self._span(meta))

    def side(self, _meta: Meta, side: Token) -> str:
        return str(side)

    def turned(self, meta: Meta, point: tree.Ref, angle: tree.Expression, around: tree.Ref) -> tree.Turned:
        return tree.Turned(point, angle, around, self._span(meta))

    def on(self, meta: Meta, edge: tree.Ref, at: tree.Expression, corner: Any) -> tree.On:
        return tree.On(edge, at, corner, self._span(meta))

    def edge(self, meta: Meta, name: tree.Word, start: tree.Word, *parts: Any) -> tree.Edge:
        hidden, when, *runs = parts
        return tree.Edge(name, start, hidden is not None, when, present(tuple(runs)), self._span(meta))

    def hidden(self, _meta: Meta) -> bool:
        return True

    def straight(self, meta: Meta, to: tree.Word, when: Any) -> tree.Straight:
        return tree.Straight(to, when, self._span(meta))

    def curve(self, meta: Meta, to: tree.Word, *parts: Any) -> tree.Curve:
        leaving, arriving, full, through, when = parts
        return tree.Curve(to, leaving, arriving, full, through or (), when, self._span(meta))

    def leaving(self, _meta: Meta, bearing: tree.Bearing) -> tree.Bearing:
        return bearing

    def arriving(self, _meta: Meta, bearing: tree.Bearing) -> tree.Bearing:
        return bearing

    def full(self, _meta: Meta, full: tree.Expression) -> tree.Expression:
        return full

    def passing(self, _meta: Meta, *points: tree.Ref) -> tuple[tree.Ref, ...]:
        return points

    def bearing(self, meta: Meta, direction: tree.Expression, handle: Any) -> tree.Bearing:
        return tree.Bearing(direction, handle, self._span(meta))

    def dart(self, meta: Meta, *parts: Any) -> tree.DartRun:
        name, to, pivot, short, when = parts
        return tree.DartRun(name, to, pivot, short, when, self._span(meta))

    def two_pointed(self, meta: Meta, *parts: Any) -> tree.TwoPointed:
        name, top, bottom, width, middle, when = parts
        return tree.TwoPointed(name, top, bottom, width, middle, when, self._span(meta))

    def line(self, meta: Meta, name: tree.Word, *parts: Any) -> tree.Line:
        start, end, through, when = parts
        return tree.Line(name, start, end, through or (), when, self._span(meta))

    def level_line(self, meta: Meta, name: tree.Word, point: tree.Word, when: Any) -> tree.LevelLine:
        return tree.LevelLine(name, point, when, self._span(meta))

    def grain(self, meta: Meta, start: tree.Word, end: tree.Word) -> tree.Grain:
        return tree.Grain(start, end, self._span(meta))

    def notch(self, meta: Meta, *parts: Any) -> tree.Notch:
        edge, at, corner, double, when = parts
        return tree.Notch(edge, at, corner, double is not None, when, self._span(meta))

    def notch_at_point(self, meta: Meta, point: tree.Word, double: Any, when: Any) -> tree.NotchAtPoint:
        return tree.NotchAtPoint(point, double is not None, when, self._span(meta))

    def double(self, _meta: Meta) -> bool:
        return True

    # --- what is measured, demanded, accepted ---

    def measure(self, meta: Meta, *parts: Any) -> tree.Measure:
        name, title, value, tolerance = parts
        plus, minus = tolerance or (None, None)
        return tree.Measure(name, title, value, plus, minus, self._span(meta))

    def both_ways(self, _meta: Meta, tolerance: tree.Expression) -> tuple[tree.Expression, tree.Expression]:
        return tolerance, tolerance

    def each_way(self, _meta: Meta, *ways: tree.Expression) -> tuple[tree.Expression, ...]:
        return ways

    def expect(self, meta: Meta, *parts: Any) -> tree.Expect:
        left, compare, right, because = parts
        return tree.Expect(left, str(compare), right, because, self._span(meta))

    def expect_within(self, meta: Meta, chart: tree.Word, *body: Any) -> tree.ExpectWithin:
        return tree.ExpectWithin(chart, present(body), self._span(meta))

    def limit(self, meta: Meta, name: tree.Word, value: tree.Expression) -> tree.Limit:
        return tree.Limit(name, value, self._span(meta))

    def without(self, meta: Meta, *names: tree.Word) -> tree.Without:
        return tree.Without(names, self._span(meta))

    def accept(self, meta: Meta, code: tree.Word, on: Any, because: tree.Text) -> tree.Accept:
        return tree.Accept(code, on, because, self._span(meta))

    # --- expressions ---

    def arithmetic(self, meta: Meta, *parts: Any) -> tree.Arithmetic:
        left, operator, right = parts
        return tree.Arithmetic(str(operator), left, right, self._span(meta))

    sum = product = arithmetic

    def signed(self, meta: Meta, sign: Token, value: tree.Expression) -> tree.Signed:
        return tree.Signed(str(sign), value, self._span(meta))

    minus = signed

    def named(self, meta: Meta, name: tree.Word) -> tree.Named:
        return tree.Named(name, self._span(meta))

    def compass(self, meta: Meta, side: str) -> tree.Compass:
        return tree.Compass(side, self._span(meta))

    def length(self, meta: Meta, ref: tree.Ref) -> tree.Asked:
        return tree.Asked("length", (ref,), self._span(meta))

    def drawn_length(self, meta: Meta, ref: tree.Ref) -> tree.Asked:
        return tree.Asked("drawn length", (ref,), self._span(meta))

    def width(self, meta: Meta, ref: tree.Ref) -> tree.Asked:
        return tree.Asked("width", (ref,), self._span(meta))

    def depth(self, meta: Meta, ref: tree.Ref) -> tree.Asked:
        return tree.Asked("depth", (ref,), self._span(meta))

    def opening(self, meta: Meta, name: tree.Word) -> tree.Asked:
        return tree.Asked("opening", (tree.Ref(name, None, name.span),), self._span(meta))

    def girth(self, meta: Meta, name: tree.Word) -> tree.Asked:
        return tree.Asked("girth", (tree.Ref(name, None, name.span),), self._span(meta))

    def between(self, meta: Meta, what: str, first: tree.Ref, second: tree.Ref) -> tree.Asked:
        return tree.Asked(what, (first, second), self._span(meta))

    def asked(self, _meta: Meta, what: Token) -> str:
        return str(what)

    def chosen(self, meta: Meta, function: str, *values: tree.Expression) -> tree.Applied:
        return tree.Applied(function, values, self._span(meta))

    def larger_or_smaller(self, _meta: Meta, function: Token) -> str:
        return str(function)

    def applied(self, meta: Meta, function: str, value: tree.Expression) -> tree.Applied:
        return tree.Applied(function, (value,), self._span(meta))

    def function(self, _meta: Meta, function: Token) -> str:
        return str(function)

    def half_of(self, meta: Meta, value: tree.Expression) -> tree.Applied:
        return tree.Applied("half", (value,), self._span(meta))

    def quantity(self, meta: Meta, number: Token, unit: Token | None) -> tree.Number:
        return tree.Number(parse_number(number), unit and str(unit), self._span(meta))

    def ref(self, meta: Meta, first: tree.Word, second: Any) -> tree.Ref:
        return tree.Ref(first, second, self._span(meta))
