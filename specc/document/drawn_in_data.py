"""Owns what the result says of gathers and folds along an edge; knows nothing of the rest of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import Members

if TYPE_CHECKING:
    from specc.document.data import Value
    from specc.pattern.piece import Edge


def drawn_in_data(edge: Edge) -> tuple[tuple[str, Value], ...]:
    """The stretches that are drawn in, and the folds in the order of the cloth."""
    gathers = tuple(
        Members(
            (
                ("start_mm", each.start),
                ("end_mm", each.end),
                ("takes_up_mm", each.amount),
                ("eased", each.eased),
            )
        )
        for each in edge.gathers
    )
    folds = tuple(
        Members(
            (
                ("kind", fold.kind.value),
                ("at_mm", fold.at),
                ("takes_up_mm", fold.amount),
                ("faces", edge.start if fold.onto_after else edge.end),
            )
        )
        for fold in edge.folds
    )
    return (("gathers", gathers), ("folds", folds))
