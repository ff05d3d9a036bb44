"""Owns what the user of a block or method sets: parameters by value, choices by word, materials by name.

Knows nothing of what the settings are for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.names import did_you_mean, nearest
from specc.resolve.codes import (
    UNKNOWN_PROPERTY,
    name_taken,
    there_are,
    unknown_name,
    unknown_word,
    wrong_value,
)
from specc.resolve.expressions import dimension_of, meaning, resolve_expression
from specc.resolve.properties import span_of, spoken
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector, Diagnostic
    from specc.model.expression import Expression
    from specc.resolve.expressions import Scope
    from specc.source import Span

NOT_SET = declare(
    "SPC305", "material-not-set", Severity.ERROR, "`{owner}` does not say which `{name}` it uses"
)


class Settings:
    """The settings of one use; each is taken once, and what nobody took is reported by `close`."""

    def __init__(self, body: tuple[object, ...], place: Span, say: Collector) -> None:
        self.place = place
        self.holds = tuple(item for item in body if isinstance(item, tree.Hold))
        self._spacings = tuple(item for item in body if isinstance(item, tree.Spacing))
        self.allowances = tuple(item for item in body if isinstance(item, tree.AllowanceOn))
        self._lengths: dict[str, tree.CutLong] = {}
        self._say = say
        self._written: dict[str, tree.Property] = {}
        self._taken: dict[str, None] = {}
        self._measured: dict[str, None] = {}
        self._not_set: dict[str, Diagnostic] = {}
        for item in body:
            if isinstance(item, tree.CutLong):
                self._state(item)
            if not isinstance(item, tree.Property):
                continue
            name = item.name.text
            if name in self._written:
                first = self._written[name].name.span
                say.add(name_taken(item.name.span, "a setting", name, first=first))
            else:
                self._written[name] = item

    def _state(self, item: tree.CutLong) -> None:
        name = item.material.text
        if name in self._lengths:
            first = self._lengths[name].material.span
            self._say.add(name_taken(item.material.span, "a length of", name, first=first))
        self._lengths.setdefault(name, item)

    def length(self, material: str) -> tree.Expression | None:
        """The length that is stated for a material, if one is."""
        self._measured[material] = None
        stated = self._lengths.get(material)
        return None if stated is None else stated.length

    def take(self, name: str) -> tree.Property | None:
        """The setting `name`, if it was written."""
        self._taken[name] = None
        return self._written.get(name)

    def value(self, parameter: tree.Parameter, scope: Scope) -> Expression | None:
        """What the parameter is set to, or its default; a setting has the dimension of the default."""
        default = resolve_expression(parameter.default, scope, self._say)
        written = self.take(parameter.name.text)
        if default is None or written is None:
            return default
        if len(written.values) == 1 and len(written.values[0]) == 1:
            value = _reckoned(written.values[0][0], scope)
            if value is not None:
                what = f"`{parameter.name.text}`"
                return meaning(value, scope, self._say, what=what, wanted=(dimension_of(default),))
        wanted = dimension_of(default).with_article
        self._say.add(wrong_value(span_of(written.values), parameter.name.text, wanted))
        return None

    def option(self, choice: tree.Choice) -> str:
        """The word that the choice is set to, or its first."""
        options = [option.text for option in choice.options]
        written = self.take(choice.name.text)
        if written is None:
            return options[0]
        words = spoken(written.values)
        if words.replace(" ", "-") not in options:
            kind = f"a choice of `{choice.name.text}`"
            self._say.add(unknown_word(span_of(written.values), words, kind, known=options))
            return options[0]
        return words.replace(" ", "-")

    def material(self, material: tree.Material, owner: str) -> tree.Word | None:
        """The name of the trim that stands for the material; its absence is reported."""
        name = material.name.text
        written = self.take(name)
        if written is None:
            title = f", the {material.title.text}" if material.title else ""
            told = NOT_SET.at(self.place, owner=owner, name=name)
            self._not_set[name] = told.help(f"write `{name}` and the name of a trim{title}")
            return None
        if len(written.values) == 1 and len(written.values[0]) == 1:
            atom = written.values[0][0]
            if isinstance(atom, tree.Word):
                return atom
        self._say.add(wrong_value(span_of(written.values), name, "the name of a trim"))
        return None

    def close(
        self, owner: str, *, holds: bool = False, spacings: bool = False, allowances: bool = False
    ) -> None:
        """Report every setting that nobody took, and materials that none of those can have been meant for."""
        unused = tuple(name for name in self._written if name not in self._taken)
        for name in unused:
            told = UNKNOWN_PROPERTY.at(self._written[name].name.span, owner=owner, what="setting", name=name)
            self._say.add(told.help(did_you_mean(name, self._taken) or there_are(self._taken)))
        self._say.add(*(told for name, told in self._not_set.items() if not nearest(name, unused)))
        for hold in () if holds else self.holds[:1]:
            place = hold.span.file.span(hold.span.start, hold.span.start + len("hold"))
            told = UNKNOWN_PROPERTY.at(place, owner=owner, what="setting", name="hold")
            self._say.add(told.help("a finish or hem holds its trim in; a seam takes `ease` or `gathers`"))
        for spacing in () if spacings else self._spacings[:1]:
            place = spacing.span.file.span(spacing.span.start, spacing.span.start + len("places"))
            told = UNKNOWN_PROPERTY.at(place, owner=owner, what="setting", name="places")
            self._say.add(told.help("a `closure` has fastenings at places"))
        for name, stated in self._lengths.items():
            if name not in self._measured:
                where = f" of {owner}"
                known = tuple(self._measured)
                self._say.add(unknown_name(stated.material.span, "material", name, known=known, where=where))
        for placed in () if allowances else self.allowances[:1]:
            place = placed.span.file.span(placed.span.start, placed.span.start + len("allowance"))
            self._say.add(UNKNOWN_PROPERTY.at(place, owner=owner, what="setting", name="allowance"))


def _reckoned(atom: tree.Atom, scope: Scope) -> tree.Expression | None:
    """The value that the atom is, or names; None when it is neither."""
    match atom:
        case tree.Number():
            return atom
        case tree.Word(text=name) if name in scope.values or name in scope.fixed:
            return tree.Named(atom, atom.span)
        case tree.Reckoned(value=value):
            return value
        case _:
            return None
