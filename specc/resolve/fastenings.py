"""Owns what a method says of fastenings: how far a closure laps, what it takes by the piece, where these lie.

Knows nothing of the edges that are closed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.model.closing import Places, TakesPieces
from specc.model.expression import Constant
from specc.resolve.codes import MORE_THAN_ONE, out_of_range
from specc.resolve.filling import NOTHING
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.model.expression import Expression
    from specc.resolve.filling import Filling

_MOST_PIECES: Final = 100


def laps_of(filled: Filling) -> Expression | None:
    """How far a closure laps."""
    statements = [item for item in filled.node.body if isinstance(item, tree.Laps)]
    for more in statements[1:]:
        told = MORE_THAN_ONE.at(more.span, owner=f"method `{filled.node.name.text}`", what="`laps`")
        filled.say.add(told.see(statements[0].span, "the first"))
    return filled.length(statements[0].by, "a lap", least=NOTHING) if statements else None


def pieces_of(filled: Filling) -> tuple[TakesPieces, ...]:
    """The trims used by the piece."""
    done = []
    for item, holds in filled.of(tree.TakesPieces):
        filled.known_material(item.material)
        count = item.number.value
        if count.denominator > 1 or not 0 < count <= _MOST_PIECES:
            bounds = f"a whole number from 1 to {_MOST_PIECES}"
            filled.say.add(out_of_range(item.number.span, "a number of pieces", bounds, found=count))
        trim = filled.materials.get(item.material.text)
        if trim is not None and holds:
            rounding = None if item.rounding is None else item.rounding.text
            name = item.material.text
            done.append(TakesPieces(trim.name, name, int(count), item.each_place, rounding, item.span))
    return tuple(done)


def places_of(filled: Filling) -> Places | None:
    """Where the fastenings lie: the first statement whose condition holds."""
    found = None
    for item, holds in filled.of(tree.Lies):
        if not holds:
            continue
        inset = filled.length(item.inset, "a distance from the edge", least=NOTHING)
        other = filled.length(item.other, "a distance from the edge", least=NOTHING)
        hole = filled.length(item.hole, "the length of a hole")
        if found is None and inset is not None:
            across = item.way is not None and item.way.text == "across"
            found = Places(inset, other or inset, hole, across, item.span)
    if found is None and any(item.each_place for item, _ in filled.of(tree.TakesPieces)):
        place = filled.node.name.span
        on_edge = Constant(NOTHING, place)
        return Places(on_edge, on_edge, None, False, place)
    return found
