"""Owns the page of lays: how each cloth is spread and cut, drawn to scale, and how much of it is used."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.amount_origins import of_lay
from specc.document.document import Fact, Facts, Figure, Group, Heading, Page, Paragraph
from specc.document.lay_drawing import lay_drawing
from specc.document.lengths import Lengths
from specc.document.printed import traced
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.model.spreading import ACROSS, ANY, BIAS, FOLDED, OPEN, STRIPS, TUBE
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator
    from fractions import Fraction

    from specc.document.document import Block
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.laying import ClothLays, Lay
    from specc.model.material import Cloth

_HALF = 88.0
_TURNED = {
    ACROSS: "Across the cloth",
    BIAS: "On the bias",
    ANY: "As they fit",
    STRIPS: "Off strips on the bias",
}
_HATCHED = "Hatched: strips on the bias, cut from what the pieces leave over."
_SPREAD = {
    OPEN: "open, one ply, right side up",
    FOLDED: "folded lengthwise, right sides together",
    TUBE: "as a tube, both layers cut at once",
}


def build(sheet: Sheet) -> Page | None:
    """The lays of every cloth whose width is known; nothing where none were made."""
    lays = sheet.quantities.lays
    if not lays:
        return None
    hurried = any(not lay.searched for each in lays for lay in each.lays)
    file = sheet.garment.sources[0].name
    lead = (
        f"Quick plan: made in seconds. `specc lay {file}` searches for shorter lays and keeps them."
        if hurried
        else "Lays that were searched for, from the lay file beside the garment; each was checked before use."
    )
    blocks = tuple(block for each in lays for block in _cloth(sheet, each))
    return Page("lays", "Lays", lead.replace("`", ""), blocks)


def _cloth(sheet: Sheet, lays: ClothLays) -> Iterator[Block]:
    cloth = next(each for each in sheet.garment.cloths if each.name == lays.cloth)
    yield Heading(cloth.title, "", lays.cutting)
    yield Facts(tuple(Fact(label, value) for label, value in _facts(sheet, cloth, lays) if value))
    yield _table(sheet, lays)
    if len(lays.per_garment) > 1:
        yield _by_size(sheet, lays)
    if lays.ways:
        yield from _ways(sheet, lays)
    drawn = [tuple(_drawn(sheet, lays, lay, number)) for number, lay in enumerate(lays.lays, start=1)]
    while drawn:
        first = drawn.pop(0)
        if drawn and _is_narrow(first) and _is_narrow(drawn[0]):
            yield Group("beside", (Group("stack", first), Group("stack", drawn.pop(0))), first=_HALF)
        else:
            yield Group("together", first)


def _is_narrow(drawn: tuple[Block, ...]) -> bool:
    """Whether two of such drawings stand side by side."""
    return all(block.drawing.width <= _HALF for block in drawn if isinstance(block, Figure))


def _facts(sheet: Sheet, cloth: Cloth, lays: ClothLays) -> Iterator[tuple[str, Text]]:
    both, spreading = sheet.lengths.both, cloth.spreading
    assert cloth.usable is not None
    yield "Spread", _SPREAD[lays.spread]
    yield "Usable width", both(Lengths.said, cloth.usable.value)
    yield "Between pieces", both(_between, spreading.gap.value)
    yield "Left over at both ends", both(_ends, spreading.ends.value)
    shrinks = (
        (cloth.shrinks_length, "along"),
        (cloth.shrinks_width, "across"),
    )
    yield (
        "Added for shrinkage",
        ", ".join(f"{format_ratio(share / (1 - share))} {way}" for share, way in shrinks if share),
    )
    one_way = {"napped", "one-way"} & set(cloth.traits)
    yield "Direction", "all pieces one way up" if one_way else "pieces may be turned end for end"
    for way, said in _TURNED.items():
        yield said, ", ".join(each.piece for each in spreading.turned if each.way == way)
    if spreading.lean is not None:
        yield "Off the grain", f"by {spreading.lean} at most"
    if lays.order is not None:
        garments = sum(lay.garments for lay in lays.lays)
        yield "Cloth for the order", both(_ordered, lays.order, garments)


def _between(lengths: Lengths, gap: Fraction) -> str:
    return f"{lengths.fine(gap)}, at each side too"


def _ends(lengths: Lengths, ends: Fraction) -> str:
    return f"{lengths.said(ends)} together"


def _ordered(lengths: Lengths, cloth: float, garments: int) -> str:
    total = f"{lengths.of_cloth(cloth)} for {plural(garments, 'garment')}"
    return f"{total}, {lengths.of_cloth(cloth / garments)} each on average"


def _table(sheet: Sheet, lays: ClothLays) -> Table:
    """The lays in the order of the work; the sum of the last column is the cloth for the order."""
    both = sheet.lengths.both
    columns = (
        Column("Lay", width=10.0),
        Column("Sizes in it"),
        Column("Plies", Align.RIGHT, width=14.0),
        Column("Cut", Align.RIGHT, width=18.0),
        Column(both(of_ply), Align.RIGHT, width=26.0),
        Column("Used", Align.RIGHT, width=16.0),
        Column("Cloth", Align.RIGHT, width=22.0, strong=True),
    )
    rows = tuple(
        Row(
            (
                str(number),
                sizes_of(lay),
                str(lay.plies),
                "once" if lay.times == 1 else f"{lay.times} times",
                sheet.lengths.up_in_both(lay.length),
                format_ratio(lay.share),
                traced(
                    both(Lengths.of_cloth, lay.length * lay.plies * lay.times),
                    of_lay(sheet, lays.cloth, lay),
                ),
            )
        )
        for number, lay in enumerate(lays.lays, start=1)
    )
    note = "Used: how much of the cloth the pieces cover, allowances and shrinkage included."
    return Table(f"lays-{lays.cloth}", "", columns, rows, note=note)


def of_ply(lengths: Lengths) -> str:
    """The heading of a column, with the unit."""
    return f"Length of a ply, {lengths.unit}"


def sizes_of(lay: Lay) -> str:
    """`1 of size 8, 2 of size 10`."""
    return ", ".join(f"{each.count} of size {each.size}" for each in lay.ratio)


def _by_size(sheet: Sheet, lays: ClothLays) -> Table:
    amounts = tuple(sheet.lengths.both(Lengths.of_cloth, length) for length in lays.per_garment)
    columns = (Column("Cloth for one garment"), *sheet.size_columns("of size", width=19.0))
    note = "Its share of the lays it is in, by the area of its pieces."
    return Table(f"cloth-by-size-{lays.cloth}", "", columns, (Row((lays.cloth, *amounts)),), note=note)


def _ways(sheet: Sheet, lays: ClothLays) -> Iterator[Block]:
    """What each way of cutting the order takes, the least marked; ways that were not searched say so."""
    known = tuple(way.length for way in lays.ways if way.length is not None)
    columns = (Column("Way of cutting"), Column("Cloth for the order", Align.RIGHT), Column(""))
    rows = tuple(
        Row(
            (
                way.cutting + (", as planned here" if way.cutting == lays.cutting else ""),
                "not searched" if way.length is None else sheet.lengths.both(Lengths.of_cloth, way.length),
                "least cloth" if len(known) > 1 and way.length == min(known) else "",
            ),
            strong=len(known) > 1 and way.length == min(known),
        )
        for way in lays.ways
    )
    yield Table(f"ways-{lays.cloth}", "", columns, rows)


def _drawn(sheet: Sheet, lays: ClothLays, lay: Lay, number: int) -> Iterator[Block]:
    name = f"lay-{lays.cloth}-{number}"
    title = f"Lay {number} of {sheet.title_of(lays.cloth)}: {sizes_of(lay)}"
    plans = tuple(plan for plan in sheet.quantities.bias if plan.cloth == lays.cloth and plan.offcuts)
    strips = tuple(outline for plan in plans for outline in plan.offcuts[number - 1].outlines)
    keyed = lay_drawing((name, title), lay, sheet.lengths, folded=lays.spread != OPEN, strips=strips)
    yield Figure(keyed.drawing, keyed.drawing.title)
    if strips:
        yield Paragraph(_HATCHED, "note")
    if keyed.key:
        yield Paragraph("; ".join(keyed.key) + ".", "note")
