"""Owns giving meaning to an edge divided into two, with the names that this leaves behind.

Knows nothing of how it is carried out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.alteration import Level
from specc.model.dividing import Divide, corner_between
from specc.resolve.codes import NAMED_TWICE, name_taken
from specc.resolve.parts import Gone
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.alteration import Place
    from specc.model.expression import PartRef
    from specc.resolve.parts import Parts
    from specc.resolve.reshaping import Finder


def resolve_divide(
    node: tree.Divide, edges: tuple[PartRef, ...], finder: Finder, parts: Parts, say: Collector
) -> Divide | None:
    """What the statement asks for, of `edges` that are there; None after a fault."""
    at = _at(node, edges, finder) if edges else None
    if at is None or not all(_names_free(node, edge, parts, say) for edge in edges):
        return None
    for edge in edges:
        _divided(node, edge, at, parts)
    return Divide(edges, at, (node.into[0].text, node.into[1].text), node.span)


def _at(node: tree.Divide, edges: tuple[PartRef, ...], finder: Finder) -> Place | Level | None:
    """The place or level; a name alone is that of a line."""
    at = node.at
    if isinstance(at, tree.Place) and isinstance(at.at, tree.Named) and at.corner is None:
        at = tree.Level(at.at.name, None, None, at.span)
    if isinstance(at, tree.Place):
        places = [finder.place(at, edge) for edge in edges]
        return None if None in places else places[0]
    level = finder.level(at, tuple(ref.first for ref in node.edges))
    return level if isinstance(level, Level) else None


def _names_free(node: tree.Divide, edge: PartRef, parts: Parts, say: Collector) -> bool:
    """Whether the piece has none of the names that come; one may be the edge's own."""
    first, second = node.into
    if first.text == second.text:
        told = NAMED_TWICE.at(second.span, name=second.text).see(first.span, "first here")
        say.add(told.help("give the two parts two names"))
        return False
    kinds = parts.pieces[edge.piece or ""].kinds
    corner = corner_between(first.text, second.text)
    for name, place in ((first.text, first.span), (second.text, second.span), (corner, node.span)):
        if name in kinds and name != edge.name:
            where = f" on `{edge.piece}`"
            say.add(name_taken(place, "a part", name, first=None, where=where).help("take another name"))
            return False
    return True


def _divided(node: tree.Divide, edge: PartRef, at: Place | Level, parts: Parts) -> None:
    """Take in the two edges and their corner, and let the old one go."""
    names = tuple(word.text for word in node.into)
    own = parts.pieces[edge.piece or ""]
    ends = own.ends.pop(edge.name, None)
    if edge.name not in names:
        how = f"divided into `{names[0]}` and `{names[1]}` on line {node.span.line}"
        parts.lose(edge, Gone(how, edge.origin))
    corner = corner_between(*names)
    own.kinds |= {**dict.fromkeys(names, "edge"), corner: "point"}
    # Which end lies above a level is only known once the piece is drawn.
    if ends is not None and not isinstance(at, Level):
        near = at.from_corner or ends[0]
        own.ends[names[0]] = (near, corner)
        own.ends[names[1]] = (corner, ends[0] if near == ends[1] else ends[1])
