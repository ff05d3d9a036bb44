"""Owns the pages of seams, finishes and hems: how each is made, and whether both sides of a seam agree."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.constants import constant
from specc.document.document import Fact, Facts, Group, Heading, Page, Step, Steps
from specc.document.lengths import millimetres, range_of
from specc.document.sheet import chain
from specc.document.table import Align, Column, Row, Table
from specc.library.stitches import stitches
from specc.units import format_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.sheet import Sheet
    from specc.model.construction import Finish, Pass, Seam
    from specc.units import UNITS

_INCH = 25.4  # millimetres


def build(sheet: Sheet) -> Page | None:
    """Each seam, finish and hem with its operations, then the seams walked."""
    made = (*sheet.garment.seams, *sheet.garment.finishes)
    if not made:
        return None
    lead = (
        f"Lengths in {sheet.lengths.word} unless another unit stands beside them; stitch lengths in millimetres and in"
        " stitches per inch. Stitch numbers are those of ISO 4915, letters of seam classes those of ASTM D6193."
    )
    blocks: list[Block] = []
    for number, each in enumerate(made, start=1):
        blocks += _one(sheet, each, number)
    blocks += _walks(sheet)
    return Page("making", "Seams, finishes, hems", lead, tuple(blocks))


def _one(sheet: Sheet, each: Seam | Finish, number: int) -> Iterator[Block]:
    making = each.making
    heading = Heading(f"{_named(each)}: {making.title}", str(number), _edges(each))
    facts = Facts(tuple(Fact(label, value) for label, value in _facts(sheet, each) if value))
    steps = Steps(tuple(Step(done.text, tuple(_details(sheet, done))) for done in making.passes))
    yield Group("together", (heading, facts))
    if steps.steps:
        yield steps


def _named(each: Seam | Finish) -> str:
    title = each.title or each.name
    return title[:1].upper() + title[1:]


def _edges(each: Seam | Finish) -> str:
    from specc.model.construction import Seam  # noqa: PLC0415

    return f"{chain(each.first)} to {chain(each.second)}" if isinstance(each, Seam) else f"along {chain(each.along)}"


def _facts(sheet: Sheet, each: Seam | Finish) -> Iterator[tuple[str, str]]:
    making = each.making
    yield "Plies", making.faces or ""
    yield "Allowance", _allowance(sheet, each)
    yield "Seam class", ", ".join(part for part in (making.astm, making.iso and f"ISO 4916 {making.iso}") if part)
    for takes in making.takes:
        yield takes.material[:1].upper() + takes.material[1:], sheet.title_of(takes.trim)
    yield "Press", making.press or ""
    yield "Machine", making.machine or ""


def _allowance(sheet: Sheet, each: Seam | Finish) -> str:
    value = constant(each.making.allowance)
    if value is None:
        return ""
    return "none: the cut edge is the seam line" if value == 0 else sheet.lengths.fine(value)


def _details(sheet: Sheet, done: Pass) -> Iterator[str]:
    parts = []
    if done.stitch:
        named = stitches().get(done.stitch)
        parts.append(f"Stitch {done.stitch}{f', {named.name}' if named else ''}")
    length = constant(done.stitch_length)
    if length:
        per_inch = format_number(_INCH / float(length), decimals=1)
        parts.append(f"{millimetres(length)} mm long, {per_inch} per inch")
    inset = constant(done.inset)
    if inset is not None:
        parts.append(f"{sheet.lengths.fine(inset)} from {done.inset_from}" if done.inset_from else sheet.lengths.fine(inset))
    if parts:
        yield "; ".join(parts)


def _walks(sheet: Sheet) -> Iterator[Table]:
    if not sheet.garment.seams:
        return
    columns = (
        Column("Seam"),
        Column("Walked"),
        *(Column(size, Align.RIGHT, over="In size", strong=sheet.is_sample(size)) for size in sheet.sizes),
    )
    rows = []
    for index, seam in enumerate(sheet.garment.seams):
        walks = tuple(each.walks[index] for each in sheet.assembly.sizes)
        rows.append(Row((seam.title or seam.name, chain(seam.first), *(sheet.lengths.near(w.first_length) for w in walks))))
        rows.append(Row(("", chain(seam.second), *(sheet.lengths.near(w.second_length) for w in walks))))
        if any(walk.ease for walk in walks):
            word = "gathers" if seam.gathered else "ease"
            rows.append(Row(("", word, *(sheet.lengths.near(walk.ease) for walk in walks))))
        allowed = range_of(tuple(f"{millimetres(walk.tolerance)} mm" for walk in walks))
        left = (millimetres(walk.difference) for walk in walks)
        rows.append(Row(("", f"left over, mm; {allowed} allowed", *left)))
    note = "Both sides as sewn, darts closed and gathers drawn in; what is left over after ease is in millimetres."
    yield Table("walks", "Seams walked", columns, tuple(rows), note=note)
