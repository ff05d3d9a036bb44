"""Owns giving the garment's own sheet its meaning: style, sizes, order, units, revisions.

Knows nothing of pieces.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit
from specc.library.threads import TABLE, THREAD_BY
from specc.model.garment import STATUSES, Header, Ordered, Revision
from specc.model.spreading import CUTTINGS, GARMENT
from specc.resolve.codes import name_taken, out_of_range, there_are, unknown_name, wrong_value
from specc.resolve.properties import Properties, reason, said, span_of, span_of_value, titled
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.chart import Chart
    from specc.resolve.charts import Measured
    from specc.source import Span

_KNOWN = (
    "style", "maker", "season", "status", "worn-by", "puts-on", "sizes", "sample", "order", "cutting",
    "thread-by", "units", "paper",
)  # fmt: skip
MOST_SIZES = 40
_MOST_ORDERED = 1_000_000


def resolve_header(node: tree.Sheet, measured: Measured, say: Collector) -> Header | None:
    """The title block; sizes are all those of the chart unless the garment says which.

    Without a chart the garment names its sizes itself.

    None when they cannot be known.
    """
    place = node.name.span if node.name else node.kind.span
    sheet = Properties(
        "a garment", node.name, node.body, known=_KNOWN, repeated=("revision",), say=say, place=place
    )
    name = node.name.text if node.name else "garment"
    listed = sheet.get("sizes")
    if measured.wanted:
        sizes = _sizes(sheet, measured.chart)
    else:
        sizes = None if listed is None else listed_sizes(sheet, listed)
    sample = _sample(sheet, sizes)
    order = resolve_order(sheet, sizes)
    header = Header(
        name,
        titled(node.title, name),
        sheet.words("style", example="ES-07") or name,
        sheet.words("maker", example="Saltmarsh Works"),
        sheet.list_of_words("season"),
        sheet.word("status", STATUSES, kind="a status"),
        sheet.word("worn-by", ("adult", "child"), kind="a wearer") or "adult",
        sheet.word("puts-on", ("over the head", "stepping in", "opens"), kind="a way of putting on"),
        sizes or (),
        sample,
        order,
        sheet.word("cutting", CUTTINGS, kind="a way of cutting") or GARMENT,
        sheet.word("thread-by", THREAD_BY, kind="a way of reckoning thread") or TABLE,
        sheet.word("units", ("in", "cm", "mm"), kind="a unit for the sheet") or "cm",
        sheet.word("paper", ("A4", "Letter"), kind="a size of paper") or "A4",
        _revisions(sheet),
        place,
    )
    return header if sizes else None


def _sizes(sheet: Properties, chart: Chart | None) -> tuple[str, ...] | None:
    """The sizes in the order of the chart; None when they cannot be known."""
    found = sheet.get("sizes")
    known = chart.sizes if chart else ()
    if chart is None or not known:
        return None
    if found is None:
        return known
    sizes: dict[str, Span] = {}
    complete = True
    for value in found.values:
        size, place = " ".join(said(atom) for atom in value), span_of_value(value)
        if len(value) > 1:
            told = wrong_value(place, "sizes", "sizes with commas between them")
            commas = ", ".join(said(atom) for atom in value)
            if all(said(atom) in known for atom in value):
                fix = Edit(place, commas)
                sheet.say.add(told.with_fix(f"write `{commas}`", fix, applicability=Applicability.SAFE))
                return None
            sheet.say.add(told.help(there_are(known)))
        elif size not in known:
            where, bare = f" in chart `{chart.name}`", size.split()[0]
            told = unknown_name(place, "size", size, known=() if bare in known else known, where=where)
            sheet.say.add(told.help(f"write `{bare}`; a size has no unit") if bare in known else told)
        elif size in sizes:
            sheet.say.add(name_taken(place, "a size", size, first=sizes[size]))
            continue
        else:
            sizes[size] = place
            continue
        complete = False
    return tuple(size for size in known if size in sizes) if complete else None


def listed_sizes(sheet: Properties, listed: tree.Property) -> tuple[str, ...] | None:
    """The names of sizes that a sheet lists, smallest first as they stand; None after a fault."""
    sizes: dict[str, Span] = {}
    for value in listed.values:
        place = span_of_value(value)
        if len(value) > 1:
            commas = ", ".join(said(atom) for atom in value)
            told = wrong_value(place, "sizes", "sizes with commas between them")
            sheet.say.add(told.with_fix(f"write `{commas}`", Edit(place, commas)))
            return None
        size = said(value[0])
        if isinstance(value[0], tree.Number) and value[0].unit is not None:
            sheet.say.add(wrong_value(place, "sizes", "names of sizes, such as `12` or `M`"))
            return None
        if size in sizes:
            sheet.say.add(name_taken(place, "a size", size, first=sizes[size]))
            return None
        sizes[size] = place
    if len(sizes) > MOST_SIZES:
        bounds = f"at most {MOST_SIZES}"
        sheet.say.add(out_of_range(span_of(listed.values), "the number of sizes", bounds, found=len(sizes)))
        return None
    return tuple(sizes)


def _sample(sheet: Properties, sizes: tuple[str, ...] | None) -> str:
    """The size that is sewn first: the one that is named, else the middle one."""
    found = sheet.get("sample")
    middle = sizes[len(sizes) // 2] if sizes else ""
    if found is None:
        return middle
    if len(found.values) > 1 or len(found.values[0]) > 1:
        sheet.say.add(wrong_value(span_of(found.values), "sample", "one size, such as `12`"))
        return middle
    size = said(found.values[0][0])
    if sizes is None or size in sizes:
        return size
    where = " among the garment's sizes"
    sheet.say.add(unknown_name(span_of(found.values), "size", size, known=sizes, where=where))
    return middle


def resolve_order(sheet: Properties, sizes: tuple[str, ...] | None) -> tuple[Ordered, ...]:
    """How many are made of each size; a fault of shape is reported once for the line."""
    found = sheet.get("order")
    ordered: dict[str, int] = {}
    places: dict[str, Span] = {}
    faulty = False
    for value in () if found is None else found.values:
        match value:
            case (tree.Pair(left=left, right=tree.Number(unit=None) as count),):
                size = said(left)
                if sizes is not None and size not in sizes:
                    where = " among the garment's sizes"
                    sheet.say.add(unknown_name(left.span, "size", size, known=sizes, where=where))
                    faulty = True
                elif size in ordered:
                    sheet.say.add(name_taken(left.span, "an order for size", size, first=places[size]))
                elif count.value.denominator != 1 or count.value > _MOST_ORDERED:
                    bounds, written = f"a whole number up to {_MOST_ORDERED:,}", count.span.text
                    sheet.say.add(
                        out_of_range(count.span, f"the order for size {size}", bounds, found=written)
                    )
                    faulty = True
                else:
                    ordered[size], places[size] = int(count.value), left.span
            case _:
                wanted = "a number for each size, such as `8: 4, 10: 8`"
                sheet.say.add(wrong_value(span_of_value(value), "order", wanted))
                return ()
    if found is not None and not faulty and not any(ordered.values()):
        sheet.say.add(out_of_range(span_of(found.values), "the whole order", "more than nothing", found="0"))
    return tuple(Ordered(size, ordered[size]) for size in sizes or () if size in ordered)


def _revisions(sheet: Properties) -> tuple[Revision, ...]:
    """The revisions, oldest first: the last one is that of the sheet."""
    revisions: list[Revision] = []
    names: dict[str, Span] = {}
    for item in sheet.all("revision"):
        match item.values:
            case ((tree.Word() | tree.Number() as name, tree.Date() as date, tree.Text() as text),):
                letter = said(name)
                if letter in names:
                    sheet.say.add(name_taken(name.span, "a revision", letter, first=names[letter]))
                elif revisions and date.text < revisions[-1].date:
                    bounds = f"{revisions[-1].date} or later, as revision {revisions[-1].name} is"
                    told = out_of_range(date.span, f"the date of revision {letter}", bounds, found=date.text)
                    sheet.say.add(told.help("revisions stand in the order of their dates, the newest last"))
                names.setdefault(letter, name.span)
                changed = reason(text, "revision", "what has changed", sheet.say)
                revisions.append(Revision(letter, date.text, changed, item.span))
            case _:
                wanted = 'a name, a date and what changed, such as `B 2026-03-02 "neck lowered"`'
                sheet.say.add(wrong_value(span_of(item.values), "revision", wanted))
    return tuple(revisions)
