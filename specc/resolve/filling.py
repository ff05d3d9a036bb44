"""Owns the settings of one use of a method: taken as its statements ask for them, filled in where it speaks.

Knows nothing of allowances, passes and trims, nor of the edges that the method is used on.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, TypeVar

from specc.diagnostics import Severity, declare
from specc.model.expression import Constant
from specc.resolve.choices import holds, report_same_options
from specc.resolve.codes import name_taken, one_of, out_of_range, unknown_name
from specc.resolve.expressions import OF_TRIMS, Scope, meaning, resolve_expression
from specc.resolve.fixed import fixed
from specc.resolve.properties import spoken
from specc.resolve.spoken_lengths import length_told, spoken_length
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.diagnostics import Collector
    from specc.model.expression import Expression
    from specc.model.material import Trim
    from specc.resolve.settings import Settings
    from specc.source import Span

UNKNOWN_BLANK = declare(
    "SPC217", "unknown-blank", Severity.ERROR, "`{{{name}}}` is not a setting of this method"
)
NO_WIDTH = declare("SPC307", "trim-without-width", Severity.ERROR, "trim `{trim}` does not say its {what}")

NOTHING = Quantity.of(0, UNITS["mm"])
MOST_WIDTH = Quantity.of(500, UNITS["mm"])
LENGTH = (Dimension.LENGTH,)
_BLANK = re.compile(r"\{([^{}]*)\}")
_ASKS = tree.Parameter | tree.Choice | tree.Material | tree.Let

Item = TypeVar("Item", tree.Allowance, tree.TurnedBy, tree.Takes, tree.TakesPieces, tree.Lies, tree.Pass)


class Filling:
    """The settings of one use, taken in the order of the method's statements.

    `words` are the settings as printed, `materials` the trims by what the method calls them; `failed` says
    that something was wrong.
    """

    def __init__(
        self,
        node: tree.Method,
        settings: Settings,
        trims: Mapping[str, Trim | None],
        say: Collector,
        *,
        unit: str,
    ) -> None:
        """`unit` is that of the sheet, in which lengths stand in the words."""
        self._unit = unit
        self.words: dict[str, str] = {}
        self.materials: dict[str, Trim] = {}
        self.failed = False
        self.say = say
        self.node = node
        self.settings = settings
        self._trims = trims
        self._told: set[Span] = set()
        self._origins: dict[str, Span] = {}
        self._values: dict[str, Expression] = {}
        self._sizes: dict[tuple[str, str], Expression | None] = {}
        self._choices: dict[str, tuple[tree.Choice, str]] = {}
        for item in node.body:
            if isinstance(item, _ASKS):
                self._take(item)

    def _take(self, item: _ASKS) -> None:
        """Take the setting that a statement asks for, or the value that it names."""
        name = item.name.text
        if isinstance(item, tree.Let) and item.when is not None and not self._holds(item.when):
            resolve_expression(item.value, self._scope, self.say)
            return
        if name in self._origins:
            first = self._origins[name]
            self.say.add(name_taken(item.name.span, "a setting of this method", name, first=first))
            return
        self._origins[name] = item.name.span
        match item:
            case tree.Parameter():
                self._keep(item.name, item.default, self.settings.value(item, self._scope))
            case tree.Let():
                self._keep(item.name, item.value, resolve_expression(item.value, self._scope, self.say))
            case tree.Choice():
                report_same_options(item, self.say)
                option = self.settings.option(item)
                self._choices[name] = (item, option)
                self.words[name] = option.replace("-", " ")
            case tree.Material():
                self._take_material(item)

    def _keep(self, name: tree.Word, written: tree.Expression, value: Expression | None) -> None:
        """Keep a value that can be reckoned before any size is drawn."""
        known = None if value is None else fixed(value)
        if value is not None and known is None:
            what, bounds = f"`{name.text}`", "a number that can be reckoned"
            found = " ".join(written.span.text.split())
            self.say.add(out_of_range(written.span, what, bounds, found=f"`{found}`"))
        if known is None:
            self.failed = True
        else:
            self._values[name.text] = known
            self.words[name.text] = spoken_length(known.value, self._unit)

    def _take_material(self, item: tree.Material) -> None:
        name = item.name.text
        word = self.settings.material(item, self.node.name.text)
        trim = None if word is None else self._trims.get(word.text)
        if word is not None and word.text not in self._trims:
            self.say.add(unknown_name(word.span, "trim", word.text, known=self._trims))
        self._sizes |= dict.fromkeys(((what, name) for what in OF_TRIMS), None)
        if trim is None:
            self.failed = True
            return
        self.materials[name] = trim
        self.words[name] = trim.title
        for what, size in _sizes_of(trim).items():
            if size is not None:
                self._sizes[what, name] = Constant(size, trim.origin)

    def _holds(self, when: tree.When) -> bool:
        return bool(holds(when, self._choices, self.say))

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

    def of(self, kind: type[Item]) -> Iterator[tuple[Item, bool]]:
        """The method's statements of a kind in their order, each with whether its condition holds."""
        for item in self.node.body:
            if isinstance(item, kind):
                yield item, item.when is None or self._holds(item.when)

    def properties(self) -> tuple[tuple[tree.Property, ...], tuple[tree.Property, ...]]:
        """The properties that hold, and those of other choices."""
        chosen: list[tree.Property] = []
        others: list[tree.Property] = []
        for item in self.node.body:
            if isinstance(item, tree.Property):
                chosen.append(item)
            elif isinstance(item, tree.ChosenProperty):
                (chosen if self._holds(item.when) else others).append(item.property)
        return tuple(chosen), tuple(others)

    def length(
        self,
        node: tree.Expression | None,
        what: str,
        *,
        least: Quantity | None = None,
        most: Quantity = MOST_WIDTH,
    ) -> Constant | None:
        """The expression as a length with the settings filled in; above nothing, or not below `least`.

        A size that the trim lacks is reported, and so is a length that no maker can have meant.
        """
        for size, name in _sizes_asked(node):
            trim = self.materials.get(name)
            if trim is not None and _sizes_of(trim)[size] is None:
                told = NO_WIDTH.at(self.settings.place, trim=trim.name, what=size)
                self.say.add(told.see(trim.origin, "declared here").help(f"give it a line `{size}`"))
        found = meaning(node, self._scope, self.say, what=what, wanted=LENGTH)
        if node is None or found is None:
            self.failed = self.failed or node is not None
            return None
        known = fixed(found)
        small = known is not None and (known.value.value < 0 or (least is None and not known.value.value))
        if known is None or small or known.value.value > most.value:
            self.failed = True
            bounds = f"above {NOTHING} and up to {most}" if least is None else f"{least} to {most}"
            self.tell_length(node, known, what, bounds)
        return known

    def tell_length(self, node: tree.Expression, known: Constant | None, what: str, bounds: str) -> None:
        """Report a length out of bounds: at the setting that it is, else at the use."""
        set_here = known is not None and isinstance(node, tree.Named)
        place = known.origin if known is not None and set_here else self.settings.place
        if place in self._told:
            return
        self._told.add(place)
        came_to = "no number" if known is None else known.value
        told = out_of_range(place, what, bounds, found=came_to)
        self.say.add(told if place.file is node.span.file else told.see(node.span, "reckoned here"))

    def known_material(self, word: tree.Word) -> None:
        """Report a material that the method does not name."""
        materials = tuple(item.name.text for item in self.node.body if isinstance(item, tree.Material))
        if word.text not in materials:
            self.say.add(unknown_name(word.span, "material", word.text, known=materials))

    def text_of(self, found: tree.Property | None) -> str | None:
        """A property's text with its blanks filled."""
        if found is None:
            return None
        match found.values:
            case ((tree.Text() as text,),):
                return self.fill(text)
            case _:
                return spoken(found.values)

    def fill(self, text: tree.Text) -> str:
        """A text with what was set in place of the names in braces."""
        known = tuple(self._origins)

        def blank(match: re.Match[str]) -> str:
            name = match.group(1)
            length = length_told(name)
            if length is not None:
                return spoken_length(length, self._unit)
            if name not in known:
                self.say.add(UNKNOWN_BLANK.at(_place_in(text, match), name=name).help(one_of(known)))
            return self.words.get(name, name)

        return _BLANK.sub(blank, text.text)


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
