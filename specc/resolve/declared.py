"""Owns the table of what a spec and its library declare, by kind and name, and the names that failed.

Knows nothing of what the declarations say.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from specc.resolve.codes import NAME_TAKEN, unknown_name
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector

Node = TypeVar("Node", tree.Chart, tree.Block, tree.Method)


class Declared:
    """Declarations by kind; the first of two with one name counts, and the second is reported.

    A library declaration gives way to one of the user's own with the same name.
    """

    def __init__(
        self,
        own: tuple[tree.Declaration, ...],
        library: tuple[tree.Declaration, ...],
        library_names: tuple[str, ...],
        say: Collector,
    ) -> None:
        self._library_names = library_names
        self._say = say
        self._named: dict[tuple[str, str], tree.Chart | tree.Block | tree.Method] = {}
        mine: dict[tuple[str, str], tree.Word] = {}
        for declaration in own:
            named = _kind_and_name(declaration)
            if named is None:
                continue
            kind, word = named
            key = (kind, word.text)
            if key in mine:
                said = NAME_TAKEN.at(word.span, kind=kind, name=word.text)
                say.add(said.see(mine[key].span, "first here").help("give one of them another name"))
                continue
            mine[key] = word
            if isinstance(declaration, tree.Chart | tree.Block | tree.Method):
                self._named[key] = declaration
        for declaration in library:
            if isinstance(declaration, tree.Chart | tree.Block | tree.Method):
                kind = type(declaration).__name__.lower()
                self._named.setdefault((kind, declaration.name.text), declaration)

    def find(self, kind: type[Node], word: tree.Word) -> Node | None:
        """The chart, block or method of that name; its absence is reported unless its declaration failed."""
        kind_name = kind.__name__.lower()
        found = self._named.get((kind_name, word.text))
        if isinstance(found, kind):
            return found
        known = {name for which, name in self._named if which == kind_name}
        if kind is not tree.Method:
            known.update(self._library_names)
        self._say.add(unknown_name(word.span, kind_name, word.text, known=known))
        return None


def _kind_and_name(declaration: tree.Declaration) -> tuple[str, tree.Word] | None:
    match declaration:
        case tree.Sheet(kind=kind, name=tree.Word() as name):
            return kind.text, name
        case tree.Finish(kind=kind, name=name):
            return kind.text, name
        case tree.Chart() | tree.Block() | tree.Method() | tree.Seam() | tree.Measure() | tree.Label():
            return type(declaration).__name__.lower(), declaration.name
        case _:
            return None
