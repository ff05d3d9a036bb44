"""Owns the verbs `lower`, `raise` and `widen`: an end of a curve moves along its neighbour.

Knows no other verb.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.fitting import fitted_inside
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import replaced, with_gone
from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named
from specc.pattern.measure import run_length

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.geometry.point import Point
    from specc.model.alteration import MoveCorner
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Edge, Piece

LEAST_RATIO: Final = 1e-3  # a handle shorter than this share of what it was gives no direction any more


def apply(
    pieces: tuple[Piece, ...], step: MoveCorner, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the corners moved along the neighbours; the curves keep their end directions."""
    by = evaluate(step.by)
    for ref in step.edges:
        moved = _moved(pieces, step, ref, by=by)
        if isinstance(moved, Refusal):
            return moved
        pieces = moved
    return pieces


def _moved(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: MoveCorner, ref: PartRef, *, by: float
) -> tuple[Piece, ...] | Refusal:
    piece = found(pieces, ref.piece, ref.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    facts = (("piece", piece.name), ("edge", edge.name), ("corner", step.corner))
    if step.corner not in {edge.start, edge.end}:
        cure = f"name `{edge.start}` or `{edge.end}`"
        return Refusal("not-a-corner-of-edge", facts, step.origin, cure)
    if by < 0.0:
        return Refusal(
            "amount-not-positive", (*facts, ("by", by)), step.origin, "use the verb for the other way"
        )
    if by <= SAME:
        return pieces
    at_start = edge.start == step.corner
    index = piece.edges.index(edge)
    neighbour = piece.edges[(index - 1 if at_start else index + 1) % len(piece.edges)]
    # Seen from the corner the neighbour's first run begins there.
    run = neighbour.parts[-1].reversed() if at_start else neighbour.parts[0]
    if step.verb == "raise":
        corner = run.start - run.start_direction() * by
        left = Path((Line(corner, run.start),)).joined(run)
    else:
        available = run.length()
        if by >= available - SAME:
            more = (*facts, ("neighbour", neighbour.name), ("available", available), ("by", by))
            return Refusal("trim-too-long", more, step.origin, "take less than {available}")
        _, left = run.split_at(by)
        corner = left.start
    part = edge.parts[0].reversed() if at_start else edge.parts[-1]
    moved = _with_end(part, corner)
    if moved is None:
        return Refusal("corner-would-turn-over", (*facts, ("by", by)), step.origin, "take a smaller amount")
    altered = _with_edges(piece, edge, neighbour, moved=moved, left=left, at_start=at_start)
    return replaced(pieces, with_gone(piece, altered, f"cut off {line_of(step.origin)}"))


def _with_edges(  # noqa: PLR0913 - two edges and their new runs
    piece: Piece, edge: Edge, neighbour: Edge, *, moved: Path, left: Path, at_start: bool
) -> Piece:
    if at_start:
        new = replace(edge, parts=(moved.reversed(), *edge.parts[1:]))
        beside = replace(neighbour, parts=(*neighbour.parts[:-1], left.reversed()))
    else:
        new = replace(edge, parts=(*edge.parts[:-1], moved))
        beside = replace(neighbour, parts=(left, *neighbour.parts[1:]))
    # Places are measured from the start corner: they shift where it is the start that moved.
    shifted = new if at_start else beside
    was = edge if at_start else neighbour
    growth = run_length(shifted) - run_length(was)
    remade = {edge.name: new, neighbour.name: beside}
    altered = replace(
        piece,
        edges=tuple(remade.get(e.name, e) for e in piece.edges),
        notches=tuple(
            replace(notch, at=notch.at + growth) if notch.edge == shifted.name else notch
            for notch in piece.notches
        ),
    )
    return fitted_inside(piece, altered)


def _with_end(path: Path, end: Point) -> Path | None:
    """The path with its end moved and its directions kept at both ends; None where they cannot be kept.

    Only the last segment changes if it is a curve, or the only one, or if the end moves straight on.
    """
    *others, last = path.segments
    if isinstance(last, Cubic):
        curve = _stretched(last, end)
        return Path((*others, curve)) if curve is not None else None
    if not others:
        return Path((Line(last.start, end),))
    ahead = end - last.start
    if abs(last.end_direction().cross(ahead)) <= SAME and last.end_direction().dot(ahead) > SAME:
        return Path((*others, Line(last.start, end)))
    return _all_stretched(path, end)


def _stretched(cubic: Cubic, end: Point) -> Cubic | None:
    """The cubic with its end moved: each handle as much longer as the chord is along its direction."""
    old, new = cubic.end - cubic.start, end - cubic.start
    first = _ratio(cubic.start_direction(), old, new)
    second = _ratio(cubic.end_direction(), old, new)
    if min(first, second) <= LEAST_RATIO:
        return None
    return Cubic(
        cubic.start,
        cubic.start + (cubic.leaving - cubic.start) * first,
        end - (cubic.end - cubic.arriving) * second,
        end,
    )


def _ratio(direction: Point, old: Point, new: Point) -> float:
    """How much longer the chord became along a direction; as a whole, if it stood square to it."""
    before = direction.dot(old)
    if abs(before) <= LEAST_RATIO * old.norm():
        return new.norm() / old.norm()
    return direction.dot(new) / before


def _all_stretched(path: Path, end: Point) -> Path | None:
    """The whole path stretched along its two end directions, so that both stay and all joints stay smooth."""
    u, v = path.start_direction(), path.end_direction()
    cross = u.cross(v)
    if abs(cross) <= LEAST_RATIO:
        return None
    origin = path.start
    old, new = path.end - origin, end - origin
    first, second = old.cross(v), u.cross(old)
    if min(abs(first), abs(second)) <= LEAST_RATIO * old.norm():
        return None
    a, b = new.cross(v) / first, u.cross(new) / second
    if min(a, b) <= LEAST_RATIO:
        return None

    def where(point: Point) -> Point:
        away = point - origin
        return origin + u * (a * away.cross(v) / cross) + v * (b * u.cross(away) / cross)

    return path.mapped(where).between_points(origin, end)
