"""Owns reading texts in the tests of the syntax, and walking their trees; knows no tests."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from specc.source import SourceFile
from specc.syntax import parse

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.syntax import tree

STATEMENTS = Path(__file__).parent / "statements.garment"


def read(text: str) -> tuple[tree.Tree, tuple[Diagnostic, ...]]:
    return parse(SourceFile("test.garment", text))


def sound(text: str) -> tree.Tree:
    """The tree of a text without faults."""
    parsed, said = read(text)
    assert [diagnostic.message for diagnostic in said] == []
    return parsed


def only(text: str) -> tree.Declaration:
    """The one declaration of a text without faults."""
    (declaration,) = sound(text).declarations
    return declaration


def told(text: str) -> list[tuple[str, str]]:
    """The codes of what is wrong in `text`, with the characters that are blamed."""
    return [(diagnostic.code.id, diagnostic.span.text) for diagnostic in read(text)[1] if diagnostic.span]


def nodes(value: object) -> Iterator[object]:
    """Every node of a tree, each before what it is made of."""
    if isinstance(value, tuple):
        if hasattr(value, "_fields"):
            yield value
        for item in value:
            yield from nodes(item)
