"""Owns the page of alterations.

What each step did to which edge, in every size, and how the pieces look before and after.
"""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from specc.document.alteration_drawing import overlay
from specc.document.document import Figure, Group, Heading, Page, Paragraph
from specc.document.fullness_changes import fullness_changes
from specc.document.link import Link
from specc.document.links import line_of
from specc.document.origins import of_change, of_edge
from specc.document.printed import traced
from specc.document.table import Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point
from specc.units import format_angle

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.alteration.record import DartChange, DartState, EdgeChange
    from specc.document.alteration_drawing import Change
    from specc.document.document import Block
    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.assembly import StepRecords
    from specc.pattern.piece import Piece

BeforeAfter = tuple[float | None, float | None]
"""An edge before and after a step, in millimetres; None where it is not there."""

_ROOM = Point(120.0, 84.0)
_SAME = 0.01  # mm of garment; no step of a length as printed is so small
_STEP_ROOM = Point(58.0, 66.0)
_BESIDE = 5  # sizes whose table fits beside a drawing
_ROWS = 30  # of tables that fit on a page beside one
_GONE = "gone"
_NEW = "new"


def build(sheet: Sheet) -> Page | None:
    """All steps in order; nothing where the block is used as it is."""
    steps = sheet.assembly.alterations
    if not steps:
        return None
    lead = sheet.lengths.both(_lead, sheet.header.sample)
    blocks: list[Block] = [*_whole(sheet)]
    for number, step in enumerate(steps, start=1):
        blocks += _step(sheet, step, number)
    return Page("alterations", "Alterations", lead, tuple(blocks))


def _lead(lengths: Lengths, sample: str) -> str:
    return (
        f"What was done to the block, in order. Lengths in {lengths.word}, to the nearest"
        f" {lengths.step}, as sewn."
        f" In the drawings, size {sample}: dashed before, solid after, shaded where cloth was gained."
    )


def _whole(sheet: Sheet) -> Iterator[Block]:
    """From the block to the garment, all steps in one."""
    changes = changed(sheet.sample.drafted, sheet.sample.pieces)
    if changes:
        drawing = overlay("altered", changes, room=_ROOM)
        caption = f"From the block to the garment, all steps together{_scale(drawing.scale)}"
        yield Figure(drawing, caption)


def _step(sheet: Sheet, step: StepRecords, number: int) -> Iterator[Block]:
    said = f"line {step.line}"
    of_spec = sheet.garment.alterations[number - 1].origin.file == sheet.garment.sources[0]
    links = (Link(1, 0, len(said), line_of(step.line)),) if of_spec else ()
    heading = Heading(step.sentence, str(number), said, links=links)
    figures = tuple(_figure(sheet, number))
    tables = (
        *_edges(sheet, step, number),
        *_darts(sheet, step, number),
        *fullness_changes(sheet, step, number),
    )
    gone = tuple(_left_out(step))
    if not (figures or tables or gone):
        yield Group("together", (heading, Paragraph("Changes no length.")))
    elif (
        figures
        and tables
        and len(sheet.sizes) <= _BESIDE
        and sum(len(table.rows) for table in tables) <= _ROWS
    ):
        yield Group(
            "together", (heading, *gone, Group("beside", (*figures, Group("stack", tables)), first=62.0))
        )
    else:
        yield Group("together", (heading, *gone, *figures))
        yield from tables


def _figure(sheet: Sheet, number: int) -> Iterator[Figure]:
    """The pieces that the step changed."""
    stages = (sheet.sample.drafted, *sheet.sample.stages)
    changes = changed(stages[number - 1], stages[number])
    if any(after is not None for _, after in changes):
        drawing = overlay(f"alteration-{number}", changes, room=_STEP_ROOM)
        yield Figure(drawing, f"{drawing.title}{_scale(drawing.scale)}")


def changed(before: tuple[Piece, ...], after: tuple[Piece, ...]) -> tuple[Change, ...]:
    """Pieces that differ, as they were and as they are; None where a piece is not made."""
    old = {piece.name: piece for piece in before}
    new = {piece.name: piece for piece in after}
    names = dict.fromkeys((*old, *new))
    return tuple((old.get(name), new.get(name)) for name in names if old.get(name) != new.get(name))


def _left_out(step: StepRecords) -> Iterator[Paragraph]:
    """What is no longer made at all."""
    for piece in _pieces_gone(step):
        yield Paragraph(f"The piece {piece} is not made; its edges and darts are gone.")


def _pieces_gone(step: StepRecords) -> tuple[str, ...]:
    gone = (each.piece for record in step.records for each in record.areas if each.after is None)
    return tuple(dict.fromkeys(gone))


