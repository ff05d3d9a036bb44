"""Owns the ways from one place of a sheet to another: how places are called, and what leads to them.

Knows nothing of formats. A place is called by its page and a name, `making/side`; whatever leads to a place
that this sheet does not have is left out in the end, so that no page needs to know what stands on another.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.document.document import Facts, Group, Heading, Listing
from specc.document.link import Link
from specc.document.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.document.document import Block, Page


def made(name: str) -> str:
    """Where a seam, finish, hem or closure is described."""
    return f"making/{name}"


def cut_for(trim: str, used_on: str) -> str:
    """Where it is said how long a trim is cut for a seam or finish."""
    return f"trims/{trim}/{used_on}"


def billed(name: str) -> str:
    """The line of a material in the bill; the first, where it comes in several colours."""
    return f"bill/{name}"


def drawn(piece: str) -> str:
    """Where a piece is drawn."""
    return f"pieces/{piece}"


def line_of(number: int) -> str:
    """A line of the spec on the page of the source."""
    return f"line-{number}"


def listed(parts: Iterable[tuple[str, str]], of: int = 0) -> tuple[str, tuple[Link, ...]]:
    """Texts with commas between, each leading to its place, if any, as the text numbered `of`."""
    text = ""
    links: list[Link] = []
    for part, to in parts:
        text += ", " if text else ""
        if to:
            links.append(Link(of, len(text), len(text) + len(part), to))
        text += part
    return text, tuple(links)


def without_dead_ends(pages: tuple[Page, ...]) -> tuple[Page, ...]:
    """The pages without what leads to a place that none of them has."""
    kinds = [page.kind for page in pages]
    places = frozenset(
        (*kinds, *(place for page in pages for block in page.blocks for place in _places(block)))
    )
    return tuple(replace(page, blocks=_all(page.blocks, places)) for page in pages)


def _places(block: Block) -> Iterator[str]:
    match block:
        case Group(blocks=inner):
            for one in inner:
                yield from _places(one)
        case Heading(place=place):
            yield place
        case Table(rows=rows):
            yield from (row.place for row in rows)
        case Listing(lines=lines):
            yield from map(line_of, range(1, len(lines) + 1))


def _all(blocks: tuple[Block, ...], places: frozenset[str]) -> tuple[Block, ...]:
    return tuple(_only(block, places) for block in blocks)


def _only(block: Block, places: frozenset[str]) -> Block:
    """The block with those links that lead to one of the places."""
    match block:
        case Group(blocks=inner):
            return replace(block, blocks=_all(inner, places))
        case Heading(links=links):
            return replace(block, links=_live(links, places))
        case Facts(rows=facts):
            return replace(
                block, rows=tuple(replace(fact, to=fact.to if fact.to in places else "") for fact in facts)
            )
        case Table(rows=rows):
            return replace(block, rows=tuple(replace(row, links=_live(row.links, places)) for row in rows))
        case _:
            return block


def _live(links: tuple[Link, ...], places: frozenset[str]) -> tuple[Link, ...]:
    return tuple(link for link in links if link.to in places)
