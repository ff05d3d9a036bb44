"""Owns placing the pieces of one side of a garment, from the middle outward, seam by seam.

Knows nothing of how a single piece is laid.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.flat.band import Band, band_along, depth_of
from specc.flat.beside import laid_beside
from specc.flat.chains import joined
from specc.flat.closing import closed
from specc.flat.edges import both_ways, middle_of, with_roles
from specc.flat.hung import half_of, hung
from specc.flat.laid import Side
from specc.flat.lines import lines_on
from specc.flat.middle import across, on_edge, on_fold, on_seam
from specc.geometry.region import centroid
from specc.making.attached import Placed
from specc.making.cloths import cloth_of
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.flat.edges import Sides
    from specc.flat.laid import Chain, LaidPiece
    from specc.making.assembly import SizeAssembly
    from specc.making.attached import Attached
    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

_INSIDE: Final = frozenset({"facing", "lining", "interfacing", "bag"})
_LONG: Final = 3.0  # a band is at least so many times as long as it is deep


class Placing:
    """One side of a garment while its pieces are placed."""

    def __init__(self, garment: Garment, size: SizeAssembly, words: tuple[str, str] | None) -> None:
        """`words` are in the names of pieces of this side, and of the other; None: all are of this one."""
        self._garment, self._size, self._words = garment, size, words
        self._laid: dict[str, LaidPiece] = {}
        self._middles = {piece.name: middle_of(piece, garment) for piece in size.pieces}
        self._laps = {one.closure: one.laps for one in size.closures}
        sewn_on = {name for one in size.attached for name in _attached(one)}
        self._seen = {
            piece.name: piece
            for piece in size.pieces
            if piece.name not in sewn_on
            and not _INSIDE & _parts(piece.name)
            and ((cloth := cloth_of(garment, piece.name)) is None or cloth.use != "lining")
        }

    def placed(self) -> Side:
        """All that is seen from this side, those beneath first."""
        waiting = {name for name in self._seen if self._words is None or self._words[0] in _parts(name)}
        for name, piece in self._seen.items():
            if name in waiting and (self._middles[name] is not None or not self._laid):
                self._begin(piece)
                waiting.discard(name)
                self._spread(waiting)
        for seam in self._garment.seams:
            for sides in both_ways(seam):
                wanted = self._wanted(sides)
                if wanted is not None and not self._hang(wanted, sides):
                    self._band(wanted, seam, sides)
        under_first = sorted(self._laid.values(), key=lambda piece: not piece.under)
        return Side(
            self._words[0] if self._words else "",
            tuple(
                with_roles(piece, self._middles[piece.name], self._garment, self._laid)
                for piece in under_first
            ),
        )

    def _begin(self, piece: Piece) -> None:
        """Lay a piece at the middle of the garment."""
        middle, laid = self._middles[piece.name], self._closed(piece)
        if middle is None and piece.cut == 1:
            laid = across(laid)
        elif middle is None:
            laid = on_edge(laid, laid.outline, 0.0)
        elif middle.fold:
            laid = on_fold(laid, _chain(laid, middle.edges))
        elif middle.closure is None:
            laid = on_seam(laid, _chain(laid, middle.edges))
        else:
            laid = on_edge(laid, _chain(laid, middle.edges), self._laps.get(middle.closure, 0.0))
        self._laid[piece.name] = laid

    def _spread(self, waiting: set[str]) -> None:
        """Lay beside what is laid whatever is sewn to it, until nothing more is."""
        found = True
        while found and waiting:
            found = False
            for own, onto in self._joins():
                names = {ref.piece or "" for ref in own}
                if len(names) > 1 or not names <= waiting or not all(ref.piece in self._laid for ref in onto):
                    continue
                name = names.pop()
                laid, middle = self._closed(self._seen[name]), self._middles[name]
                if middle is not None and middle.fold:
                    laid = on_fold(laid, _chain(laid, middle.edges))
                there = joined([self._edge(ref) for ref in onto])
                self._laid[name] = laid_beside(laid, _chain(laid, tuple(ref.name for ref in own)), there)
                waiting.discard(name)
                found = True

    def _wanted(self, sides: Sides) -> Piece | None:
        """The piece that a seam joins to what is laid, where it is of neither side by its name."""
        names = {ref.piece or "" for ref in sides[0]}
        if len(names) != 1 or not names.isdisjoint(self._laid):
            return None
        if not any(ref.piece in self._laid for ref in sides[1]):
            return None
        (name,) = names
        return None if self._words and _parts(name) & set(self._words) else self._seen.get(name)

    def _hang(self, piece: Piece, sides: Sides) -> bool:
        """Hang a sleeve from an armhole of this side: of its two cap edges one is sewn to each side."""
        own, onto = sides
        if len(own) != len(onto) or len({ref.name for ref in own}) != 2 or piece.fold:
            return False
        pairs = [(cap, hole) for cap, hole in zip(own, onto, strict=True) if hole.piece in self._laid]
        if len(pairs) != 1:
            return False
        ((cap, hole),) = pairs
        half = half_of(piece, cap.name, next(ref.name for ref in own if ref is not cap))
        if half is None:
            return False
        armhole = self._edge(hole)
        self._laid[piece.name] = hung(half, armhole if armhole[0].y > armhole[-1].y else armhole[::-1])
        return True

    def _band(self, piece: Piece, seam: Seam, sides: Sides) -> None:
        """Lay a band along the edges of this side that it is sewn to."""
        own, onto = sides
        refs = [ref for ref in onto if ref.piece in self._laid]
        long = sum(stitched_length(edge) for ref in own if (edge := edge_named(piece, ref.name)))
        deep = depth_of(piece, own[0].name)
        folded = [ref for ref in seam.stays_open if ref.piece == piece.name]
        if folded:
            deep *= 0.5  # along its length
        if long * (2 if piece.fold else 1) < _LONG * deep:
            return
        outer = folded[0].name if folded else f"{own[0].name}-outer"
        chain = joined([self._edge(ref) for ref in refs])
        beside = self._laid[refs[0].piece or ""]
        self._laid[piece.name] = band_along(Band(piece.name, own[0].name, outer, deep), chain, beside=beside)

    def _joins(self) -> Iterator[Sides]:
        for seam in self._garment.seams:
            yield from both_ways(seam)

    def _edge(self, ref: PartRef) -> Chain:
        return _chain(self._laid[ref.piece or ""], (ref.name,))

    def _closed(self, piece: Piece) -> LaidPiece:
        middle = self._middles[piece.name]
        edge = edge_named(piece, middle.edges[0]) if middle else None
        inside = centroid(drawn_outline(piece).flattened()).x
        outward = 1.0 if edge is None or inside >= edge.parts[0].start.x else -1.0
        return closed(piece, tuple(lines_on(piece, self._size, self._garment)), outward=outward)


def _attached(one: Attached) -> tuple[str, ...]:
    """The pieces that are sewn on or caught."""
    return (one.piece,) if isinstance(one, Placed) else tuple(end.partition(".")[0] for end in one.ends)


def _parts(name: str) -> set[str]:
    return set(name.split("-"))


def _chain(piece: LaidPiece, names: tuple[str, ...]) -> Chain:
    return joined([edge.points for name in names for edge in (piece.edge(name),) if edge is not None])
