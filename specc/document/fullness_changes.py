"""Owns the table of the gathers, ease and folds that an alteration brought or took; knows no other change."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.alteration.record import Way
from specc.document.table import Column, Row, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.alteration.record import Fullness, FullnessChange
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.assembly import StepRecords

_COUNTED = (Way.PLEAT, Way.TUCK)


def fullness_changes(sheet: Sheet, step: StepRecords, number: int) -> Iterator[Table]:
    """What edges have drawn in, before and after a step, in every size."""
    found = (each for record in step.records for each in record.fullness)
    names = tuple(dict.fromkeys((each.piece, each.edge, each.way) for each in found))
    rows: list[Row] = []
    for piece, edge, way in names:
        changes = [
            next(
                (each for each in record.fullness if (each.piece, each.edge, each.way) == (piece, edge, way)),
                None,
            )
            for record in step.records
        ]
        before = [each.before if each else None for each in changes]
        after = [each.after if each else None for each in changes]
        rows += (
            Row(
                (f"{piece}.{edge}", f"{_called(way, before)} before", *_cells(sheet, changes, before)),
                with_next=True,
            ),
            Row(("", f"{_called(way, after)} after", *_cells(sheet, changes, after))),
        )
    if rows:
        columns = (Column("Drawn in"), Column("", width=26.0), *sheet.size_columns("In size", width=12.5))
        note = "What gathers, ease, pleats or tucks take up along the edge."
        yield Table(f"drawn-in-changed-{number}", "", columns, tuple(rows), note=note)


def _called(way: Way, states: list[Fullness | None]) -> str:
    """`gathers`, `a pleat`, `3 tucks`."""
    most = max((state.count for state in states if state), default=0)
    if way not in _COUNTED or most == 0:
        return way.value if way not in _COUNTED else f"{way.value}s"
    return f"a {way.value}" if most == 1 else f"{most} {way.value}s"


def _cells(
    sheet: Sheet, changes: list[FullnessChange | None], states: list[Fullness | None]
) -> Iterator[Text]:
    for change, state in zip(changes, states, strict=True):
        if change is None:
            yield "same"
        else:
            yield sheet.lengths.near_in_both(state.amount) if state else "none"
