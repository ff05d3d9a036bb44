"""Owns filling in a method for one use: its allowances, its passes, the trims it takes.

Knows nothing of the edges it is used on.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.stitches import stitches
from specc.model.construction import LAID, LYING, Making, Pass, Setting, Takes
from specc.model.expression import Constant
from specc.resolve.broken import has_broken
from specc.resolve.codes import MISSING, MORE_THAN_ONE, unknown_name, unknown_word
from specc.resolve.expressions import meaning
from specc.resolve.fastenings import laps_of, pieces_of, places_of
from specc.resolve.filling import LENGTH, NOTHING, Filling
from specc.resolve.properties import MOST_LENGTH, Properties, reason, span_of, titled
from specc.syntax import tree
from specc.units import UNITS, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.expression import Expression
    from specc.model.material import Trim
    from specc.resolve.expressions import Scope
    from specc.resolve.settings import Settings

MAKES_OTHER = declare(
    "SPC216", "method-makes-other", Severity.ERROR, "method `{method}` makes {made}, not {wanted}"
)
TURNED_SEAM = declare(
    "SPC521",
    "seam-turned",
    Severity.ERROR,
    "method `{method}` makes a seam, whose allowance is not turned back",
)
NOT_TURNED = declare(
    "SPC522",
    "turned-by-nothing",
    Severity.ERROR,
    "method `{method}` turns the raw edge and does not say how deep",
)
NO_CLOSURE = declare(
    "SPC316",
    "fastening-without-closure",
    Severity.ERROR,
    "`{word}` is for closures, and method `{method}` makes {made}",
)
DRAWSTRING_LENGTH = declare(
    "SPC532",
    "drawstring-length",
    Severity.ERROR,
    "`{trim}` is a drawstring, as long as its channel and its two ends: it takes no length of its own",
)

_KNOWN = ("raw-edge", "shows", "turns", "faces", "laid", "astm", "iso", "press", "machine", "foot", "needs")
_FACES = ("right sides together", "wrong sides together", "both right sides up")
_RAW_EDGE = ("covered", "overlocked", "enclosed", "turned", "raw")
_SIDES = ("first", "second")
_MOST_STITCH = Quantity.of(50, UNITS["mm"])


@dataclass(frozen=True, slots=True)
class Terms:
    """What a way of making may be reckoned from, and the unit of the sheet, in which it speaks."""

    measured: Scope
    unit: str


def resolve_making(
    node: tree.Method,
    settings: Settings,
    trims: Mapping[str, Trim | None],
    say: Collector,
    *,
    terms: Terms,
) -> Making | None:
    """The method as it is used here; None when it lacks what it needs.

    `terms` say what the length of a trim may be reckoned from, beside figures, and the unit of the words.
    """
    name = node.name.text
    filled = Filling(node, settings, trims, say, unit=terms.unit)
    chosen, others = filled.properties()
    for other in others:
        Properties("a method", node.name, (other,), known=_KNOWN, say=say, place=node.name.span)
    properties = Properties("a method", node.name, chosen, known=_KNOWN, say=say, place=node.name.span)
    properties.require("raw-edge", "raw")
    raw_edge = properties.word("raw-edge", _RAW_EDGE, kind="what becomes of a raw edge")
    shows = properties.word("shows", ("yes", "no"), kind="yes or no")
    turns = properties.word("turns", ("yes", "no"), kind="yes or no")
    faces = properties.word("faces", _FACES, kind="how plies lie")
    laid = _laid(properties.get("laid"), filled)
    allowance, second, turned = _allowances(filled)
    folded, trimmed = _worked(filled)
    if raw_edge == "turned" and node.makes.text != "seam" and allowance is not None and not turned:
        _report_not_turned(filled)
    if node.makes.text != "closure":
        _report_fastenings(node, say)
    passes, takes = _passes(filled), _takes(filled, terms.measured)
    laps, pieces, places = laps_of(filled), pieces_of(filled), places_of(filled)
    if filled.failed or allowance is None:
        return None
    return Making(
        name,
        titled(node.title, name),
        allowance,
        second,
        turned,
        folded,
        trimmed,
        laid,
        raw_edge or "raw",
        shows == "yes",
        turns == "yes",
        faces,
        properties.words("astm", example="SSa-1"),
        properties.words("iso", example="1.01.01"),
        filled.text_of(properties.get("press")),
        filled.text_of(properties.get("machine")),
        filled.text_of(properties.get("foot")),
        filled.text_of(properties.get("needs")),
        passes,
        takes,
        pieces,
        laps,
        places,
        tuple(Setting(setting, value) for setting, value in filled.words.items()),
        settings.place,
    )


def with_article(made: str) -> str:
    """`a seam`, `an attachment`: what a method makes."""
    return f"an {made}" if made[0] in "aeiou" else f"a {made}"


def _report_fastenings(node: tree.Method, say: Collector) -> None:
    """Say that what only closures have stands in a method that makes something else."""
    words = {tree.Laps: "laps", tree.TakesPieces: "takes … piece", tree.Lies: "lies"}
    for item in node.body:
        word = words.get(type(item))
        if word is not None:
            made = with_article(node.makes.text)
            told = NO_CLOSURE.at(item.span, word=word, method=node.name.text, made=made)
            say.add(told.help("write `makes closure`, or take the line out"))


def _allowances(
    filled: Filling,
) -> tuple[Expression | None, Expression | None, tuple[Expression, ...]]:
    """The allowance, that of the second side where it differs, and the depths by which it is turned back."""
    node, say = filled.node, filled.say
    owner = f"method `{node.name.text}`"
    statements: list[tuple[tree.Allowance | tree.TurnedBy, bool]] = [
        *filled.of(tree.Allowance),
        *filled.of(tree.TurnedBy),
    ]
    statements.sort(key=lambda one: one[0].span.start)
    found: dict[str, tuple[Expression | None, tuple[Expression, ...]]] = {}
    first: dict[str, tree.Allowance | tree.TurnedBy] = {}
    for item, holds in statements:
        sides = _sides_of(item)
        if not sides and isinstance(item, tree.Allowance) and item.on is not None:
            say.add(unknown_word(item.on.span, item.on.text, "a side of a seam", known=_SIDES))
        value = (
            _turned(filled, item)
            if isinstance(item, tree.TurnedBy)
            else (filled.length(item.width, "an allowance", least=NOTHING), ())
        )
        for side in sides if holds else ():
            if side in first:
                told = MORE_THAN_ONE.at(item.span, owner=owner, what="`allowance`")
                say.add(told.see(first[side].span, "the first"))
                break
            first[side], found[side] = item, value
    lacking = [side for side in _SIDES if side not in found]
    misplaced = any(not _sides_of(item) for item, _ in statements)
    if lacking and not misplaced and not has_broken(node.body):
        told = MISSING.at(node.name.span, owner=owner, name="allowance")
        if not statements:
            told = told.help("write a line `allowance …`; a bound edge has `allowance 0 in`")
        elif len(lacking) == 1:
            told = told.help(f"write a line `allowance … on {lacking[0]}`")
        else:
            told = told.help("write one for every choice, or one without `when`")
        say.add(told)
    if lacking:
        return None, None, ()
    (allowance, turned), (second, _) = found["first"], found["second"]
    return allowance, None if first["first"] is first["second"] else second, turned


def _sides_of(item: tree.Allowance | tree.TurnedBy) -> tuple[str, ...]:
    """The sides of a seam that an allowance is for: both where it does not say, none where it says wrong."""
    if isinstance(item, tree.TurnedBy) or item.on is None:
        return _SIDES
    return (item.on.text,) if item.on.text in _SIDES else ()


def _turned(filled: Filling, node: tree.TurnedBy) -> tuple[Expression | None, tuple[Expression, ...]]:
    """An allowance that is all turned back, once or twice."""
    if filled.node.makes.text == "seam":
        told = TURNED_SEAM.at(node.span, method=filled.node.name.text)
        filled.say.add(told.help("write `allowance`"))
    deep = filled.length(node.deep, "how deep an allowance is turned")
    under = filled.length(node.under, "what is turned under")
    if deep is None or (node.under and under is None):
        return None, ()
    if under is None:
        return deep, (deep,)
    if under.value.value > deep.value.value:
        filled.failed = True
        bounds = f"at most {deep.value}, which it is turned up by"
        filled.tell_length(node.under or node.deep, under, "what is turned under", bounds)
    whole = Quantity(deep.value.value + under.value.value, deep.value.unit)
    return Constant(whole, node.span), (deep, under)


def _report_not_turned(filled: Filling) -> None:
    """Report a raw edge that is turned, nothing says how deep."""
    if has_broken(filled.node.body):
        return
    told = NOT_TURNED.at(filled.node.name.span, method=filled.node.name.text)
    filled.say.add(told.help("write `turned by` and how deep in place of `allowance`"))


def _laid(found: tree.Property | None, filled: Filling) -> str | None:
    """How the seam is laid, its blanks filled."""
    said = filled.text_of(found)
    if found is None or said is None:
        return None
    words = said.replace("-", " ")
    if words not in LAID:
        filled.say.add(unknown_word(span_of(found.values), said, "how a seam is laid", known=LAID))
    return words


def _worked(filled: Filling) -> tuple[Expression | None, Expression | None]:
    """What the upper allowance folds over the lower, and what allowances are trimmed to."""
    folded: Expression | None = None
    trimmed: Expression | None = None
    for item, holds in filled.of(tree.Allowance):
        over = filled.length(item.folded, "what an allowance folds over")
        left = filled.length(item.trimmed, "what an allowance is trimmed to")
        if holds:
            folded, trimmed = over or folded, left or trimmed
    return folded, trimmed


def _passes(filled: Filling) -> tuple[Pass, ...]:
    """The operations whose condition holds, in order."""
    done = []
    for item, holds in filled.of(tree.Pass):
        stitch = None if item.stitch is None else _stitch(item.stitch, filled.say)
        length = filled.length(item.stitch_length, "a stitch length", most=_MOST_STITCH)
        inset = filled.length(item.inset, "a distance from an edge", least=NOTHING)
        words = filled.fill(item.text)
        inset_from = filled.fill(item.inset_from) if item.inset_from else None
        reason(item.text, "pass", "what is done", filled.say)
        through = _through(item.through, filled)
        if holds:
            done.append(Pass(words, stitch, length, inset, inset_from, through, item.span))
    return tuple(done)


def _through(words: tuple[tree.Word, ...], filled: Filling) -> tuple[str, ...]:
    """What a row goes through; what is neither ply, allowances nor trim is reported."""
    materials = tuple(item.name.text for item in filled.node.body if isinstance(item, tree.Material))
    known = (*_SIDES, "allowances", *materials)
    for word in words:
        if word.text not in known:
            filled.say.add(unknown_word(word.span, word.text, "what a row goes through", known=known))
    return tuple(word.text for word in words)


def _stitch(node: tree.Number, say: Collector) -> str:
    number = node.span.text
    known = tuple(stitch.number for stitch in stitches())
    if number not in known:
        say.add(unknown_name(node.span, "stitch", number, known=known, where=" that we know of ISO 4915"))
    return number


def _lying(node: tree.Lying | None, say: Collector) -> tuple[str | None, str | None]:
    """How a trim lies, and to which side it is turned."""
    if node is None:
        return None, None
    if node.how.text not in LYING:
        say.add(unknown_word(node.how.span, node.how.text, "how a trim lies", known=LYING))
    return node.how.text, None if node.turned is None else node.turned.text


def _takes(filled: Filling, measured: Scope) -> tuple[Takes, ...]:
    """The trims used, each with the length that the use of the method states for it, else the method."""
    done = []
    for item, holds in filled.of(tree.Takes):
        word = item.material
        filled.known_material(word)
        lies, turned = _lying(item.lying, filled.say)
        width = filled.length(item.cut_width, "a cut width")
        long: Expression | None = filled.length(item.long, "the length of a trim", most=MOST_LENGTH)
        added = (item.overlapping, item.turning, item.joining, item.hanging, item.beyond)
        lengths = (filled.length(part, "a length added", least=NOTHING, most=MOST_LENGTH) for part in added)
        overlapping, turning, joining, hanging, beyond = lengths
        stated = filled.settings.length(word.text)
        if item.hanging is not None and (stated is not None or item.long is not None):
            place = item.span if stated is None else stated.span
            told = DRAWSTRING_LENGTH.at(place, trim=word.text)
            filled.say.add(told.help("leave its length out and set how far its ends hang out"))
        if stated is not None:
            long = meaning(stated, measured, filled.say, what="the length of a trim", wanted=LENGTH)
            filled.failed = filled.failed or long is None
        trim = filled.materials.get(word.text)
        if trim is not None and width is not None and holds:
            done.append(
                Takes(
                    trim.name,
                    word.text,
                    width,
                    lies,
                    turned,
                    long,
                    overlapping,
                    turning,
                    joining,
                    hanging,
                    beyond,
                    item.span,
                )
            )
    return tuple(done)
