"""Owns giving meaning to what is attached: pieces sewn onto pieces, ends caught at an edge.

Knows nothing of where that comes to lie.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.model.alteration import Level, Place
from specc.model.attachment import Caught, OnLevel, SewnOn
from specc.model.expression import Constant
from specc.resolve.codes import MORE_THAN_ONE, NAMED_TWICE, wrong_value
from specc.resolve.expressions import meaning
from specc.resolve.parts import wrong_kind
from specc.resolve.properties import titled
from specc.resolve.settings import Settings
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.attachment import Attachment
    from specc.model.construction import Making
    from specc.model.expression import Expression, PartRef
    from specc.resolve.alterations import Alterer
    from specc.resolve.construction import Maker
    from specc.resolve.expressions import Scope
    from specc.resolve.parts import Parts

_MADE = ("attachment",)
_ANGLE = (Dimension.ANGLE,)
_LENGTH = (Dimension.LENGTH,)
_NOTHING = Quantity(Fraction(0), UNITS["%"])


class Attacher:
    """Resolves what is attached to the pieces as all alterations have left them."""

    def __init__(self, alterer: Alterer, maker: Maker, scope: Scope, parts: Parts, say: Collector) -> None:
        self._alterer = alterer
        self._maker = maker
        self._scope = scope
        self._parts = parts
        self._say = say
        self._names: dict[str, int] = {}

    def attachment(self, node: tree.SewOn | tree.Catch) -> Attachment | None:
        """What the statement asks for; None after a fault."""
        return self._sewn_on(node) if isinstance(node, tree.SewOn) else self._caught(node)

    # --- a piece sewn onto another ---

    def _sewn_on(self, node: tree.SewOn) -> SewnOn | None:
        piece = self._whole_piece(node)
        making = self._making(node.method, node.settings)
        if not self._parts.piece(node.on, self._say):
            return None
        at = self._spot(node)
        turned, square_to = self._turn(node)
        if piece is None:
            return None
        if piece.text == node.on.text:
            self._say.add(wrong_value(node.on.span, "attach", "another piece to sew it onto"))
            return None
        corner = self._point(piece, node.corner)
        along = self._edges(node.along, of=piece)
        if corner is None or at is None or making is None or (along is None):
            return None
        if node.turn is not None and turned is None and square_to is None:
            return None
        side = f"{node.side}-" if node.side else ""
        return SewnOn(
            self._name(f"{piece.text}-on-{side}{node.on.text}"),
            titled(node.title, "") or None,
            piece.text,
            node.on.text,
            node.side,
            corner,
            at,
            turned,
            square_to,
            along,
            making,
            node.what[0].span,
        )

    def _whole_piece(self, node: tree.SewOn) -> tree.Word | None:
        """The piece that is sewn on: one, and the whole of it."""
        first, *more = node.what
        if more:
            told = MORE_THAN_ONE.at(more[0].span, owner="`attach … on`", what="piece")
            self._say.add(told.see(first.span, "the first"))
            return None
        if first.second is not None:
            found = self._parts.find(first, ("edge", "point", "line", "dart", "two-pointed dart"), self._say)
            if found is not None:
                kind = self._parts.pieces[first.first.text].kinds[found.name]
                told = wrong_kind(first.span, f"{found.piece}.{found.name}", kind, ("piece",))
                cure = f"a whole piece goes onto another: `attach {found.piece} on …`"
                self._say.add(told.help(f"{cure}; an end goes to an edge: `attach … to …`"))
            return None
        return first.first if self._parts.piece(first.first, self._say) else None

    def _spot(self, node: tree.SewOn) -> OnLevel | PartRef | None:
        at = node.at
        if isinstance(at, tree.AtPoint):
            return self._point(node.on, at.point)
        level = self._alterer.level(at.level, (node.on,))
        edge = self._edge(node.on, at.edge)
        distance = meaning(
            at.distance, self._scope, self._say, what="a distance from an edge", wanted=_LENGTH
        )
        if not isinstance(level, Level) or edge is None or distance is None:
            return None
        return OnLevel(level, distance, edge, at.span)

    def _turn(self, node: tree.SewOn) -> tuple[Expression | None, PartRef | None]:
        if node.turn is None:
            return None, None
        if node.turn.square_to is not None:
            return None, self._edge(node.on, node.turn.square_to)
        return meaning(node.turn.by, self._scope, self._say, what="a turn", wanted=_ANGLE), None

    # --- ends caught at an edge ---

    def _caught(self, node: tree.Catch) -> Caught | None:
        ends = self._edges(node.what)
        to = self._parts.find(node.to, ("edge",), self._say)
        making = None if node.method is None else self._making(node.method, node.settings)
        if to is None or not ends:
            return None
        at = self._place(node.at, to)
        if at is None or (node.method is not None and making is None):
            return None
        names = tuple(dict.fromkeys(end.piece or "" for end in ends))
        side = f"{node.side}-" if node.side else ""
        return Caught(
            self._name(f"{'-'.join(names)}-to-{side}{to.piece}-{to.name}"),
            titled(node.title, "") or None,
            ends,
            node.side,
            to,
            at,
            making,
            node.what[0].span,
        )

    def _place(self, node: tree.Place, edge: PartRef) -> Place | None:
        """A length or share along the edge, or one of its corners."""
        name = node.at.name if isinstance(node.at, tree.Named) and node.corner is None else None
        if name is None or name.text in self._scope.values:
            return self._alterer.place(node, edge)
        corner = self._parts.corner(name, edge, self._say)
        return None if corner is None else Place(Constant(_NOTHING, node.span), node.span, corner)

    # --- what they have in common ---

    def _name(self, name: str) -> str:
        """The name by which the sheet calls it; a second of one name has a number."""
        count = self._names[name] = self._names.get(name, 0) + 1
        return name if count == 1 else f"{name}-{count}"

    def _making(self, method: tree.Word, settings: tuple[object, ...]) -> Making | None:
        found = Settings(settings, method.span, self._say)
        return self._maker.making(method, found, made=_MADE, wanted="attachment")

    def _point(self, piece: tree.Word, word: tree.Word) -> PartRef | None:
        return self._parts.find(tree.Ref(piece, word, word.span), ("point",), self._say)

    def _edge(self, piece: tree.Word, word: tree.Word) -> PartRef | None:
        return self._parts.find(tree.Ref(piece, word, word.span), ("edge",), self._say)

    def _edges(self, refs: tuple[tree.Ref, ...], of: tree.Word | None = None) -> tuple[PartRef, ...] | None:
        """The edges, each once, and all of the piece `of` where one is given; None after a fault."""
        found: dict[tuple[str | None, str], PartRef] = {}
        for ref in refs:
            edge = self._parts.find(ref, ("edge",), self._say)
            if edge is None:
                return None
            if of is not None and edge.piece != of.text:
                self._say.add(wrong_value(ref.span, "along", f"edges of `{of.text}`"))
                return None
            key = (edge.piece, edge.name)
            if key in found:
                told = NAMED_TWICE.at(ref.span, name=f"{edge.piece}.{edge.name}")
                self._say.add(told.see(found[key].origin, "first here"))
            found.setdefault(key, edge)
        return tuple(found.values())
