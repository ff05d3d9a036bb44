"""Owns what a statement of a piece may speak of: values, points and edges, its own before those of others.

Knows nothing of the statements.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.resolve.expressions import meaning
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import Expression, PartRef
    from specc.resolve.drawings import PieceDrawing
    from specc.resolve.expressions import Scope
    from specc.resolve.parts import Parts
    from specc.units import Dimension


class Within(NamedTuple):
    """The piece of that name while its statements are resolved; what is not there is reported."""

    piece: str
    scope: Scope
    parts: Parts
    drawing: PieceDrawing
    say: Collector

    def value(
        self, node: tree.Expression | None, what: str, wanted: tuple[Dimension, ...]
    ) -> Expression | None:
        """The expression of one of the dimensions; None stays None."""
        return meaning(node, self.scope, self.say, what=what, wanted=wanted)

    def ref(self, ref: tree.Ref, *kinds: str) -> PartRef | None:
        """The part of one of the kinds."""
        return self.parts.find(ref, kinds, self.say, within=self.piece)

    def points(self, *words: tree.Word) -> bool:
        """Whether the piece has all of these points."""
        found = [self.ref(tree.Ref(word, None, word.span), "point") for word in words]
        return None not in found

    def edge(self, word: tree.Word) -> PartRef | None:
        """The edge of the piece."""
        return self.ref(tree.Ref(word, None, word.span), "edge")
