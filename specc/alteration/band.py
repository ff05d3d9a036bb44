"""Owns the verb `band`: a straight band as long as edges are; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from math import gcd
from typing import TYPE_CHECKING, Final

from specc.alteration.refusal import Refusal, found, missing
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.tolerance import SAME
from specc.model.reshaping import BAND, LAPPED_BAND
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length
from specc.pattern.piece import Edge, Piece

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.model.reshaping import Band

GRAIN: Final = 0.5  # share of the band's length or width over which its grain line is drawn


def apply(
    pieces: tuple[Piece, ...], step: Band, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces and the band: as long as its edges are as sewn, and as wide as stated.

    It lies along x: `bottom` to the right, `end` up, `top` to the left, `start` down. The grain runs along
    it, or across where the step says so.
    """
    if piece_named(pieces, step.name) is not None:
        return Refusal(
            "piece-name-taken", (("name", step.name),), step.origin, "give the band a name of its own"
        )
    by, lapping = evaluate(step.by), 0.0 if step.lapping is None else evaluate(step.lapping)
    if by <= SAME or (step.lapping is not None and lapping <= SAME):
        cure = "give the band a width" if by <= SAME else "say how far it laps"
        return Refusal("amount-not-positive", (("by", by if by <= SAME else lapping),), step.origin, cure)
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
    cut, length = _measured(laid, in_one=step.in_one)
    return (*pieces, replace(_band(step, length * share, by, lapping=lapping), cut=cut))


def _measured(laid: list[tuple[Piece, Edge]], *, in_one: bool) -> tuple[int, float]:
    """How many bands there are, and how long the edges are that one of them goes along.

    An edge lies in the garment as often as its piece is cut, twice as often on the fold unless it is the fold
    itself. Edges that reach the fold go on in its other half, and both halves take one band; edges that do
    not, such as armholes, take one band for every time that all of them are there, if not one in all.
    """
    times = [piece.cut * (1 if piece.fold in {None, edge.name} else 2) for piece, edge in laid]
    bands = gcd(*times)
    if in_one:
        bands = 1
    elif any(_reaches_fold(piece, edge) for piece, edge in laid):
        bands = max(1, bands // 2)
    whole = sum(stitched_length(edge) * often for (_, edge), often in zip(laid, times, strict=True))
    return bands, whole / bands


def _reaches_fold(piece: Piece, edge: Edge) -> bool:
    fold = edge_named(piece, piece.fold) if piece.fold else None
    return fold is not None and bool({edge.start, edge.end} & {fold.start, fold.end})


def _band(step: Band, length: float, width: float, *, lapping: float) -> Piece:
    whole = length + lapping
    places = {
        "bottom-start": Point(0.0, 0.0),
        "lap-bottom": Point(length, 0.0),
        "bottom-end": Point(whole, 0.0),
        "top-end": Point(whole, width),
        "lap-top": Point(length, width),
        "top-start": Point(0.0, width),
    }
    ring = LAPPED_BAND if lapping else BAND
    edges = tuple(
        Edge(edge, start, end, (Path.through(places[start], places[end]),))
        for (start, edge), (end, _) in zip(ring, (*ring[1:], ring[0]), strict=True)
    )
    middle = Point(0.5 * whole, 0.5 * width)
    reach = Point(0.0, 0.5 * GRAIN * width) if step.across else Point(0.5 * GRAIN * whole, 0.0)
    return Piece(step.name, step.name, edges, grain=Path.through(middle - reach, middle + reach))
