"""Owns reading prices: an amount, a currency, a unit of sale.

Knows nothing of what is sold.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit
from specc.model.material import Price, PriceFrom
from specc.names import did_you_mean
from specc.resolve.codes import out_of_range, unknown_word, wrong_value
from specc.resolve.properties import span_of, span_of_value
from specc.syntax import tree
from specc.units import CURRENCIES

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.resolve.properties import Properties, Value

LENGTHS = ("mm", "cm", "m", "in", "ft", "yd")
_OTHER_WORDS = {
    "yard": "yd", "yards": "yd", "metre": "m", "meter": "m", "foot": "ft", "inch": "in",
    "pc": "piece", "each": "piece",
}  # fmt: skip
_MOST = 1_000_000
_COUNTED = ("piece", "cone")


def resolve_price(sheet: Properties, sold_by: tuple[str, ...]) -> Price | None:
    """`14.50 USD per yd`, `0.12 EUR per piece`; what is sold by other units than `sold_by` is reported."""
    found = sheet.get("price")
    if found is None:
        return None
    match found.values:
        case (
            (tree.Number(value=amount, unit=str() as currency), tree.Word(text="per"), tree.Word() as per),
            *more,
        ) if currency in CURRENCIES:
            if per.text not in sold_by:
                sheet.say.add(_unknown_sale(per, sold_by))
            elif amount > _MOST:
                bounds = f"at most {_MOST:,} {currency}"
                price = found.values[0][0].span
                sheet.say.add(out_of_range(price, "a price", bounds, found=price.text))
            else:
                breaks = _breaks(sheet, more, currency, per.text)
                return None if breaks is None else Price(amount, currency, per.text, breaks)
            return None
        case ((tree.Number(unit=None), tree.Word() as word, tree.Word(text="per"), tree.Word()),):
            sheet.say.add(_unknown_currency(word))
            return None
    example = f"`14.50 USD per {sold_by[-1]}`"
    wanted = f"an amount, a currency and a unit of sale, such as {example}"
    sheet.say.add(wrong_value(span_of(found.values), "price", wanted))
    return None


def _breaks(sheet: Properties, values: list[Value], currency: str, per: str) -> tuple[PriceFrom, ...] | None:
    """`0.30 USD from 100 yd`: prices of larger amounts, rising; None when one of them is not such."""
    unit = None if per in _COUNTED else per
    found: list[PriceFrom] = []
    for value in values:
        match value:
            case (
                tree.Number(value=amount, unit=str() as money),
                tree.Word(text="from"),
                tree.Number() as least,
            ) if money == currency and least.unit == unit:
                if found and least.value <= found[-1].least:
                    bounds = f"more than {found[-1].least}, as prices go on for larger amounts"
                    sheet.say.add(out_of_range(least.span, "an amount", bounds, found=least.span.text))
                    return None
                found.append(PriceFrom(least.value, amount))
            case _:
                example = f"`0.30 {currency} from 100{f' {unit}' if unit else ''}`"
                wanted = f"a price and from how much on it holds, such as {example}"
                sheet.say.add(wrong_value(span_of_value(value), "price", wanted))
                return None
    return tuple(found)


def _unknown_sale(per: tree.Word, sold_by: tuple[str, ...]) -> Diagnostic:
    told = unknown_word(per.span, per.text, "a unit in which this is sold", known=sold_by)
    meant = _OTHER_WORDS.get(per.text)
    if meant not in sold_by or meant is None:
        return told
    told = unknown_word(per.span, per.text, "a unit in which this is sold", known=())
    return told.with_fix(f"write `{meant}`", Edit(per.span, meant), applicability=Applicability.SAFE)


def _unknown_currency(word: tree.Word) -> Diagnostic:
    told = unknown_word(word.span, word.text, "a currency", known=())
    upper = word.text.upper()
    if upper in CURRENCIES:
        fix = Edit(word.span, upper)
        return told.with_fix(f"write `{upper}`", fix, applicability=Applicability.SAFE)
    return told.help(did_you_mean(upper, CURRENCIES) or "money has its ISO 4217 code, as in `14.50 USD`")
