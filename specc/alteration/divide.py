"""Owns the verb `divide`: an edge becomes two that follow one another; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.alteration.level import level_of
from specc.alteration.marks import cut_to
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import NEAR, replaced, with_gone
from specc.alteration.slash import CLEAR, stitched_place
from specc.geometry.crossing import crossings
from specc.model.alteration import Level
from specc.model.dividing import corner_between
from specc.pattern.lookup import edge_named, names_of
from specc.pattern.measure import place_on_edge, stitched_at, stitched_length

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.model.dividing import Divide
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Edge, Notch, Piece


def apply(
    pieces: tuple[Piece, ...], step: Divide, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with each edge made two; darts, gathers, folds and notches go with the part they lie on."""
    for ref in step.edges:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        divided = _divided(piece, ref, step, evaluate)
        if isinstance(divided, Refusal):
            return divided
        pieces = replaced(pieces, divided)
    return pieces


def _divided(
    piece: Piece, ref: PartRef, step: Divide, evaluate: Callable[[Expression], float]
) -> Piece | Refusal:
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    facts: Facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("edge-on-fold", facts, ref.origin, "unfold `{piece}` first, and divide both halves")
    corner = corner_between(*step.into)
    taken = next(
        (name for name in (*step.into, corner) if name in names_of(piece) and name != edge.name), None
    )
    if taken is not None:
        named: Facts = (("piece", piece.name), ("name", taken))
        return Refusal("part-name-taken", named, step.origin, "take another name")
    where = _where(piece, edge, step, evaluate)
    if isinstance(where, Refusal):
        return where
    at, forward = where
    parts = _parts(edge, at, corner, step.into if forward else (step.into[1], step.into[0]))
    edges = tuple(new for old in piece.edges for new in (parts if old is edge else (old,)))
    hosts = {dart: part.name for part in parts for dart in part.darts}
    altered = replace(
        piece,
        edges=edges,
        darts=tuple(replace(dart, edge=hosts.get(dart.name, dart.edge)) for dart in piece.darts),
        notches=_notches(piece, edge, parts, at),
    )
    how = f"divided into `{step.into[0]}` and `{step.into[1]}` {line_of(step.origin)}"
    return with_gone(piece, altered, how)


def _where(
    piece: Piece, edge: Edge, step: Divide, evaluate: Callable[[Expression], float]
) -> tuple[float, bool] | Refusal:
    """The stitched length from the edge's start corner, and whether the first of the two begins there."""
    where = _asked(piece, edge, step, evaluate)
    if isinstance(where, Refusal):
        return where
    facts: Facts = (("piece", piece.name), ("edge", edge.name))
    whole = stitched_length(edge)
    if not -NEAR <= where[0] <= whole + NEAR:
        cure = "take a place on the edge"
        return Refusal("place-beyond-edge", (*facts, ("length", whole)), step.at.origin, cure)
    if not _is_clear(edge, where[0]):
        return Refusal("divided-at-end", facts, step.at.origin, "take another place")
    return where


def _asked(
    piece: Piece, edge: Edge, step: Divide, evaluate: Callable[[Expression], float]
) -> tuple[float, bool] | Refusal:
    if not isinstance(step.at, Level):
        return stitched_place(edge, step.at, evaluate), step.at.from_corner in {None, edge.start}
    level = level_of(piece, step.at, evaluate)
    if isinstance(level, Refusal):
        return level
    met = [
        stitched_at(edge, index, crossing.along)
        for index, part in enumerate(edge.parts)
        for crossing in crossings(part, level.line)
    ]
    if len(met) == 1:
        return met[0], level.height(edge.parts[0].start) > level.height(edge.parts[-1].end)
    where = f"in {len(met)} places" if met else "nowhere"
    facts: Facts = (("piece", piece.name), ("edge", edge.name), ("where", where))
    cure = "take another level, or a place on the edge"
    return Refusal("level-does-not-divide", facts, step.at.origin, cure)


def _is_clear(edge: Edge, at: float) -> bool:
    """Whether a place lies on the edge, clear of its ends, of darts and of folds."""
    if not CLEAR <= at <= stitched_length(edge) - CLEAR:
        return False
    place = place_on_edge(edge, at)
    beside = min(place.along, edge.parts[place.part].length() - place.along)
    return beside >= CLEAR and all(abs(fold.at - at) >= CLEAR for fold in edge.folds)


def _parts(edge: Edge, at: float, corner: str, names: tuple[str, str]) -> tuple[Edge, Edge]:
    place = place_on_edge(edge, at)
    through = edge.parts[place.part]
    before = (*edge.parts[: place.part], through.between(0.0, place.along))
    after = (through.between(place.along, through.length()), *edge.parts[place.part + 1 :])
    first = cut_to(edge, 0.0, at)
    second = cut_to(edge, at, float("inf"))
    return (
        replace(first, name=names[0], end=corner, parts=before, darts=edge.darts[: place.part]),
        replace(second, name=names[1], start=corner, parts=after, darts=edge.darts[place.part :]),
    )


def _notches(piece: Piece, edge: Edge, parts: tuple[Edge, Edge], at: float) -> tuple[Notch, ...]:
    """The notches of the piece, those of the edge on their parts."""
    first, second = parts
    notches: list[Notch] = []
    for notch in piece.notches:
        if notch.edge != edge.name:
            notches.append(notch)
        elif notch.at <= at + NEAR:
            notches.append(replace(notch, edge=first.name, at=min(notch.at, at)))
        else:
            notches.append(replace(notch, edge=second.name, at=notch.at - at))
    return tuple(notches)
