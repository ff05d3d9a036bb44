"""Owns the page of trims to cut: how long, in every size, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Group, Heading, Page
from specc.document.table import Align, Column, Row, Table
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.sheet import Sheet
    from specc.making.assembly import Zone
    from specc.quantities.quantities import TrimCut


def build(sheet: Sheet) -> Page | None:
    """A table for every trim and use; nothing where no trim is used."""
    uses = tuple(_uses(sheet))
    if not uses:
        return None
    lengths = sheet.lengths
    lead = (
        f"Lengths in {lengths.word}. Cut lengths are rounded up to the next {lengths.step}; what they are made of is"
        f" rounded to the nearest, so a column may differ from its sum by {lengths.step}."
    )
    blocks = tuple(Group("together", tuple(_use(sheet, cuts, number))) for number, cuts in enumerate(uses, start=1))
    return Page("trims", "Trims to cut", lead, blocks)


def _uses(sheet: Sheet) -> Iterator[tuple[TrimCut, ...]]:
    """The same use in every size, in the order of the sizes."""
    first = sheet.quantities.sizes[0].trims if sheet.quantities.sizes else ()
    for index in range(len(first)):
        yield tuple(size.trims[index] for size in sheet.quantities.sizes)


def _use(sheet: Sheet, cuts: tuple[TrimCut, ...], number: int) -> Iterator[Heading | Table]:
    cut = cuts[0]
    round_ = "in one closed round" if cut.closed else "with two ends"
    yield Heading(sheet.title_of(cut.trim), str(number), f"for {sheet.title_of(cut.used_on)}: cut {cut.count}, {round_}")
    columns = (
        Column("Made of"),
        *(Column(size, Align.RIGHT, over="In size", strong=sheet.is_sample(size)) for size in sheet.sizes),
    )
    yield Table(f"trim-{number}", "", columns, tuple(_rows(sheet, cuts)), note=_note(sheet, cuts))


def _rows(sheet: Sheet, cuts: tuple[TrimCut, ...]) -> Iterator[Row]:
    near, up = sheet.lengths.near, sheet.lengths.up
    for index, zone in enumerate(cuts[0].zones):
        yield Row((_laid(zone), *(near(cut.zones[index].end - cut.zones[index].start) for cut in cuts)))
    if len(cuts[0].zones) != 1:
        yield Row(("seam line in all", *(near(cut.seam_length) for cut in cuts)))
    if any(cut.held for cut in cuts):
        yield Row(("less what is held in", *(f"-{near(cut.held)}" if cut.held else "0" for cut in cuts)))
    for index, added in enumerate(cuts[0].additions):
        yield Row((f"and {added.what}", *(near(cut.additions[index].length) for cut in cuts)))
    yield Row(("Cut length", *(up(cut.cut_length) for cut in cuts)), strong=True)


def _laid(zone: Zone) -> str:
    how = f"held in by {format_ratio(zone.held)}" if zone.held else "laid flat"
    return f"{zone.piece}.{zone.edge}, {how}"


def _note(sheet: Sheet, cuts: tuple[TrimCut, ...]) -> str:
    width = cuts[0].cut_width
    return "" if width is None else f"Cut {sheet.lengths.fine(width)} wide."
