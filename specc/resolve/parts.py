"""Owns what parts the pieces have at each moment, and what became of those that are gone.

Knows nothing of geometry: what a cut takes away is only known once the pieces are drawn.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.expression import PartRef
from specc.resolve.codes import unknown_name

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.syntax import tree

GONE = declare("SPC205", "part-is-gone", Severity.ERROR, "`{name}` is gone: it was {how}")
WHICH_PIECE = declare("SPC212", "piece-not-named", Severity.ERROR, "`{name}` does not say which piece it is of")


@dataclass(slots=True)
class PieceParts:
    """The parts of one piece by kind; `edges` with their two corners."""

    edges: dict[str, tuple[str, str]] = field(default_factory=dict)
    points: set[str] = field(default_factory=set)
    lines: set[str] = field(default_factory=set)
    darts: set[str] = field(default_factory=set)
    two_pointed: set[str] = field(default_factory=set)

    def of(self, kind: str) -> set[str]:
        """The names of a kind: edge, point, line, dart, two-pointed dart."""
        corners = {corner for ends in self.edges.values() for corner in ends}
        names = {
            "edge": set(self.edges),
            "point": self.points | corners,
            "line": self.lines,
            "dart": self.darts,
            "two-pointed dart": self.two_pointed,
        }
        return names[kind]


class Parts:
    """The pieces and their parts, as the alterations before have left them."""

    def __init__(self) -> None:
        self.pieces: dict[str, PieceParts] = {}
        self.gone: dict[str, str] = {}

    def piece(self, word: tree.Word, say: Collector) -> bool:
        """Whether the piece is there; if not, it is reported."""
        if word.text in self.pieces:
            return True
        if word.text in self.gone:
            say.add(GONE.at(word.span, name=word.text, how=self.gone[word.text]))
        else:
            say.add(unknown_name(word.span, "piece", word.text, known=self.pieces))
        return False

    def find(self, ref: tree.Ref, kinds: tuple[str, ...], say: Collector, *, within: str | None = None) -> PartRef | None:
        """The part that `ref` names, of one of `kinds`; a lone name is a part of the piece `within`."""
        if ref.second is None:
            if within is None:
                owners = [name for name, parts in self.pieces.items() for kind in kinds if ref.first.text in parts.of(kind)]
                told = WHICH_PIECE.at(ref.span, name=ref.first.text)
                examples = [f"`{owner}.{ref.first.text}`" for owner in dict.fromkeys(owners)]
                say.add(told.help(f"write {' or '.join(examples)}" if examples else "write `piece.part`"))
                return None
            piece, word = within, ref.first
        else:
            if not self.piece(ref.first, say):
                return None
            piece, word = ref.first.text, ref.second
        parts = self.pieces[piece]
        if any(word.text in parts.of(kind) for kind in kinds):
            return PartRef(piece, word.text, ref.span)
        full = f"{piece}.{word.text}"
        if full in self.gone:
            say.add(GONE.at(ref.span, name=full, how=self.gone[full]))
        else:
            known = {name for kind in kinds for name in parts.of(kind)}
            say.add(unknown_name(word.span, " or ".join(kinds), word.text, known=known, where=f" on `{piece}`"))
        return None

    def line(self, word: tree.Word, say: Collector) -> PartRef | None:
        """A reference line that at least one piece has."""
        known = {name for parts in self.pieces.values() for name in parts.lines}
        if word.text in known:
            return PartRef(None, word.text, word.span)
        say.add(unknown_name(word.span, "reference line", word.text, known=known))
        return None
