"""Owns giving blocks their meaning, with the settings of the garment that uses them.

Knows nothing of sizes or of how a point is found.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.block import Block, Find, Let
from specc.resolve.choices import report_same_options
from specc.resolve.chosen import Chosen
from specc.resolve.codes import enumerated, name_taken, out_of_range
from specc.resolve.expressions import Scope, alike, dimension_of, meaning, resolve_expression
from specc.resolve.pieces import Pieces, parts_of
from specc.resolve.properties import Properties, said, titled
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from specc.diagnostics import Collector
    from specc.model.block import Definition, PieceDraft
    from specc.resolve.charts import Measured
    from specc.resolve.drawings import Paper
    from specc.resolve.parts import Parts
    from specc.resolve.settings import Settings
    from specc.source import Span
    from specc.units import Dimension

OTHER_CHART = declare(
    "SPC227",
    "block-for-other-chart",
    Severity.ERROR,
    "block `{block}` is made for chart {charts}, not for `{chart}`",
)

# Bounds what a spec from a stranger can cost; a garment has a dozen or two.
MOST_PIECES = 100


def resolve_block(  # noqa: PLR0913 all that a block may speak of
    node: tree.Block,
    settings: Settings,
    measured: Measured,
    *,
    parts: Parts,
    paper: Paper,
    say: Collector,
) -> Block | None:
    """The block, its parameters set; its pieces are added to `parts`. None when others bear their names."""
    name = node.name.text
    properties = Properties("a block", node.name, node.body, known=("for",), say=say, place=node.name.span)
    charts, chart = properties.get("for"), measured.chart
    if charts is not None and chart is not None:
        made_for = [" ".join(said(atom) for atom in value) for value in charts.values]
        if chart.name not in made_for:
            listed = enumerated([f"`{one}`" for one in made_for], "or")
            told = OTHER_CHART.at(settings.place, block=name, charts=listed, chart=chart.name)
            say.add(
                told.see(charts.span, "said here").help(
                    f"use chart {listed}, or copy the block and change it"
                )
            )
    definitions = _Definitions(measured, parts, say)
    definitions.take_settings(node.body, settings)
    settings.close(f"block `{name}`")
    chosen = Chosen(definitions.choices, say)
    body = chosen.of(node.body)
    definitions.left_out = chosen.left_out
    pieces = [chosen.piece(item) for item in body if isinstance(item, tree.Piece)]
    if not _are_new(node, pieces, settings.place, parts, say):
        return None
    found, drafts = definitions.drafts(body, pieces, paper)
    title = titled(node.title, name)
    return Block(name, title, (*definitions.parameters, *found), drafts, settings.place)


def resolve_pieces(
    nodes: tuple[tree.Piece, ...], measured: Measured, *, parts: Parts, paper: Paper, say: Collector
) -> Block | None:
    """The pieces that stand in the garment by themselves, as the block without a name; None without any."""
    pieces: dict[str, tree.Piece] = {}
    for node in nodes:
        name = node.name.text
        if name in parts.pieces:
            told = name_taken(node.name.span, "a piece", name, first=None, where=" of a block")
            say.add(told.help("the pieces of a garment have names of their own; rename one of them"))
        elif name in pieces:
            say.add(name_taken(node.name.span, "a piece", name, first=pieces[name].name.span))
        elif len(parts.pieces) + len(pieces) >= MOST_PIECES:
            bounds = f"at most {MOST_PIECES}"
            say.add(out_of_range(node.name.span, "the number of pieces", bounds, found="more"))
            break
        else:
            pieces[name] = node
    if not pieces:
        return None
    definitions = _Definitions(measured, parts, say)
    chosen = Chosen(definitions.choices, say)
    standing = tuple(chosen.piece(piece) for piece in pieces.values())
    found, drafts = definitions.drafts((), standing, paper)
    return Block("", "", tuple(found), drafts, drafts[0].origin)


def _are_new(node: tree.Block, pieces: list[tree.Piece], used: Span, parts: Parts, say: Collector) -> bool:
    """Whether the pieces bear names that no other piece bears; if not, it is reported once."""
    first: dict[str, Span] = {}
    for piece in pieces:
        name = piece.name.text
        if name in first:
            say.add(name_taken(piece.name.span, "a piece", name, first=first[name]))
            return False
        first[name] = piece.name.span
    taken = [name for name in first if name in parts.pieces]
    if taken:
        where = " of another block"
        told = name_taken(used, "a piece", taken[0], first=None, where=where)
        told = told.note(f"block `{node.name.text}` has {enumerated([f'`{name}`' for name in first], 'and')}")
        cure = f"give those of one block other names: `use block {node.name.text} as NAME`"
        say.add(told.help(cure))
        return False
    if len(parts.pieces) + len(pieces) > MOST_PIECES:
        bounds, found = f"at most {MOST_PIECES}", len(parts.pieces) + len(pieces)
        say.add(out_of_range(used, "the number of pieces", bounds, found=found))
        return False
    return True


class _Definitions:
    """The values of a block by name; they grow as definitions are met."""

    def __init__(self, measured: Measured, parts: Parts, say: Collector) -> None:
        measurements = () if measured.chart is None else measured.chart.measurements
        self.parameters: list[Definition] = []
        self.choices: dict[str, tuple[tree.Choice, str]] = {}
        self.left_out: Mapping[str, str] = {}
        self._values = measured.values
        self._origins = {one.name: one.origin for one in measurements}
        self._failed = set(measured.failed)
        self._below: dict[str, None] = {}
        self._parts = parts
        self._say = say

    def take_settings(self, body: Iterable[object], settings: Settings) -> None:
        """Set the parameters and choices; a default may speak of measurements and of parameters above it."""
        for item in body:
            if isinstance(item, tree.Choice):
                self._take_choice(item, settings)
            elif isinstance(item, tree.Parameter):
                value = settings.value(item, self.scope(None))
                if value is None:
                    self._failed.add(item.name.text)
                elif self._add(item.name, item.name.text, dimension_of(value)):
                    self.parameters.append(Let(item.name.text, value, dimension_of(value), item.name.span))

    def _take_choice(self, item: tree.Choice, settings: Settings) -> None:
        name = item.name.text
        if name in self.choices:
            first = self.choices[name][0].name.span
            self._say.add(name_taken(item.name.span, "a choice", name, first=first))
            return
        report_same_options(item, self._say)
        self.choices[name] = (item, settings.option(item))

    def scope(self, piece: str | None) -> Scope:
        """What the statements of a piece may speak of: its own names before those of the block."""
        reach = {name: value for name, value in self._values.items() if "." not in name}
        if piece is not None:
            own = f"{piece}."
            values = self._values.items()
            reach |= {name.removeprefix(own): value for name, value in values if name.startswith(own)}
        below = frozenset(self._below) - reach.keys()
        failed = frozenset(self._failed)
        return Scope(reach, self._parts, piece, missing=failed, below=below, left_out=self.left_out)

    def named(self, body: Iterable[object], piece: str | None) -> list[Definition]:
        """The `let` and `find` statements of a body, in order."""
        items = [item for item in body if isinstance(item, tree.Let | tree.Find)]
        found: list[Definition] = []
        for number, item in enumerate(items):
            self._below = dict.fromkeys(later.name.text for later in items[number:])
            name = item.name.text if piece is None else f"{piece}.{item.name.text}"
            definition = (
                self._let(item, name, piece) if isinstance(item, tree.Let) else self._find(item, name, piece)
            )
            if definition is None:
                self._failed.add(item.name.text)
            elif self._add(item.name, name, definition.dimension):
                found.append(definition)
        self._below = {}
        return found

    def drafts(
        self, body: Iterable[object], pieces: Sequence[tree.Piece], paper: Paper
    ) -> tuple[list[Definition], tuple[PieceDraft, ...]]:
        """The values that a body and its pieces define, and the pieces."""
        for piece in pieces:
            self._parts.pieces[piece.name.text] = parts_of(piece, self._say)
        found = self.named(body, None)
        drafts = []
        for piece in pieces:
            found += self.named(piece.body, piece.name.text)
            scope = self.scope(piece.name.text)
            builder = Pieces(piece, scope, self.choices, parts=self._parts, paper=paper, say=self._say)
            drafts.append(builder.piece())
        return found, tuple(drafts)

    def _add(self, word: tree.Word, name: str, dimension: Dimension) -> bool:
        """Whether the name is new; a value of a piece may bear a name of the block, which it hides."""
        if name in self._values:
            kind = "a measurement or value"
            self._say.add(name_taken(word.span, kind, word.text, first=self._origins[name]))
            return False
        self._values[name], self._origins[name] = (name, dimension), word.span
        return True

    def _let(self, node: tree.Let, name: str, piece: str | None) -> Let | None:
        value = resolve_expression(node.value, self.scope(piece), self._say)
        return None if value is None else Let(name, value, dimension_of(value), node.name.span)

    def _find(self, node: tree.Find, name: str, piece: str | None) -> Find | None:
        scope = self.scope(piece)
        low = resolve_expression(node.low, scope, self._say)
        if low is None:
            return None
        dimension = dimension_of(low)
        high = meaning(node.high, scope, self._say, what="the upper bound", wanted=alike(dimension))
        values = {**scope.values, node.name.text: (name, dimension)}
        inner = replace(scope, values=values)
        left = resolve_expression(node.left, inner, self._say)
        if left is None or high is None:
            return None
        wanted = alike(dimension_of(left))
        right = meaning(node.right, inner, self._say, what="the other side", wanted=wanted)
        return None if right is None else Find(name, low, high, left, right, dimension, node.name.span)
