"""A drawstring on a child's garment can catch in a door or on a slide, and at hood or neck it strangles.

United States: none at hood or neck in sizes 2T to 12; at waist and bottom in sizes 2T to 16 at most 3 in
(75 mm) outside the channel when the garment is spread to its full width, no toggles or knots, and bartacked
at the back (16 CFR 1120.3, edition of 2015, read; ASTM F1816 from summaries). European Union: EN 14682:2014,
from summaries. The laws speak of some garments and some ages, and other countries have others: a warning,
never a verdict.

A drawstring is a trim that a method takes with `hanging` ends. A binding that runs on past an open neck as
ties is told too: the European summaries bar halter ties on young children. That either lies at hood or neck
is read from the lines `bust-line` of the pieces. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.model.construction import Seam
from specc.pattern.lookup import edge_named, line_named, piece_named

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import SizeAssembly
    from specc.model.construction import Finish
    from specc.model.expression import PartRef
    from specc.rules.subject import Subject

ON_CHILD = declare(
    "SPC538", "drawstring-on-child", Severity.WARNING, "`{made}` {kind} on a child's garment: {what}"
)

MOST: Final = 3.0 * 25.4  # mm outside the channel
NEAR: Final = 0.01  # mm
_LAW = (
    "see 16 CFR 1120.3 with ASTM F1816 for the United States, EN 14682 for the European Union; check the"
    " current text and your local law"
)


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a drawstring: that it lies at the neck, or how far its ends hang out of the channel."""
    if subject.garment.header.wearer != "child":
        return
    every: tuple[Seam | Finish, ...] = (*subject.garment.seams, *subject.garment.finishes)
    for made in every:
        edges = made.first if isinstance(made, Seam) else made.along
        hanging = [takes.hanging for takes in made.making.takes if takes.hanging is not None]
        if not hanging:
            if _ties(subject, made) and any(_at_neck(subject.assembly.sizes[0], edge) for edge in edges):
                what = "they lie at hood or neck, where a cord strangles"
                told = ON_CHILD.at(made.origin, made=made.name, kind="ends in ties", what=what).note(_LAW)
                yield told.help("leave them off: turn the ends under, and take a fastening")
            continue
        longest = max(subject.evaluate(one) for one in hanging)
        if any(_at_neck(subject.assembly.sizes[0], edge) for edge in edges):
            what = "it lies at hood or neck, where a cord strangles"
            cure = "leave it out: take elastic, a rib or a fastening"
        elif longest > MOST + NEAR:
            what = f"its ends hang out by {subject.lengths(longest)[0]}, more than {subject.lengths(MOST)[0]}"
            cure = "shorten the ends, sew the string down at the back, no toggles or knots; or take elastic"
        else:
            continue
        told = ON_CHILD.at(made.origin, made=made.name, kind="is a drawstring", what=what)
        yield told.note(_LAW).help(cure)


def _ties(subject: Subject, made: Seam | Finish) -> bool:
    """Whether a trim runs on past the ends of an edge that stays open."""
    size = subject.assembly.sizes[0]
    open_ended = any(one.by == made.name and not one.closed for one in (*size.rounds, *size.sewn))
    return open_ended and any(takes.beyond is not None for takes in made.making.takes)


def _at_neck(size: SizeAssembly, edge: PartRef) -> bool:
    """Whether the edge lies above the bust line of its piece, or is the opening of a hood.

    A hood has no bust line; it is sewn to edges that lie above one, and opens round the body's middle, which
    tells it from a sleeve.
    """
    owner = edge.piece or ""
    if _bust_level(size, owner) is not None:
        return _lies_above(size, owner, edge.name)
    central = any(opening.central and f"{owner}.{edge.name}" in opening.edges for opening in size.openings)
    seams = [[(one.piece, one.edge) for side in walk.sides for one in side] for walk in size.walks]
    joined = [name for seam in seams if any(piece == owner for piece, _ in seam) for name in seam]
    return central and any(_lies_above(size, *name) for name in joined)


def _lies_above(size: SizeAssembly, piece: str, edge: str) -> bool:
    """Whether the whole edge lies above the bust line of its piece."""
    level, found = _bust_level(size, piece), piece_named(size.pieces, piece)
    drawn = edge_named(found, edge) if found else None
    if level is None or drawn is None:
        return False
    return min(drawn.parts[0].start.y, drawn.parts[-1].end.y) > level + NEAR


def _bust_level(size: SizeAssembly, piece: str) -> float | None:
    """How high the piece has its bust line, on the paper; None without one."""
    found = piece_named(size.pieces, piece)
    line = line_named(found, "bust-line") if found else None
    return None if line is None else max(part.start.y for part in line.parts)
