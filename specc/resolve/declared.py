"""Owns the table of what a spec and its library declare, by kind and name.

Knows nothing of what the declarations say.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, TypeVar

from specc.diagnostics import Severity, declare
from specc.model.garment import Used
from specc.resolve.codes import name_taken, unknown_name
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector

NO_NAME = declare("SPC312", "no-name", Severity.ERROR, "a {kind} needs a name by which it is spoken of")

Node = TypeVar("Node", tree.Chart, tree.Block, tree.Method)

# Those in one row share their names, since something speaks of any of them by name alone: `accept … on NAME`
# of what is sewn, a setting of a method of what is bought. Pieces share theirs too, across all blocks.
_SPACES = (("seam", "finish", "hem", "closure"), ("cloth", "trim", "thread", "packing"))
_NAMED = (*_SPACES[1], "colourway")


class _Kept(NamedTuple):
    """The first declaration of a name in its space."""

    kind: str
    word: tree.Word


class Declared:
    """Declarations by kind and name; of two with one name the first counts, and the second is reported.

    A library declaration gives way to one of the user's own with the same name.
    """

    def __init__(
        self, own: Iterable[tree.Declaration], library: Iterable[tree.Declaration], say: Collector
    ) -> None:
        self._say = say
        self._named: dict[tuple[str, str], tree.Chart | tree.Block | tree.Method] = {}
        self._used: set[tuple[str, str]] = set()
        kept: dict[tuple[str, str], _Kept] = {}
        mine = []
        for declaration in own:
            named = _kind_and_name(declaration)
            if named is None:
                continue
            key = (_space(named.kind), named.word.text)
            if key in kept:
                first = kept[key]
                told = name_taken(named.word.span, f"a {first.kind}", named.word.text, first=first.word.span)
                say.add(told.help("give one of them another name"))
                continue
            kept[key] = named
            if isinstance(declaration, tree.Chart | tree.Block | tree.Method):
                mine.append(declaration)
                self._named[named.kind, named.word.text] = declaration
        self._mine = tuple(mine)
        for declaration in library:
            if isinstance(declaration, tree.Chart | tree.Block | tree.Method):
                kind = type(declaration).__name__.lower()
                self._named.setdefault((kind, declaration.name.text), declaration)

    def find(self, kind: type[Node], word: tree.Word) -> Node | None:
        """The chart, block or method of that name; its absence is reported."""
        kind_name = kind.__name__.lower()
        found = self._named.get((kind_name, word.text))
        if isinstance(found, kind):
            self._used.add((kind_name, word.text))
            return found
        known = [name for which, name in self._named if which == kind_name]
        told = unknown_name(word.span, kind_name, word.text, known=known)
        others = [which for which, name in self._named if name == word.text]
        self._say.add(told.note(f"`{word.text}` is a {others[0]}") if others else told)
        return None

    def names(self, kind: type[Node]) -> tuple[str, ...]:
        """The names of all of a kind."""
        return tuple(node.name.text for node in self._named.values() if isinstance(node, kind))

    def methods_making(self, made: tuple[str, ...]) -> tuple[str, ...]:
        """The names of the methods that make one of these."""
        nodes = (node for node in self._named.values() if isinstance(node, tree.Method))
        return tuple(node.name.text for node in nodes if node.makes.text in made)

    def is_own(self, node: tree.Chart | tree.Block | tree.Method) -> bool:
        """Whether the user wrote it, rather than the library."""
        return any(node is one for one in self._mine)

    def used(self) -> tuple[Used, ...]:
        """Those that something has asked for: charts, blocks, methods, each by name."""
        order = tuple(kind.__name__.lower() for kind in (tree.Chart, tree.Block, tree.Method))
        keys = sorted(self._used, key=lambda key: (order.index(key[0]), key[1]))
        return tuple(Used(kind, name, self._named[kind, name].span) for kind, name in keys)

    def left_over(self) -> tuple[Used, ...]:
        """All of the user's own that nothing has asked for, in the order of the text, placed at its name."""
        return tuple(
            Used(type(node).__name__.lower(), node.name.text, node.name.span)
            for node in self._mine
            if (type(node).__name__.lower(), node.name.text) not in self._used
        )

    def unused(self, kind: type[Node]) -> tuple[Node, ...]:
        """Those of the user's own that nothing has asked for."""
        return tuple(
            node
            for node in self._mine
            if isinstance(node, kind) and (kind.__name__.lower(), node.name.text) not in self._used
        )


def report_nameless(sheets: Iterable[tree.Sheet], say: Collector) -> bool:
    """Report what is bought, and colourways, that nothing could speak of; whether there are any."""
    nameless = [sheet for sheet in sheets if sheet.kind.text in _NAMED and sheet.name is None]
    for sheet in nameless:
        kind = sheet.kind.text
        told = NO_NAME.at(sheet.kind.span, kind=kind)
        say.add(told.help(f"write one before the title: `{kind} NAME … {{`"))
    return bool(nameless)


def _space(kind: str) -> str:
    return next((row[0] for row in _SPACES if kind in row), kind)


def _kind_and_name(declaration: tree.Declaration) -> _Kept | None:
    match declaration:
        case tree.Sheet(kind=kind, name=tree.Word() as name) if kind.text in _NAMED:
            return _Kept(kind.text, name)
        case tree.Finish(kind=kind, name=name):
            return _Kept(kind.text, name)
        case (
            tree.Chart()
            | tree.Block()
            | tree.Method()
            | tree.Seam()
            | tree.Closure()
            | tree.Measure()
            | tree.Label()
        ):
            return _Kept(type(declaration).__name__.lower(), declaration.name)
        case _:
            return None