def _edges(sheet: Sheet, step: StepRecords, number: int) -> Iterator[Table]:
    gone = _pieces_gone(step)
    found = (each for record in step.records for each in record.edges if each.piece not in gone)
    names = tuple(dict.fromkeys((each.piece, each.edge) for each in found))
    if not names:
        return
    near = sheet.lengths.near_in_both
    rows: list[Row] = []
    on_paper = False
    for piece, edge in names:
        changes = tuple(
            next((each for each in record.edges if (each.piece, each.edge) == (piece, edge)), None)
            for record in step.records
        )
        drawn = all(_stays(each, drawn=False) for each in changes)
        if drawn and all(_stays(each, drawn=True) for each in changes):
            continue
        on_paper = on_paper or drawn
        lengths = tuple(_lengths(each, drawn=drawn) if each else None for each in changes)
        word = "drawn " if drawn else ""
        before, after = (
            tuple(
                traced(
                    _cell(each, when, near, none=none),
                    of_edge(sheet, piece, edge, size, number - 1 + when) if each and not drawn else None,
                )
                for size, each in enumerate(lengths)
            )
            for when, none in enumerate((_NEW, _GONE))
        )
        if all(str(cell) == _NEW for cell in before):
            rows.append(Row((f"{piece}.{edge}", _NEW, *after)))
            continue
        change = tuple(_difference(sheet, each, number) for each in lengths)
        rows += (
            Row((f"{piece}.{edge}", f"{word}before", *before), with_next=True),
            Row(("", f"{word}after", *after), with_next=any(change)),
        )
        if any(change):
            rows.append(Row(("", "change", *change)))
    note = "Drawn: along the paper, of edges that stay as long as sewn." if on_paper else ""
    if rows:
        yield Table(f"edges-changed-{number}", "", _columns(sheet, "Edge"), tuple(rows), note=note)


def _stays(change: EdgeChange | None, *, drawn: bool) -> bool:
    """Whether the edge is as long as it was before."""
    if change is None:
        return True
    before, after = _lengths(change, drawn=drawn)
    return before is not None and after is not None and abs(after - before) <= _SAME


def _lengths(change: EdgeChange, *, drawn: bool) -> BeforeAfter:
    """Before and after, as sewn or as drawn."""
    return (change.drawn_before, change.drawn_after) if drawn else (change.before, change.after)


def _darts(sheet: Sheet, step: StepRecords, number: int) -> Iterator[Table]:
    gone = _pieces_gone(step)
    found = (each for record in step.records for each in record.darts if each.piece not in gone)
    names = tuple(dict.fromkeys((each.piece, each.dart) for each in found))
    if not names:
        return
    rows: list[Row] = []
    for piece, dart in names:
        changes = tuple(
            next((each for each in record.darts if (each.piece, each.dart) == (piece, dart)), None)
            for record in step.records
        )
        before = tuple(each.before if each else None for each in changes)
        after = tuple(each.after if each else None for each in changes)
        cells = zip(changes, before, strict=True)
        rows.append(
            Row(
                (f"{piece}.{dart}", f"before{_opens(before)}", *(_angle(*each) for each in cells)),
                with_next=True,
            )
        )
        cells = zip(changes, after, strict=True)
        rows.append(Row(("", f"after{_opens(after)}", *(_angle(*each) for each in cells))))
    note = "The angle between a dart's legs; a dart inside the piece has none."
    yield Table(f"darts-changed-{number}", "", _columns(sheet, "Dart"), tuple(rows), note=note)


def _opens(states: tuple[DartState | None, ...]) -> str:
    """The edge in which the dart opens, as long as it is there."""
    edge = next((state.edge for state in states if state and state.edge), None)
    return f", in {edge}" if edge else ""


def _columns(sheet: Sheet, first: str) -> tuple[Column, ...]:
    return (Column(first), Column("", width=22.0), *sheet.size_columns("In size", width=12.5))


def _cell(lengths: BeforeAfter | None, when: int, near: Callable[[float], Text], *, none: str) -> Text:
    if lengths is None:
        return "same"
    value = lengths[when]
    return none if value is None else near(value)


def _difference(sheet: Sheet, change: BeforeAfter | None, number: int) -> Text:
    if change is None or change[0] is None or change[1] is None:
        return ""
    origin = of_change(sheet, number - 1, change[0], change[1])
    return traced(sheet.lengths.both(_signed, change[1] - change[0]), origin)


def _signed(lengths: Lengths, mm: float) -> str:
    printed = lengths.near(mm)
    return printed if printed.startswith("-") or printed == "0" else f"+{printed}"


def _angle(change: DartChange | None, state: DartState | None) -> str:
    if change is None:
        return "same"
    if state is None:
        return "none"
    return "inside" if state.angle is None else format_angle(degrees(state.angle))


def _scale(scale: object) -> str:
    from fractions import Fraction  # noqa: PLC0415

    return f", scale {said(scale)}" if isinstance(scale, Fraction) else ""
