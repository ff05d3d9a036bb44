"""Owns reading colourways: the colours of what is declared, and how many are made of each.

Knows nothing of how much of a colour is used.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.colourway import Coloured, Colourway
from specc.model.garment import Ordered
from specc.resolve.header import resolve_order
from specc.resolve.properties import Properties, titled

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.garment import Header
    from specc.syntax import tree

TWO_ORDERS = declare(
    "SPC620",
    "two-orders",
    Severity.ERROR,
    "the garment orders {whole} of size {size}, its colourways {sum}",
)


def resolve_colourway(
    node: tree.Sheet, materials: tuple[str, ...], sizes: tuple[str, ...] | None, say: Collector
) -> Colourway:
    """The colourway; its lines are `order` and the names of materials."""
    place = node.name.span if node.name else node.kind.span
    known = ("order", *materials)
    sheet = Properties("a colourway", node.name, node.body, known=known, say=say, place=place)
    name = node.name.text if node.name else node.kind.text
    colours = ((each, sheet.words(each, example="rust red")) for each in materials)
    return Colourway(
        name,
        titled(node.title, name),
        resolve_order(sheet, sizes),
        tuple(Coloured(material, colour) for material, colour in colours if colour is not None),
        place,
    )


def ordered_in_all(header: Header, colourways: tuple[Colourway, ...], say: Collector) -> Header:
    """The header with what its colourways order; an order of its own must be the same."""
    sums: Counter[str] = Counter()
    for each in colourways:
        sums.update({one.size: one.count for one in each.order})
    if not sums:
        return header
    own = {one.size: one.count for one in header.order}
    other = next((size for size in header.sizes if own and own.get(size, 0) != sums[size]), None)
    if other is not None:
        told = TWO_ORDERS.at(header.origin, whole=own.get(other, 0), size=other, sum=sums[other])
        told = told.see(colourways[0].origin, "the first colourway")
        say.add(told.help("leave the order to the colourways, or make both the same"))
    return replace(header, order=tuple(Ordered(size, sums[size]) for size in header.sizes if size in sums))
