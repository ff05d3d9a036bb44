"""Owns the page of thread: what each pass takes, and how much of each thread a garment takes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.amount_origins import of_stitching, of_thread
from specc.document.document import Page, Paragraph
from specc.document.printed import traced
from specc.document.table import Align, Column, Row, Table
from specc.library.stitches import stitches
from specc.library.threads import FORMULAS, sources
from specc.quantities.bill_thread import length_of, waste_of
from specc.quantities.thread import DARTS
from specc.units import UNITS, format_number, format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import ThreadUse

_LOST, _UNDECLARED = "no figure known", "not declared"


def build(sheet: Sheet) -> Page | None:
    """The passes in the sample size, the threads in all sizes; nothing where nothing is sewn."""
    uses = sheet.sample_quantities.threads
    if not uses:
        return None
    lead = sheet.lengths.both(_lead, sheet.header.sample, sheet.header.thread_by)
    return Page("thread", "Thread", lead, (_passes(sheet, uses), *_threads(sheet), *_notes(uses)))


def _lead(lengths: Lengths, sample: str, thread_by: str) -> str:
    return (
        f"Lengths in {lengths.cloth_unit}, of one garment of size {sample}, before anything is lost."
        f" Reckoned by: {thread_by}."
    )


def _long(sheet: Sheet, mm: float | None) -> Text:
    return "" if mm is None else sheet.lengths.both(_in_unit_of_cloth, mm)


def _in_unit_of_cloth(lengths: Lengths, mm: float) -> str:
    return format_number(mm / float(UNITS[lengths.cloth_unit].size), decimals=2)


def _passes(sheet: Sheet, uses: tuple[ThreadUse, ...]) -> Table:
    names = {each.number: each.name for each in stitches()}
    columns = (
        Column("Sewn"),
        Column("Stitch", width=38.0),
        Column("Stitched", Align.RIGHT, width=16.0),
        Column("Thread to 1", Align.RIGHT, width=15.0),
        Column("length", Align.RIGHT, over="Needle", width=14.0),
        Column("thread", over="Needle", width=22.0),
        Column("length", Align.RIGHT, over="Bobbin, loopers", width=14.0),
        Column("thread", over="Bobbin, loopers", width=22.0),
    )
    rows = []
    before = ""
    for use in uses:
        title = "Darts" if use.on == DARTS else sheet.title_of(use.on)
        number = "" if use.on == DARTS else f", pass {use.number}"
        rows.append(
            Row(
                (
                    f"{title}{number}" if title != before else f"pass {use.number}",
                    f"{use.stitch} {names.get(use.stitch, '')}".strip(),
                    _long(sheet, use.length),
                    _LOST if use.ratio is None else format_number(use.ratio, decimals=2),
                    traced(_long(sheet, use.needle_length), of_stitching(sheet, use)),
                    (use.needle or _UNDECLARED) if use.needle_length else "",
                    traced(_long(sheet, use.other_length), of_stitching(sheet, use)),
                    (use.other or _UNDECLARED) if use.other_length else "",
                )
            )
        )
        before = title
    return Table("thread-passes", "Pass by pass", columns, tuple(rows))


def _threads(sheet: Sheet) -> Iterator[Table]:
    """A row for every thread, with what is lost."""
    rows = tuple(
        Row(
            (
                f"{thread.name}: {' '.join(word for word in (thread.title, thread.size) if word)}",
                format_ratio(waste_of(thread)),
                *(
                    traced(
                        _long(sheet, length_of(thread.name, size) * (1.0 + waste_of(thread))),
                        of_thread(sheet, thread, place),
                    )
                    for place, size in enumerate(sheet.quantities.sizes)
                ),
            )
        )
        for thread in sheet.garment.threads
    )
    if rows:
        columns = (
            Column("Thread"),
            Column("Lost", Align.RIGHT, width=14.0),
            *sheet.size_columns(sheet.lengths.both(_over)),
        )
        yield Table("thread-by-size", "By thread", columns, rows)


def _over(lengths: Lengths) -> str:
    return f"One garment with what is lost, {lengths.cloth_unit}, size"


def _notes(uses: tuple[ThreadUse, ...]) -> Iterator[Block]:
    used = {use.by for use in uses}
    for name, source in sources():
        if name in used:
            yield Paragraph(f"{name.capitalize()}: {source}.", "note")
    if used - {FORMULAS}:
        yield Paragraph(
            "A ratio knows nothing of this cloth or stitch length; sew a sample and weigh or measure what it"
            " took before you buy for a large order.",
            "note",
        )
    unknown = dict.fromkeys(use.stitch for use in uses if use.ratio is None)
    if unknown:
        yield Paragraph(f"No figure is known for stitch {', '.join(unknown)}: not counted.", "note")
    if any(use.other is None and use.other_length is None and use.ratio for use in uses):
        yield Paragraph("Where only the needle has a length, it is that of all threads together.", "note")
