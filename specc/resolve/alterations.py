"""Owns giving alterations their meaning, one after the other, with what each leaves behind.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from specc.diagnostics import Severity, declare
from specc.model.alteration import (
    Crop,
    LeaveOut,
    Lengthen,
    Level,
    MoveCorner,
    PieceRef,
    Place,
    Release,
)
from specc.model.expression import Arithmetic, Constant, Operator, PartRef
from specc.resolve.codes import NAMED_TWICE, there_are, unknown_name
from specc.resolve.expressions import meaning
from specc.resolve.fullness import Fuller
from specc.resolve.parts import DARTS, Gone, wrong_kind
from specc.resolve.recutting import Recutter
from specc.resolve.reshaping import Reshaper
from specc.resolve.swings import Swinger
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.diagnostics import Collector
    from specc.model.alteration import (
        Alteration,
    )
    from specc.model.expression import Expression
    from specc.resolve.expressions import Scope
    from specc.resolve.parts import Parts

NOTHING_LEFT = declare("SPC311", "nothing-left", Severity.ERROR, "no piece is left to make")

Item = TypeVar("Item", bound=PieceRef | PartRef)

_LENGTH = (Dimension.LENGTH,)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)
_MINUS = Quantity.of(-1, UNITS[""])


class Alterer:
    """Resolves alterations in order; `parts` are as those before have left them."""

    def __init__(self, scope: Scope, parts: Parts, say: Collector) -> None:
        self._scope = scope
        self._parts = parts
        self._say = say
        self._swinger = Swinger(self, parts, say)
        self._fuller = Fuller(self, parts, say)
        self._recutter = Recutter(self, parts, say)
        self._reshaper = Reshaper(self, parts, say)

    def step(self, node: tree.AlterStep) -> Alteration | None:  # noqa: PLR0911  one line a verb
        """What the statement asks for; None after a fault."""
        match node:
            case tree.LeaveOut():
                return self._leave_out(node)
            case tree.Release():
                return self._release(node)
            case tree.Swing():
                return self._swinger.step(node)
            case tree.Crop():
                level = self.level(node.at, node.pieces)
                found = self.pieces(node.pieces)
                return Crop(found, level, node.span) if found and isinstance(level, Level) else None
            case tree.Lengthen():
                by = self.length(node.by, "how much")
                at = self.level(node.at, node.pieces, edges=True)
                found = self.pieces(node.pieces)
                shorten = node.verb.text == "shorten"
                return Lengthen(found, by, at, node.span, shorten) if by and at and found else None
            case tree.MoveCorner():
                by = self.length(node.by, "how much")
                edges = self._cornered(node)
                return (
                    MoveCorner(node.verb.text, edges, node.corner.text, by, node.span)
                    if by and edges
                    else None
                )
            case tree.Pleat() | tree.Gather():
                return self._fuller.step(node)
            case tree.Shape() | tree.MoveSeam():
                return self._recutter.step(node)
            case _:
                return self._reshaper.step(node)

    # --- pieces and darts ---

    def pieces(self, words: tuple[tree.Word, ...]) -> tuple[PieceRef, ...]:
        """The pieces that are there, each once; anything else is reported."""
        found = tuple(PieceRef(word.text, word.span) for word in words if self._parts.piece(word, self._say))
        return self.once(found)

    def once(self, named: Sequence[Item]) -> tuple[Item, ...]:
        """The pieces or parts, each once; a second one of the same name is reported."""
        first: dict[str, Item] = {}
        for item in named:
            name = f"{item.piece}.{item.name}" if isinstance(item, PartRef) else item.piece
            if name in first:
                self._say.add(NAMED_TWICE.at(item.origin, name=name).see(first[name].origin, "first here"))
            first.setdefault(name, item)
        return tuple(first.values())

    def _leave_out(self, node: tree.LeaveOut) -> LeaveOut | None:
        found = self.pieces(node.pieces)
        for piece in found:
            self._parts.leave_out(piece.piece, Gone(f"left out on line {node.span.line}", piece.origin))
        if found and not self._parts.pieces:
            told = NOTHING_LEFT.at(node.span)
            self._say.add(told.help("leave out the pieces that are not made, and keep the others"))
        return LeaveOut(found, node.span) if found else None

    def _release(self, node: tree.Release) -> Release | None:
        refs = [self._parts.find(ref, DARTS, self._say) for ref in node.darts]
        known = [ref for ref in refs if ref is not None]
        darts = self.once(known)
        for dart in darts:
            self._parts.lose(dart, Gone(f"released on line {node.span.line}", dart.origin))
        return Release(darts, node.span) if darts else None

    # --- places, levels, corners ---

    def length(self, node: tree.Expression, what: str) -> Expression | None:
        """The amount as a length; anything else is reported."""
        return meaning(node, self._scope, self._say, what=what, wanted=_LENGTH)

    def place(self, node: tree.Place, target: PartRef) -> Place | None:
        """The place on an edge, a length or a share of it; anything else is reported."""
        at = meaning(node.at, self._scope, self._say, what="a place on an edge", wanted=_PLACE)
        corner = None if node.corner is None else self._parts.corner(node.corner, target, self._say)
        return None if at is None else Place(at, node.span, corner)

    def level(
        self, node: tree.Level, pieces: tuple[tree.Word, ...], *, edges: bool = False
    ) -> Level | str | None:
        """The level, or the name of an edge where one may stand; every piece must have it."""
        above = None
        if node.offset is not None:
            above = self.length(node.offset, "a distance")
            if above is None:
                return None
            if node.side == "below":
                minus = Constant(_MINUS, node.span)
                above = Arithmetic(Operator.TIMES, minus, above, Dimension.LENGTH, above.origin)
        kinds: tuple[str, ...] = ("line", "edge") if edges and node.offset is None else ("line",)
        found: Level | str = Level(node.line.text, above, node.span)
        for word in pieces:
            if word.text not in self._parts.pieces:
                continue
            piece = self._parts.pieces[word.text]
            kind = piece.kinds.get(node.line.text)
            if kind not in kinds:
                self._tell_level(node.line, word.text, kinds)
                return None
            if kind == "edge":
                found = node.line.text
            kinds = (kind,)  # of the other pieces too: a step cuts all of them in one way
        return found

    def _tell_level(self, line: tree.Word, name: str, kinds: tuple[str, ...]) -> None:
        """Say why there is no level of that name on the piece."""
        piece = self._parts.pieces[name]
        known, other = piece.of(*kinds), piece.kinds.get(line.text)
        if other is not None:
            told = wrong_kind(line.span, f"{name}.{line.text}", other, kinds)
            self._say.add(told.help(there_are(known)))
        else:
            told = unknown_name(line.span, " or ".join(kinds), line.text, known=known, where=f" on `{name}`")
            self._say.add(told)

    def _cornered(self, node: tree.MoveCorner) -> tuple[PartRef, ...]:
        """The edges, if the corner that is to be moved is an end of each."""
        found = [self._parts.find(ref, ("edge",), self._say) for ref in node.edges]
        edges = tuple(edge for edge in found if edge is not None)
        for edge in edges:
            if self._parts.corner(node.corner, edge, self._say) is None:
                return ()
        kept = self.once(edges)
        return kept if len(edges) == len(found) else ()
