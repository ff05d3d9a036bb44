"""Owns the openings that the made garment is left with, and what passes through each.

Knows nothing of bodies. An opening is an edge that nothing joins; an edge at which a seam turns a facing or
lining in; the fold of a band of which one seam takes both long edges. A seam that goes round the body is no
opening, but it has to let the body through as well.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.assembly import Opening
from specc.making.attaching import attached_edges
from specc.making.cloths import cloth_of
from specc.making.rounds import held_along
from specc.making.worn import closed_parts
from specc.model.expression import PartRef
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.making.assembly import EdgeLength, Round, Walk
    from specc.making.topology import Run, Topology
    from specc.model.construction import Making, Seam
    from specc.model.garment import Garment

_SAME = 1.0  # mm: less is lost in sewing

Name = tuple[str, str]  # piece, edge


def openings(
    garment: Garment,
    topology: Topology,
    walks: tuple[Walk, ...],
    laid: tuple[Round, ...],
    *,
    laps: Mapping[str, float],
) -> tuple[tuple[Opening, ...], tuple[Opening, ...]]:
    """The openings, each once, in the order of the pieces, and the seams that go round and pass less.

    Twice: with all closures open, and as worn, with all of them closed. `laid` are the rounds of finishes and
    of seams; `laps` says how far each closure laps.
    """
    return _Openings(garment, topology, walks, laid, laps=laps).found()


class _Openings:
    """The openings of one size."""

    def __init__(
        self,
        garment: Garment,
        topology: Topology,
        walks: tuple[Walk, ...],
        laid: tuple[Round, ...],
        *,
        laps: Mapping[str, float],
    ) -> None:
        self._garment = garment
        self._pieces = topology.pieces
        self._topology = topology
        self._walks = {walk.seam: walk for walk in walks}
        sewn = {seam.name for seam in garment.seams}
        self._laid = tuple(one for one in laid if one.by not in sewn)
        self._held = {one.by: max((zone.held for zone in one.zones), default=0.0) for one in laid}
        self._laps = laps

    def found(self) -> tuple[tuple[Opening, ...], tuple[Opening, ...]]:
        """All openings of the size, open and closed."""
        seams = self._garment.seams
        joined = {_name(ref) for seam in seams for side in seam.sides for ref in side}
        joined |= attached_edges(self._garment, self._pieces)
        by_seam = {_name(ref): seam for seam in seams for ref in seam.stays_open}
        edges = tuple(
            PartRef(piece.name, edge.name, self._garment.header.origin)
            for piece in self._pieces
            for edge in piece.edges
            if (edge.name != piece.fold and (piece.name, edge.name) not in joined)
            or (piece.name, edge.name) in by_seam
        )
        runs = list(self._topology.clear_runs(edges))
        opened = tuple(dict.fromkeys(self._opening(run, runs, by_seam) for run in runs))
        rest = tuple(self._seams(opened, runs))
        worn = tuple(
            dict.fromkeys(
                opening
                for run in runs
                for part, lap in closed_parts(run, self._garment.finishes, self._laps)
                # What laps over as far as it reaches, the end of a stand, is no opening.
                if (opening := self._opening(part, runs, by_seam, lap=lap)).flat > _SAME
            )
        )
        return (*opened, *rest), (*worn, *rest)

    def _opening(self, run: Run, runs: list[Run], by_seam: dict[Name, Seam], *, lap: float = 0.0) -> Opening:
        flat = sewn = passes = -lap
        by: list[str] = []
        for stretch in run.stretches:
            name = stretch.piece, stretch.edge
            length = self._length(name)
            held, finish = held_along(self._laid, name)
            seam = by_seam.get(name)
            if seam is not None:
                held = length * self._held.get(seam.name, 0.0)
            share = self._reach(name, held / length if length else 0.0, finish, seam)
            flat += length
            sewn += length - held
            passes += length * share
            by += [one for one in (finish, seam.name if seam else None) if one is not None and one not in by]
        edges = tuple(dict.fromkeys(f"{stretch.piece}.{stretch.edge}" for stretch in run.stretches))
        return Opening(edges, tuple(by), None, self._central(run, runs), flat, sewn, passes)

    def _reach(self, name: Name, held: float, finish: str | None, seam: Seam | None) -> float:
        """How far a stretch reaches, as a share of its length: as far as all that is sewn to it lets it.

        The cloth reaches its own length and its stretch; a trim reaches the length it is sewn at and its
        stretch; of a seam that is turned, the ply that gives least.
        """
        reaches = [1.0 + self._stretch(name[0])]
        if finish is not None:
            reaches += self._trims(self._making(finish), 1.0 - held)
        if seam is not None:
            walk = self._walks[seam.name]
            if seam.making.turns:
                reaches += [self._side(side) / walk.first_length for side in walk.sides[1:]]
            reaches += self._trims(seam.making, 1.0 - self._held.get(seam.name, 0.0))
        return min(reaches)

    def _seams(self, opened: tuple[Opening, ...], opened_runs: list[Run]) -> Iterator[Opening]:
        """The seams that go round, where they pass less than the openings of the pieces they join."""
        round_ = {
            seam.name: run for seam in self._garment.seams if (run := self._goes_round(seam)) is not None
        }
        for seam in self._garment.seams:
            run = round_.get(seam.name)
            if run is None or not self._central(run, [*opened_runs, *round_.values()]):
                continue
            walk = self._walks[seam.name]
            flat = walk.second_length * walk.count
            reaches = [self._side(side) * walk.count for side in walk.sides]
            sewn = flat * (1.0 - self._held.get(seam.name, 0.0))
            reaches += list(self._trims(seam.making, sewn))
            joined = {ref.piece for side in seam.sides for ref in side}
            told = [one.passes for one in opened if joined & {edge.partition(".")[0] for edge in one.edges}]
            if min(reaches) < min(told, default=float("inf")) - _SAME:
                every = (f"{edge.piece}.{edge.edge}" for side in walk.sides for edge in side)
                edges = tuple(dict.fromkeys(every))
                yield Opening(edges, (seam.name,), seam.name, True, flat, sewn, min(reaches))

    def _goes_round(self, seam: Seam) -> Run | None:
        """The closed round in which the seam is sewn and stays a seam: of a side with both halves, if any.

        The end of a folded band lies double, from its two long edges to the fold, and goes round nothing.
        """
        if seam.making.turns or {_name(ref) for ref in seam.first} & {_name(ref) for ref in seam.second}:
            return None
        if any(self._topology.ends_fold(ref) for side in seam.sides for ref in side):
            return None
        sides = [self._topology.runs(side) or () for side in seam.sides]
        closed = [runs[0] for runs in sides if len(runs) == 1 and runs[0].closed]
        return max(closed, key=lambda run: len({stretch.side for stretch in run.stretches}), default=None)

    def _central(self, run: Run, runs: list[Run]) -> bool:
        """Whether the run goes round the body's middle: it has a left and a right, or lies across.

        Of pieces drawn whole, such as unfolded ones, a run has its like on the other side if it goes round an
        arm or a leg; and nothing goes through pieces that have no other end, such as a pocket.
        """
        if len({stretch.side for stretch in run.stretches}) > 1:
            return True
        if not all(self._topology.lies_across(stretch.piece) for stretch in run.stretches):
            return False
        length, pieces = self._round(run), _owners(run)
        others = [other for other in runs if other is not run and _owners(other) & self._sewn_to(pieces)]
        like = [one for one in others if _owners(one) == pieces and abs(self._round(one) - length) < _SAME]
        return bool(others) and not like

    def _sewn_to(self, pieces: set[str]) -> set[str]:
        """The pieces and all that hang together with them by seams."""
        found = set(pieces)
        joins = [{ref.piece or "" for side in seam.sides for ref in side} for seam in self._garment.seams]
        while grown := [joined for joined in joins if joined & found and not joined <= found]:
            found.update(*grown)
        return found

    def _round(self, run: Run) -> float:
        return sum(self._length((stretch.piece, stretch.edge)) for stretch in run.stretches)

    def _length(self, name: Name) -> float:
        return stitched_length(part_of(self._pieces, *name)[1])

    def _side(self, side: tuple[EdgeLength, ...]) -> float:
        """How far a side of a seam reaches by its cloth."""
        return sum(edge.length * edge.times * (1.0 + self._stretch(edge.piece)) for edge in side)

    def _stretch(self, piece: str) -> float:
        cloth = cloth_of(self._garment, piece)
        return float(cloth.stretch) if cloth else 0.0

    def _trims(self, making: Making, sewn: float) -> Iterator[float]:
        """How far each trim reaches that is sewn at a length, or at a share of the edge's.

        A drawstring runs loose.
        """
        taken = {takes.trim for takes in making.takes if takes.hanging is None}
        return (sewn * (1.0 + float(trim.stretch)) for trim in self._garment.trims if trim.name in taken)

    def _making(self, finish: str) -> Making:
        return next(one.making for one in self._garment.finishes if one.name == finish)


def _owners(run: Run) -> set[str]:
    return {stretch.piece for stretch in run.stretches}


def _name(ref: PartRef) -> Name:
    return ref.piece or "", ref.name
