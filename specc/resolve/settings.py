"""Owns what the user of a block or method sets: parameters by value, choices by word, materials by name.

Knows nothing of what the settings are for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.names import did_you_mean
from specc.resolve.codes import NAME_TAKEN, UNKNOWN_PROPERTY, listed, unknown_word, wrong_value
from specc.resolve.expressions import Scope, dimension_of, meaning, resolve_expression
from specc.resolve.properties import span_of, spoken
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import Expression
    from specc.source import Span

NOT_SET = declare("SPC305", "material-not-set", Severity.ERROR, "`{owner}` does not say which `{name}` it uses")


class Settings:
    """The settings of one use; each is taken once, and what nobody took is reported."""

    def __init__(self, body: tuple[object, ...], place: Span, say: Collector) -> None:
        self.place = place
        self._open: dict[str, tree.Property] = {}
        self._taken: set[str] = set()
        for item in body:
            if isinstance(item, tree.Property):
                name = item.name.text
                if name in self._open:
                    said = NAME_TAKEN.at(item.name.span, kind="setting", name=name)
                    say.add(said.see(self._open[name].span, "first here"))
                else:
                    self._open[name] = item

    def take(self, name: str) -> tree.Property | None:
        """The setting `name`, if it was written."""
        self._taken.add(name)
        return self._open.get(name)

    def value(self, parameter: tree.Parameter, scope: Scope, say: Collector) -> Expression | None:
        """What the parameter is set to, or its default; a setting has the dimension of the default."""
        default = resolve_expression(parameter.default, scope, say)
        written = self.take(parameter.name.text)
        if default is None or written is None:
            return default
        if len(written.values) == 1 and len(written.values[0]) == 1:
            atom = written.values[0][0]
            if isinstance(atom, tree.Number):
                what = f"`{parameter.name.text}`"
                return meaning(atom, scope, say, what=what, wanted=(dimension_of(default),))
        wanted = dimension_of(default).with_article
        say.add(wrong_value(span_of(written.values), parameter.name.text, wanted))
        return None

    def option(self, choice: tree.Choice, say: Collector) -> str:
        """The word that the choice is set to, or its first."""
        options = [option.text for option in choice.options]
        written = self.take(choice.name.text)
        if written is None:
            return options[0]
        word = spoken(written.values).replace(" ", "-")
        if word in options:
            return word
        say.add(unknown_word(span_of(written.values), spoken(written.values), f"a choice of `{choice.name.text}`", known=options))
        return options[0]

    def material(self, material: tree.Material, owner: str, say: Collector) -> tree.Word | None:
        """The name of the trim or cloth that stands for the material; its absence is reported."""
        name = material.name.text
        written = self.take(name)
        if written is None:
            title = f", the {material.title.text}" if material.title else ""
            say.add(NOT_SET.at(self.place, owner=owner, name=name).help(f"write `{name}` and the name of a trim{title}"))
            return None
        if len(written.values) == 1 and len(written.values[0]) == 1 and isinstance(written.values[0][0], tree.Word):
            return written.values[0][0]
        say.add(wrong_value(span_of(written.values), name, "the name of a trim"))
        return None

    def report_unused(self, owner: str, say: Collector) -> None:
        """Report every setting that nobody took."""
        for name, item in self._open.items():
            if name not in self._taken:
                said = UNKNOWN_PROPERTY.at(item.name.span, kind=owner, name=name)
                say.add(said.help(did_you_mean(name, self._taken) or listed(sorted(self._taken))))
