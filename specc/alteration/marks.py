"""Owns how notches, gathers and folds follow when places along their edge shift; knows no verb."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.pattern.piece import Edge, Piece


def with_marks(piece: Piece, edge: str, where: Callable[[float], float]) -> Piece:
    """The piece with the marks of an edge at their new places: `where` takes and gives stitched lengths."""
    return replace(
        piece,
        edges=tuple(drawn_in_at(e, where) if e.name == edge else e for e in piece.edges),
        notches=tuple(
            replace(notch, at=where(notch.at)) if notch.edge == edge else notch for notch in piece.notches
        ),
    )


def drawn_in_at(edge: Edge, where: Callable[[float], float]) -> Edge:
    """The edge with its gathers and folds at their new places."""
    return replace(
        edge,
        gathers=tuple(replace(g, start=where(g.start), end=where(g.end)) for g in edge.gathers),
        folds=tuple(replace(fold, at=where(fold.at)) for fold in edge.folds),
    )


def cut_to(edge: Edge, low: float, high: float) -> Edge:
    """The edge with what is drawn in between two stitched lengths, now measured from the first of them."""
    gathers = []
    for g in edge.gathers:
        start, end = max(low, g.start), min(high, g.end)
        if end - start > SAME:
            amount = g.amount * (end - start) / (g.end - g.start)
            gathers.append(replace(g, start=start - low, end=end - low, amount=amount))
    folds = tuple(replace(fold, at=fold.at - low) for fold in edge.folds if low < fold.at < high)
    return replace(edge, gathers=tuple(gathers), folds=folds)


def behind(at: float, growth: float) -> Callable[[float], float]:
    """Where places are after the edge has grown at one place: those behind it shift."""
    return lambda stitched: stitched + growth if stitched > at else stitched


@dataclass(frozen=True, slots=True)
class Stretched:
    """Where places are on an edge of which stretches became longer or shorter, each evenly.

    `old` and `new` are the stitched lengths from the start at which the stretches end, rising from 0.
    """

    old: tuple[float, ...]
    new: tuple[float, ...]

    def __call__(self, stitched: float) -> float:
        """The new stitched length of a place; beyond an end it keeps its distance from that end."""
        if stitched <= self.old[0]:
            return stitched - self.old[0] + self.new[0]
        index = bisect_right(self.old, stitched) - 1
        if index >= len(self.old) - 1:
            return stitched - self.old[-1] + self.new[-1]
        (a, b), (c, d) = list(pairwise(self.old))[index], list(pairwise(self.new))[index]
        return c + (d - c) * (stitched - a) / (b - a) if b - a > SAME else c
