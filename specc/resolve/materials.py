"""Owns giving cloths, trims and threads their meaning.

Knows nothing of where they are used.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.material import Cloth, FibreShare, Price, Thread, Trim
from specc.resolve.codes import OUT_OF_RANGE, unknown_name, unknown_word, wrong_value
from specc.resolve.properties import Properties, as_quantity, said, span_of
from specc.syntax import tree
from specc.units import CURRENCIES, UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.diagnostics import Collector

FIBRES = declare("SPC306", "fibres-not-whole", Severity.ERROR, "the fibres of `{name}` come to {sum}%, not 100%")

TRAITS = (
    "open", "sheer", "ravel-free", "ravels", "stable", "knit", "woven",
    "napped", "one-way", "raised", "slippery", "stiff", "bias-cut",
)  # fmt: skip
TRIM_KINDS = (
    "fold-over elastic", "elastic", "bias strip", "tape", "ribbon", "braid", "cord", "piping", "lace", "zip", "button",
)  # fmt: skip
_COMMON = ("fibre", "price", "colour", "supplier")
_LENGTH_SALE = ("mm", "cm", "m", "in", "ft", "yd")


def resolve_cloth(node: tree.Sheet, say: Collector) -> Cloth:
    """The cloth; it is the shell unless it says what it is for."""
    known = (*_COMMON, "for", "width", "weight", "is", "shrinks", "stretch")
    sheet = _sheet(node, "cloth", known, say)
    width, usable = _widths(sheet)
    weight = sheet.quantity("weight", Dimension.AREA_WEIGHT, wanted="a weight by area, such as `140 g/m2`")
    length_share, width_share = _shrinkage(sheet)
    name = node.name.text if node.name else "cloth"
    return Cloth(
        name,
        node.title.text if node.title else name,
        sheet.words("for") or "shell",
        _fibres(sheet, name),
        width,
        usable or width,
        weight,
        _traits(sheet),
        sheet.ratio("stretch") or Fraction(0),
        length_share,
        width_share,
        _price(sheet),
        sheet.words("colour"),
        sheet.words("supplier"),
        sheet.place,
    )


def resolve_trim(node: tree.Sheet, cloths: frozenset[str], say: Collector) -> Trim:
    """The trim; one that is cut from a cloth names it."""
    sheet = _sheet(node, "trim", (*_COMMON, "kind", "width", "stretch", "cut-from", "sold"), say)
    name = node.name.text if node.name else "trim"
    sheet.require("kind")
    kind = sheet.word("kind", TRIM_KINDS, kind="a kind of trim") or ""
    source = sheet.get("cut-from")
    cut_from = sheet.words("cut-from")
    if source is not None and (cut_from or "") not in cloths:
        say.add(unknown_name(span_of(source.values), "cloth", cut_from or "", known=cloths))
    return Trim(
        name,
        node.title.text if node.title else name,
        kind,
        _fibres(sheet, name),
        sheet.quantity("width", Dimension.LENGTH, wanted="a length, such as `1 in`"),
        sheet.ratio("stretch") or Fraction(0),
        cut_from,
        _price(sheet),
        _sold(sheet),
        sheet.words("colour"),
        sheet.words("supplier"),
        sheet.place,
    )


def resolve_thread(node: tree.Sheet, say: Collector) -> Thread:
    """The thread."""
    sheet = _sheet(node, "thread", (*_COMMON, "size", "for"), say)
    name = node.name.text if node.name else "thread"
    return Thread(
        name,
        node.title.text if node.title else name,
        sheet.words("size"),
        sheet.words("for"),
        _price(sheet),
        sheet.words("colour"),
        sheet.words("supplier"),
        sheet.place,
    )


def _sheet(node: tree.Sheet, kind: str, known: tuple[str, ...], say: Collector) -> Properties:
    place = node.name.span if node.name else node.kind.span
    return Properties(kind, node.body, known=known, say=say, place=place)


def _fibres(sheet: Properties, name: str) -> tuple[FibreShare, ...]:
    found = sheet.get("fibre")
    if found is None:
        return ()
    shares = []
    for value in found.values:
        share = as_quantity(value[0])
        fibre = " ".join(said(atom) for atom in value[1:])
        if share is None or share.dimension != Dimension.RATIO or not fibre:
            wanted = "a share and a fibre, such as `100% cotton`"
            sheet.say.add(wrong_value(value[0].span.to(value[-1].span), "fibre", wanted))
            return ()
        shares.append(FibreShare(fibre, share.value))
    total = sum((share.share for share in shares), Fraction(0))
    if total != 1:
        said_sum = FIBRES.at(span_of(found.values), name=name, sum=_plain(total * 100))
        sheet.say.add(said_sum.help("write every fibre with its share of the weight"))
    return tuple(shares)


def _widths(sheet: Properties) -> tuple[Quantity | None, Quantity | None]:
    """`width 54 in, usable 52 in`: the whole width and what can be used of it."""
    found = sheet.get("width")
    if found is None:
        return None, None
    wanted = "a length, such as `54 in`, and perhaps `usable 52 in`"
    width = sheet.measure(found.values[0][0], "width", Dimension.LENGTH, wanted=wanted)
    if len(found.values) == 1:
        return width, width
    second = found.values[1]
    both = 2
    if len(second) != both or said(second[0]) != "usable" or len(found.values) > both:
        sheet.say.add(wrong_value(span_of(found.values), "width", wanted))
        return width, width
    usable = sheet.measure(second[1], "usable", Dimension.LENGTH, wanted=wanted)
    if width is not None and usable is not None and usable.value > width.value:
        bounds = f"at most the width of {width}"
        sheet.say.add(OUT_OF_RANGE.at(second[1].span, what="the usable width", bounds=bounds, found=str(usable)))
    return width, usable


def _shrinkage(sheet: Properties) -> tuple[Fraction, Fraction]:
    """`shrinks 3% length, 2% width`."""
    shares = {"length": Fraction(0), "width": Fraction(0)}
    found = sheet.get("shrinks")
    for value in () if found is None else found.values:
        share = as_quantity(value[0])
        way = " ".join(said(atom) for atom in value[1:])
        place = value[0].span.to(value[-1].span)
        if share is None or share.dimension != Dimension.RATIO or way not in shares:
            sheet.say.add(wrong_value(place, "shrinks", "shares, such as `3% length, 2% width`"))
        elif share.value >= 1:
            sheet.say.add(OUT_OF_RANGE.at(place, what="shrinkage", bounds="less than 100%", found=str(share)))
        else:
            shares[way] = share.value
    return shares["length"], shares["width"]


def _traits(sheet: Properties) -> tuple[str, ...]:
    found = sheet.get("is")
    traits = []
    for value in () if found is None else found.values:
        trait = "-".join(said(atom) for atom in value)
        if trait in TRAITS:
            traits.append(trait)
        else:
            place = value[0].span.to(value[-1].span)
            sheet.say.add(unknown_word(place, " ".join(said(atom) for atom in value), "a trait of cloth", known=TRAITS))
    return tuple(traits)


def _price(sheet: Properties) -> Price | None:
    """`14.50 USD per yd`, `0.12 EUR per piece`."""
    found = sheet.get("price")
    if found is None:
        return None
    match found.values:
        case ((tree.Number(value=amount, unit=str() as currency), tree.Word(text="per"), tree.Word(text=per)),):
            if currency in CURRENCIES and per in (*_LENGTH_SALE, "piece"):
                return Price(amount, currency, per)
    wanted = "an amount, a currency and a unit of sale, such as `14.50 USD per yd` or `0.20 EUR per piece`"
    sheet.say.add(wrong_value(span_of(found.values), "price", wanted))
    return None


def _sold(sheet: Properties) -> Quantity | None:
    """`sold in rolls of 25 yd`."""
    found = sheet.get("sold")
    if found is None:
        return None
    match found.values:
        case ((tree.Word(text="in"), tree.Word(), tree.Word(text="of"), tree.Number() as amount),):
            wanted = "a length, such as `25 yd`"
            return sheet.measure(amount, "sold", Dimension.LENGTH, wanted=wanted)
    sheet.say.add(wrong_value(span_of(found.values), "sold", "a form of sale, such as `in rolls of 25 yd`"))
    return None


def _plain(share: Fraction) -> str:
    return str(Quantity.of(share, UNITS[""]))
