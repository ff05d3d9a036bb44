"""Owns reading what work costs and what other currencies are worth.

Knows nothing of how much work there is.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.model.costing import Costing, Money, Rate
from specc.resolve.codes import name_taken, out_of_range, wrong_value
from specc.resolve.properties import Properties, span_of
from specc.syntax import tree
from specc.units import CURRENCIES, Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator
    from fractions import Fraction

    from specc.diagnostics import Collector
    from specc.source import Span

_KNOWN: Final = ("minute", "sews", "handling", "cutting", "finishing", "margin")
_MOST_MINUTES = 10_000
_MOST_MONEY = 1_000_000


def resolve_costing(node: tree.Sheet, say: Collector) -> Costing:
    """The costing; a margin is below the whole price."""
    sheet = Properties(
        "a cost", None, node.body, known=_KNOWN, repeated=("rate",), say=say, place=node.kind.span
    )
    sews = sheet.quantity("sews", Dimension.LENGTH, wanted="a length, such as `1.5 m`")
    return Costing(
        _money(sheet, "minute"),
        None if sews is None else sews.value,
        _minutes(sheet, "handling"),
        _minutes(sheet, "cutting"),
        _minutes(sheet, "finishing"),
        _margin(sheet),
        tuple(_rates(sheet)),
        node.kind.span,
    )


def _money(sheet: Properties, name: str) -> Money | None:
    found = sheet.get(name)
    if found is None:
        return None
    match found.values:
        case ((tree.Number(value=amount, unit=str() as currency) as written,),) if currency in CURRENCIES:
            if amount <= _MOST_MONEY:
                return Money(amount, currency)
            bounds = f"at most {_MOST_MONEY:,} {currency}"
            sheet.say.add(out_of_range(written.span, f"`{name}`", bounds, found=written.span.text))
        case _:
            wanted = "an amount and a currency, such as `0.35 USD`"
            sheet.say.add(wrong_value(span_of(found.values), name, wanted))
    return None


def _minutes(sheet: Properties, name: str) -> Fraction | None:
    found = sheet.get(name)
    if found is None:
        return None
    match found.values:
        case ((tree.Number(unit=None) as written,),):
            if written.value <= _MOST_MINUTES:
                return written.value
            bounds = f"at most {_MOST_MINUTES} minutes"
            sheet.say.add(out_of_range(written.span, f"`{name}`", bounds, found=written.span.text))
        case _:
            sheet.say.add(wrong_value(span_of(found.values), name, "minutes, as a number: `0.4`"))
    return None


def _margin(sheet: Properties) -> Fraction | None:
    margin = sheet.ratio("margin")
    found = sheet.get("margin")
    if margin is None or found is None or margin < 1:
        return margin
    place = span_of(found.values)
    sheet.say.add(out_of_range(place, "`margin`", "less than 100%: a share of the price", found=place.text))
    return None


def _rates(sheet: Properties) -> Iterator[Rate]:
    """`rate 1.08 USD per EUR on 2026-02-01`."""
    seen: dict[str, Span] = {}
    for line in sheet.all("rate"):
        match line.values:
            case (
                (
                    tree.Number(value=amount, unit=str() as currency) as written,
                    tree.Word(text="per"),
                    tree.Word() as of,
                    tree.Word(text="on"),
                    tree.Date() as day,
                ),
            ) if currency in CURRENCIES and of.text in CURRENCIES and of.text != currency:
                if not amount:
                    bounds = "more than nothing"
                    sheet.say.add(out_of_range(written.span, "a rate", bounds, found=written.span.text))
                elif of.text in seen:
                    sheet.say.add(name_taken(of.span, "a rate of", of.text, first=seen[of.text]))
                else:
                    seen[of.text] = of.span
                    yield Rate(of.text, Money(amount, currency), day.text)
            case _:
                wanted = "what another currency is worth, such as `1.08 USD per EUR on 2026-02-01`"
                sheet.say.add(wrong_value(span_of(line.values), "rate", wanted))
