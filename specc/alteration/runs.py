"""Owns the outline of a piece as a ring of runs, to be cut, moved and put together; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from specc.geometry.path import Path
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import names_of
from specc.pattern.piece import Gone

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from specc.pattern.piece import Edge, Piece

NEAR = 1e-3  # mm; ends this near were one point before they were moved


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of an edge without a dart; `dart` opens at its end, if the edge goes on after it."""

    edge: str
    path: Path
    dart: str | None = None


def runs_of(piece: Piece) -> tuple[Run, ...]:
    """The outline of the piece, run by run."""
    return tuple(
        Run(edge.name, part, dart)
        for edge in piece.edges
        for part, dart in zip(edge.parts, (*edge.darts, None), strict=True)
    )


def edges_from(piece: Piece, runs: Sequence[Run]) -> tuple[Edge, ...]:
    """The edges of the piece made of new runs, in their order; an edge without runs is left out."""
    old = {edge.name: edge for edge in piece.edges}
    edges: list[Edge] = []
    for name, group in groupby(runs, key=lambda run: run.edge):
        kept = tuple(group)
        darts = tuple(run.dart for run in kept[:-1] if run.dart is not None)
        assert len(darts) == len(kept) - 1, f"runs of {name} without a dart between them"
        edges.append(replace(old[name], parts=tuple(run.path for run in kept), darts=darts))
    return tuple(edges)


def linked(paths: Iterable[Path]) -> Path:
    """One path of several in order; gaps wider than NEAR are crossed straight, narrower ones closed."""
    path, *others = paths
    for other in others:
        gap = path.end.distance(other.start)
        if gap > SAME and gap > NEAR:
            path = path.joined(Path((Line(path.end, other.start),)))
        path = path.joined(other.between_points(path.end, other.end))
    return path


def regrouped(paths: Iterable[Path]) -> tuple[Path, ...]:
    """The paths in order, those put together that begin where the one before them ends."""
    groups: list[Path] = []
    for path in paths:
        if groups and groups[-1].end.distance(path.start) <= NEAR:
            groups[-1] = groups[-1].joined(path.between_points(groups[-1].end, path.end))
        else:
            groups.append(path)
    return tuple(groups)


def parted(path: Path, lengths: Iterable[float]) -> tuple[Path, ...]:
    """The path cut at several lengths from its start; cuts at its ends or at one place count once."""
    whole = path.length()
    stops = [0.0]
    for length in sorted(lengths):
        if length - stops[-1] > 10 * SAME and whole - length > 10 * SAME:
            stops.append(length)
    return tuple(path.between(low, high) for low, high in pairwise((*stops, whole)))


def with_gone(before: Piece, after: Piece, how: str) -> Piece:
    """The altered piece with a row for every name that it had before and has no longer."""
    names = frozenset(names_of(after))
    lost = tuple(Gone(name, how) for name in names_of(before) if name not in names)
    return replace(after, gone=(*after.gone, *lost))


def replaced(pieces: tuple[Piece, ...], piece: Piece) -> tuple[Piece, ...]:
    """The pieces with one of them changed, found by its name."""
    return tuple(piece if old.name == piece.name else old for old in pieces)


def free_name(piece: Piece, name: str) -> str:
    """The name, with a number where the piece has it already."""
    taken = frozenset(names_of(piece))
    number, free = 1, name
    while free in taken:
        number += 1
        free = f"{name}-{number}"
    return free
