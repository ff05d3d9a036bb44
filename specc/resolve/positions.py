"""Owns giving positions of points their meaning; knows nothing of how they are found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.block import At, Going, Moved, On, Toward, Turned
from specc.model.expression import Constant
from specc.model.tracing import Meeting, Near
from specc.resolve.expressions import SIDES
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.model.expression import Expression
    from specc.resolve.within import Within

_LENGTH = (Dimension.LENGTH,)
_ANGLE = (Dimension.ANGLE,)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)


def resolve_position(  # noqa: PLR0911 a kind each
    node: tree.At | tree.Moved | tree.Turned | tree.On | tree.Meeting | tree.Near, within: Within
) -> At | Moved | Turned | On | Meeting | Near | None:
    """The position; None after a fault, which is reported."""
    match node:
        case tree.At():
            across = within.value(node.across, "a distance to the right", _LENGTH)
            up = within.value(node.up, "a distance up", _LENGTH)
            return None if across is None or up is None else At(across, up)
        case tree.Moved():
            start = within.ref(node.origin, "point")
            moves = [_move(move, within) for move in node.moves]
            done = tuple(move for move in moves if move is not None)
            return None if start is None or len(done) < len(moves) else Moved(start, done)
        case tree.Turned():
            point = within.ref(node.point, "point")
            around = within.ref(node.around, "point")
            angle = within.value(node.angle, "a turn", _ANGLE)
            return None if point is None or around is None or angle is None else Turned(point, angle, around)
        case tree.On():
            edge = within.ref(node.edge, "edge", "line")
            at = within.value(node.at, "a place on an edge", _PLACE)
            if edge is None or at is None:
                return None
            corner = None if node.corner is None else within.parts.corner(node.corner, edge, within.say)
            return On(edge, at, corner)
        case tree.Meeting():
            first, second = within.drawing.path(node.first), within.drawing.path(node.second)
            return None if first is None or second is None else Meeting(first, second)
        case tree.Near():
            across = within.value(node.across, "a distance to the right", _LENGTH)
            up = within.value(node.up, "a distance up", _LENGTH)
            path = within.drawing.path(node.path)
            return None if across is None or up is None or path is None else Near(across, up, path)


def _move(node: tree.Step | tree.Going | tree.Toward, within: Within) -> Going | Toward | None:
    by = within.value(node.by, "a distance", _LENGTH)
    if isinstance(node, tree.Toward):
        target = within.ref(node.target, "point")
        return None if by is None or target is None else Toward(target, by)
    if isinstance(node, tree.Step):
        direction: Expression | None = Constant(Quantity.of(SIDES[node.side], UNITS["deg"]), node.span)
    else:
        direction = within.value(node.direction, "a direction", _ANGLE)
    return None if by is None or direction is None else Going(direction, by)
