"""Owns the page of trims to cut: how long, in every size, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.closures import counted
from specc.document.document import Figure, Group, Heading, Page
from specc.document.link import Link
from specc.document.links import billed, cut_for, listed, made
from specc.document.origins import of_cut_length, of_held, of_seam_line, of_zone
from specc.document.printed import traced
from specc.document.table import Column, Row, Table
from specc.document.zone_drawing import zone_drawing
from specc.geometry.point import Point
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.lengths import Lengths
    from specc.document.sheet import Sheet
    from specc.making.assembly import Zone
    from specc.quantities.quantities import TrimCut


_ROOM = Point(120.0, 56.0)


def build(sheet: Sheet) -> Page | None:
    """A table for every trim and use, and one of fastenings; nothing where no trim is used."""
    uses = tuple(_uses(sheet))
    pieces = tuple(_pieces(sheet, "Fastenings" if uses else ""))
    if not uses:
        return Page("trims", "Fastenings", "Counted by the piece.", pieces) if pieces else None
    blocks = tuple(
        Group("together", tuple(_use(sheet, cuts, number))) for number, cuts in enumerate(uses, start=1)
    )
    title = "Trims to cut, fastenings" if pieces else "Trims to cut"
    return Page("trims", title, sheet.lengths.both(_lead), (*blocks, *pieces))


def _lead(lengths: Lengths) -> str:
    return (
        f"Lengths in {lengths.word}. Cut lengths are rounded up to the next {lengths.step}; what they are"
        f" made of is rounded to the nearest, so a column may differ from its sum by {lengths.step}."
    )


def _pieces(sheet: Sheet, title: str) -> Iterator[Table]:
    """What is counted by the piece, in every size."""
    keys = dict.fromkeys((one.trim, one.used_on) for size in sheet.quantities.sizes for one in size.pieces)
    rows = []
    for trim, used_on in keys:
        counts = (
            next((one for one in size.pieces if (one.trim, one.used_on) == (trim, used_on)), None)
            for size in sheet.quantities.sizes
        )
        cells = tuple("" if one is None else counted(one) for one in counts)
        (title, of_title), (used, of_used) = (
            listed(((sheet.trim_called(trim), billed(trim)),)),
            listed(((sheet.title_of(used_on), made(used_on)),), of=1),
        )
        place = cut_for(trim, used_on)
        rows.append(Row((title, used, *cells), place=place, links=(*of_title, *of_used)))
    if rows:
        columns = (Column("Fastening"), Column("For"), *sheet.size_columns("In size", width=20.0))
        note = "A length behind a number is that in which the piece is sold."
        yield Table("fastenings", title, columns, tuple(rows), note=note)


def _uses(sheet: Sheet) -> Iterator[tuple[TrimCut, ...]]:
    """The same use in every size, in the order of the sizes."""
    first = sheet.quantities.sizes[0].trims if sheet.quantities.sizes else ()
    for index in range(len(first)):
        yield tuple(size.trims[index] for size in sheet.quantities.sizes)


def _use(sheet: Sheet, cuts: tuple[TrimCut, ...], number: int) -> Iterator[Heading | Figure | Table]:
    cut = cuts[0]
    round_ = "in one closed round" if cut.closed else "with two ends"
    title, used = sheet.trim_called(cut.trim), sheet.title_of(cut.used_on)
    text = f"{title} for {used}"
    links = (
        Link(0, 0, len(title), billed(cut.trim)),
        Link(0, len(text) - len(used), len(text), made(cut.used_on)),
    )
    place = cut_for(cut.trim, cut.used_on)
    yield Heading(text, str(number), f"cut {cut.count}, {round_}", place, links)
    called = (f"zones-{number}", f"Where {text} is held in")
    zones = cuts[sheet.sample_index].zones
    drawing = zone_drawing(called, sheet.flat, sheet.sample.pieces, zones, room=_ROOM)
    if drawing is not None:
        yield Figure(drawing, "Dashed where it is held in, and by how much; wide where it is laid flat.")
    columns = (
        Column("Made of"),
        *sheet.size_columns("In size"),
    )
    yield Table(
        f"trim-{number}", "", columns, tuple(_rows(sheet, cuts)), note=sheet.lengths.both(_note, cuts)
    )


def _rows(sheet: Sheet, cuts: tuple[TrimCut, ...]) -> Iterator[Row]:
    near, up = sheet.lengths.near_in_both, sheet.lengths.up_in_both
    runs = tuple(_runs(cut.zones) for cut in cuts)
    for key, (first, times) in runs[0].items():
        lengths = (
            traced(near(each[key][0].end - each[key][0].start), of_zone(sheet, cut, each[key][0], size))
            if key in each
            else ""
            for size, (cut, each) in enumerate(zip(cuts, runs, strict=True))
        )
        several = (key[0], key[1], 1) in runs[0]
        yield Row((_laid(first, times, _from(sheet, first) if several else ""), *lengths))
    if len(cuts[0].zones) != 1:
        in_all = (traced(near(cut.seam_length), of_seam_line(sheet, cut)) for cut in cuts)
        yield Row(("seam line in all", *in_all))
    if cuts[0].stated:
        yield Row(("length stated, relaxed", *(near(cut.seam_length - cut.held) for cut in cuts)))
    elif any(cut.held for cut in cuts):
        held = (traced(near(-cut.held), of_held(sheet, cut)) if cut.held else "0" for cut in cuts)
        yield Row(("less what is held in", *held))
    for index, added in enumerate(cuts[0].additions):
        yield Row((f"and {added.what}", *(near(cut.additions[index].length) for cut in cuts)))
    whole = (traced(up(cut.cut_length), of_cut_length(sheet, cut)) for cut in cuts)
    yield Row(("Cut length", *whole), strong=True)


def _runs(zones: tuple[Zone, ...]) -> dict[tuple[str, str, int], tuple[Zone, int]]:
    """Zones of each edge from its start corner on, and how often each lies in the run: left, right."""
    edges: dict[tuple[str, str], list[Zone]] = {}
    for zone in zones:
        edges.setdefault((zone.piece, zone.edge), []).append(zone)
    found: dict[tuple[str, str, int], tuple[Zone, int]] = {}
    for (piece, edge), laid in edges.items():
        alike = dict.fromkeys(sorted(laid, key=lambda zone: zone.start))
        for place, zone in enumerate(alike):
            found[piece, edge, place] = (zone, laid.count(zone))
    return found


def _laid(zone: Zone, times: int, corner: str) -> str:
    how = f"held in by {format_ratio(zone.held)}" if zone.held else "laid flat"
    start, then = ("", "then ") if zone.start else (corner, "")
    return f"{f'{times} × ' if times > 1 else ''}{zone.piece}.{zone.edge}{start}: {then}{how}"


def _from(sheet: Sheet, zone: Zone) -> str:
    """The corner from which an edge is measured."""
    pieces = (piece for piece in sheet.sample.pieces if piece.name == zone.piece)
    corner = next((edge.start for piece in pieces for edge in piece.edges if edge.name == zone.edge), "")
    return f" from {corner}" if corner else ""


def _note(lengths: Lengths, cuts: tuple[TrimCut, ...]) -> str:
    width = cuts[0].cut_width
    wide = "" if width is None else f"Cut {lengths.fine(width)} wide. "
    twice = any(times > 1 for _, times in _runs(cuts[0].zones).values())
    return wide + ("2 × stands for both halves; the length is that of one." if twice else "")
