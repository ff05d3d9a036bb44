"""Owns the order in which a garment is sewn: what comes before what, what is flat and what round by then.

Knows nothing of lengths. Darts come first, then what is sewn onto pieces that still lie flat, then seams,
finishes and hems. A chain of edges is sewn when the seams that make it one run are; a finish or hem that
goes round waits until the round is closed. Among what could be done next comes what the text says first;
buttons and hooks, which go onto finished edges, last (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.making.topology import Topology
from specc.model.attachment import SewnOn
from specc.pattern.lookup import edge_named, piece_named

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.model.attachment import Attachment
    from specc.model.construction import Finish, Seam
    from specc.model.expression import PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

Key = tuple[int, int]


class Kind(StrEnum):
    """What is done in a step."""

    DARTS = "darts"
    ATTACHMENT = "attachment"
    SEAM = "seam"
    FINISH = "finish"
    HEM = "hem"
    CLOSURE = "closure"


@dataclass(frozen=True, slots=True)
class Step:
    """A step: what is done, by its kind and name; of darts the name is that of the piece.

    `after` are the numbers of the steps that must be done before, counted from 1. `edges` are all that it
    joins or finishes. `lies` is how the garment lies then, `flat` or `round`; empty for closures and for what
    is sewn on.
    """

    kind: Kind
    name: str
    edges: tuple[tuple[str, str], ...]
    after: tuple[int, ...] = ()
    lies: str = ""


@dataclass(slots=True)
class _Job:
    """A step while the order is not known yet; `needs` are indices of jobs."""

    step: Step
    key: Key
    needs: set[int] = field(default_factory=set)


def order_of_work(garment: Garment, pieces: tuple[Piece, ...]) -> tuple[Step, ...]:
    """The steps in the order of the work; the garment must have been assembled without faults."""
    jobs: list[_Job] = [*_darts(pieces), *_attachments(garment), *_made(garment)]
    topology = Topology(pieces, garment.seams)
    index = {(job.step.kind, job.step.name): number for number, job in enumerate(jobs)}
    for job in jobs:
        job.needs = {index[each] for each in _needed(job.step, garment, pieces, topology) if each in index}
        job.needs.discard(index[job.step.kind, job.step.name])
    done: list[int] = []
    while len(done) < len(jobs):
        left = [number for number in range(len(jobs)) if number not in done]
        ready = [number for number in left if jobs[number].needs <= set(done)]
        # A text that asks for two things before each other is followed as it is written.
        done.append(min(ready or left, key=lambda number: jobs[number].key))
    places = {number: place for place, number in enumerate(done, start=1)}
    return tuple(
        _laid(
            replace(jobs[number].step, after=tuple(sorted(places[need] for need in jobs[number].needs))),
            [jobs[before].step.name for before in done[:place] if jobs[before].step.kind is Kind.SEAM],
            garment,
            pieces,
        )
        for place, number in enumerate(done)
    )


def _darts(pieces: tuple[Piece, ...]) -> Iterator[_Job]:
    for number, piece in enumerate(pieces):
        if piece.darts or piece.two_pointed:
            names = (*(dart.name for dart in piece.darts), *(dart.name for dart in piece.two_pointed))
            edges = tuple((piece.name, name) for name in names)
            yield _Job(Step(Kind.DARTS, piece.name, edges), (0, number))


def _attachments(garment: Garment) -> Iterator[_Job]:
    """What is sewn by itself; what a seam or finish catches is part of that one's step."""
    for each in garment.attachments:
        if each.making is not None:
            edges = ((each.on, each.piece),) if isinstance(each, SewnOn) else _named((each.to,))
            yield _Job(Step(Kind.ATTACHMENT, each.name, edges), (1, each.origin.start))


def _made(garment: Garment) -> Iterator[_Job]:
    small = {name for each in garment.attachments for name in _pieces_of(each)}
    for seam in garment.seams:
        edges = tuple(dict.fromkeys(name for side in seam.sides for name in _named(side)))
        phase = 1 if {piece for piece, _ in edges} <= small else 2
        yield _Job(Step(Kind.SEAM, seam.name, edges), (phase, seam.origin.start))
    for finish in garment.finishes:
        edges = _named(finish.along)
        phase = 1 if {piece for piece, _ in edges} <= small else 2
        if any(taken.each_place for taken in finish.making.pieces):
            phase = 3
        yield _Job(Step(Kind(finish.kind), finish.name, edges), (phase, finish.origin.start))


def _needed(
    step: Step, garment: Garment, pieces: tuple[Piece, ...], topology: Topology
) -> Iterator[tuple[Kind, str]]:
    """What must be done before a step, by kind and name."""
    yield from _darts_in(step, pieces)
    if step.kind is Kind.SEAM:
        seam = next(each for each in garment.seams if each.name == step.name)
        for side in seam.sides:
            yield from _one_run(side, seam, garment, topology)
    elif step.kind in (Kind.FINISH, Kind.HEM, Kind.CLOSURE):
        finish = next(each for each in garment.finishes if each.name == step.name)
        yield from _closing(finish, garment, topology)
    if step.kind is Kind.CLOSURE and any(
        taken.each_place
        for each in garment.finishes
        if each.name == step.name
        for taken in each.making.pieces
    ):
        yield from _on_finished(step, garment)
    for each in garment.attachments:
        yield from _with_attachment(step, each, garment)


def _darts_in(step: Step, pieces: tuple[Piece, ...]) -> Iterator[tuple[Kind, str]]:
    """The darts that lie in an edge of the step, or on a piece that something is sewn onto."""
    if step.kind is Kind.DARTS:
        return
    for name, edge in step.edges:
        piece = piece_named(pieces, name)
        found = edge_named(piece, edge) if piece else None
        if step.kind is Kind.ATTACHMENT or (found is not None and found.darts):
            yield Kind.DARTS, name


