"""Owns where a slash meets an edge and what stands in its way; knows no verb."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.alteration.refusal import Refusal
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.pattern.measure import stitched_length, two_pointed_outline
from specc.pattern.outline import drawn_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.model.alteration import Place
    from specc.model.expression import Expression
    from specc.pattern.measure import PlaceOnEdge
    from specc.pattern.piece import Dart, Edge, Piece
    from specc.source import Span

CLEAR: Final = 1.0  # mm that a slash keeps from the ends of an edge and from darts on it


def stitched_place(edge: Edge, place: Place, evaluate: Callable[[Expression], float]) -> float:
    """The stitched length from the edge's start corner to a place, given as a share or as a length."""
    whole = stitched_length(edge)
    at = evaluate(place.at)
    if not _is_length(place.at):
        at *= whole
    return whole - at if place.from_corner == edge.end and edge.end != edge.start else at


def _is_length(expression: Expression) -> bool:
    dimension = getattr(expression, "dimension", None) or expression.value.dimension  # type: ignore[union-attr]
    return dimension.length == 1


def is_clear(edge: Edge, place: PlaceOnEdge) -> bool:
    """Whether a place keeps clear of the ends of its edge and of the darts on it."""
    return min(place.along, edge.parts[place.part].length() - place.along) >= CLEAR


def obstacle(
    piece: Piece, cut: Path, darts: tuple[Dart, ...], *, facts: Facts, origin: Span
) -> Refusal | None:
    """What a straight cut would run into on its way, if anything.

    That may be one of the edge darts, a dart inside the piece, or the outline. `facts` are the piece, and as
    `dart` and `edge` what the slash joins.
    """
    legs = [(dart.name, Path.through(dart.first, dart.pivot, dart.second)) for dart in darts]
    legs += [(inner.name, two_pointed_outline(inner)) for inner in piece.two_pointed]
    crossed = next((name for name, path in legs if crossings(cut, path)), None)
    if crossed is not None:
        cure = "swing or release `{crossed}` first, or place the slash elsewhere"
        return Refusal("slash-crosses-dart", (*facts, ("crossed", crossed)), origin, cure)
    reach = cut.length()
    # Legs of darts from the same pivot touch the slash there; the outline may touch it only at its ends.
    if any(CLEAR / 10.0 < met.along < reach - CLEAR / 10.0 for met in crossings(cut, drawn_outline(piece))):
        return Refusal("slash-leaves-piece", facts, origin, "place the slash elsewhere")
    return None
