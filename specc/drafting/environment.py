"""Owns one size of all blocks while it is drafted: each value, point, edge and line found when first needed.

Knows nothing of whether the pieces that come out are sound.
"""

from __future__ import annotations

from functools import partial
from math import degrees
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.drafting.darts import trued
from specc.drafting.drafts import Drafts
from specc.drafting.drawings import followed, laid
from specc.drafting.edges import drawn_edge
from specc.drafting.evaluate import EvaluationError, Evaluator, dimension_of, is_share
from specc.drafting.finished import times_round
from specc.drafting.grading import carried, shifted
from specc.drafting.lazy import Lazy
from specc.drafting.lines import drawn_line, level_line
from specc.drafting.on_piece import AsMeasured, OnPiece
from specc.drafting.points import position
from specc.drafting.roots import root
from specc.geometry.along import carried as carried_along
from specc.geometry.point import Point
from specc.geometry.tolerance import SAME
from specc.model.block import Let, LineDraft
from specc.pattern.measure import drawn_length, line_length, place_on_edge, stitched_length, stitched_where
from specc.pattern.outline import drawn_outline
from specc.pattern.piece import Piece, ReferenceLine, TwoPointedDart
from specc.units import Dimension, format_angle, format_length, format_number

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from specc.diagnostics import Diagnostic
    from specc.drafting.lazy import Key
    from specc.geometry.path import Path
    from specc.geometry.svg import Drawn
    from specc.model.block import (
        Block,
        Find,
        On,
    )
    from specc.model.expression import Expression, PartRef
    from specc.model.tracing import Along
    from specc.pattern.piece import Dart, Edge
    from specc.source import Span

NOT_FOUND = declare(
    "SPC408",
    "nothing-found",
    Severity.ERROR,
    "no `{name}` between {low} and {high} makes the two sides equal",
)
CIRCULAR = declare("SPC409", "circular-definition", Severity.ERROR, "`{name}` depends on itself")
OFF_EDGE = declare(
    "SPC411", "place-off-edge", Severity.ERROR, "{place} along `{edge}` lies off it: it is {length} long"
)
NO_WIDTH = declare("SPC414", "dart-without-width", Severity.ERROR, "`{dart}` would be {width} wide")
TOO_DEEP = declare("SPC415", "definitions-too-deep", Severity.ERROR, "`{name}` stands behind too many others")


_POINTS = ("point", "measured point")


