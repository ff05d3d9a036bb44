"""Owns the order in which a garment is put together in each size.

Knows nothing of how the pieces came to be.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Collector, Severity, declare
from specc.drafting import EvaluationError
from specc.making.assembly import Assembly, SizeAssembly, StepRecords
from specc.making.attaching import attach, attached_uses, refs_of, told, unheld
from specc.making.closing import closed
from specc.making.laid import laid_sides
from specc.making.limits import limits
from specc.making.notches import notches
from specc.making.openings import openings
from specc.making.rounds import rounds, seam_rounds
from specc.making.squaring import squared
from specc.making.topology import Topology
from specc.making.uses import uses
from specc.making.walk import walk
from specc.pattern.lookup import edge_named, piece_named
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.making.attached import Attached
    from specc.model.construction import Finish, Seam
    from specc.model.expression import PartRef
    from specc.model.garment import Garment

NOT_ONE_RUN = declare(
    "SPC530",
    "side-not-one-run",
    Severity.ERROR,
    "seam `{seam}` joins a whole piece to edges that do not follow one another in one run",
)
NO_LENGTH = declare(
    "SPC533",
    "trim-without-length",
    Severity.ERROR,
    "the length of `{trim}` comes to nothing or less in size {sizes}",
)
EDGE_GONE = declare("SPC514", "edge-is-gone", Severity.ERROR, "`{edge}` is gone in {sizes}: it was {how}")


def assemble(garment: Garment, shaped: tuple[Shaped, ...]) -> tuple[Assembly | None, tuple[Diagnostic, ...]]:
    """The garment put together in every size.

    None when an edge that is used is no longer there, or a place where something is attached.
    """
    say = Collector()
    say.add(*_gone(garment, shaped))
    say.add(*_without_length(garment, shaped))
    if say.failed:
        return None, say.diagnostics
    say.add(*unheld(garment, shaped[0].pieces))
    attached = {size.size: attach(garment, size.pieces, size.evaluator().value) for size in shaped}
    say.add(*told({size: faults for size, (_, faults) in attached.items()}, garment))
    sizes = tuple(_size(garment, size, attached[size.size][0], say) for size in shaped)
    # The same fault in several sizes has the same place and the same words: it is told once.
    said = tuple(dict.fromkeys(say.diagnostics))
    if any(faults for _, faults in attached.values()):
        return None, said
    return Assembly(sizes, _records(garment, shaped)), said


def _size(garment: Garment, size: Shaped, attached: tuple[Attached, ...], say: Collector) -> SizeAssembly:
    evaluate = size.evaluator().value
    topology = Topology(size.pieces, garment.seams)
    laid = tuple(
        found
        for finish in garment.finishes
        for found in say.keep(rounds(finish, size.pieces, topology, evaluate))
    )
    walks = tuple(walk(seam, size.pieces, evaluate) for seam in garment.seams)
    sewn = tuple(
        found for seam in garment.seams for found in seam_rounds(seam, size.pieces, topology, evaluate)
    )
    cure = "sew those edges to each other, or cut the whole piece as often as they make a run"
    say.add(*(NOT_ONE_RUN.at(seam.origin, seam=seam.name).help(cure) for seam in topology.parted))
    used = say.keep(uses(garment, size.pieces, evaluate))
    used = say.keep(attached_uses(garment, size.pieces, used, evaluate))
    sides = tuple(laid_sides(seam, size.pieces, topology) for seam in garment.seams)
    placed, apart = notches(
        garment.seams, size.pieces, walks, sides, limits(size.pieces, used, laid, attached)
    )
    closures = tuple(
        found
        for finish in garment.finishes
        for found in say.keep(closed(finish, size.pieces, topology, evaluate))
    )
    return SizeAssembly(
        size.size,
        size.drafted,
        size.stages,
        size.pieces,
        walks,
        squared(used, size.pieces, sides),
        laid,
        sewn,
        *openings(garment, topology, walks, (*laid, *sewn), laps={one.closure: one.laps for one in closures}),
        closures,
        attached,
        placed,
        apart,
    )


def _records(garment: Garment, shaped: tuple[Shaped, ...]) -> tuple[StepRecords, ...]:
    """What each alteration changed, in every size."""
    return tuple(
        StepRecords(
            " ".join(step.origin.text.split()),
            step.origin.line,
            tuple(size.records[index] for size in shaped),
        )
        for index, step in enumerate(garment.alterations)
    )


def _gone(garment: Garment, shaped: tuple[Shaped, ...]) -> Iterator[Diagnostic]:
    """A fault for every edge that a seam or finish names and that an alteration has taken away."""
    for ref in _edges(garment):
        how: dict[str, list[str]] = {}
        for size in shaped:
            piece = piece_named(size.pieces, ref.piece or "")
            if piece is None or edge_named(piece, ref.name) is None:
                fate = (
                    next((gone.how for gone in piece.gone if gone.name == ref.name), "cut away")
                    if piece
                    else "left out"
                )
                how.setdefault(fate, []).append(size.size)
        for fate, sizes in how.items():
            named = f"size {', '.join(sizes)}" if len(sizes) < len(shaped) else "every size"
            yield EDGE_GONE.at(ref.origin, edge=f"{ref.piece}.{ref.name}", sizes=named, how=fate)


def _without_length(garment: Garment, shaped: tuple[Shaped, ...]) -> Iterator[Diagnostic]:
    """A fault for every trim whose stated length comes to nothing, or to less."""
    every: tuple[Seam | Finish, ...] = (*garment.seams, *garment.finishes)
    for takes in (takes for made in every for takes in made.making.takes):
        if takes.long is None:
            continue
        try:
            lengths = {size.size: size.evaluator().value(takes.long) for size in shaped}
        except EvaluationError as error:
            yield error.diagnostic
            continue
        bad = {size: length for size, length in lengths.items() if length <= 0.0}
        if bad:
            said = NO_LENGTH.at(takes.long.origin, trim=takes.trim, sizes=", ".join(bad))
            for size, length in bad.items():
                said = said.note(f"size {size}: {format_length(length, garment.header.unit)}")
            yield said.help("add to it, or leave it out: then the trim is as long as the edge")


def _edges(garment: Garment) -> Iterator[PartRef]:
    for seam in garment.seams:
        for side in seam.sides:
            yield from side
    for finish in garment.finishes:
        yield from finish.along
    for attachment in garment.attachments:
        yield from refs_of(attachment)
