"""Owns what the sheet says of attachments: where they lie, how often, and which row catches them.

Knows nothing of pages.
"""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from specc.document.lengths import range_of
from specc.document.sheet import chain, part
from specc.document.table import Column, Row, Table
from specc.making.attached import CaughtAt, Placed
from specc.model.attachment import OnLevel, SewnOn
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.units import format_angle

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.attached import Attached
    from specc.model.attachment import Attachment, Caught

_SAME = 1e-6


def onto(sheet: Sheet, piece: str) -> tuple[tuple[str, Attached], ...]:
    """What a piece takes, with titles, in the sample size."""
    pairs = zip(sheet.garment.attachments, sheet.sample.attached, strict=True)
    return tuple((titled(sheet, asked), found) for asked, found in pairs if _on(asked) == piece)


def titled(sheet: Sheet, asked: Attachment) -> str:
    """Its title, else those of the pieces."""
    names = {asked.piece} if isinstance(asked, SewnOn) else {end.piece for end in asked.ends}
    return asked.title or ", ".join(piece.title for piece in sheet.sample.pieces if piece.name in names)


def _on(asked: Attachment) -> str:
    return asked.on if isinstance(asked, SewnOn) else asked.to.piece or ""


def what(asked: Attachment) -> str:
    """The piece or the ends, and what takes them: `pocket on front`, `tie.end to front.side`."""
    side = f"{asked.side} " if asked.side else ""
    if isinstance(asked, SewnOn):
        return f"{asked.piece} on {side}{asked.on}"
    return f"{chain(asked.ends)} to {side}{part(asked.to)}"


def title_of_way(sheet: Sheet, asked: Attachment) -> str:
    """How it is sewn, or the seam or finish that catches it."""
    return asked.making.title if asked.making else f"caught in {catching(sheet, asked)}"


def catching(sheet: Sheet, asked: Attachment) -> str:
    """The seam or finish that goes along the edge which takes an end."""
    use = None if isinstance(asked, SewnOn) else sheet.use_of(asked.to.piece or "", asked.to.name)
    return f"{use.kind} {use.by}" if use else ""


def how_often(sheet: Sheet, index: int) -> str:
    """How many there are in a garment, and where."""
    asked, found = sheet.garment.attachments[index], sheet.sample.attached[index]
    if found.across_fold:
        return "once, across the fold"
    if found.places > 1:
        return "twice, left and right"
    return f"once, {asked.side} as worn" if asked.side else "once"


def where(sheet: Sheet, index: int) -> Text:
    """Where it lies, in words; lengths in all sizes."""
    return sheet.lengths.both(_where, sheet, index)


def _where(lengths: Lengths, sheet: Sheet, index: int) -> str:
    def over_sizes(values: tuple[float, ...]) -> str:
        return range_of(tuple(map(lengths.said, values)))

    asked = sheet.garment.attachments[index]
    if isinstance(asked, SewnOn) and not isinstance(asked.at, OnLevel):
        return f"{asked.corner.name} at {asked.on}.{asked.at.name}{_turned(asked, sheet, index)}"
    measures = tuple(_measures(sheet, index))
    if isinstance(asked, SewnOn):
        words = ", ".join(f"{over_sizes(values)} {text}" for text, values in measures)
        return f"{asked.corner.name} {words}{_turned(asked, sheet, index)}"
    notches = " and ".join(over_sizes(values) for _, values in measures)
    return f"between notches {notches} {measures[0][0]}"


def _turned(asked: SewnOn, sheet: Sheet, index: int) -> str:
    if asked.square_to is not None:
        return f", square to {asked.square_to.name}"
    found = sheet.sample.attached[index]
    turned = found.turned if isinstance(found, Placed) and asked.turned is not None else 0.0
    return f", turned {format_angle(degrees(turned))}" if turned else ""


def _measures(sheet: Sheet, index: int) -> Iterator[tuple[str, tuple[float, ...]]]:
    """What is measured to find the place, in words, and its length in every size."""
    asked = sheet.garment.attachments[index]
    found = tuple(size.attached[index] for size in sheet.assembly.sizes)
    if isinstance(asked, SewnOn):
        distances = tuple(one.distances for one in found if isinstance(one, Placed) and one.distances)
        if isinstance(asked.at, OnLevel) and distances:
            side = "above" if distances[0].below < 0.0 else "below"
            yield f"{side} {asked.at.level.line}", tuple(abs(one.below) for one in distances)
            yield (
                f"from {asked.at.edge.name}, along that level",
                tuple(one.from_edge for one in distances),
            )
        return
    corner, ends = _from_corner(sheet, asked, tuple(one for one in found if isinstance(one, CaughtAt)))
    for near in (0, 1):
        if any(one[near] >= -_SAME for one in ends):
            yield f"from {corner}, along {asked.to.name}", tuple(abs(one[near]) for one in ends)


def _from_corner(
    sheet: Sheet, asked: Caught, found: tuple[CaughtAt, ...]
) -> tuple[str, tuple[tuple[float, float], ...]]:
    """The corner from which the notches are measured, and both in every size, the nearer one first."""
    corner, ends = "", []
    for piece, one in zip(sheet.in_sizes(asked.to.piece or ""), found, strict=True):
        edge = edge_named(piece, one.edge)
        if edge is None:
            raise KeyError(one.edge)
        whole, backward = stitched_length(edge), asked.at.from_corner == edge.end
        corner = edge.end if backward else edge.start
        ends.append((whole - one.end, whole - one.start) if backward else (one.start, one.end))
    return corner, tuple(ends)


def attached_table(sheet: Sheet, piece: str) -> Iterator[Table]:
    """Where everything lies that the piece takes, in every size."""
    rows = []
    for index, asked in enumerate(sheet.garment.attachments):
        if _on(asked) != piece:
            continue
        measures = tuple(
            (text, tuple(map(sheet.lengths.near_in_both, values))) for text, values in _measures(sheet, index)
        )
        nowhere = ("",) * len(sheet.sizes)
        for number, (text, cells) in enumerate(measures or ((where(sheet, index), nowhere),)):
            side = f", {asked.side}" if asked.side else ""
            title = f"{titled(sheet, asked)}{side}" if number == 0 else ""
            corner = f"{asked.corner.name} " if isinstance(asked, SewnOn) and len(measures) > 1 else ""
            kind = "" if isinstance(asked, SewnOn) else "notch "
            last = number >= len(measures) - 1
            rows.append(Row((title, f"{kind}{corner}{text}", *cells), with_next=not last))
    if rows:
        columns = (Column("Takes", width=34.0), Column("Place"), *sheet.size_columns("In size", width=13.0))
        yield Table(f"takes-{piece}", "", columns, tuple(rows))


def goes(sheet: Sheet, name: str | None) -> str:
    """What an attached edge goes into."""
    asked = next((one for one in sheet.garment.attachments if one.name == name), None)
    return "" if asked is None else f"{what(asked)}: {title_of_way(sheet, asked)}"