def _one_run(
    side: tuple[PartRef, ...], seam: Seam, garment: Garment, topology: Topology
) -> Iterator[tuple[Kind, str]]:
    """For every two edges of a side that follow each other, the seam that makes them one run."""
    for one, other in pairwise(side):
        if one.piece != other.piece:
            joining = [
                each for each in garment.seams if each is not seam and _joins(each, one, other, topology)
            ]
            yield from ((Kind.SEAM, each.name) for each in joining[:1])


def _closing(finish: Finish, garment: Garment, topology: Topology) -> Iterator[tuple[Kind, str]]:
    """The seams that join two edges of a finish, or an edge to its mirror image, where they meet."""
    refs = finish.along if finish.closing is None else ()
    for seam in garment.seams:
        if any(_joins(seam, one, other, topology) for one in refs for other in refs):
            yield Kind.SEAM, seam.name


def _joins(seam: Seam, one: PartRef, other: PartRef, topology: Topology) -> bool:
    """Whether a seam runs into a corner at which two edges meet, and joins their pieces there."""
    if any((ref.piece, ref.name) in {*_named((one, other))} for side in seam.sides for ref in side):
        return False
    shared = _corners(one, topology) & (_corners(other, topology))
    firsts = {ref.piece for ref in seam.first}
    seconds = {ref.piece for side in seam.sides[1:] for ref in side}
    if not (
        (one.piece in firsts and other.piece in seconds) or (other.piece in firsts and one.piece in seconds)
    ):
        return False
    return any(shared & _corners(ref, topology) for side in seam.sides for ref in side)


def _corners(ref: PartRef, topology: Topology) -> set[tuple[str, int, str]]:
    return {corner for stretch in topology.stretches((ref,)) for corner in topology.ends(stretch)}


def _on_finished(step: Step, garment: Garment) -> Iterator[tuple[Kind, str]]:
    """What else is done along the edges that buttons go onto."""
    for each in garment.finishes:
        if each.name != step.name and set(_named(each.along)) & set(step.edges):
            yield Kind(each.kind), each.name
    for seam in garment.seams:
        if {piece for piece, _ in step.edges} & {ref.piece for side in seam.sides for ref in side}:
            yield Kind.SEAM, seam.name


def _with_attachment(step: Step, each: Attachment, garment: Garment) -> Iterator[tuple[Kind, str]]:
    """What is attached is made before it is attached, and attached before the piece goes on."""
    small = set(_pieces_of(each))
    own = {piece for piece, _ in step.edges}
    if isinstance(each, SewnOn):
        makes = (step.kind, step.name) == (Kind.ATTACHMENT, each.name)
        if step.kind is Kind.SEAM and each.on in own:
            yield Kind.ATTACHMENT, each.name
    else:
        catches = each.making is None and _named((each.to,))[0] in step.edges
        makes = catches or (step.kind, step.name) == (Kind.ATTACHMENT, each.name)
    if makes:
        for kind, name, edges in _all_made(garment):
            if {piece for piece, _ in edges} <= small and name != step.name:
                yield kind, name


def _all_made(garment: Garment) -> Iterator[tuple[Kind, str, tuple[tuple[str, str], ...]]]:
    for seam in garment.seams:
        yield Kind.SEAM, seam.name, tuple(name for side in seam.sides for name in _named(side))
    for finish in garment.finishes:
        yield Kind(finish.kind), finish.name, _named(finish.along)


def _laid(step: Step, sewn: list[str], garment: Garment, pieces: tuple[Piece, ...]) -> Step:
    """The step with whether it is sewn flat or round, by the seams that are sewn before it."""
    small = {name for each in garment.attachments for name in _pieces_of(each)}
    if step.kind is Kind.CLOSURE or {piece for piece, _ in step.edges} <= small:
        return step
    if step.kind in (Kind.DARTS, Kind.ATTACHMENT):
        return replace(step, lies="flat")
    # What closes without any seam is the outline of a piece, which lies flat.
    alone = Topology(pieces, ())
    before = Topology(pieces, tuple(seam for seam in garment.seams if seam.name in sewn))
    sides = _sides(step, garment)
    closed = any(_goes_round(before, side) and not _goes_round(alone, side) for side in sides)
    return replace(step, lies="round" if closed else "flat")


def _sides(step: Step, garment: Garment) -> tuple[tuple[PartRef, ...], ...]:
    """The chains of edges of a seam, once where it joins edges to themselves; of a finish its one chain."""
    if step.kind is not Kind.SEAM:
        return tuple(each.along for each in garment.finishes if each.name == step.name)
    seam = next(each for each in garment.seams if each.name == step.name)
    return (seam.first,) if _named(seam.first) == _named(seam.second) else seam.sides


def _goes_round(topology: Topology, side: tuple[PartRef, ...]) -> bool:
    """Whether edges make a round; the end of a folded band, both of whose corners are one, makes none."""
    if any(topology.ends_fold(ref) for ref in side):
        return False
    return any(run.closed for run in topology.runs(side) or ())


def _pieces_of(each: Attachment) -> tuple[str, ...]:
    """The pieces that are attached."""
    return (each.piece,) if isinstance(each, SewnOn) else tuple(end.piece or "" for end in each.ends)


def _named(refs: tuple[PartRef, ...]) -> tuple[tuple[str, str], ...]:
    return tuple((ref.piece or "", ref.name) for ref in refs)
