"""Owns asking finished pieces for their parts by name, as expressions do.

Knows nothing of how the pieces came to be.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import EvaluationError
from specc.pattern.lookup import dart_named, edge_named, line_named, piece_named, point_named
from specc.pattern.measure import drawn_length, line_length, stitched_length

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.geometry.point import Point
    from specc.model.block import PieceDraft
    from specc.model.expression import PartRef
    from specc.pattern.piece import Dart, Piece, TwoPointedDart

NOT_THERE = declare("SPC416", "part-not-there", Severity.ERROR, "`{name}` is not there: {how}")


def times_round(piece: Piece | PieceDraft) -> int:
    """How often a line of the piece counts in a way round: as often as it is cut, on the fold twice."""
    return piece.cut * (2 if piece.fold else 1)


class FinishedPieces:
    """The parts of pieces that are drawn.

    `openings` are the rounds of finishes, in millimetres by name; `inside` are linings and facings, by name.
    """

    def __init__(
        self,
        pieces: tuple[Piece, ...],
        openings: Mapping[str, float] = MappingProxyType({}),
        inside: frozenset[str] = frozenset(),
    ) -> None:
        self._pieces = pieces
        self._openings = openings
        self._inside = inside

    def point(self, ref: PartRef) -> Point:
        """The point or corner."""
        found = point_named(self._piece(ref), ref.name)
        if found is None:
            raise self._gone(ref)
        return found

    def length(self, ref: PartRef) -> float:
        """The length of an edge or reference line as sewn."""
        piece = self._piece(ref)
        edge = edge_named(piece, ref.name)
        if edge is not None:
            return stitched_length(edge)
        line = line_named(piece, ref.name)
        if line is None:
            raise self._gone(ref)
        return line_length(piece, line)

    def drawn_length(self, ref: PartRef) -> float:
        """The length of an edge along the paper."""
        edge = edge_named(self._piece(ref), ref.name)
        if edge is None:
            raise self._gone(ref)
        return drawn_length(edge)

    def dart(self, ref: PartRef) -> Dart | TwoPointedDart:
        """The dart."""
        found = dart_named(self._piece(ref), ref.name)
        if found is None:
            raise self._gone(ref)
        return found

    def girth(self, ref: PartRef) -> float:
        """The way round at a reference line: over every piece that has it, as often as it is cut.

        Of pieces that lie inside others only where none but they have it.
        """
        every = [(piece, line) for piece in self._pieces if (line := line_named(piece, ref.name)) is not None]
        if not every:
            raise _missing(ref, ref.name, "no piece has that reference line any more")
        lines = [(piece, line) for piece, line in every if piece.name not in self._inside] or every
        return sum(times_round(piece) * line_length(piece, line) for piece, line in lines)

    def opening(self, ref: PartRef) -> float:
        """The round that the finish closes, as sewn."""
        if ref.name not in self._openings:
            raise _missing(ref, ref.name, "it closes no round")
        return self._openings[ref.name]

    def _piece(self, ref: PartRef) -> Piece:
        found = piece_named(self._pieces, ref.piece or "")
        if found is None:
            raise _missing(ref, ref.piece or "", "the piece is not made")
        return found

    def _gone(self, ref: PartRef) -> EvaluationError:
        """What to raise for a part that the piece does not have, with what became of it."""
        hows = (gone.how for gone in self._piece(ref).gone if gone.name == ref.name)
        how = next((f"it was {how}" for how in hows), "the piece has lost it")
        return _missing(ref, f"{ref.piece}.{ref.name}", how)


def _missing(ref: PartRef, name: str, how: str) -> EvaluationError:
    return EvaluationError(
        NOT_THERE.at(ref.origin, name=name, how=how).help("ask for a part that is still there")
    )
