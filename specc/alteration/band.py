"""Owns the verb `band`: a straight band as long as edges are; knows no other verb."""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING, Final

from specc.alteration.refusal import Refusal, found, missing
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length
from specc.pattern.piece import Edge, Piece

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.model.reshaping import Band

GRAIN: Final = 0.5  # share of the band's length over which its grain line is drawn


def apply(
    pieces: tuple[Piece, ...], step: Band, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces and the band: as long as its edges are as sewn, as wide as stated, the grain along it.

    It lies along x: `bottom` to the right, `end` up, `top` to the left, `start` down.
    """
    if piece_named(pieces, step.name) is not None:
        return Refusal(
            "piece-name-taken", (("name", step.name),), step.origin, "give the band a name of its own"
        )
    by = evaluate(step.by)
    if by <= SAME:
        return Refusal("amount-not-positive", (("by", by),), step.origin, "give the band a width")
    share = 1.0 if step.share is None else evaluate(step.share)
    if share <= SAME:
        return Refusal("share-of-band", (("share", share),), step.origin, "give a share such as 85%")
    laid = []
    for ref in step.edges:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        edge = edge_named(piece, ref.name)
        if edge is None:
            return missing(piece, ref)
        laid.append((piece, edge))
    cut, length = _measured(laid)
    return (*pieces, _band(step.name, length * share, by, cut))


def _measured(laid: list[tuple[Piece, Edge]]) -> tuple[int, float]:
    """How many bands there are, and how long the edges are that one of them goes along.

    An edge lies in the garment as often as its piece is cut, twice as often on the fold unless it is the fold
    itself. Edges that reach the fold go on in its other half, and both halves take one band; edges that do
    not, such as armholes, take one band for every time that all of them are there.
    """
    times = [piece.cut * (1 if piece.fold in {None, edge.name} else 2) for piece, edge in laid]
    bands = gcd(*times)
    if any(_reaches_fold(piece, edge) for piece, edge in laid):
        bands = max(1, bands // 2)
    whole = sum(stitched_length(edge) * often for (_, edge), often in zip(laid, times, strict=True))
    return bands, whole / bands


def _reaches_fold(piece: Piece, edge: Edge) -> bool:
    fold = edge_named(piece, piece.fold) if piece.fold else None
    return fold is not None and bool({edge.start, edge.end} & {fold.start, fold.end})


def _band(name: str, length: float, width: float, cut: int) -> Piece:
    low, right, high, left = Point(0.0, 0.0), Point(length, 0.0), Point(length, width), Point(0.0, width)
    corners = ("bottom-start", "bottom-end", "top-end", "top-start")
    sides = (low, right, high, left)
    edges = tuple(
        Edge(edge, corners[i], corners[(i + 1) % 4], (Path.through(sides[i], sides[(i + 1) % 4]),))
        for i, edge in enumerate(("bottom", "end", "top", "start"))
    )
    middle, reach = Point(0.5 * length, 0.5 * width), Point(0.5 * GRAIN * length, 0.0)
    grain = Path.through(middle - reach, middle + reach)
    return Piece(name, name, edges, grain=grain, cut=cut)
