"""Owns the cutting ticket: what the cutting table needs to know, on one page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Caution, Page, Paragraph
from specc.document.pages.lays import of_ply, sizes_of
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.making.cloths import cut_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.lengths import Lengths
    from specc.document.sheet import Sheet
    from specc.model.material import Cloth
    from specc.quantities.quantities import TrimCut

_BLADES = (
    "Keep guards on rotary and electric cutters, wear a mesh glove on the hand that holds the cloth, never"
    " leave a blade open on the table. Follow the maker's instructions and the rules of your workplace."
)
# Common practice, no source.
_OPEN = "hold plies with clips or weights, no pins; mark with thread, do not cut notches into the cloth"
_SHEER = "mark with thread or a clip: chalk shines through"
_NAPPED = "all pieces lie one way; check the pile's direction before each ply is spread"
_PLAIN = (
    "cut notches 3 mm (1/8 in) deep; mark points inside a piece with thread or chalk, try it on a scrap first"
)


def build(sheet: Sheet) -> Page | None:
    """The ticket; nothing where nothing is ordered or no lay was made."""
    ordered = {each.size: each.count for each in sheet.header.order if each.count}
    lays = sheet.quantities.lays
    if not ordered or not lays:
        return None
    total = sum(ordered.values())
    lead = f"{plural(total, 'garment')}: " + ", ".join(
        f"{count} of size {size}" for size, count in ordered.items()
    )
    blocks: tuple[Block, ...] = (
        _lays(sheet),
        _bundles(sheet, ordered),
        *_trims(sheet, ordered),
        *(Paragraph(f"{cloth.title}: {how}.") for cloth, how in _marking(sheet)),
        *(Paragraph(note.text) for note in sheet.garment.notes),
        Caution("Blades", _BLADES, "common practice"),
    )
    return Page("ticket", "Cutting ticket", f"{lead}.", blocks)


def _lays(sheet: Sheet) -> Table:
    columns = (
        Column("Cloth"),
        Column("Lay", width=10.0),
        Column("Sizes in it"),
        Column(sheet.lengths.both(of_ply), Align.RIGHT, width=24.0),
        Column("Plies", Align.RIGHT, width=12.0),
        Column("Cut", Align.RIGHT, width=16.0),
        Column("Garments", Align.RIGHT, width=18.0),
        Column("Done", width=14.0, blank=True),
    )
    rows = tuple(
        Row(
            (
                sheet.title_of(lays.cloth) if number == 1 else "",
                str(number),
                sizes_of(lay),
                sheet.lengths.up_in_both(lay.length),
                str(lay.plies),
                "once" if lay.times == 1 else f"{lay.times} times",
                str(lay.garments),
                "",
            )
        )
        for lays in sheet.quantities.lays
        for number, lay in enumerate(lays.lays, start=1)
    )
    return Table("ticket-lays", "Lays", columns, rows)


def _bundles(sheet: Sheet, ordered: dict[str, int]) -> Table:
    """What is tied together: all pieces of a size, by cloth; how many of each."""
    columns = (
        Column("Cloth and piece"),
        Column("For one garment", Align.RIGHT, width=30.0),
        *(Column(size, Align.RIGHT, over="In the bundle of size", width=15.0, size=size) for size in ordered),
    )
    rows = []
    for cloth in sheet.garment.cloths:
        for one in cut_of(sheet.garment, cloth, sheet.sample.pieces):
            counts = (str(one.count * number) for number in ordered.values())
            rows.append(Row((f"{cloth.title}: {one.piece.title}", str(one.count), *counts)))
    sums = (sum(int(row.cells[index]) for row in rows) for index in range(1, len(columns)))
    rows.append(Row(("In all", *map(str, sums)), strong=True))
    return Table("ticket-bundles", "Bundles: the pieces of a size stay together", columns, tuple(rows))


def _trims(sheet: Sheet, ordered: dict[str, int]) -> Iterator[Table]:
    """How many of each length, by size."""
    columns = (
        Column("Trim"),
        Column("For"),
        *(Column(size, Align.RIGHT, over=sheet.lengths.both(_over), size=size) for size in ordered),
    )
    first = sheet.quantities.sizes[0].trims
    by_size = {size.size: size.trims for size in sheet.quantities.sizes}
    rows = tuple(
        Row(
            (
                sheet.trim_called(cut.trim),
                sheet.title_of(cut.used_on),
                *(
                    sheet.lengths.both(_number, by_size[size][index], count)
                    for size, count in ordered.items()
                ),
            )
        )
        for index, cut in enumerate(first)
    )
    if rows:
        yield Table("ticket-trims", "Trims to cut", columns, rows)


def _over(lengths: Lengths) -> str:
    return f"Number × length, {lengths.unit}, size"


def _number(lengths: Lengths, cut: TrimCut, garments: int) -> str:
    return f"{cut.count * garments} × {lengths.up(cut.cut_length)}"


def _marking(sheet: Sheet) -> Iterator[tuple[Cloth, str]]:
    """How each cloth that is laid is held and marked."""
    laid = {lays.cloth for lays in sheet.quantities.lays}
    for cloth in sheet.garment.cloths:
        if cloth.name in laid:
            traits = set(cloth.traits)
            how = [_OPEN] if "open" in traits else [_SHEER] if "sheer" in traits else [_PLAIN]
            if traits & {"napped", "one-way"}:
                how.append(_NAPPED)
            yield cloth, "; ".join(how)
