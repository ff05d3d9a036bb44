"""Owns reading what garments are packed in, and how it and labels are bought: by the piece.

Knows nothing of how many are ordered.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.model.material import Packing
from specc.resolve.buying import BUYING, resolve_buying, resolve_sold
from specc.resolve.codes import wrong_value
from specc.resolve.prices import resolve_price
from specc.resolve.properties import Properties, span_of, titled
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.syntax import tree
    from specc.units import Quantity

BY_PIECE: Final = ("price", "supplier", "sold", *BUYING)
"""The lines that say how something is bought by the piece."""

_MOST_HELD = 100_000


def resolve_packing(node: tree.Sheet, say: Collector) -> Packing:
    """The packing; one for each garment unless it says how many it holds."""
    place = node.name.span if node.name else node.kind.span
    known = ("holds", "colour", *BY_PIECE)
    sheet = Properties("a packing", node.name, node.body, known=known, say=say, place=place)
    name = node.name.text if node.name else node.kind.text
    return Packing(
        name,
        titled(node.title, name),
        sheet.count("holds", "24", most=_MOST_HELD) or 1,
        resolve_price(sheet, ("piece",)),
        packs(sheet),
        resolve_buying(sheet, by_length=False),
        sheet.words("colour", example="clear"),
        sheet.words("supplier", example="Saltmarsh Works"),
        place,
    )


def packs(sheet: Properties) -> Quantity | None:
    """`sold in packs of 100`; there are no rolls of what is bought by the piece."""
    sold = resolve_sold(sheet)
    if sold is None or sold.dimension == Dimension.NUMBER:
        return sold
    found = sheet.get("sold")
    assert found is not None
    sheet.say.add(wrong_value(span_of(found.values), "sold", "packs, such as `in packs of 100`"))
    return None
