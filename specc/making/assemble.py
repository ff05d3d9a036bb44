"""Owns the order in which a garment is put together in each size.

Knows nothing of how the pieces came to be.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.diagnostics import Collector, Severity, declare
from specc.making.assembly import Assembly, SizeAssembly, StepRecords
from specc.making.openings import openings
from specc.making.rounds import rounds
from specc.making.topology import Topology
from specc.making.uses import uses
from specc.making.walk import walk
from specc.pattern.lookup import edge_named, piece_named

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.expression import Expression, PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

EDGE_GONE = declare("SPC514", "edge-is-gone", Severity.ERROR, "`{edge}` is gone in {sizes}: it was {how}")


@dataclass(frozen=True, slots=True)
class AlteredSize:
    """The pieces of one size before and after the alterations, and how to evaluate expressions over the latter."""

    size: str
    drafted: tuple[Piece, ...]
    pieces: tuple[Piece, ...]
    evaluate: Callable[[Expression], float]


def assemble(
    garment: Garment, altered: tuple[AlteredSize, ...], records: tuple[StepRecords, ...]
) -> tuple[Assembly | None, tuple[Diagnostic, ...]]:
    """The garment put together in every size; None when an edge that is used is no longer there."""
    say = Collector()
    say.add(*_gone(garment, altered))
    if say.failed:
        return None, say.diagnostics
    sizes = tuple(_size(garment, size, say) for size in altered)
    # The same fault in several sizes has the same place and the same words: it is told once.
    return Assembly(sizes, records), tuple(dict.fromkeys(say.diagnostics))


def _size(garment: Garment, size: AlteredSize, say: Collector) -> SizeAssembly:
    topology = Topology(size.pieces, garment.seams)
    laid = tuple(
        found
        for finish in garment.finishes
        for found in say.keep(rounds(finish, size.pieces, topology, size.evaluate))
    )
    return SizeAssembly(
        size.size,
        size.drafted,
        size.pieces,
        tuple(walk(seam, size.pieces, size.evaluate) for seam in garment.seams),
        say.keep(uses(garment, size.pieces, size.evaluate)),
        laid,
        openings(garment, size.pieces, topology, laid),
    )


def _gone(garment: Garment, altered: tuple[AlteredSize, ...]) -> Iterator[Diagnostic]:
    """A fault for every edge that a seam or finish names and that an alteration has taken away."""
    for ref in _edges(garment):
        how: dict[str, list[str]] = {}
        for size in altered:
            piece = piece_named(size.pieces, ref.piece or "")
            if piece is None or edge_named(piece, ref.name) is None:
                fate = next((gone.how for gone in piece.gone if gone.name == ref.name), "cut away") if piece else "left out"
                how.setdefault(fate, []).append(size.size)
        for fate, sizes in how.items():
            named = f"size {', '.join(sizes)}" if len(sizes) < len(altered) else "every size"
            yield EDGE_GONE.at(ref.origin, edge=f"{ref.piece}.{ref.name}", sizes=named, how=fate)


def _edges(garment: Garment) -> Iterator[PartRef]:
    for seam in garment.seams:
        yield from (*seam.first, *seam.second)
    for finish in garment.finishes:
        yield from finish.along
