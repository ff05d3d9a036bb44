"""Where pieces are joined, an edge that goes on from one to the other should go on smoothly: it is trued.

The angles of the pieces at the corner where a neck, an armhole or a hem crosses a seam add up to a straight
line, and at a fold the angle is a right one; else the made edge has a peak or a dip there. Truing edges is
taught everywhere; that a kink is seen from 12 degrees on, and meant from 40 on (the point of a V), is common
practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from math import degrees
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.geometry.region import signed_area
from specc.making.topology import Topology
from specc.pattern.lookup import edges_at, part_of
from specc.pattern.outline import drawn_outline
from specc.units import format_angle

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import SizeAssembly
    from specc.rules.subject import Subject

NOT_TRUE = declare(
    "SPC562",
    "edge-not-true",
    Severity.WARNING,
    "`{made}` {bends} by {angle} where its edges go on into each other",
)

SEEN: Final = 12.0  # degrees
MEANT: Final = 40.0  # degrees

Meeting = tuple[str, str]
"""Two edges, `piece.edge`, that meet; the same twice at a fold."""


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a finish or hem, with the greatest bend at each place."""
    bends: dict[str, dict[Meeting, dict[str, float]]] = {}
    for size in subject.assembly.sizes:
        for made, meeting, kink in _kinks(subject, size):
            if SEEN < abs(kink) < MEANT:
                sizes = bends.setdefault(made, {}).setdefault(meeting, {})
                sizes[size.size] = max(sizes.get(size.size, 0.0), kink, key=abs)
    origins = {finish.name: finish.origin for finish in subject.garment.finishes}
    for made, places in bends.items():
        worst = max((kink for sizes in places.values() for kink in sizes.values()), key=abs)
        told = NOT_TRUE.at(
            origins[made],
            made=made,
            bends="comes to a peak" if worst > 0.0 else "dips",
            angle=format_angle(abs(worst)),
        )
        for (first, second), sizes in places.items():
            other = "its mirror image" if first == second else f"`{second}`"
            most = format_angle(abs(max(sizes.values(), key=abs)))
            told = told.note(f"`{first}` meets {other} at {most} from straight in {subject.sizes(sizes)}")
        named = ", ".join(dict.fromkeys(edge for meeting in places for edge in meeting))
        yield told.help(
            f"`shape {named} at CORNER up 1/2 in` draws it square to its neighbours; or `accept` it"
        )


def _kinks(subject: Subject, size: SizeAssembly) -> Iterator[tuple[str, Meeting, float]]:
    """By how many degrees edges bend where they meet in the garment: outward as a peak, else below 0."""
    topology = Topology(size.pieces, subject.garment.seams)
    for finish in subject.garment.finishes:
        if finish.closing is not None:
            continue
        for run in topology.runs(finish.along) or ():
            ring = run.stretches[:1] if run.closed and len(run.stretches) > 1 else ()
            for one, other in pairwise((*run.stretches, *ring)):
                if (one.piece, one.side) == (other.piece, other.side):
                    continue  # two edges of a piece: their corner is drawn on purpose
                shared = {*topology.ends(one)} & {*topology.ends(other)}
                angles = [
                    angle
                    for each in (one, other)
                    for corner, angle in _angles(size, each.piece, each.edge)
                    if topology.met((each.piece, each.side, corner)) in shared
                ]
                if len(angles) == 2:
                    first, second = sorted((f"{one.piece}.{one.edge}", f"{other.piece}.{other.edge}"))
                    yield finish.name, (first, second), 180.0 - sum(angles)


def _angles(size: SizeAssembly, piece: str, edge: str) -> Iterator[tuple[str, float]]:
    """The inner angles of a piece at both ends of an edge, in degrees, by the names of the corners."""
    owner, found = part_of(size.pieces, piece, edge)
    around = -1.0 if signed_area(drawn_outline(owner)) < 0.0 else 1.0
    for corner in (found.start, found.end):
        ending, starting = edges_at(owner, corner)
        if ending is not None and starting is not None:
            turn = ending.parts[-1].end_direction().angle_to(starting.parts[0].start_direction())
            yield corner, 180.0 - around * degrees(turn)
