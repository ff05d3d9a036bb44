"""Owns the openings that the made garment is left with, and what passes through each.

Knows nothing of bodies.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.assembly import Opening
from specc.making.cloths import cloth_of
from specc.model.expression import PartRef
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from specc.making.assembly import Round
    from specc.making.topology import Run, Topology
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece


def openings(
    garment: Garment, pieces: tuple[Piece, ...], topology: Topology, rounds: tuple[Round, ...]
) -> tuple[Opening, ...]:
    """The closed rounds of edges that no seam joins, each once, in the order of the pieces."""
    joined = {(ref.piece, ref.name) for seam in garment.seams for ref in (*seam.first, *seam.second)}
    free = tuple(
        PartRef(piece.name, edge.name, garment.header.origin)
        for piece in pieces
        for edge in piece.edges
        if edge.name != piece.fold and (piece.name, edge.name) not in joined
    )
    runs = topology.runs(free) or ()
    found = (_opening(garment, pieces, run, rounds) for run in runs if run.closed)
    return tuple(dict.fromkeys(found))


def _opening(garment: Garment, pieces: tuple[Piece, ...], run: Run, rounds: tuple[Round, ...]) -> Opening:
    """What passes is the least of what the cloth lets through and what the trim lets through.

    The cloth reaches its own length and its stretch; a trim reaches the length it is sewn at and its stretch.
    """
    flat = sewn = by_cloth = by_trim = 0.0
    finishes: list[str] = []
    for stretch in run.stretches:
        piece = piece_named(pieces, stretch.piece)
        edge = edge_named(piece, stretch.edge) if piece else None
        if edge is None:
            continue
        length = stitched_length(edge)
        held, name = _held(stretch.piece, stretch.edge, rounds)
        cloth = cloth_of(garment, stretch.piece)
        reach = length * (1.0 + float(cloth.stretch if cloth else 0))
        flat += length
        sewn += length - held
        by_cloth += reach
        by_trim += (
            reach if name is None else (length - held) * (1.0 + _trim_stretch(garment, name, reach / length))
        )
        if name is not None and name not in finishes:
            finishes.append(name)
    edges = tuple(dict.fromkeys(f"{stretch.piece}.{stretch.edge}" for stretch in run.stretches))
    central = len({stretch.side for stretch in run.stretches}) > 1
    return Opening(edges, tuple(finishes), central, flat, sewn, min(by_cloth, by_trim))


def _held(piece: str, edge: str, rounds: tuple[Round, ...]) -> tuple[float, str | None]:
    """What the finish holds in along the edge, and the finish."""
    for laid in rounds:
        zones = {zone for zone in laid.zones if (zone.piece, zone.edge) == (piece, edge)}
        if zones:
            return sum((zone.end - zone.start) * zone.held for zone in zones), laid.finish
    return 0.0, None


def _trim_stretch(garment: Garment, finish: str, cloth_reach: float) -> float:
    """The stretch of the least stretchy trim of a finish; without a trim, that of the cloth."""
    taken = {take.trim for one in garment.finishes if one.name == finish for take in one.making.takes}
    stretches = [float(trim.stretch) for trim in garment.trims if trim.name in taken]
    return min(stretches, default=cloth_reach - 1.0)
