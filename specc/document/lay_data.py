"""Owns what programs are told of lays. Lengths are millimetres under names that end in `_mm`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.data import DataTable, Members

if TYPE_CHECKING:
    from specc.document.data import Value
    from specc.document.sheet import Sheet
    from specc.laying import ClothLays, Lay


def lay_data(sheet: Sheet) -> Members:
    """The lays of every cloth, by its name."""
    return Members(tuple((lays.cloth, _cloth(sheet, lays)) for lays in sheet.quantities.lays))


def lay_table(sheet: Sheet) -> DataTable:
    """A row for each lay, in the order of the work."""
    columns = (
        "cloth", "lay", "sizes", "plies", "times", "garments", "width_mm", "length_mm", "used", "cloth_mm",
        "searched",
    )  # fmt: skip
    rows = tuple(
        (
            lays.cloth,
            number,
            " ".join(f"{each.size}:{each.count}" for each in lay.ratio),
            lay.plies,
            lay.times,
            lay.garments,
            lay.width,
            lay.length,
            lay.share,
            lay.length * lay.plies * lay.times,
            "yes" if lay.searched else "no",
        )
        for lays in sheet.quantities.lays
        for number, lay in enumerate(lays.lays, start=1)
    )
    return DataTable("lays", columns, rows)


def _cloth(sheet: Sheet, lays: ClothLays) -> Members:
    per_garment = zip(sheet.sizes, lays.per_garment, strict=True)
    return Members(
        (
            ("cutting", lays.cutting),
            ("spread", lays.spread),
            ("order_mm", lays.order),
            ("per_garment_mm", Members(tuple(per_garment))),
            ("ways_mm", Members(tuple((way.cutting, way.length) for way in lays.ways))),
            ("lays", tuple(_lay(lay) for lay in lays.lays)),
        )
    )


def _lay(lay: Lay) -> Value:
    return Members(
        (
            ("sizes", Members(tuple((each.size, each.count) for each in lay.ratio))),
            ("plies", lay.plies),
            ("times", lay.times),
            ("width_mm", lay.width),
            ("length_mm", lay.length),
            ("used", lay.share),
            ("searched", lay.searched),
        )
    )
