"""Owns what parts the pieces have at each moment, and what became of those that are gone.

Knows nothing of geometry: what a cut takes away is only known once the pieces are drawn.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

from specc.diagnostics import Severity, declare
from specc.model.expression import PartRef
from specc.resolve.codes import enumerated, one_of, there_are, unknown_name

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector, Diagnostic
    from specc.source import Span
    from specc.syntax import tree

GONE = declare("SPC205", "part-is-gone", Severity.ERROR, "`{name}` is gone: it was {how}")
WHICH_PIECE = declare(
    "SPC212", "piece-not-named", Severity.ERROR, "`{name}` does not say which piece it is of"
)
OTHER_PART = declare("SPC220", "wrong-kind-of-part", Severity.ERROR, "`{name}` is {kind}, not {wanted}")

DARTS = ("dart", "two-pointed dart")
_TIP = "-tip"
ALL = ("edge", "point", "line", *DARTS)
_ARTICLES = {
    "piece": "a piece",
    "edge": "an edge",
    "point": "a point",
    "line": "a reference line",
    "dart": "a dart",
    "two-pointed dart": "a two-pointed dart",
}


@dataclass(slots=True)
class PieceParts:
    """The parts of one piece in the order of the text: the kind of each, and the ends of edges and lines."""

    kinds: dict[str, str] = field(default_factory=dict)
    ends: dict[str, tuple[str, str]] = field(default_factory=dict)
    whole: bool = True  # whether all its statements could be read

    def reshaped(self) -> PieceParts:
        """The same parts on a piece of another shape, of which it is not known at which corners edges end."""
        return PieceParts(dict(self.kinds), whole=self.whole)

    def kind(self, name: str, *, drawn: bool) -> str | None:
        """The kind of a part; once the piece is `drawn`, the tip of dart `d` is the point `d-tip`."""
        if drawn and self.kinds.get(name.removesuffix(_TIP)) == "dart" and name.endswith(_TIP):
            return "point"
        return self.kinds.get(name)

    def of(self, *kinds: str) -> tuple[str, ...]:
        """The names of the parts of these kinds."""
        return tuple(name for name, kind in self.kinds.items() if kind in kinds)


class Gone(NamedTuple):
    """What became of a part, as a message tells it, and where."""

    how: str
    origin: Span


class Parts:
    """The pieces and their parts, as the alterations before have left them."""

    def __init__(self) -> None:
        self.pieces: dict[str, PieceParts] = {}
        self.gone: dict[str, Gone] = {}

    def piece(self, word: tree.Word, say: Collector) -> bool:
        """Whether the piece is there; if not, it is reported."""
        if word.text in self.pieces:
            return True
        if word.text in self.gone:
            self._tell_gone(word.span, word.text, say)
        else:
            say.add(unknown_name(word.span, "piece", word.text, known=self.pieces))
        return False

    def find(
        self, ref: tree.Ref, kinds: tuple[str, ...], say: Collector, *, within: str | None = None
    ) -> PartRef | None:
        """The part that `ref` names, of one of `kinds`; a lone name is a part of the piece `within`."""
        if ref.second is not None:
            if not self.piece(ref.first, say):
                return None
            piece, word = ref.first.text, ref.second
        elif within is not None:
            piece, word = within, ref.first
        else:
            self._tell_which(ref.first, kinds, say)
            return None
        parts = self.pieces[piece]
        kind = parts.kind(word.text, drawn=within is None)
        if kind in kinds:
            return PartRef(piece, word.text, ref.span)
        full = f"{piece}.{word.text}"
        if kind is not None:
            say.add(wrong_kind(ref.span, full, kind, kinds).help(there_are(parts.of(*kinds))))
        elif full in self.gone:
            self._tell_gone(ref.span, full, say)
        elif parts.whole:
            kind = " or ".join(kind for kind in kinds if kind != "two-pointed dart" or len(kinds) == 1)
            where = f" on `{piece}`"
            say.add(unknown_name(word.span, kind, word.text, known=parts.of(*kinds), where=where))
        return None

    def line(self, word: tree.Word, say: Collector) -> PartRef | None:
        """A reference line that at least one piece has."""
        name = word.text
        if any(parts.kinds.get(name) == "line" for parts in self.pieces.values()):
            return PartRef(None, name, word.span)
        lost = next((full for full in self.gone if full.partition(".")[2] == name), None)
        other = next((parts.kinds[name] for parts in self.pieces.values() if name in parts.kinds), None)
        known = tuple(line for parts in self.pieces.values() for line in parts.of("line"))
        if other is not None:
            say.add(wrong_kind(word.span, name, other, ("line",)).help(there_are(dict.fromkeys(known))))
        elif lost is not None:
            self._tell_gone(word.span, lost, say)
        else:
            say.add(unknown_name(word.span, "reference line", name, known=known))
        return None

    def corner(self, word: tree.Word, edge: PartRef, say: Collector) -> str | None:
        """The name of an end of the edge or reference line; anything else is reported.

        Where the ends are not known yet, any point of the piece may be one.
        """
        parts = self.pieces[edge.piece or ""]
        ends = parts.ends.get(edge.name) or parts.of("point")
        if word.text in ends or not parts.whole:
            return word.text
        where = f" at an end of `{edge.piece}.{edge.name}`"
        say.add(unknown_name(word.span, "corner", word.text, known=ends, where=where))
        return None

    def leave_out(self, piece: str, how: Gone) -> None:
        """The piece and all its parts are gone."""
        self.gone[piece] = how
        self.gone |= {f"{piece}.{name}": how for name in self.pieces.pop(piece).kinds}

    def lose(self, part: PartRef, how: Gone) -> None:
        """One part is gone."""
        del self.pieces[part.piece or ""].kinds[part.name]
        self.gone[f"{part.piece}.{part.name}"] = how

    def _tell_gone(self, span: Span, name: str, say: Collector) -> None:
        gone = self.gone[name]
        where = f"{gone.how.partition(' on line ')[0]} here"
        say.add(GONE.at(span, name=name, how=gone.how).see(gone.origin, where))

    def _tell_which(self, word: tree.Word, kinds: tuple[str, ...], say: Collector) -> None:
        """Say what a lone name lacks: the piece, or the part if it is that of a piece."""
        if word.text in self.pieces:
            parts = tuple(f"{word.text}.{name}" for name in self.pieces[word.text].of(*kinds))
            say.add(wrong_kind(word.span, word.text, "piece", kinds).help(one_of(parts)))
            return
        owners = (name for name, parts in self.pieces.items() if parts.kinds.get(word.text) in kinds)
        examples = tuple(f"{owner}.{word.text}" for owner in owners)
        cure = one_of(examples) or "write the piece and the part: `piece.part`"
        say.add(WHICH_PIECE.at(word.span, name=word.text).help(cure))


def wrong_kind(span: Span, name: str, kind: str, wanted: Iterable[str]) -> Diagnostic:
    """Return the diagnostic for a part of another kind; that darts may have two points goes unsaid."""
    articles = [_ARTICLES[one] for one in wanted if one != "two-pointed dart"]
    return OTHER_PART.at(span, name=name, kind=_ARTICLES[kind], wanted=enumerated(articles, "or"))
