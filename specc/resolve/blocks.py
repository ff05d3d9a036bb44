"""Owns giving blocks their meaning, with the settings of the garment that uses them.

Knows nothing of sizes or of how a point is found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.block import (
    At,
    Bearing,
    Block,
    Curve,
    DartRun,
    Definition,
    EdgeDraft,
    Find,
    Going,
    Let,
    LineDraft,
    Moved,
    NotchDraft,
    On,
    PieceDraft,
    PointDraft,
    Straight,
    Toward,
    Turned,
    TwoPointedDraft,
)
from specc.model.expression import Constant, Expression, PartRef
from specc.resolve.codes import NAME_TAKEN, unknown_name
from specc.resolve.expressions import Scope, dimension_of, meaning, resolve_expression
from specc.resolve.parts import Parts, PieceParts
from specc.resolve.settings import Settings
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector
    from specc.model.chart import Chart

EMPTY_OUTLINE = declare("SPC304", "no-outline", Severity.ERROR, "piece `{piece}` has no edges")

_LENGTH = (Dimension.LENGTH,)
_ANGLE = (Dimension.ANGLE,)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)
_SIDES = {"right": 0, "up": 90, "left": 180, "down": 270}


def resolve_block(
    node: tree.Block, settings: Settings, chart: Chart | None, parts: Parts, say: Collector
) -> Block | None:
    """The block, its parameters set; its pieces are added to `parts`."""
    values = {} if chart is None else {m.name: (m.name, m.dimension) for m in chart.measurements}
    definitions: list[Definition] = []
    choices: dict[str, str] = {}
    for item in node.body:
        match item:
            case tree.Parameter():
                value = settings.value(item, Scope(values), say)
                if value is not None:
                    definitions.append(Let(item.name.text, value, dimension_of(value), item.name.span))
                    values[item.name.text] = (item.name.text, dimension_of(value))
            case tree.Choice():
                choices[item.name.text] = settings.option(item, say)
    settings.report_unused(f"block `{node.name.text}`", say)
    pieces = [item for item in node.body if isinstance(item, tree.Piece)]
    for piece in pieces:
        if piece.name.text in parts.pieces:
            say.add(NAME_TAKEN.at(piece.name.span, kind="piece", name=piece.name.text))
        else:
            parts.pieces[piece.name.text] = _parts_of(piece)
    builder = _Builder(values, choices, parts, say)
    definitions += builder.definitions(node.body, None)
    drafts = []
    for piece in pieces:
        definitions += builder.definitions(piece.body, piece.name.text)
        drafts.append(builder.piece(piece))
    title = node.title.text if node.title else node.name.text
    return Block(node.name.text, title, tuple(definitions), tuple(drafts), settings.place)


def _parts_of(piece: tree.Piece) -> PieceParts:
    parts = PieceParts()
    for item in piece.body:
        match item:
            case tree.PointStatement():
                parts.points.add(item.name.text)
            case tree.Line():
                parts.lines.add(item.name.text)
            case tree.TwoPointed():
                parts.two_pointed.add(item.name.text)
            case tree.Edge():
                runs = [run for run in item.runs if not isinstance(run, tree.Broken)]
                parts.edges[item.name.text] = (item.start.text, runs[-1].to.text if runs else item.start.text)
                parts.darts |= {run.name.text for run in runs if isinstance(run, tree.DartRun)}
    return parts


class _Builder:
    """Resolves the statements of a block; `values` grows as definitions are met."""

    def __init__(
        self, values: dict[str, tuple[str, Dimension]], choices: dict[str, str], parts: Parts, say: Collector
    ) -> None:
        self.values = values
        self.choices = choices
        self.parts = parts
        self.say = say
        self.failed: set[str] = set()

    def scope(self, piece: str | None) -> Scope:
        """What the statements of a piece may speak of: its own names before those of the block."""
        reach = {name: value for name, value in self.values.items() if "." not in name}
        for name, value in self.values.items():
            owner, dot, short = name.partition(".")
            if dot and owner == piece:
                reach[short] = value
            elif dot:
                reach[name] = value
        return Scope(reach, self.parts, piece, missing=frozenset(self.failed))

    def definitions(self, body: Iterable[object], piece: str | None) -> list[Definition]:
        """The `let` and `find` statements of a body, in order."""
        found: list[Definition] = []
        for item in body:
            if not isinstance(item, tree.Let | tree.Find):
                continue
            name = item.name.text if piece is None else f"{piece}.{item.name.text}"
            definition = self._let(item, name, piece) if isinstance(item, tree.Let) else self._find(item, name, piece)
            if definition is None:
                self.failed.add(item.name.text)
                continue
            if name in self.values:
                self.say.add(NAME_TAKEN.at(item.name.span, kind="value", name=item.name.text))
            self.values[name] = (name, definition.dimension)
            found.append(definition)
        return found

    def _let(self, node: tree.Let, name: str, piece: str | None) -> Let | None:
        value = resolve_expression(node.value, self.scope(piece), self.say)
        return None if value is None else Let(name, value, dimension_of(value), node.name.span)

    def _find(self, node: tree.Find, name: str, piece: str | None) -> Find | None:
        scope = self.scope(piece)
        low = resolve_expression(node.low, scope, self.say)
        if low is None:
            return None
        dimension = dimension_of(low)
        high = meaning(node.high, scope, self.say, what="the upper bound", wanted=(dimension,))
        inner = Scope({**scope.values, node.name.text: (name, dimension)}, scope.parts, piece)
        left = resolve_expression(node.left, inner, self.say)
        if left is None or high is None:
            return None
        right = meaning(node.right, inner, self.say, what="what it equals", wanted=(dimension_of(left),))
        return None if right is None else Find(name, low, high, left, right, dimension, node.name.span)

    def piece(self, node: tree.Piece) -> PieceDraft:
        """The piece; statements with a fault are left out, and the fault has been reported."""
        name = node.name.text
        points, edges, two_pointed, lines, notches = [], [], [], [], []
        grain: tuple[str, str] | None = None
        cut, fold = 1, None
        for item in node.body:
            match item:
                case tree.PointStatement():
                    points.append(self._point(item, name))
                case tree.Edge():
                    edges.append(self._edge(item, name))
                case tree.TwoPointed():
                    self._points(name, item.top, item.bottom, item.middle)
                    width = self._value(item.width, name, "the width of a dart", _LENGTH)
                    if width is not None:
                        two_pointed.append(
                            TwoPointedDraft(
                                item.name.text, item.top.text, item.bottom.text, item.middle.text, width, item.name.span
                            )
                        )
                case tree.Line():
                    self._points(name, item.start, item.end)
                    lines.append(LineDraft(item.name.text, item.start.text, item.end.text, item.name.span))
                case tree.Grain():
                    self._points(name, item.start, item.end)
                    grain = (item.start.text, item.end.text)
                case tree.Notch():
                    at = self._value(item.at, name, "the place of a notch", _PLACE)
                    if at is not None and self._on_edge(item.edge, name):
                        corner = item.corner.text if item.corner else None
                        notches.append(NotchDraft(item.edge.text, at, corner, item.double, item.span))
                case tree.Cut() if item.when is None or self._holds(item.when):
                    cut = int(item.count.value)
                    fold = item.fold.text if item.fold and self._on_edge(item.fold, name) else None
        if not edges:
            self.say.add(EMPTY_OUTLINE.at(node.name.span, piece=name).help("give it edges that close its outline"))
        return PieceDraft(
            name,
            node.title.text if node.title else name,
            cut,
            fold,
            tuple(point for point in points if point is not None),
            tuple(edges),
            tuple(two_pointed),
            tuple(lines),
            tuple(notches),
            grain,
            node.name.span,
        )

    def _holds(self, when: tree.When) -> bool:
        if when.choice.text not in self.choices:
            self.say.add(unknown_name(when.choice.span, "choice", when.choice.text, known=self.choices))
            return False
        return self.choices[when.choice.text] == when.option.text

    def _value(
        self, node: tree.Expression | None, piece: str, what: str, wanted: tuple[Dimension, ...]
    ) -> Expression | None:
        return meaning(node, self.scope(piece), self.say, what=what, wanted=wanted)

    def _points(self, piece: str, *words: tree.Word) -> bool:
        known = self.parts.pieces[piece].of("point")
        unknown = [word for word in words if word.text not in known]
        for word in unknown:
            self.say.add(unknown_name(word.span, "point", word.text, known=known, where=f" on `{piece}`"))
        return not unknown

    def _on_edge(self, word: tree.Word, piece: str) -> bool:
        known = self.parts.pieces[piece].edges
        if word.text not in known:
            self.say.add(unknown_name(word.span, "edge", word.text, known=known, where=f" on `{piece}`"))
        return word.text in known

    def _ref(self, ref: tree.Ref, piece: str, *kinds: str) -> PartRef | None:
        return self.parts.find(ref, kinds, self.say, within=piece)

    def _point(self, node: tree.PointStatement, piece: str) -> PointDraft | None:
        position = self._position(node.position, piece)
        return None if position is None else PointDraft(node.name.text, position, node.name.span)

    def _position(
        self, node: tree.At | tree.Moved | tree.Turned | tree.On, piece: str
    ) -> At | Moved | Turned | On | None:
        match node:
            case tree.At():
                across = self._value(node.across, piece, "a distance to the right", _LENGTH)
                up = self._value(node.up, piece, "a distance up", _LENGTH)
                return None if across is None or up is None else At(across, up)
            case tree.Moved():
                start = self._ref(node.origin, piece, "point")
                moves = [self._move(move, piece) for move in node.moves]
                done = tuple(move for move in moves if move is not None)
                return None if start is None or len(done) < len(moves) else Moved(start, done)
            case tree.Turned():
                point = self._ref(node.point, piece, "point")
                around = self._ref(node.around, piece, "point")
                angle = self._value(node.angle, piece, "a turn", _ANGLE)
                return None if point is None or around is None or angle is None else Turned(point, angle, around)
            case tree.On():
                edge = self._ref(node.edge, piece, "edge", "line")
                at = self._value(node.at, piece, "a place on an edge", _PLACE)
                corner = node.corner.text if node.corner else None
                return None if edge is None or at is None else On(edge, at, corner)

    def _move(self, node: tree.Step | tree.Going | tree.Toward, piece: str) -> Going | Toward | None:
        by = self._value(node.by, piece, "a distance", _LENGTH)
        if isinstance(node, tree.Toward):
            target = self._ref(node.target, piece, "point")
            return None if by is None or target is None else Toward(target, by)
        if isinstance(node, tree.Step):
            direction: Expression | None = compass(node.side, node)
        else:
            direction = self._value(node.direction, piece, "a direction", _ANGLE)
        return None if by is None or direction is None else Going(direction, by)

    def _edge(self, node: tree.Edge, piece: str) -> EdgeDraft:
        self._points(piece, node.start)
        runs = [self._run(run, piece) for run in node.runs if not isinstance(run, tree.Broken)]
        done = tuple(run for run in runs if run is not None)
        return EdgeDraft(node.name.text, node.start.text, done, node.hidden, node.name.span)

    def _run(
        self, node: tree.Straight | tree.Curve | tree.DartRun, piece: str
    ) -> Straight | Curve | DartRun | None:
        if not self._points(piece, node.to):
            return None
        match node:
            case tree.Straight():
                return Straight(node.to.text, node.span)
            case tree.Curve():
                leaving, arriving = self._bearing(node.leaving, piece), self._bearing(node.arriving, piece)
                if leaving is None or arriving is None:
                    return None
                share = (Dimension.RATIO, Dimension.NUMBER)
                full = self._value(node.full, piece, "how full a curve is", share)
                through = self._ref(node.through, piece, "point") if node.through else None
                return Curve(node.to.text, leaving, arriving, full, through, node.span)
            case tree.DartRun():
                if not self._points(piece, node.pivot):
                    return None
                short = self._value(node.short, piece, "how far a dart stops short", _LENGTH)
                return DartRun(node.name.text, node.to.text, node.pivot.text, short, node.name.span)

    def _bearing(self, node: tree.Bearing, piece: str) -> Bearing | None:
        direction = self._value(node.direction, piece, "a direction", _ANGLE)
        handle = self._value(node.handle, piece, "how far a direction holds", _LENGTH)
        return None if direction is None else Bearing(direction, handle)


def compass(side: str, node: tree.Step) -> Expression:
    """The direction of a side as an angle from the right, counter-clockwise."""
    return Constant(Quantity.of(_SIDES[side], UNITS["deg"]), node.span)
