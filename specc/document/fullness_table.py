"""Owns the table of what is folded or drawn in along the edges of a piece; knows nothing of drawings."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.document.table import Column, Row, Table
from specc.pattern.piece import FoldKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from specc.document.sheet import Sheet
    from specc.pattern.piece import Fold, Gathers, Piece

    Figures = tuple[float | None, ...]

ALIKE: Final = 0.5  # mm; folds that differ by less take up the same

DRAWN_IN = (
    "Two strokes with an arrow: a pleat or tuck; lay the line at the tail of the arrow on the one at its"
    " head. Wave: gathered or eased in."
)


def has_fullness(piece: Piece) -> bool:
    """Whether anything is laid in folds or drawn in along its edges."""
    return any(edge.folds or edge.gathers for edge in piece.edges)


def height_of_table(piece: Piece) -> float:
    """About how much paper the table takes, in millimetres."""
    rows = sum(len(edge.folds) + min(1, len(edge.folds)) + 3 * len(edge.gathers) for edge in piece.edges)
    return 16.0 + 5.6 * rows if rows else 0.0


def fullness_table(sheet: Sheet, piece: Piece) -> Iterator[Table]:
    """Where each fold lies and each stretch that is drawn in, from the edge's start, and what it takes up."""
    if not has_fullness(piece):
        return
    sizes = sheet.in_sizes(piece.name)
    columns = (
        Column("Drawn in"),
        Column("On", width=22.0),
        Column("", width=40.0),
        *sheet.size_columns("In size", width=13.0),
    )
    rows: list[Row] = []
    for edge in piece.edges:
        edges = [next(e for e in each.edges if e.name == edge.name) for each in sizes]
        begin = f"begins, from {edge.start}"
        for kind in FoldKind:
            folds = tuple(tuple(fold for fold in e.folds if fold.kind is kind) for e in edges)
            most = max(map(len, folds))
            if most == 0:
                continue
            name = kind.value if most == 1 else f"{most} {kind.value}s"
            rows += _rows(sheet, (name, edge.name), _of_folds(folds, most, begin))
        gathers = tuple(e.gathers for e in edges)
        for n, one in enumerate(edge.gathers):
            named = ("ease" if one.eased else "gathers", edge.name)
            figures = [(begin, _each(gathers, n, "start")), ("ends", _each(gathers, n, "end"))]
            rows += _rows(sheet, named, (*figures, ("takes up", _each(gathers, n, "amount"))))
    yield Table(f"drawn-in-{piece.name}", "", columns, tuple(rows))


def _of_folds(folds: Sequence[Sequence[Fold]], most: int, begin: str) -> Sequence[tuple[str, Figures]]:
    """Where each fold of one kind begins, and what it takes up; said once where all take up the same."""
    numbers = [""] if most == 1 else [f"{number + 1} " for number in range(most)]
    places = [(f"{number}{begin}", _each(folds, n, "at")) for n, number in enumerate(numbers)]
    amounts = [(f"{number}takes up", _each(folds, n, "amount")) for n, number in enumerate(numbers)]
    if most > 1 and all(_alike(each, amounts[0][1]) for _, each in amounts):
        amounts = [("each takes up", amounts[0][1])]
    return (*places, *amounts)


def _each(drawn: Sequence[Sequence[Fold | Gathers]], number: int, field: str) -> Figures:
    """One measure of the same fold, or the same stretch, in every size; None where it is not."""
    return tuple(getattr(each[number], field) if number < len(each) else None for each in drawn)


def _alike(one: Figures, other: Figures) -> bool:
    return all(a is None or b is None or abs(a - b) < ALIKE for a, b in zip(one, other, strict=True))


def _rows(sheet: Sheet, named: tuple[str, str], figures: Sequence[tuple[str, Figures]]) -> Iterator[Row]:
    """A row for each measure, the first with the names."""
    for number, (said, values) in enumerate(figures):
        cells = tuple("" if value is None else sheet.lengths.near_in_both(value) for value in values)
        first = named if number == 0 else ("", "")
        yield Row((*first, said, *cells), with_next=number < len(figures) - 1)
