"""Owns printing a tree for people: one line a statement, its place before it, expressions with all brackets.

Knows nothing of the language's own spelling: what is printed is not meant to be read back.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Protocol

from specc.syntax import tree
from specc.units import format_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.source import Span

_INDENT = "  "
_BODIES = frozenset(("body", "settings", "runs", "steps"))


class _Node(Protocol):
    """What all nodes have in common."""

    @property
    def _fields(self) -> tuple[str, ...]: ...

    @property
    def span(self) -> Span: ...


def show(parsed: tree.Tree) -> str:
    """The tree as indented text, each line headed by the number of the line that it was read from."""
    width = len(str(parsed.file.line_count))
    lines = (line for declaration in parsed.declarations for line in _statement(declaration, 0))
    shown = "".join(f"{number:>{width}}  {text}\n" for number, text in lines)
    return shown.encode("utf-8", errors="backslashreplace").decode(
        "utf-8"
    )  # lone surrogates cannot be printed


def _statement(node: _Node, depth: int) -> Iterator[tuple[int, str]]:
    yield node.span.line, f"{_INDENT * depth}{type(node).__name__} {_told(node)}".rstrip()
    for name in node._fields:
        if name in _BODIES:
            for inner in getattr(node, name):
                yield from _statement(inner, depth + 1)


def _told(node: _Node) -> str:
    """What a statement says, its body left out."""
    if isinstance(node, tree.Property):
        values = ", ".join(" ".join(_inline(atom) for atom in value) for value in node.values)
        return f"{node.name.text}: {values}"
    parts = []
    for name in node._fields:
        value = getattr(node, name)
        if name not in (*_BODIES, "span") and value not in (None, (), False):
            label = name.replace("_", " ")
            parts.append(label if value is True else f"{label}: {_inline(value)}")
    return "; ".join(parts)


def _inline(value: object) -> str:
    """A part of a statement on one line."""
    match value:
        case str():
            told = value
        case tree.Text(text=text):
            told = json.dumps(text, ensure_ascii=False)
        case tree.Word(text=text) | tree.Date(text=text):
            told = text
        case tree.Number(value=number, unit=unit):
            told = f"{format_number(number)} {unit}" if unit else format_number(number)
        case tree.Reckoned(value=value):
            told = _inline(value)
        case tree.Pair(left=left, right=right):
            told = f"{_inline(left)}: {_inline(right)}"
        case tree.Ref(first=first, second=second):
            told = first.text if second is None else f"{first.text}.{second.text}"
        case tuple() if not hasattr(value, "_fields"):  # nodes are tuples too
            told = ", ".join(_inline(item) for item in value)
        case _:
            told = _expression(value)
    return told


def _expression(value: object) -> str:
    match value:
        case tree.Named(name=name):
            told = name.text
        case tree.Compass(side=side):
            told = side
        case tree.Arithmetic(operator=operator, left=left, right=right):
            told = f"({_inline(left)} {operator} {_inline(right)})"
        case tree.Signed(sign=sign, value=inner):
            told = f"({sign}{_inline(inner)})"
        case tree.Asked(what=what, refs=(ref,)):
            told = f"({what} of {_inline(ref)})"
        case tree.Asked(what=what, refs=(first, second)):
            told = f"({what} from {_inline(first)} to {_inline(second)})"
        case tree.Applied(function=function, values=values):
            told = f"({function} of {' and '.join(_inline(inner) for inner in values)})"
        case _:
            told = f"{type(value).__name__}({_told(value)})"  # type: ignore[arg-type]  # all else is a node
    return told
