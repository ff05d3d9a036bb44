"""Owns sheets of properties, labels, notes, and what is taken in from elsewhere.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Broken, Property, Ref, Text, Word
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.makings import Setting


class Sheet(NamedTuple):
    """A declaration of properties. `kind`: garment, cloth, trim, thread, care."""

    kind: Word
    name: Word | None
    title: Text | None
    body: tuple[Property | Broken, ...]
    span: Span


class Label(NamedTuple):
    """A label and the edge it is sewn in at."""

    name: Word
    at: Ref
    body: tuple[Property | Broken, ...]
    span: Span


class Note(NamedTuple):
    """A remark for the maker, about the garment or about one part."""

    text: Text
    on: Ref | None
    span: Span


class UseFile(NamedTuple):
    """Another file whose declarations are taken in; the path is relative to this file."""

    path: Text
    span: Span


class Hold(NamedTuple):
    """A stretch of an edge where the trim is held in, as a share of the edge's length."""

    share: Expression
    along: Ref
    start: Expression | None
    end: Expression | None
    span: Span


class Renaming(NamedTuple):
    """The name, and perhaps the title, that a block's pieces bear in this garment."""

    name: Word
    title: Text | None
    span: Span


class UseLibrary(NamedTuple):
    """A chart or block by name (`kind`: chart, block), with parameters."""

    kind: Word
    name: Word
    renaming: Renaming | None
    settings: tuple[Setting, ...]
    span: Span
