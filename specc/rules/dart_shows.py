"""A dart in open or sheer cloth shows: its fold is seen through the cloth, from both sides.

So darts are swung away, into the hem or another edge, or left unsewn. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject
    from specc.source import Span

SHOWS = declare("SPC502", "dart-shows", Severity.WARNING, "`{dart}` shows in {trait} cloth")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a dart that is left in a piece of such cloth."""
    for piece in subject.pieces():
        trait = subject.seen_through(piece.name)
        if trait is None:
            continue
        inner = tuple(dart.name for dart in piece.two_pointed)
        for dart in (*(dart.name for dart in piece.darts), *inner):
            name = f"{piece.name}.{dart}"
            told = SHOWS.at(_place(subject, piece.name), dart=name, trait=trait)
            target = f"{piece.name}.hem" if any(edge.name == "hem" for edge in piece.edges) else "an edge"
            yield told.help(
                f"release it: `release {name}`"
                if dart in inner
                else f"swing it away: `swing {name} into {target} as flare`"
            )


def _place(subject: Subject, piece: str) -> Span:
    """Where the block that the piece comes from is used."""
    for block in subject.garment.blocks:
        if any(draft.name == piece for draft in block.pieces):
            return block.origin
    return subject.garment.header.origin
