"""Owns giving meaning to the alterations that make new edges or new pieces.

With the names each leaves behind.

Knows nothing of how an alteration is carried out. Which part of a split piece a name goes with is only known
once the piece is drawn, so here both have it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol, assert_never

from specc.model.alteration import Form, PieceRef
from specc.model.expression import PartRef
from specc.model.reshaping import (
    BAND,
    LAPPED_BAND,
    Band,
    Extend,
    Face,
    Join,
    Mirror,
    RoundCorner,
    Scallop,
    SewAs,
    Split,
    SplitEnd,
    Spread,
    Taper,
    Unfold,
)
from specc.resolve.codes import name_taken
from specc.resolve.dividing import resolve_divide
from specc.resolve.expressions import FIGURES, meaning
from specc.resolve.parts import DARTS, Gone, PieceParts
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.alteration import Level, Place
    from specc.model.expression import Expression
    from specc.model.reshaping import Reshaping
    from specc.resolve.parts import Parts

_SHARE = (Dimension.RATIO, Dimension.NUMBER)


class Finder(Protocol):
    """What every alteration asks for: amounts, places, pieces, each reported where it is wrong."""

    def length(self, node: tree.Expression, what: str) -> Expression | None:
        """The amount as a length."""

    def place(self, node: tree.Place, target: PartRef) -> Place | None:
        """The place on an edge."""

    def level(self, node: tree.Level, pieces: tuple[tree.Word, ...]) -> Level | str | None:
        """The level across these pieces."""

    def pieces(self, words: tuple[tree.Word, ...]) -> tuple[PieceRef, ...]:
        """The pieces that are there, each once."""

    def once(self, parts: tuple[PartRef, ...]) -> tuple[PartRef, ...]:
        """The parts, each once."""


class Reshaper:
    """Resolves these alterations in order; `parts` are as those before have left them."""

    def __init__(self, finder: Finder, parts: Parts, say: Collector) -> None:
        self._finder = finder
        self._parts = parts
        self._say = say

    def step(self, node: tree.Reshaping) -> Reshaping | None:  # noqa: C901, PLR0911, PLR0912  one line a verb
        """What the statement asks for; None after a fault."""
        match node:
            case tree.Spread():
                return self._spread(node)
            case tree.Taper():
                return self._taper(node)
            case tree.Extend():
                return self._extend(node)
            case tree.SewAs():
                return self._sew_as(node)
            case tree.RoundCorner():
                by = self._length(node.by)
                corner = self._part(node.piece, node.corner, "point")
                piece = PieceRef(node.piece.text, node.piece.span)
                return RoundCorner(piece, corner, by, node.span) if corner and by else None
            case tree.Scallop():
                edge, every, by = self._edge(node.edge), self._length(node.every), self._length(node.by)
                return Scallop(edge, every, by, node.span) if edge and every and by else None
            case tree.Band():
                return self._band(node)
            case tree.Split():
                return self._split(node)
            case tree.Join():
                return self._join(node)
            case tree.Unfold():
                found = self._finder.pieces(node.pieces)
                for piece in found:
                    self._unfolded(piece.piece)
                return Unfold(found, node.span) if found else None
            case tree.Mirror():
                return self._mirror(node)
            case tree.Face():
                return self._face(node)
            case tree.Divide():
                return resolve_divide(node, self._edges(node.edges), self._finder, self._parts, self._say)
            case _:
                assert_never(node)

    # --- what they have in common ---

    def _length(self, node: tree.Expression) -> Expression | None:
        return self._finder.length(node, "how much")

    def _edge(self, ref: tree.Ref) -> PartRef | None:
        return self._parts.find(ref, ("edge",), self._say)

    def _edges(self, refs: tuple[tree.Ref, ...]) -> tuple[PartRef, ...]:
        """The edges, if all of them are there."""
        found = tuple(edge for ref in refs if (edge := self._edge(ref)) is not None)
        return self._finder.once(found) if len(found) == len(refs) else ()

    def _part(self, piece: tree.Word, part: tree.Word, *kinds: str) -> str | None:
        """The name of a part of a piece."""
        ref = tree.Ref(piece, part, part.span)
        found = self._parts.find(ref, kinds, self._say)
        return None if found is None else found.name

    def _new(self, name: tree.Word, parts: PieceParts) -> bool:
        """Take the piece in under its name; a name that is taken is reported."""
        if name.text in self._parts.pieces:
            told = name_taken(name.span, "a piece", name.text, first=None)
            self._say.add(told.help("give the new one another name"))
            return False
        self._parts.gone.pop(name.text, None)
        self._parts.pieces[name.text] = parts
        return True

    # --- verb by verb ---

    def _spread(self, node: tree.Spread) -> Spread | None:
        ends = ((node.start, node.start_place), (node.end, node.end_place))
        start, end = (
            self._edge(ref) if place is not None else self._parts.find(ref, ("point",), self._say)
            for ref, place in ends
        )
        by = self._length(node.by)
        and_by = None if node.and_by is None else self._length(node.and_by)
        form = Form(node.form.text) if node.form else Form.FLARE
        if start is None or end is None or by is None or (node.and_by is not None and and_by is None):
            return None
        first, second = (
            None if place is None else self._finder.place(place, part)
            for part, place in ((start, node.start_place), (end, node.end_place))
        )
        if (first is None, second is None) != (node.start_place is None, node.end_place is None):
            return None
        return Spread(start, first, end, second, by, and_by, form, node.span)

    def _taper(self, node: tree.Taper) -> Taper | None:
        edges, by = self._edges(node.edges), self._length(node.by)
        if not edges or by is None:
            return None
        if node.tapering is None:
            return Taper(edges, node.let_out, by, None, None, None, node.span)
        and_by = self._length(node.tapering.and_by)
        ends = [
            self._parts.corner(corner, edge, self._say)
            for edge in edges
            for corner in (node.tapering.at, node.tapering.and_at)
        ]
        if and_by is None or None in ends:
            return None
        at, and_at = node.tapering.at.text, node.tapering.and_at.text
        return Taper(edges, node.let_out, by, at, and_by, and_at, node.span)

    def _extend(self, node: tree.Extend) -> Extend | None:
        edge, by = self._edge(node.edge), self._length(node.by)
        slanting = None if node.slanting is None else self._length(node.slanting)
        if edge is None or by is None or (node.slanting is not None and slanting is None):
            return None
        # Where the edge lay stays as a line; how many steps there are is only known once the piece is drawn.
        own = self._parts.pieces[edge.piece or ""]
        for name, kind in (
            ("line", "line"),
            ("step", "edge"),
            ("out", "point"),
            ("step-2", "edge"),
            ("out-2", "point"),
        ):
            own.kinds.setdefault(f"{edge.name}-{name}", kind)
        own.ends.pop(edge.name, None)
        return Extend(edge, by, node.span, slanting)

    def _sew_as(self, node: tree.SewAs) -> SewAs | None:
        found = [self._parts.find(ref, DARTS, self._say) for ref in node.darts]
        darts = self._finder.once(tuple(dart for dart in found if dart is not None))
        for dart in darts:
            self._parts.lose(dart, Gone(f"sewn as {node.form.text} on line {node.span.line}", dart.origin))
        return SewAs(darts, Form(node.form.text), node.span) if darts else None

    def _band(self, node: tree.Band) -> Band | None:
        edges, by = self._edges(node.edges), self._length(node.by)
        share = meaning(node.share, FIGURES, self._say, what="a share of the edges", wanted=_SHARE)
        lapping = None if node.lapping is None else self._length(node.lapping)
        parts = PieceParts()
        ring = tuple(BAND if node.lapping is None else LAPPED_BAND)
        for (corner, edge), (following, _) in zip(ring, (*ring[1:], ring[0]), strict=True):
            parts.kinds |= {edge: "edge", corner: "point"}
            parts.ends[edge] = (corner, following)
        if (
            not edges
            or by is None
            or (node.share is not None and share is None)
            or (node.lapping is not None and lapping is None)
            or not self._new(node.name, parts)
        ):
            return None
        return Band(edges, by, share, node.name.text, node.span, lapping, node.across, node.in_one)

    def _split(self, node: tree.Split) -> Split | None:
        if not self._parts.piece(node.piece, self._say):
            return None
        name = node.piece.text
        ends = [self._split_end(node.piece, end) for end in (node.start, node.end)]
        points = [self._part(node.piece, word, "point", *DARTS) for word in node.through]
        start, end = ends
        if start is None or end is None or None in points:
            return None
        how = Gone(
            f"split into `{node.into[0].text}` and `{node.into[1].text}` on line {node.span.line}",
            node.piece.span,
        )
        before = self._parts.pieces[name]
        self._parts.leave_out(name, how)
        for word in node.into:
            parts = before.reshaped()
            parts.kinds[node.line.text] = "edge"
            corners = (f"{node.line.text}-start", f"{node.line.text}-end")
            parts.ends[node.line.text] = corners
            parts.kinds |= dict.fromkeys(corners, "point")
            if not self._new(word, parts):
                return None
        through = tuple(PartRef(name, word.text, word.span) for word in node.through)
        piece = PieceRef(name, node.piece.span)
        into = (node.into[0].text, node.into[1].text)
        return Split(piece, node.line.text, start, through, end, into, node.span)

    def _split_end(self, piece: tree.Word, node: tree.SplitEnd) -> SplitEnd | None:
        kinds = ("edge",) if node.place is not None else ("dart", "point")
        ref = tree.Ref(piece, node.part, node.part.span)
        part = self._parts.find(ref, kinds, self._say)
        if part is None:
            return None
        if node.place is None:
            return SplitEnd(part, None)
        place = self._finder.place(node.place, part)
        return None if place is None else SplitEnd(part, place)

    def _join(self, node: tree.Join) -> Join | None:
        first, second = self._edge(node.first), self._edge(node.second)
        if first is None or second is None:
            return None
        how = Gone(f"joined into `{node.name.text}` on line {node.span.line}", node.span)
        parts = PieceParts()
        both = [self._parts.pieces[ref.piece or ""] for ref in (first, second)]
        for ref, joined, other in zip((first, second), both, both[::-1], strict=True):
            for name, kind in joined.kinds.items():
                if name == ref.name:
                    continue
                # Where both pieces have a name, each is called by its piece; lines that meet become one.
                called = f"{ref.piece}-{name}" if name in other.kinds and kind != "line" else name
                parts.kinds[called] = kind
                if kind == other.kinds.get(name) == "dart":
                    # Darts that meet on the joined edges become one inside, which keeps the name.
                    parts.kinds.setdefault(name, "two-pointed dart")
        for ref in (first, second):
            if ref.piece in self._parts.pieces:
                self._parts.leave_out(ref.piece, how)
        return Join(first, second, node.name.text, node.span) if self._new(node.name, parts) else None

    def _unfolded(self, piece: str) -> None:
        """Both halves have their own names, and what runs across the fold keeps its own."""
        parts = self._parts.pieces[piece]
        for name, kind in tuple(parts.kinds.items()):
            for side in ("-left", "-right"):
                parts.kinds[name + side] = kind
        parts.ends.clear()  # corners on the fold keep their names

    def _mirror(self, node: tree.Mirror) -> Mirror | None:
        if not self._parts.piece(node.piece, self._say):
            return None
        before = self._parts.pieces[node.piece.text]
        if not self._new(node.name, PieceParts(dict(before.kinds), dict(before.ends), before.whole)):
            return None
        return Mirror(PieceRef(node.piece.text, node.piece.span), node.name.text, node.span)

    def _face(self, node: tree.Face) -> Face | None:
        edges, by = self._edges(node.edges), self._length(node.by)
        if not edges or by is None:
            return None
        before = self._parts.pieces[edges[0].piece or ""]
        parts = before.reshaped()
        inner = f"{edges[0].name}-inner"
        parts.kinds |= {inner: "edge", f"{inner}-start": "point", f"{inner}-end": "point"}
        parts.ends[inner] = (f"{inner}-start", f"{inner}-end")
        return Face(edges, by, node.name.text, node.span) if self._new(node.name, parts) else None
