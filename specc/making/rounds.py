"""Owns laying finishes and seams along the edges they go to: zones held in or flat, rounds closed or open.

Knows nothing of which trim is laid.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.making.assembly import Round, Zone
from specc.making.walk import is_share
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.diagnostics import Diagnostic
    from specc.making.topology import Run, Topology
    from specc.model.construction import Finish, Hold, Seam
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Edge, Piece

NOT_A_RUN = declare(
    "SPC510", "edges-branch", Severity.ERROR, "the edges of {kind} `{name}` do not follow one another"
)
HOLDS_OVERLAP = declare("SPC511", "holds-overlap", Severity.ERROR, "two holds along `{edge}` overlap")
HOLD_BEYOND = declare(
    "SPC512", "hold-outside-edge", Severity.ERROR, "a hold along `{edge}` does not lie on it"
)
HOLD_NO_SHARE = declare(
    "SPC540",
    "hold-not-a-share",
    Severity.ERROR,
    "what is held in along `{edge}` comes to {amount}",
)

_SAME = 1e-6  # mm
_LESS, _ALL = "less than nothing", "all of it, or more"


def rounds(
    finish: Finish, pieces: tuple[Piece, ...], topology: Topology, evaluate: Callable[[Expression], float]
) -> tuple[tuple[Round, ...], tuple[Diagnostic, ...]]:
    """The runs that the finish makes in the garment; runs alike (a left and a right) are one with a count."""
    said: list[Diagnostic] = []
    zones: dict[tuple[str, str], tuple[Zone, ...]] = {}
    for ref in finish.along:
        edge = part_of(pieces, ref.piece or "", ref.name)[1]
        holds = [
            hold for hold in finish.holds if (hold.along.piece, hold.along.name) == (ref.piece, ref.name)
        ]
        zones[ref.piece or "", ref.name] = _zones(ref.piece or "", edge, holds, evaluate, said)
    runs = topology.runs(finish.along)
    if runs is None:
        said.append(NOT_A_RUN.at(finish.origin, kind=finish.kind, name=finish.name))
        return (), tuple(said)
    return _stated(finish, _counted(finish.name, pieces, zones, runs), evaluate), tuple(said)


def seam_rounds(
    seam: Seam, pieces: tuple[Piece, ...], topology: Topology, evaluate: Callable[[Expression], float]
) -> tuple[Round, ...]:
    """The runs along which the seam is sewn, told by its first side; none where its edges branch."""
    to_itself = any(_named(ref) in map(_named, other) for other in seam.sides[1:] for ref in seam.first)
    runs = topology.copies_alike(seam.first) if to_itself else topology.runs(seam.first)
    zones: dict[tuple[str, str], tuple[Zone, ...]] = {}
    for ref in seam.first:
        edge = part_of(pieces, ref.piece or "", ref.name)[1]
        zones[ref.piece or "", ref.name] = _zones(ref.piece or "", edge, [], evaluate, [])
    return _stated(seam, _counted(seam.name, pieces, zones, runs or ()), evaluate)


def _stated(
    made: Seam | Finish, laid: tuple[Round, ...], evaluate: Callable[[Expression], float]
) -> tuple[Round, ...]:
    """The runs with a trim of a stated length spread evenly: it holds in what it is shorter by."""
    stated = [evaluate(takes.long) for takes in made.making.takes if takes.long is not None]
    lengths = [length for length in stated if length > 0.0]
    if not lengths:
        return laid
    return tuple(
        replace(one, zones=tuple(replace(zone, held=held) for zone in one.zones))
        for one in laid
        for held in (max(0.0, 1.0 - min(lengths) / one.length) if one.length > 0.0 else 0.0,)
    )


def held_along(laid: tuple[Round, ...], edge: tuple[str, str]) -> tuple[float, str | None]:
    """What is held in along an edge (piece and name), in millimetres, and by what."""
    for one in laid:
        zones = {zone for zone in one.zones if (zone.piece, zone.edge) == edge}
        if zones:
            return sum((zone.end - zone.start) * zone.held for zone in zones), one.by
    return 0.0, None


def _named(ref: PartRef) -> tuple[str | None, str]:
    return ref.piece, ref.name


def _counted(
    name: str,
    pieces: tuple[Piece, ...],
    zones: dict[tuple[str, str], tuple[Zone, ...]],
    runs: tuple[Run, ...],
) -> tuple[Round, ...]:
    """Runs alike (a left and a right) are one with a count."""
    counted: dict[tuple[bool, tuple[tuple[str, str], ...]], tuple[int, Run]] = {}
    for run in runs:
        key = (run.closed, tuple(sorted((stretch.piece, stretch.edge) for stretch in run.stretches)))
        counted[key] = (
            counted[key][0] + 1 if key in counted else 1,
            counted[key][1] if key in counted else run,
        )
    return tuple(_round(name, pieces, zones, run, count) for count, run in counted.values())


def _round(
    name: str,
    pieces: tuple[Piece, ...],
    zones: dict[tuple[str, str], tuple[Zone, ...]],
    run: Run,
    count: int,
) -> Round:
    edges = [part_of(pieces, stretch.piece, stretch.edge)[1] for stretch in run.stretches]
    laid = tuple(zone for stretch in run.stretches for zone in zones[stretch.piece, stretch.edge])
    turning = sum(abs(part.turning()) for edge in edges for part in edge.parts)
    return Round(name, run.closed, count, laid, sum(stitched_length(edge) for edge in edges), turning)


def _zones(
    piece: str, edge: Edge, holds: list[Hold], evaluate: Callable[[Expression], float], said: list[Diagnostic]
) -> tuple[Zone, ...]:
    """The edge from end to end in zones, flat where nothing is held."""
    whole = stitched_length(edge)
    name = f"{piece}.{edge.name}"
    held = []
    for hold in holds:
        start = _limit(hold.start, edge, whole, evaluate, otherwise=0.0)
        end = _limit(hold.end, edge, whole, evaluate, otherwise=whole)
        start, end = min(start, end), max(start, end)
        if start < -_SAME or end > whole + _SAME or end - start < _SAME:
            said.append(HOLD_BEYOND.at(hold.origin, edge=name))
            continue
        share = evaluate(hold.share)
        if not 0.0 <= share < 1.0:
            told = HOLD_NO_SHARE.at(hold.origin, edge=name, amount=_LESS if share < 0.0 else _ALL)
            said.append(
                told.help("it is above 0% and below 100% in every size; look at what it is reckoned from")
            )
            continue
        held.append((start, end, share, hold))
    held.sort(key=lambda one: one[0])
    zones, reached = [], 0.0
    for start, end, share, hold in held:
        if start < reached - _SAME:
            said.append(HOLDS_OVERLAP.at(hold.origin, edge=name))
            continue
        if start > reached + _SAME:
            zones.append(Zone(piece, edge.name, reached, start, 0.0))
        zones.append(Zone(piece, edge.name, start, min(end, whole), share))
        reached = end
    if reached < whole - _SAME:
        zones.append(Zone(piece, edge.name, reached, whole, 0.0))
    return tuple(zones)


def _limit(
    limit: Expression | str | None,
    edge: Edge,
    whole: float,
    evaluate: Callable[[Expression], float],
    *,
    otherwise: float,
) -> float:
    if limit is None:
        return otherwise
    if isinstance(limit, str):
        return whole if limit == edge.end else 0.0
    value = evaluate(limit)
    return value * whole if is_share(limit) else value
