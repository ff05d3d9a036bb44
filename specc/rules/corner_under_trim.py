"""A trim laid along an edge has to be folded where the edge turns a corner.

No trim stretches round a point: it is folded to a mitre there, outward over the point, inward into an edge
that is clipped first. The way of sewing does not say so, since it knows no corners. Common practice, no
source. How far the edge turns follows from the angle of the piece; where the corner lies on a seam, from
those of both pieces together; where it lies on the fold, from twice that of the half.
"""

from __future__ import annotations

from itertools import pairwise
from math import degrees, pi, radians
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.geometry.bends import corners
from specc.geometry.region import signed_area
from specc.making.topology import Topology
from specc.model.construction import Finish
from specc.pattern.lookup import edges_at, part_of, piece_named
from specc.pattern.outline import drawn_outline
from specc.units import format_angle

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.topology import Corner, Run, Stretch
    from specc.model.construction import Seam
    from specc.model.expression import PartRef
    from specc.pattern.piece import Piece
    from specc.rules.subject import Subject

CORNER = declare("SPC568", "corner-under-trim", Severity.NOTE, "`{made}` takes `{trim}` round {corners}")

_TOLD: Final = radians(30.0)  # of turning: a blunter corner takes a trim without a fold
_LOOSE = ("cord", "elastic")  # they bend any way, or lie in a casing


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam or finish with a trim, with every corner in the size where it is sharpest."""
    garment = subject.garment
    kinds = {trim.name: trim.kind for trim in garment.trims}
    topology = Topology(subject.pieces(), garment.seams)
    every: tuple[Seam | Finish, ...] = (*garment.seams, *garment.finishes)
    for made in every:
        laid = [one for one in made.making.takes if one.hanging is None and kinds[one.trim] not in _LOOSE]
        turns = _turns(subject, topology, made) if laid else {}
        if turns:
            yield _told(made, laid[0].trim, turns)


def _told(made: Seam | Finish, trim: str, turns: dict[str, float]) -> Diagnostic:
    found = "a corner" if len(turns) == 1 else "corners"
    told = CORNER.at(made.origin, made=made.name, trim=trim, corners=found)
    for place, turning in turns.items():
        way = "outward" if turning > 0.0 else "inward"
        told = told.note(f"{place}: {way}, by {format_angle(degrees(abs(turning)))}")
    if any(turning < 0.0 for turning in turns.values()):
        told = told.help(
            "clip the edge into an inward corner before the trim goes on, and fold a mitre there"
        )
    if any(turning > 0.0 for turning in turns.values()):
        told = told.help("fold a mitre at an outward corner, or round the corner off with `round` in `alter`")
    return told


def _turns(subject: Subject, topology: Topology, made: Seam | Finish) -> dict[str, float]:
    """By how much the edges turn at their corners, outward positive, by the corners' places."""
    refs = made.along if isinstance(made, Finish) else made.first
    found: dict[str, float] = {}
    for size in subject.assembly.sizes:
        turned = [turn for ref in refs for turn in _within(subject, size.pieces, ref)]
        turned += (turn for run in topology.runs(refs) or () for turn in _between(topology, size.pieces, run))
        for place, turning in turned:
            if abs(turning) >= _TOLD and abs(turning) > abs(found.get(place, 0.0)):
                found[place] = turning
    return found


def _within(subject: Subject, pieces: tuple[Piece, ...], ref: PartRef) -> Iterator[tuple[str, float]]:
    """The corners along an edge, its darts left out."""
    piece, edge = part_of(pieces, ref.piece or "", ref.name)
    outward = _outward(piece)
    done = 0.0
    for part in edge.parts:
        for corner in corners(part):
            place = f"`{piece.name}.{edge.name}`, {subject.length(done + corner.along)} from `{edge.start}`"
            yield place, corner.turning * outward
        done += part.length()


def _between(topology: Topology, pieces: tuple[Piece, ...], run: Run) -> Iterator[tuple[str, float]]:
    """The corners at which an edge of the run ends and the next begins."""
    stretches = run.stretches
    following = pairwise((*stretches, *stretches[:1]) if run.closed else stretches)
    reached: Corner | None = None
    for one, other in following:
        shared = [corner for corner in topology.ends(one) if corner in topology.ends(other)]
        if not shared:
            return
        reached = next((corner for corner in reversed(shared) if corner != reached), shared[-1])
        here = _raw(topology, pieces, one, reached, leaving=True)
        there = _raw(topology, pieces, other, reached, leaving=False)
        inside = _inside(pieces, here) + (0.0 if here == there else _inside(pieces, there))
        yield f"`{here[0]}.{here[2]}`", pi - inside


def _raw(
    topology: Topology, pieces: tuple[Piece, ...], stretch: Stretch, met: Corner, *, leaving: bool
) -> Corner:
    """The corner of a stretch by its own name, of those that meet.

    Of a band closed to a ring both ends do: its end is where it is left, its start where it is come to.
    """
    edge = part_of(pieces, stretch.piece, stretch.edge)[1]
    start, end = topology.ends(stretch)
    at_end = end == met and (leaving or start != met)
    return stretch.piece, stretch.side, edge.end if at_end else edge.start


def _inside(pieces: tuple[Piece, ...], corner: Corner) -> float:
    """The angle of the piece at a corner, radians."""
    piece = piece_named(pieces, corner[0])
    assert piece is not None, "a run is of pieces that are there"
    ending, starting = edges_at(piece, corner[2])
    assert ending is not None, "an outline is closed"
    assert starting is not None, "an outline is closed"
    turning = ending.parts[-1].end_direction().angle_to(starting.parts[0].start_direction())
    return pi - turning * _outward(piece)


def _outward(piece: Piece) -> float:
    """1 where an outward corner of the piece turns left, else -1."""
    return 1.0 if signed_area(drawn_outline(piece)) > 0.0 else -1.0
