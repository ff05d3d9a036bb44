"""Owns filling in a method for one use: settings, materials, the words between braces.

Knows nothing of the edges it is used on.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.construction import Making, Pass, Setting, Takes
from specc.model.expression import Constant, Expression
from specc.resolve.codes import unknown_name
from specc.resolve.expressions import Scope, meaning
from specc.resolve.properties import Properties
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.material import Trim
    from specc.resolve.settings import Settings

MAKES_OTHER = declare("SPC216", "method-makes-other", Severity.ERROR, "method `{method}` makes a {made}, not a {wanted}")
UNKNOWN_BLANK = declare("SPC217", "unknown-blank", Severity.ERROR, "`{{{name}}}` is not a setting of this method")
NO_WIDTH = declare("SPC307", "trim-without-width", Severity.ERROR, "trim `{trim}` does not say its width")

_KNOWN = ("raw-edge", "shows", "faces", "astm", "iso", "press", "machine")
_RAW_EDGE = ("covered", "overlocked", "enclosed", "turned", "raw")
_LENGTH = (Dimension.LENGTH,)
_BLANK = re.compile(r"\{([^{}]*)\}")


def resolve_making(
    node: tree.Method, settings: Settings, trims: Mapping[str, Trim], say: Collector, *, wanted: str
) -> Making | None:
    """The method as it is used here; None when it makes another kind of thing or lacks what it needs."""
    made = node.makes.text
    if (made == "seam") != (wanted == "seam"):
        say.add(MAKES_OTHER.at(settings.place, method=node.name.text, made=made, wanted=wanted))
        return None
    filled = _Filling(settings, trims, say)
    for item in node.body:
        filled.take(item, node.name.text)
    settings.report_unused(f"method `{node.name.text}`", say)
    properties = Properties("method", node.body, known=_KNOWN, say=say, place=node.name.span)
    properties.require("raw-edge")
    allowance = next((item for item in node.body if isinstance(item, tree.Allowance)), None)
    width = None if allowance is None else filled.length(allowance.width, "an allowance")
    if filled.failed or width is None:
        return None
    return Making(
        node.name.text,
        node.title.text if node.title else node.name.text,
        width,
        properties.word("raw-edge", _RAW_EDGE, kind="what becomes of a raw edge") or "raw",
        properties.word("shows", ("yes", "no"), kind="yes or no") == "yes",
        properties.word("faces", ("right sides together", "wrong sides together"), kind="how plies lie"),
        properties.words("astm"),
        properties.words("iso"),
        filled.text_of(properties.get("press")),
        filled.text_of(properties.get("machine")),
        filled.passes(node),
        filled.takes(node),
        tuple(Setting(name, value) for name, value in filled.words.items()),
        settings.place,
    )


class _Filling:
    """The settings of one use, taken as the method's statements are met in order."""

    def __init__(self, settings: Settings, trims: Mapping[str, Trim], say: Collector) -> None:
        self.settings = settings
        self.trims = trims
        self.say = say
        self.words: dict[str, str] = {}
        self.materials: dict[str, Trim] = {}
        self.fixed: dict[str, Expression] = {}
        self.widths: dict[str, Expression] = {}
        self.choices: dict[str, str] = {}
        self.failed = False

    @property
    def scope(self) -> Scope:
        """What the method's expressions may speak of so far."""
        return Scope({}, fixed=self.fixed, widths=self.widths)

    def take(self, item: object, method: str) -> None:
        """Take the setting that a statement asks for."""
        match item:
            case tree.Parameter():
                value = self.settings.value(item, self.scope, self.say)
                if value is None:
                    self.failed = True
                else:
                    self.fixed[item.name.text] = value
                    self.words[item.name.text] = _printed(value)
            case tree.Choice():
                option = self.settings.option(item, self.say)
                self.choices[item.name.text] = option
                self.words[item.name.text] = option.replace("-", " ")
            case tree.Material():
                self._material(item, method)

    def _material(self, item: tree.Material, method: str) -> None:
        word = self.settings.material(item, method, self.say)
        trim = None if word is None else self.trims.get(word.text)
        if word is not None and trim is None:
            self.say.add(unknown_name(word.span, "trim", word.text, known=self.trims))
        if trim is None:
            self.failed = True
            return
        self.materials[item.name.text] = trim
        self.words[item.name.text] = trim.title
        if trim.width is not None:
            self.widths[item.name.text] = Constant(trim.width, trim.origin)

    def length(self, node: tree.Expression | None, what: str) -> Expression | None:
        """The expression as a length with the settings filled in; a width that the trim lacks is reported."""
        for name in _widths_asked(node):
            trim = self.materials.get(name)
            if trim is not None and trim.width is None:
                said = NO_WIDTH.at(self.settings.place, trim=trim.name).see(trim.origin, "declared here")
                self.say.add(said.help("give it a line `width`"))
                self.failed = True
                return None
        return meaning(node, self.scope, self.say, what=what, wanted=_LENGTH)

    def passes(self, node: tree.Method) -> tuple[Pass, ...]:
        """The operations whose condition holds, in order."""
        done = []
        for item in node.body:
            if not isinstance(item, tree.Pass) or (item.when and not self._holds(item.when)):
                continue
            stitch = str(item.stitch.value) if item.stitch else None
            length = self.length(item.stitch_length, "a stitch length")
            inset = self.length(item.inset, "a distance from an edge")
            inset_from = self._fill(item.inset_from) if item.inset_from else None
            done.append(Pass(self._fill(item.text), stitch, length, inset, inset_from, item.span))
        return tuple(done)

    def takes(self, node: tree.Method) -> tuple[Takes, ...]:
        """The trims used."""
        done = []
        for item in node.body:
            if not isinstance(item, tree.Takes) or item.material.text not in self.materials:
                continue
            width = self.length(item.cut_width, "a cut width")
            if width is None:
                continue
            added = [
                self.length(part, "a length added")
                for part in (item.overlapping, item.turning, item.joining)
            ]
            trim = self.materials[item.material.text]
            done.append(Takes(trim.name, item.material.text, width, added[0], added[1], added[2], item.span))
        return tuple(done)

    def _holds(self, when: tree.When) -> bool:
        if when.choice.text not in self.choices:
            self.say.add(unknown_name(when.choice.span, "choice", when.choice.text, known=self.choices))
            return False
        return self.choices[when.choice.text] == when.option.text

    def text_of(self, found: tree.Property | None) -> str | None:
        """A property's text with its blanks filled."""
        if found is None or not isinstance(found.values[0][0], tree.Text):
            return None
        return self._fill(found.values[0][0])

    def _fill(self, text: tree.Text) -> str:
        def blank(match: re.Match[str]) -> str:
            name = match.group(1)
            if name not in self.words:
                self.say.add(UNKNOWN_BLANK.at(text.span, name=name))
            return self.words.get(name, name)

        return _BLANK.sub(blank, text.text)


def _printed(value: Expression) -> str:
    if isinstance(value, Constant):
        return str(value.value)
    return " ".join(value.origin.text.split())


def _widths_asked(node: tree.Expression | None) -> tuple[str, ...]:
    match node:
        case tree.Asked(what="width", refs=refs):
            return (refs[0].first.text,)
        case tree.Arithmetic(left=left, right=right):
            return (*_widths_asked(left), *_widths_asked(right))
        case tree.Signed(value=value):
            return _widths_asked(value)
        case tree.Applied(values=values):
            return tuple(name for value in values for name in _widths_asked(value))
        case _:
            return ()

