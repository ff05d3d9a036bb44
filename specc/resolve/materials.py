"""Owns giving cloths, trims and threads their meaning.

Knows nothing of where they are used.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.model.material import Cloth, FibreShare, Thread, Trim
from specc.model.spreading import BIAS_WAYS
from specc.resolve.buying import BUYING, resolve_buying, resolve_rolls, resolve_sold
from specc.resolve.codes import (
    name_taken,
    out_of_range,
    unit_missing,
    unknown_name,
    unknown_word,
    wrong_value,
)
from specc.resolve.prices import LENGTHS, resolve_price
from specc.resolve.properties import Properties, as_quantity, said, span_of, span_of_value, titled
from specc.resolve.spreading import SPREADING, resolve_spreading
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.diagnostics import Collector, Diagnostic
    from specc.resolve.properties import Value
    from specc.source import Span

FIBRES = declare(
    "SPC306", "fibres-not-whole", Severity.ERROR, "the fibres of `{name}` come to {sum}, not 100%"
)
CONTRADICTION = declare(
    "SPC213", "traits-contradict", Severity.ERROR, "a cloth is not both `{first}` and `{second}`"
)

TRAITS = (
    "open", "sheer", "ravel-free", "ravels", "stable", "knit", "woven",
    "napped", "one-way", "raised", "slippery", "stiff", "bias-cut",
)  # fmt: skip
_OPPOSITES = (("ravels", "ravel-free"), ("knit", "woven"))
TRIM_KINDS = (
    "fold-over elastic", "elastic", "bias strip", "tape", "ribbon", "braid", "cord", "piping", "lace",
    "zip", "button", "snap", "hook and eye",
)  # fmt: skip
_COUNTED = ("button", "snap", "hook and eye")
_COMMON = ("price", "colour", "supplier")
_MOST_WIDTH = Quantity.of(10, UNITS["m"])
_MOST_CONE = Quantity.of(100_000, UNITS["m"])
_MOST_WEIGHT = Quantity.of(10_000, UNITS["g/m2"])


def resolve_cloth(node: tree.Sheet, say: Collector) -> Cloth:
    """The cloth; it is the shell unless it says what it is for."""
    known = ("for", "fibre", "width", "weight", "thickness", "is", "shrinks", "stretch", "sold")
    sheet = _sheet(node, "a cloth", (*known, *SPREADING, *BUYING, *_COMMON), say)
    width, usable = _widths(sheet)
    wanted = "a weight by area, such as `140 g/m2`"
    weight = sheet.quantity("weight", Dimension.AREA_WEIGHT, wanted=wanted, most=_MOST_WEIGHT)
    length_share, width_share = _shrinkage(sheet)
    name = _name(node)
    return Cloth(
        name,
        titled(node.title, name),
        sheet.list_of_words("for") or "shell",
        _fibres(sheet, name),
        width,
        usable or width,
        weight,
        sheet.quantity("thickness", Dimension.LENGTH, wanted="a length, such as `0.4 mm`", most=_MOST_WIDTH),
        _traits(sheet),
        sheet.ratio("stretch") or Fraction(0),
        length_share,
        width_share,
        resolve_spreading(sheet),
        resolve_buying(sheet, by_piece=False),
        resolve_rolls(sheet),
        resolve_price(sheet, LENGTHS),
        sheet.words("colour", example="rust red"),
        sheet.words("supplier", example="Saltmarsh Works"),
        sheet.place,
    )


def resolve_trim(node: tree.Sheet, cloths: tuple[str, ...], say: Collector) -> Trim:
    """The trim; one that is cut from a cloth names it."""
    known = ("kind", "fibre", "width", "diameter", "thickness", "lengths", "stretch", "sold")
    sheet = _sheet(node, "a trim", (*known, "cut-from", "cut-as", "spare", *BUYING, *_COMMON), say)
    name = _name(node)
    sheet.require("kind", "elastic")
    source, cut_from = sheet.get("cut-from"), sheet.words("cut-from", example="lawn")
    if source is not None and cut_from is not None and cut_from not in cloths:
        say.add(unknown_name(span_of(source.values), "cloth", cut_from, known=cloths))
    kind = sheet.word("kind", TRIM_KINDS, kind="a kind of trim") or ""
    return Trim(
        name,
        titled(node.title, name),
        kind,
        _fibres(sheet, name),
        sheet.quantity("width", Dimension.LENGTH, wanted="a length, such as `1 in`", most=_MOST_WIDTH),
        sheet.ratio("stretch") or Fraction(0),
        cut_from,
        sheet.word("cut-as", BIAS_WAYS, kind="a way of cutting bias"),
        resolve_price(sheet, (*LENGTHS, "piece")),
        resolve_sold(sheet),
        _lengths(sheet),
        resolve_buying(sheet, by_length=kind not in _COUNTED, by_piece=kind in (*_COUNTED, "zip")),
        sheet.quantity("diameter", Dimension.LENGTH, wanted="a length, such as `5/8 in`", most=_MOST_WIDTH),
        sheet.quantity("thickness", Dimension.LENGTH, wanted="a length, such as `1/8 in`", most=_MOST_WIDTH),
        sheet.words("colour", example="rust red"),
        sheet.words("supplier", example="Saltmarsh Works"),
        sheet.place,
    )


def resolve_thread(node: tree.Sheet, say: Collector) -> Thread:
    """The thread."""
    sheet = _sheet(node, "a thread", ("size", "for", "cone", "waste", *_COMMON), say)
    name = _name(node)
    return Thread(
        name,
        titled(node.title, name),
        sheet.words("size", example="Tex 27"),
        sheet.list_of_words("for"),
        sheet.quantity("cone", Dimension.LENGTH, wanted="a length, such as `5000 m`", most=_MOST_CONE),
        sheet.ratio("waste"),
        resolve_price(sheet, (*LENGTHS, "cone", "piece")),
        sheet.words("colour", example="rust red"),
        sheet.words("supplier", example="Saltmarsh Works"),
        sheet.place,
    )


def _sheet(node: tree.Sheet, kind: str, known: tuple[str, ...], say: Collector) -> Properties:
    place = node.name.span if node.name else node.kind.span
    return Properties(kind, node.name, node.body, known=known, say=say, place=place)


def _name(node: tree.Sheet) -> str:
    return node.name.text if node.name else node.kind.text


def _fibres(sheet: Properties, name: str) -> tuple[FibreShare, ...]:
    found = sheet.get("fibre")
    if found is None:
        return ()
    shares: dict[str, FibreShare] = {}
    places: dict[str, Span] = {}
    for value in found.values:
        place = span_of_value(value)
        share = as_quantity(value[0])
        fibre = " ".join(said(atom) for atom in value[1:])
        if share is None or share.dimension != Dimension.RATIO or not fibre:
            _tell_fibre(value, sheet)
            return ()
        if not share.value:
            sheet.say.add(out_of_range(place, f"the share of {fibre}", "more than nothing", found=share))
            return ()
        if fibre in shares:
            sheet.say.add(name_taken(place, "a share of fibre", fibre, first=places[fibre]))
            return ()
        shares[fibre], places[fibre] = FibreShare(fibre, share.value), place
    total = sum((share.share for share in shares.values()), Fraction(0))
    if total != 1:
        whole = str(Quantity(total, UNITS["%"]))
        told = FIBRES.at(span_of(found.values), name=name, sum=whole)
        sheet.say.add(told.help("write every fibre with its share of the weight"))
    return tuple(shares.values())


def _tell_fibre(value: Value, sheet: Properties) -> None:
    """Say what a share of fibre looks like; turn one round that stands the wrong way."""
    told = wrong_value(span_of_value(value), "fibre", "a share and a fibre, such as `100% cotton`")
    share = next((atom for atom in value if isinstance(atom, tree.Number)), None)
    words = " ".join(said(atom) for atom in value if not isinstance(atom, tree.Number))
    if share is None or not words or share.unit not in (None, "%") or len(value) != 1 + len(words.split()):
        sheet.say.add(told)
        return
    amount = said(share) if share.unit else f"{said(share)}%"
    fix = Edit(span_of_value(value), f"{amount} {words}")
    sheet.say.add(told.with_fix(f"write `{fix.replacement}`", fix, applicability=Applicability.SAFE))


def _widths(sheet: Properties) -> tuple[Quantity | None, Quantity | None]:
    """`width 54 in, usable 52 in`: the whole width and what can be used of it."""
    found = sheet.get("width")
    if found is None:
        return None, None
    wanted = "a length, such as `54 in`, and perhaps `usable 52 in`"
    first, *more = found.values
    if len(first) > 1 or len(more) > 1:
        told = wrong_value(span_of(found.values), "width", wanted)
        sheet.say.add(told.help("put a comma between the two widths") if len(first) > 1 else told)
        return None, None
    width = sheet.measure(first[0], "width", Dimension.LENGTH, wanted=wanted, most=_MOST_WIDTH)
    if not more or width is None:
        return width, width
    match more[0]:
        case (tree.Word(text="usable"), amount):
            usable = sheet.measure(amount, "usable", Dimension.LENGTH, wanted="a length", most=_MOST_WIDTH)
        case (tree.Word(text=word, span=place), _):
            sheet.say.add(unknown_word(place, word, "a word of a width", known=("usable",)))
            return width, width
        case other:
            sheet.say.add(wrong_value(span_of_value(other), "width", wanted))
            return width, width
    if usable is not None and usable.value > width.value:
        what, bounds = "the usable width", f"at most the width of {width}"
        sheet.say.add(out_of_range(amount.span, what, bounds, found=usable))
    return width, usable


def _shrinkage(sheet: Properties) -> tuple[Fraction, Fraction]:
    """`shrinks 3% length, 2% width`."""
    found = sheet.get("shrinks")
    shares: dict[str, Fraction] = {}
    places: dict[str, Span] = {}
    for value in () if found is None else found.values:
        place = span_of_value(value)
        share = as_quantity(value[0])
        way = " ".join(said(atom) for atom in value[1:])
        if share is None or share.dimension != Dimension.RATIO or not way:
            told = wrong_value(place, "shrinks", "shares, such as `3% length, 2% width`")
            bare = isinstance(value[0], tree.Number) and value[0].unit is None
            sheet.say.add(told.help(unit_missing(said(value[0]), Dimension.RATIO)) if bare else told)
            break
        if way not in ("length", "width"):
            where = value[1].span.to(value[-1].span)
            sheet.say.add(unknown_word(where, way, "a way in which cloth shrinks", known=("length", "width")))
        elif way in shares:
            sheet.say.add(name_taken(place, "a shrinkage in", way, first=places[way]))
        elif share.value >= 1:
            sheet.say.add(out_of_range(value[0].span, "shrinkage", "less than 100%", found=share))
        else:
            shares[way], places[way] = share.value, place
    return shares.get("length", Fraction(0)), shares.get("width", Fraction(0))


def _traits(sheet: Properties) -> tuple[str, ...]:
    found = sheet.get("is")
    traits: dict[str, Span] = {}
    for value in () if found is None else found.values:
        place = span_of_value(value)
        words = [said(atom) for atom in value]
        trait = "-".join(words)
        opposite = next(
            (other for pair in _OPPOSITES if trait in pair for other in pair if other in traits), None
        )
        if trait in traits:
            sheet.say.add(name_taken(place, "a trait", trait, first=traits[trait]))
        elif opposite is not None:
            told = CONTRADICTION.at(place, first=opposite, second=trait)
            sheet.say.add(told.see(traits[opposite], "said here"))
        elif trait in TRAITS:
            traits[trait] = place
        else:
            sheet.say.add(_unknown_trait(place, words))
    return tuple(traits)


def _unknown_trait(place: Span, words: list[str]) -> Diagnostic:
    told = unknown_word(place, " ".join(words), "a trait of cloth", known=TRAITS)
    if len(words) == 1 or not all(word in TRAITS for word in words):
        return told
    commas = ", ".join(words)
    fix = Edit(place, commas)
    told = wrong_value(place, "is", "traits with commas between them")
    return told.with_fix(f"write `{commas}`", fix, applicability=Applicability.SAFE)


def _lengths(sheet: Properties) -> tuple[Quantity, ...]:
    """`lengths 7 in, 8 in, 9 in`, rising."""
    found = sheet.get("lengths")
    if found is None:
        return ()
    wanted = "lengths, such as `7 in, 8 in, 9 in`"
    lengths: dict[Fraction, Quantity] = {}
    for value in found.values:
        if len(value) > 1:
            sheet.say.add(wrong_value(span_of_value(value), "lengths", wanted))
            return ()
        length = sheet.measure(value[0], "lengths", Dimension.LENGTH, wanted=wanted)
        if length is None:
            return ()
        lengths[length.value] = length
    return tuple(lengths[size] for size in sorted(lengths))
