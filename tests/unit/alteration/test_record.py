"""The record of an alteration: what it drew in along edges, and what it let out again."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration.record import Fullness, FullnessChange, Way, recorded
from specc.document.document import Group
from specc.document.table import Table
from specc.pattern.piece import Fold, FoldKind, Gathers
from specc.pipeline import document
from tests.altering import rectangle
from tests.made import panels

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.pattern.piece import Piece


def with_top(**drawn: object) -> Piece:
    """A rectangle with something drawn in along its third edge."""
    piece = rectangle(300.0, 400.0)
    edges = (*piece.edges[:2], replace(piece.edges[2], **drawn), *piece.edges[3:])  # type: ignore[arg-type]
    return replace(piece, edges=edges)


def changes(before: Piece, after: Piece | None) -> tuple[FullnessChange, ...]:
    return recorded(0, (before,), (after,) if after else ()).fullness


def test_gathers_that_appear_are_recorded_by_way() -> None:
    plain = rectangle(300.0, 400.0)
    gathered = with_top(gathers=(Gathers(10, 50, 20), Gathers(60, 90, 5), Gathers(100, 120, 4, eased=True)))
    name, edge = plain.name, plain.edges[2].name

    assert changes(plain, gathered) == (
        FullnessChange(name, edge, Way.GATHERS, None, Fullness(2, 25)),
        FullnessChange(name, edge, Way.EASE, None, Fullness(1, 4)),
    )
    assert changes(gathered, plain)[0].before == Fullness(2, 25)
    assert changes(gathered, gathered) == ()
    assert changes(gathered, None) == ()


def test_folds_that_become_more_are_recorded_with_their_number() -> None:
    one = with_top(folds=(Fold(40, 30, FoldKind.PLEAT),))
    two = with_top(folds=(Fold(40, 15, FoldKind.PLEAT), Fold(80, 15, FoldKind.PLEAT)))

    (change,) = changes(one, two)
    assert (change.way, change.before, change.after) == (Way.PLEAT, Fullness(1, 30), Fullness(2, 30))


def tables(blocks: tuple[Block, ...]) -> Iterator[Table]:
    """All tables among blocks and in their groups."""
    for block in blocks:
        if isinstance(block, Group):
            yield from tables(block.blocks)
        elif isinstance(block, Table):
            yield block


@pytest.mark.parametrize(
    ("form", "said"),
    [("gathers", "gathers after"), ("pleat", "a pleat after"), ("ease", "ease after")],
)
def test_the_page_of_alterations_lists_what_is_drawn_in(form: str, said: str) -> None:
    spread = f"alter {{ spread from front.low at 50% to front.top at 50% by 6 cm as {form} }}\n"
    built = document(panels(spread + "seam side joins front.side to back.side by french\n"))
    assert built is not None
    (page,) = (page for page in built.pages if page.kind == "alterations")
    (table,) = (each for each in tables(page.blocks) if each.name == "drawn-in-changed-1")

    cells = [row.cells for row in table.rows]
    assert [each[0] for each in cells] == ["front.low", "", "front.top", ""]
    before = "pleats before" if form == "pleat" else f"{form} before"
    assert [each[1] for each in cells[:2]] == [before, said]
    assert [each[2] for each in cells] == ["none", "6.0", "none", "6.0"]
