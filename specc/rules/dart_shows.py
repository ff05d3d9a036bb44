"""A dart in open or sheer cloth shows: its fold is seen through the cloth, from both sides.

So darts are swung away, into the hem or another edge, or left unsewn. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.pattern.piece import TwoPointedDart
    from specc.rules.subject import Subject

SHOWS = declare("SPC502", "dart-shows", Severity.WARNING, "`{dart}` shows in {trait} cloth")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a dart that is left in a piece of such cloth."""
    for piece in subject.pieces():
        trait = subject.seen_through(piece.name)
        if trait is None:
            continue
        darts: tuple[Dart | TwoPointedDart, ...] = (*piece.darts, *piece.two_pointed)
        for dart in darts:
            name = f"{piece.name}.{dart.name}"
            told = SHOWS.at(subject.place_of_piece(piece.name), dart=name, trait=trait)
            edge = dart.edge if isinstance(dart, Dart) else None
            hem = any(other.name == "hem" and other.name != edge for other in piece.edges)
            yield told.help(
                f"swing it away: `swing {name} into {piece.name}.hem as flare`"
                if edge is not None and hem
                else f"leave it unsewn: `release {name}`"
            )
