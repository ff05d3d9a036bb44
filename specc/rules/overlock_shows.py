"""An overlocked edge in open or sheer cloth is seen through it.

Under the arm nobody looks, and an overlock is enough there; what is seen is bound or enclosed. Common
practice, no source. Stitches of class 500 are overedge stitches (ISO 4915:1981).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.pattern.lookup import edge_named, piece_named

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Making
    from specc.model.expression import PartRef
    from specc.rules.subject import Subject
    from specc.source import Span

SHOWS = declare(
    "SPC503", "overlock-shows", Severity.WARNING, "the overlock of {kind} `{name}` shows in {trait} cloth"
)

_OVEREDGE = "5"


_CURES = {
    "seam": "sew it `by french` or `by bound-outside`; the block says of an edge if it is `out of sight`",
    "hem": "turn it twice: `by double-turned`",
    "finish": "bind it: `by elastic-bound` or `by bias-bound`",
    "closure": "take a way of closing that encloses the edges, or leave the opening out",
}


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, finish or hem whose overlock can be seen."""
    for kind, name, making, sides, origin in _made(subject):
        # The sides of a seam lie on each other: one that is out of sight hides the others.
        seen = all(any(not _out_of_sight(subject, ref) for ref in side) for side in sides)
        traits = (subject.seen_through(ref.piece or "") for side in sides for ref in side)
        trait = next((each for each in traits if each is not None), None)
        if (
            seen
            and trait is not None
            and any((one.stitch or "").startswith(_OVEREDGE) for one in making.passes)
        ):
            yield SHOWS.at(origin, kind=kind, name=name, trait=trait).help(_CURES[kind])


def _made(subject: Subject) -> Iterator[tuple[str, str, Making, tuple[tuple[PartRef, ...], ...], Span]]:
    for seam in subject.garment.seams:
        yield "seam", seam.name, seam.making, seam.sides, seam.origin
    for finish in subject.garment.finishes:
        yield finish.kind, finish.name, finish.making, (finish.along,), finish.origin


def _out_of_sight(subject: Subject, ref: PartRef) -> bool:
    piece = piece_named(subject.pieces(), ref.piece or "")
    edge = edge_named(piece, ref.name) if piece else None
    return edge is not None and edge.out_of_sight