class Environment:
    """The blocks in one size; asking twice gives the same.

    `measurements` are the values of the chart in this `size`; `in_size` gives the environment of another
    one, from which traced pieces are graded. Every method raises EvaluationError, with the place in the
    text, where what is asked for cannot be had; parts that the resolver does not know of are not asked for.
    """

    def __init__(
        self,
        blocks: tuple[Block, ...],
        measurements: Mapping[str, float],
        size: str,
        in_size: Callable[[str], Environment],
    ) -> None:
        self.measurements = measurements
        self._size = size
        self._in_size = in_size
        self._blocks = {block.name: {d.name: d for d in block.definitions} for block in blocks}
        self._evaluators = {block.name: Evaluator(partial(self.named, block.name), self) for block in blocks}
        self._pieces = {
            piece.name: Drafts.of(piece, block.name) for block in blocks for piece in block.pieces
        }
        self._lazy = Lazy(self._computed, self._circle, self._too_deep)

    def value(self, piece: str, expression: Expression) -> float:
        """The value of an expression written on a piece."""
        return self._evaluators[self._pieces[piece].block].value(expression)

    def named(self, block: str, name: str) -> float:
        """The value of a name that the block defines, else of a measurement of the chart."""
        if name not in self._blocks[block]:
            return self.measurements[name]
        found = self._lazy.get(("value", block, name))
        assert isinstance(found, float)
        return found

    def point_of(self, piece: str, name: str) -> Point:
        """A point of a piece."""
        found = self._lazy.get(("point", piece, name))
        assert isinstance(found, Point)
        return found

    def measured_point(self, piece: str, name: str) -> Point:
        """A point of a piece as measured and graded, before the legs of a dart that ends there are trued."""
        found = self._lazy.get(
            ("measured point" if self._pieces[piece].trues(name) else "point", piece, name)
        )
        assert isinstance(found, Point)
        return found

    def edge_of(self, piece: str, name: str) -> tuple[Edge, tuple[Dart, ...]]:
        """An edge of a piece with its darts."""
        found = self._lazy.get(("edge", piece, name))
        assert isinstance(found, tuple)
        return found

    def line_of(self, piece: str, name: str) -> ReferenceLine:
        """A reference line of a piece."""
        found = self._lazy.get(("line", piece, name))
        assert isinstance(found, ReferenceLine)
        return found

    def two_pointed_of(self, piece: str, name: str) -> TwoPointedDart:
        """A dart inside a piece."""
        found = self._lazy.get(("two-pointed dart", piece, name))
        assert isinstance(found, TwoPointedDart)
        return found

    def stitched_place(
        self, piece: str, edge: str, at: Expression | str, *, corner: str | None, origin: Span
    ) -> float:
        """A place on an edge, written on the piece, in stitched millimetres from the edge's start."""
        drawn, _ = self.edge_of(piece, edge)
        if isinstance(at, str):
            return stitched_where(drawn, self.point_of(piece, at))
        return self._along(
            piece, at, whole=stitched_length(drawn), back=corner == drawn.end, on=edge, origin=origin
        )

    def placed(self, piece: str, on: On, origin: Span) -> Point:
        """A place on an edge or reference line, written on the piece."""
        owner, name = on.edge.piece or piece, on.edge.name
        if name in self._pieces[owner].edges:
            drawn, _ = self.edge_of(owner, name)
            whole, back = stitched_length(drawn), on.corner == drawn.end
            along = self._along(piece, on.at, whole=whole, back=back, on=name, origin=origin)
            return place_on_edge(drawn, along).at
        line = self._pieces[owner].lines[name]
        back = isinstance(line, LineDraft) and on.corner == line.end
        path = self.line_of(owner, name).parts[0]
        return path.point_at(
            self._along(piece, on.at, whole=path.length(), back=back, on=name, origin=origin)
        )

    def _along(  # noqa: PLR0913 they belong together nowhere else
        self, piece: str, at: Expression, *, whole: float, back: bool, on: str, origin: Span
    ) -> float:
        along = self.value(piece, at) * (whole if is_share(at) else 1.0)
        if not -SAME <= along <= whole + SAME:
            place, length = (format_length(value, "mm", decimals=1) for value in (along, whole))
            said = OFF_EDGE.at(origin, place=place, edge=on, length=length)
            raise EvaluationError(
                said.help("give it as a share, such as `50%`, or say from which corner it is measured")
            )
        return whole - along if back else along

    # --- what expressions ask of parts ---

    def point(self, ref: PartRef) -> Point:
        """The point or corner."""
        return self.point_of(ref.piece or "", ref.name)

    def length(self, ref: PartRef) -> float:
        """The length of an edge or reference line as sewn."""
        piece = ref.piece or ""
        if ref.name in self._pieces[piece].edges:
            return stitched_length(self.edge_of(piece, ref.name)[0])
        return self._line_length(piece, ref.name)

    def drawn_length(self, ref: PartRef) -> float:
        """The length of an edge along the paper."""
        return drawn_length(self.edge_of(ref.piece or "", ref.name)[0])

    def dart(self, ref: PartRef) -> Dart | TwoPointedDart:
        """The dart."""
        piece = ref.piece or ""
        edge = self._pieces[piece].edge_of_dart.get(ref.name)
        if edge is None:
            return self.two_pointed_of(piece, ref.name)
        return next(dart for dart in self.edge_of(piece, edge)[1] if dart.name == ref.name)

    def girth(self, ref: PartRef) -> float:
        """The way round at a reference line: over every piece that has it, as often as it is cut."""
        return sum(
            times_round(drafts.piece) * self._line_length(name, ref.name)
            for name, drafts in self._pieces.items()
            if ref.name in drafts.lines
        )

    def opening(self, ref: PartRef) -> float:
        """There are no finishes yet: the resolver lets the question through only behind the alterations."""
        raise AssertionError(ref.name)

    def _line_length(self, piece: str, name: str) -> float:
        darts = tuple(self.two_pointed_of(piece, dart) for dart in self._pieces[piece].two_pointed)
        return line_length(Piece(piece, "", (), two_pointed=darts), self.line_of(piece, name))

    def drawn(self, piece: str, path: str) -> Drawn:
        """A path of the drawing that the piece is taken from."""
        found = self._lazy.get(("drawing", piece, ""))
        assert isinstance(found, dict)
        drawn: Drawn = found[path]
        return drawn

    def along(self, piece: str, run: Along, start: str) -> Path:
        """A run of an edge that follows the drawing, carried along where its ends are graded."""
        drafts = self._pieces[piece]
        traced = drafts.piece.traced
        ends = self.point_of(piece, start), self.point_of(piece, run.to)
        if traced is not None and traced.size != self._size:
            return carried_along(self._in_size(traced.size).along(piece, run, start), *ends)
        others = (self.point_of(piece, name) for name in drafts.on_edges() if name not in (start, run.to))
        return followed(run, self.drawn(piece, run.path), start, ends, others)

    # --- how each kind of thing is found ---

    def _computed(self, key: Key) -> object:  # noqa: PLR0911 a kind each
        kind, owner, name = key
        if kind == "value":
            definition = self._blocks[owner][name]
            evaluator = self._evaluators[owner]
            return (
                evaluator.value(definition.value)
                if isinstance(definition, Let)
                else self._found(definition, key)
            )
        drafts, finder = self._pieces[owner], OnPiece(self, owner)
        if kind == "point" and drafts.trues(name):
            ends = (self.measured_point(owner, end) for end in (name, *drafts.mouths[name]))
            return trued(*ends)
        if kind in _POINTS:
            return position(drafts.points[name], finder) + self._graded(drafts, name)
        if kind == "edge":
            return drawn_edge(drafts.edges[name], finder)
        if kind == "drawing":
            assert drafts.piece.drawing is not None
            return laid(drafts.piece.drawing)
        if kind == "line":
            line = drafts.lines[name]
            if isinstance(line, LineDraft):
                return drawn_line(line, finder)
            return level_line(line, finder.at(line.point), self._outline(drafts), piece=owner)
        return self._two_pointed(drafts, name, finder)

    def _outline(self, drafts: Drafts) -> Path:
        """The outline of the piece as far as it is drawn, straight across the mouths of darts."""
        name = drafts.piece.name
        edges = tuple(self.edge_of(name, edge)[0] for edge in drafts.edges)
        darts = tuple(dart for edge in drafts.edges for dart in self.edge_of(name, edge)[1])
        return drawn_outline(Piece(name, "", edges, darts))

    def _graded(self, drafts: Drafts, name: str) -> Point:
        """How far the point has moved by grading, beside what it is found from."""
        piece, point = drafts.piece, drafts.points[name]
        if piece.traced is None or piece.traced.size == self._size:
            return Point(0.0, 0.0)
        now = AsMeasured(self, piece.name)
        if point.graded is not None:
            return shifted(point.graded, piece.traced, self._size, now)
        return carried(point, piece, now, AsMeasured(self._in_size(piece.traced.size), piece.name))

    def _found(self, definition: Find, key: Key) -> float:
        """The value that makes both sides equal; whatever does not depend on it is computed once."""
        evaluator = self._evaluators[key[1]]
        low, high = evaluator.value(definition.low), evaluator.value(definition.high)

        def difference() -> float:
            return evaluator.value(definition.left) - evaluator.value(definition.right)

        with self._lazy.on_trial(key, difference) as tried:
            found = root(tried, low, high)
        if isinstance(found, float):
            return found
        bounds = [_printed(bound, definition.dimension) for bound in (low, high)]
        said = NOT_FOUND.at(definition.origin, name=definition.name, low=bounds[0], high=bounds[1])
        for bound, value in zip(bounds, found, strict=True):
            more = "larger" if value > 0.0 else "smaller"
            said = said.note(
                f"at {bound} the left side is {more} by {_printed(abs(value), dimension_of(definition.left))}"
            )
        raise EvaluationError(
            said.help("set the bounds further apart, or ask for something that lies between them")
        )

    def _two_pointed(self, drafts: Drafts, name: str, finder: OnPiece) -> TwoPointedDart:
        draft = drafts.two_pointed[name]
        top, bottom, middle = finder.at(draft.top), finder.at(draft.bottom), finder.at(draft.middle)
        width = finder.value(draft.width)
        if width <= SAME or top.distance(bottom) <= SAME:
            said = NO_WIDTH.at(draft.origin, dart=name, width=_printed(width, Dimension.LENGTH))
            raise EvaluationError(said.help("leave the dart out, or let it take in something in every size"))
        half = (bottom - top).unit().left() * (width / 2.0)
        return TwoPointedDart(name, top, bottom, middle + half, middle - half)

    def _circle(self, keys: tuple[Key, ...]) -> Diagnostic:
        names = [_spoken(key) for key in keys]
        said = CIRCULAR.at(self._origin(keys[0]), name=names[0])
        for key, needed in zip(keys, [*names[1:], names[0]], strict=True):
            said = said.see(self._origin(key), f"needs `{needed}`")
        return said.help("let one of them stand on measurements or on points that are already found")

    def _too_deep(self, keys: tuple[Key, ...]) -> Diagnostic:
        said = TOO_DEEP.at(self._origin(keys[0]), name=_spoken(keys[0]))
        chain = ", ".join(f"`{_spoken(key)}`" for key in keys[:4])
        return said.note(f"it waits for {chain} and {len(keys) - 4} more").help(
            "define things in the order of their need"
        )

    def _origin(self, key: Key) -> Span:
        kind, owner, name = key
        if kind == "value":
            return self._blocks[owner][name].origin
        drafts = self._pieces[owner]
        if kind in _POINTS:
            return drafts.points[name].origin
        if kind == "edge":
            return drafts.edges[name].origin
        return drafts.lines[name].origin if kind == "line" else drafts.two_pointed[name].origin


def _spoken(key: Key) -> str:
    """The name as the text calls it: with its piece, unless a whole block owns it."""
    kind, owner, name = key
    return name if kind == "value" else f"{owner}.{name}"


def _printed(value: float, dimension: Dimension) -> str:
    if dimension == Dimension.LENGTH:
        return format_length(value, "mm", decimals=1)
    if dimension == Dimension.ANGLE:
        return format_angle(degrees(value))
    return format_number(value, decimals=4)
