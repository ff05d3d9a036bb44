"""Owns giving the garment's own sheet its meaning: style, sizes, order, units, revisions.

Knows nothing of pieces.
"""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.garment import Header, Ordered, Revision
from specc.resolve.codes import NAME_TAKEN, OUT_OF_RANGE, unknown_name, wrong_value
from specc.resolve.properties import Properties, said, span_of
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector
    from specc.model.chart import Chart

NO_DATE = declare("SPC215", "no-such-date", Severity.ERROR, "there is no day `{date}`")

_KNOWN = ("style", "maker", "season", "worn-by", "puts-on", "sizes", "sample", "order", "units", "paper")
_MOST_SIZES = 40
_MOST_ORDERED = 1_000_000


def resolve_header(node: tree.Sheet, chart: Chart | None, say: Collector) -> Header | None:
    """The title block; sizes are all those of the chart unless the garment says which."""
    place = node.name.span if node.name else node.kind.span
    sheet = Properties("garment", node.body, known=_KNOWN, repeated=("revision",), say=say, place=place)
    name = node.name.text if node.name else "garment"
    style = sheet.words("style") or name
    sizes = _sizes(sheet, chart)
    sample = _sample(sheet, sizes)
    return Header(
        name,
        node.title.text if node.title else name,
        style,
        sheet.words("maker"),
        sheet.words("season"),
        sheet.word("worn-by", ("adult", "child"), kind="a wearer") or "adult",
        sheet.word("puts-on", ("over the head", "stepping in", "opens"), kind="a way of putting on"),
        sizes,
        sample,
        _order(sheet, sizes),
        sheet.word("units", ("in", "cm", "mm"), kind="a unit for the sheet") or "cm",
        sheet.word("paper", ("A4", "Letter"), kind="a size of paper") or "A4",
        _revisions(sheet),
        place,
    )


def _sizes(sheet: Properties, chart: Chart | None) -> tuple[str, ...]:
    found = sheet.get("sizes")
    known = chart.sizes if chart else ()
    if found is None:
        return known
    sizes: list[str] = []
    for value in found.values:
        size, place = said(value[0]), value[0].span
        if len(value) > 1:
            sheet.say.add(wrong_value(value[0].span.to(value[-1].span), "sizes", "sizes with commas between them"))
        elif chart and size not in known:
            sheet.say.add(unknown_name(place, "size", size, known=known, where=f" in chart `{chart.name}`"))
        elif size in sizes:
            sheet.say.add(NAME_TAKEN.at(place, kind="size", name=size))
        else:
            sizes.append(size)
    if len(sizes) > _MOST_SIZES:
        place = span_of(found.values)
        sheet.say.add(OUT_OF_RANGE.at(place, what="the number of sizes", bounds=f"at most {_MOST_SIZES}", found=len(sizes)))
        return tuple(sizes[:_MOST_SIZES])
    ranked = {size: place for place, size in enumerate(known)}
    return tuple(sorted(sizes, key=lambda size: ranked.get(size, 0)))


def _sample(sheet: Properties, sizes: tuple[str, ...]) -> str:
    found = sheet.get("sample")
    middle = sizes[len(sizes) // 2] if sizes else ""
    if found is None:
        return middle
    size = said(found.values[0][0])
    if size in sizes or not sizes:
        return size
    sheet.say.add(unknown_name(span_of(found.values), "size", size, known=sizes, where=" among the garment's sizes"))
    return middle


def _order(sheet: Properties, sizes: tuple[str, ...]) -> tuple[Ordered, ...]:
    found = sheet.get("order")
    ordered: dict[str, int] = {}
    for value in () if found is None else found.values:
        match value:
            case (tree.Pair(left=left, right=tree.Number(unit=None) as count, span=place),):
                size = said(left)
                if size not in sizes:
                    sheet.say.add(unknown_name(left.span, "size", size, known=sizes, where=" among the garment's sizes"))
                elif size in ordered:
                    sheet.say.add(NAME_TAKEN.at(place, kind="order for size", name=size))
                elif count.value.denominator != 1 or not 0 <= count.value <= _MOST_ORDERED:
                    bounds = f"a whole number up to {_MOST_ORDERED}"
                    what = f"the order for size {size}"
                    sheet.say.add(OUT_OF_RANGE.at(count.span, what=what, bounds=bounds, found=count.span.text))
                else:
                    ordered[size] = int(count.value)
            case _:
                place = value[0].span.to(value[-1].span)
                sheet.say.add(wrong_value(place, "order", "a number for each size, such as `8: 4, 10: 8`"))
    return tuple(Ordered(size, ordered[size]) for size in sizes if size in ordered)


def _revisions(sheet: Properties) -> tuple[Revision, ...]:
    revisions = []
    for item in sheet.all("revision"):
        match item.values:
            case ((name, tree.Date() as date, tree.Text() as text),):
                if not _is_a_day(date.text):
                    sheet.say.add(NO_DATE.at(date.span, date=date.text))
                revisions.append(Revision(said(name), date.text, text.text, item.span))
            case _:
                wanted = 'a name, a date and what changed, such as `B 2026-03-02 "neck lowered"`'
                sheet.say.add(wrong_value(span_of(item.values), "revision", wanted))
    return tuple(revisions)


def _is_a_day(text: str) -> bool:
    try:
        datetime.date.fromisoformat(text)
    except ValueError:
        return False
    return True


