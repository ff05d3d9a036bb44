"""Owns the settings of one use of a method, and what its statements come to with them.

Knows nothing of the edges it is used on.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.stitches import stitches
from specc.model.closing import Places, TakesPieces
from specc.model.construction import Pass, Takes
from specc.model.expression import Constant
from specc.resolve.broken import has_broken
from specc.resolve.choices import holds, report_same_options
from specc.resolve.codes import MISSING, MORE_THAN_ONE, name_taken, one_of, out_of_range, unknown_name
from specc.resolve.expressions import OF_TRIMS, Scope, meaning
from specc.resolve.fixed import fixed
from specc.resolve.properties import reason, spoken
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.expression import Expression
    from specc.model.material import Trim
    from specc.resolve.settings import Settings
    from specc.source import Span

UNKNOWN_BLANK = declare(
    "SPC217", "unknown-blank", Severity.ERROR, "`{{{name}}}` is not a setting of this method"
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
NO_WIDTH = declare("SPC307", "trim-without-width", Severity.ERROR, "trim `{trim}` does not say its {what}")


_LENGTH = (Dimension.LENGTH,)
_BLANK = re.compile(r"\{([^{}]*)\}")
_NOTHING = Quantity.of(0, UNITS["mm"])
_MOST_PIECES = 100
_MOST_STITCH = Quantity.of(50, UNITS["mm"])
_MOST_WIDTH = Quantity.of(500, UNITS["mm"])


class Filling:
    """The settings of one use, taken as the method's statements are met in order."""

    def __init__(
        self, node: tree.Method, settings: Settings, trims: Mapping[str, Trim | None], say: Collector
    ) -> None:
        self.words: dict[str, str] = {}
        self.failed = False
        self._node = node
        self._settings = settings
        self._trims = trims
        self._say = say
        self._told: set[Span] = set()
        self._origins: dict[str, Span] = {}
        self._materials: dict[str, Trim] = {}
        self._values: dict[str, Expression] = {}
        self._sizes: dict[tuple[str, str], Expression | None] = {}
        self._choices: dict[str, tuple[tree.Choice, str]] = {}

    def take(self, item: object) -> None:
        """Take the setting that a statement asks for."""
        if not isinstance(item, tree.Parameter | tree.Choice | tree.Material):
            return
        name = item.name.text
        if name in self._origins:
            first = self._origins[name]
            self._say.add(name_taken(item.name.span, "a setting of this method", name, first=first))
            return
        self._origins[name] = item.name.span
        match item:
            case tree.Parameter():
                self._take_parameter(item)
            case tree.Choice():
                report_same_options(item, self._say)
                option = self._settings.option(item)
                self._choices[name] = (item, option)
                self.words[name] = option.replace("-", " ")
            case tree.Material():
                self._take_material(item)

    def _take_parameter(self, item: tree.Parameter) -> None:
        value = self._settings.value(item, self._scope)
        known = None if value is None else fixed(value)
        if value is not None and known is None:
            what, bounds = f"`{item.name.text}`", "a number that can be reckoned"
            written = " ".join(item.default.span.text.split())
            self._say.add(out_of_range(item.default.span, what, bounds, found=f"`{written}`"))
        if known is None:
            self.failed = True
        else:
            self._values[item.name.text] = known
            self.words[item.name.text] = str(known.value)

    def _take_material(self, item: tree.Material) -> None:
        name = item.name.text
        word = self._settings.material(item, self._node.name.text)
        trim = None if word is None else self._trims.get(word.text)
        if word is not None and word.text not in self._trims:
            self._say.add(unknown_name(word.span, "trim", word.text, known=self._trims))
        self._sizes |= dict.fromkeys(((what, name) for what in OF_TRIMS), None)
        if trim is None:
            self.failed = True
            return
        self._materials[name] = trim
        self.words[name] = trim.title
        for what, size in _sizes_of(trim).items():
            if size is not None:
                self._sizes[what, name] = Constant(size, trim.origin)

    @property
    def _scope(self) -> Scope:
        """What the method's expressions may speak of so far; on settings that failed all is silent."""
        return Scope(
            {},
            kind="setting",
            fixed=self._values,
            sizes=self._sizes,
            missing=frozenset(self._origins.keys() - self._values.keys()),
        )

    def allowance(self) -> tuple[Expression | None, tuple[Expression, ...]]:
        """The allowance that the method wants, and the depths by which it is turned back."""
        statements = [item for item in self._node.body if isinstance(item, tree.Allowance | tree.TurnedBy)]
        owner = f"method `{self._node.name.text}`"
        if not statements:
            if not has_broken(self._node.body):
                told = MISSING.at(self._node.name.span, owner=owner, name="allowance")
                self._say.add(told.help("write a line `allowance …`; a bound edge has `allowance 0 in`"))
            return None, ()
        first, *others = statements
        if others:
            told = MORE_THAN_ONE.at(others[0].span, owner=owner, what="`allowance`")
            self._say.add(told.see(first.span, "the first"))
        if isinstance(first, tree.Allowance):
            return self._length(first.width, "an allowance", least=_NOTHING), ()
        return self._turned(first)

    def _turned(self, node: tree.TurnedBy) -> tuple[Expression | None, tuple[Expression, ...]]:
        """An allowance that is all turned back, once or twice."""
        if self._node.makes.text == "seam":
            told = TURNED_SEAM.at(node.span, method=self._node.name.text)
            self._say.add(told.help("write `allowance`"))
        deep = self._length(node.deep, "how deep an allowance is turned")
        under = self._length(node.under, "what is turned under")
        if deep is None or (node.under and under is None):
            return None, ()
        if under is None:
            return deep, (deep,)
        if under.value.value > deep.value.value:
            self.failed = True
            bounds = f"at most {deep.value}, which it is turned up by"
            self._tell_length(node.under or node.deep, under, "what is turned under", bounds)
        whole = Quantity(deep.value.value + under.value.value, deep.value.unit)
        return Constant(whole, node.span), (deep, under)

    def report_not_turned(self) -> None:
        """Report a raw edge that is turned, nothing says how deep."""
        if has_broken(self._node.body):
            return
        told = NOT_TURNED.at(self._node.name.span, method=self._node.name.text)
        self._say.add(told.help("write `turned by` and how deep in place of `allowance`"))

    def _length(
        self,
        node: tree.Expression | None,
        what: str,
        *,
        least: Quantity | None = None,
        most: Quantity = _MOST_WIDTH,
    ) -> Constant | None:
        """The expression as a length with the settings filled in; above nothing, or not below `least`.

        A size that the trim lacks is reported, and so is a length that no maker can have meant.
        """
        for size, name in _sizes_asked(node):
            trim = self._materials.get(name)
            if trim is not None and _sizes_of(trim)[size] is None:
                told = NO_WIDTH.at(self._settings.place, trim=trim.name, what=size)
                self._say.add(told.see(trim.origin, "declared here").help(f"give it a line `{size}`"))
        found = meaning(node, self._scope, self._say, what=what, wanted=_LENGTH)
        if node is None or found is None:
            self.failed = self.failed or node is not None
            return None
        known = fixed(found)
        small = known is not None and (known.value.value < 0 or (least is None and not known.value.value))
        if known is None or small or known.value.value > most.value:
            self.failed = True
            bounds = f"above {_NOTHING} and up to {most}" if least is None else f"{least} to {most}"
            self._tell_length(node, known, what, bounds)
        return known

    def _tell_length(self, node: tree.Expression, known: Constant | None, what: str, bounds: str) -> None:
        """Report a length out of bounds: at the setting that it is, else at the use."""
        set_here = known is not None and isinstance(node, tree.Named)
        place = known.origin if known is not None and set_here else self._settings.place
        if place in self._told:
            return
        self._told.add(place)
        came_to = "no number" if known is None else known.value
        told = out_of_range(place, what, bounds, found=came_to)
        self._say.add(told if place.file is node.span.file else told.see(node.span, "reckoned here"))

    def passes(self) -> tuple[Pass, ...]:
        """The operations whose condition holds, in order."""
        done = []
        for item in self._node.body:
            if not isinstance(item, tree.Pass):
                continue
            stitch = None if item.stitch is None else self._stitch(item.stitch)
            length = self._length(item.stitch_length, "a stitch length", most=_MOST_STITCH)
            inset = self._length(item.inset, "a distance from an edge", least=_NOTHING)
            words = self._fill(item.text)
            inset_from = self._fill(item.inset_from) if item.inset_from else None
            reason(item.text, "pass", "what is done", self._say)
            if item.when is None or holds(item.when, self._choices, self._say):
                done.append(Pass(words, stitch, length, inset, inset_from, item.span))
        return tuple(done)

    def _stitch(self, node: tree.Number) -> str:
        number = node.span.text
        known = tuple(stitch.number for stitch in stitches())
        if number not in known:
            self._say.add(
                unknown_name(node.span, "stitch", number, known=known, where=" that we know of ISO 4915")
            )
        return number

    def takes(self) -> tuple[Takes, ...]:
        """The trims used."""
        done = []
        for item in self._node.body:
            if not isinstance(item, tree.Takes):
                continue
            word = item.material
            self._known_material(word)
            width = self._length(item.cut_width, "a cut width")
            overlapping, turning, joining, hanging = (
                self._length(part, "a length added", least=_NOTHING)
                for part in (item.overlapping, item.turning, item.joining, item.hanging)
            )
            trim = self._materials.get(word.text)
            if trim is not None and width is not None:
                added = overlapping, turning, joining, hanging
                done.append(Takes(trim.name, word.text, width, *added, item.span))
        return tuple(done)

    def laps(self) -> Expression | None:
        """How far a closure laps."""
        statements = [item for item in self._node.body if isinstance(item, tree.Laps)]
        for more in statements[1:]:
            told = MORE_THAN_ONE.at(more.span, owner=f"method `{self._node.name.text}`", what="`laps`")
            self._say.add(told.see(statements[0].span, "the first"))
        return self._length(statements[0].by, "a lap", least=_NOTHING) if statements else None

    def pieces(self) -> tuple[TakesPieces, ...]:
        """The trims used by the piece."""
        done = []
        for item in self._node.body:
            if not isinstance(item, tree.TakesPieces):
                continue
            self._known_material(item.material)
            count = item.number.value
            if count.denominator > 1 or not 0 < count <= _MOST_PIECES:
                bounds = f"a whole number from 1 to {_MOST_PIECES}"
                self._say.add(out_of_range(item.number.span, "a number of pieces", bounds, found=count))
            trim = self._materials.get(item.material.text)
            holding = item.when is None or holds(item.when, self._choices, self._say)
            if trim is not None and holding:
                rounding = None if item.rounding is None else item.rounding.text
                name = item.material.text
                done.append(TakesPieces(trim.name, name, int(count), item.each_place, rounding, item.span))
        return tuple(done)

    def places(self) -> Places | None:
        """Where the fastenings lie: the first statement whose condition holds."""
        found = None
        for item in self._node.body:
            if not isinstance(item, tree.Lies):
                continue
            if item.when is not None and not holds(item.when, self._choices, self._say):
                continue
            inset = self._length(item.inset, "a distance from the edge", least=_NOTHING)
            other = self._length(item.other, "a distance from the edge", least=_NOTHING)
            hole = self._length(item.hole, "the length of a hole")
            if found is None and inset is not None:
                across = item.way is not None and item.way.text == "across"
                found = Places(inset, other or inset, hole, across, item.span)
        if found is None and any(
            item.each_place for item in self._node.body if isinstance(item, tree.TakesPieces)
        ):
            on_edge = Constant(_NOTHING, self._node.name.span)
            return Places(on_edge, on_edge, None, False, self._node.name.span)
        return found

    def _known_material(self, word: tree.Word) -> None:
        materials = tuple(item.name.text for item in self._node.body if isinstance(item, tree.Material))
        if word.text not in materials:
            self._say.add(unknown_name(word.span, "material", word.text, known=materials))

    def text_of(self, found: tree.Property | None) -> str | None:
        """A property's text with its blanks filled."""
        if found is None:
            return None
        match found.values:
            case ((tree.Text() as text,),):
                return self._fill(text)
            case _:
                return spoken(found.values)

    def _fill(self, text: tree.Text) -> str:
        known = tuple(self._origins)

        def blank(match: re.Match[str]) -> str:
            name = match.group(1)
            if name not in known:
                self._say.add(UNKNOWN_BLANK.at(self._place_in(text, match), name=name).help(one_of(known)))
            return self.words.get(name, name)

        return _BLANK.sub(blank, text.text)

    @staticmethod
    def _place_in(text: tree.Text, match: re.Match[str]) -> Span:
        """The place of a blank; the whole text where a backslash in it makes them differ in length."""
        if "\\" in text.span.text:
            return text.span
        start = text.span.start + 1
        return text.span.file.span(start + match.start(), start + match.end())


def _sizes_of(trim: Trim) -> dict[str, Quantity | None]:
    """What a trim may be asked for; the keys are those of `OF_TRIMS`."""
    return {"width": trim.width, "diameter": trim.diameter, "thickness": trim.thickness}


def _sizes_asked(node: tree.Expression | None) -> tuple[tuple[str, str], ...]:
    match node:
        case tree.Asked(what=what, refs=refs) if what in OF_TRIMS:
            return ((what, refs[0].first.text),)
        case tree.Arithmetic(left=left, right=right):
            return (*_sizes_asked(left), *_sizes_asked(right))
        case tree.Signed(value=value):
            return _sizes_asked(value)
        case tree.Applied(values=values):
            return tuple(asked for value in values for asked in _sizes_asked(value))
        case _:
            return ()
