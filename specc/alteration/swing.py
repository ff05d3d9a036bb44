"""Owns the verb `swing`: slash from an edge to a dart's pivot, turn until the dart closes.

Knows no other verb.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.blending import flared
from specc.alteration.halves import Halves, closed_up
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import Run, edges_from, replaced
from specc.geometry.crossing import crossings, line_crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import dart_named, edge_named, names_of
from specc.pattern.measure import (
    place_on_edge,
    stitched_at,
    stitched_length,
    two_pointed_outline,
)
from specc.pattern.outline import drawn_outline, grain_direction
from specc.pattern.piece import Dart, Gathers, Gone

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.alteration import Place, Swing
    from specc.model.expression import Expression
    from specc.pattern.piece import Edge, Piece

PIVOTS_APART: Final = 0.5  # mm by which the pivots of two darts that become one may differ
LEGS_APART: Final = 0.5  # mm by which the legs of one dart may differ
CLEAR: Final = 1.0  # mm that a slash keeps from the ends of an edge and from darts on it
WHOLE: Final = 1.0 - 1e-9  # a share from which the dart is gone
OPENING: Final = "/"  # stands for the opening among the darts between runs; no name is written so


@dataclass(frozen=True, slots=True)
class Slash:
    """Where the cut meets the outline: on a part of an edge, or in the mouth of the dart `into` on it."""

    edge: Edge
    part: int
    along: float
    end: Point
    into: Dart | None = None


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Swing, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the dart swung: its angle stays at the pivot, stitched lengths of other edges too."""
    piece = found(pieces, step.dart.piece, step.dart.origin)
    if isinstance(piece, Refusal):
        return piece
    dart = dart_named(piece, step.dart.name)
    if dart is None:
        return missing(piece, step.dart)
    facts = (("piece", piece.name), ("dart", dart.name))
    if not isinstance(dart, Dart):
        return Refusal("not-an-edge-dart", facts, step.dart.origin, "release it, or leave it where it is")
    if step.target.piece != piece.name:
        other = (*facts, ("other", f"{step.target.piece}.{step.target.name}"))
        return Refusal("swing-into-other-piece", other, step.target.origin, "name an edge of `{piece}`")
    share = evaluate(step.share)
    if not 0.0 < share <= 1.0 + SAME:
        return Refusal(
            "share-out-of-range", (*facts, ("share", share)), step.origin, "give a share up to 100%"
        )
    legs = abs(dart.first.distance(dart.pivot) - dart.second.distance(dart.pivot))
    if legs > LEGS_APART:
        return Refusal("dart-legs-unequal", (*facts, ("distance", legs)), step.dart.origin, "draw equal legs")
    slash = _slash(piece, dart, step, evaluate)
    if isinstance(slash, Refusal):
        return slash
    return replaced(pieces, _swung(piece, dart, slash, step=step, share=share))


def _slash(  # noqa: PLR0911 - a refusal each
    piece: Piece, dart: Dart, step: Swing, evaluate: Callable[[Expression], float]
) -> Slash | Refusal:
    """The cut, free of darts and inside the piece, or why there is none."""
    facts = (("piece", piece.name), ("dart", dart.name), ("edge", step.target.name))
    into, edge = dart_named(piece, step.target.name), edge_named(piece, step.target.name)
    if isinstance(into, Dart) and into.name != dart.name:
        apart = into.pivot.distance(dart.pivot)
        if apart > PIVOTS_APART:
            more = (*facts, ("target", into.name), ("distance", apart))
            return Refusal("pivots-apart", more, step.target.origin, "swing it into an edge instead")
        host = next(edge for edge in piece.edges if into.name in edge.darts)
        part = host.darts.index(into.name)
        return Slash(host, part, host.parts[part].length(), into.first.toward(into.second, 0.5), into)
    if edge is None:
        if into is None:
            return missing(piece, step.target)
        other: Facts = (("piece", piece.name), ("name", step.target.name))
        return Refusal("not-an-edge", other, step.target.origin, "name an edge or another dart")
    if edge.name == piece.fold:
        return Refusal("slash-into-fold", facts, step.target.origin, "swing it into another edge")
    place = place_on_edge(edge, _stitched_place(piece, dart, edge, step.place, evaluate))
    if min(place.along, edge.parts[place.part].length() - place.along) < CLEAR:
        cure = "place it further from the end of the edge, or swing it into the neighbouring edge"
        return Refusal("slash-at-end", facts, step.origin, cure)
    slash = Slash(edge, place.part, place.along, place.at)
    return _obstacle(piece, dart, slash, step) or slash


def _stitched_place(
    piece: Piece,
    dart: Dart,
    edge: Edge,
    place: Place | None,
    evaluate: Callable[[Expression], float],
) -> float:
    """The stitched length from the edge's start at which the slash meets it."""
    whole = stitched_length(edge)
    if place is not None:
        at = evaluate(place.at)
        if not _is_length(place.at):
            at *= whole
        return whole - at if place.from_corner == edge.end and edge.end != edge.start else at
    # Below the pivot first, then above it; the nearest place of each.
    met = [
        (crossing.across > 0.0, abs(crossing.across), index, crossing.along)
        for index, part in enumerate(edge.parts)
        for crossing in line_crossings(part, dart.pivot, grain_direction(piece))
    ]
    if not met:
        return 0.5 * whole
    _, _, index, along = min(met)
    return stitched_at(edge, index, along)


def _is_length(expression: Expression) -> bool:
    dimension = getattr(expression, "dimension", None) or expression.value.dimension  # type: ignore[union-attr]
    return dimension.length == 1


def _obstacle(piece: Piece, dart: Dart, slash: Slash, step: Swing) -> Refusal | None:
    """What the slash would cut into on its way, if anything."""
    cut = Path.through(dart.pivot, slash.end)
    facts = (("piece", piece.name), ("dart", dart.name), ("edge", slash.edge.name))
    for other in piece.darts:
        legs = Path.through(other.first, other.pivot, other.second)
        if other.pivot.distance(dart.pivot) > PIVOTS_APART and crossings(cut, legs):
            cure = "swing or release `{crossed}` first, or place the slash elsewhere"
            return Refusal("slash-crosses-dart", (*facts, ("crossed", other.name)), step.origin, cure)
    for inner in piece.two_pointed:
        if crossings(cut, two_pointed_outline(inner)):
            cure = "release `{crossed}` first, or place the slash elsewhere"
            return Refusal("slash-crosses-dart", (*facts, ("crossed", inner.name)), step.origin, cure)
    reach = cut.length()
    # Legs of darts from the same pivot touch the slash there; the outline may touch it only at its far end.
    if any(CLEAR / 10.0 < met.along < reach - CLEAR / 10.0 for met in crossings(cut, drawn_outline(piece))):
        return Refusal("slash-leaves-piece", facts, step.origin, "place the slash elsewhere")
    return None


def _swung(piece: Piece, dart: Dart, slash: Slash, *, step: Swing, share: float) -> Piece:
    """The piece after the turn."""
    whole, into = share >= WHOLE, slash.into
    bridged = into is None and step.form is not Form.DART
    halves, begin = _halved(piece, dart, slash)
    following, angle = halves.turning()
    motion = Rigid.turning(dart.pivot, angle * min(1.0, share))
    moved = halves.moved_inside(motion, following=following, bridged=bridged)
    turned = halves.moved_runs(motion, following=following)
    runs = turned[len(turned) - begin :] + turned[: len(turned) - begin]
    moved = replace(moved, darts=tuple(_refreshed(other, runs) for other in moved.darts))
    if whole:
        runs = closed_up(runs, dart.name)
        moved = replace(moved, darts=tuple(other for other in moved.darts if other.name != dart.name))
    if into is None and step.form is Form.DART:
        name = dart.name if whole else _free_name(piece, f"{dart.name}-into-{slash.edge.name}")
        return _with_dart(moved, runs, replace(dart, name=name, edge=slash.edge.name))
    if whole:
        how = f"swung into `{piece.name}.{step.target.name}` {line_of(step.origin)}"
        moved = replace(moved, gone=(*moved.gone, Gone(dart.name, how)))
    if into is not None:
        return replace(moved, edges=edges_from(moved, runs))
    return _with_flare(moved, runs, dart.pivot, slash, gathered=step.form is Form.GATHERS)


def _halved(piece: Piece, dart: Dart, slash: Slash) -> tuple[Halves, int]:
    """The ring of runs cut at the slash, begun behind the dart; and at which run of the outline it begins."""
    runs: list[Run] = []
    for edge in piece.edges:
        for index, (part, name) in enumerate(zip(edge.parts, (*edge.darts, None), strict=True)):
            if slash.into is None and edge.name == slash.edge.name and index == slash.part:
                before, after = part.split_at(slash.along)
                runs += (Run(edge.name, before, OPENING), Run(edge.name, after, name))
            else:
                runs.append(Run(edge.name, part, name))
    names = [run.dart for run in runs]
    begin = names.index(dart.name) + 1
    cut = names.index(slash.into.name if slash.into else OPENING) + 1
    ring = (*runs[begin:], *runs[:begin])
    return Halves.of(
        piece, dart, ring, cut=(cut - begin) % len(ring), slash=slash.end, into=slash.into
    ), begin


def _refreshed(dart: Dart, runs: tuple[Run, ...]) -> Dart:
    """The dart with its mouth where the runs on either side of it end."""
    index = next(index for index, run in enumerate(runs) if run.dart == dart.name)
    return replace(dart, first=runs[index].path.end, second=runs[index + 1].path.start)


def _with_dart(piece: Piece, runs: tuple[Run, ...], dart: Dart) -> Piece:
    """The piece with its opening as a dart."""
    named = tuple(replace(run, dart=dart.name) if run.dart == OPENING else run for run in runs)
    return replace(piece, edges=edges_from(piece, named), darts=(*piece.darts, _refreshed(dart, named)))


def _with_flare(piece: Piece, runs: tuple[Run, ...], pivot: Point, slash: Slash, *, gathered: bool) -> Piece:
    """The piece with its opening drawn as one smooth run, gathered to the old length or left wider."""
    index = next(index for index, run in enumerate(runs) if run.dart == OPENING)
    before, after = runs[index], runs[index + 1]
    path = flared(before.path, after.path, pivot)
    edges = edges_from(piece, (*runs[:index], Run(after.edge, path, after.dart), *runs[index + 2 :]))
    first, second = before.path.length(), after.path.length()
    growth = path.length() - first - second
    old = slash.edge
    at = stitched_at(old, slash.part, slash.along)
    gathers, notches = old.gathers, piece.notches
    if gathered:
        low, high = max(0.0, at - 0.5 * first), min(stitched_length(old), at + 0.5 * second)
        gathers = (*gathers, Gathers(low, high, growth))
    else:
        gathers = tuple(
            Gathers(_behind(g.start, at, growth), _behind(g.end, at, growth), g.amount) for g in gathers
        )
        notches = tuple(
            replace(notch, at=_behind(notch.at, at, growth)) if notch.edge == old.name else notch
            for notch in notches
        )
    edges = tuple(replace(edge, gathers=gathers) if edge.name == old.name else edge for edge in edges)
    return replace(piece, edges=edges, notches=notches)


def _behind(stitched: float, at: float, growth: float) -> float:
    """Where a place on an edge is after the edge has grown at another place."""
    return stitched + growth if stitched > at else stitched


def _free_name(piece: Piece, name: str) -> str:
    """The name, with a number where the piece has it already."""
    taken = frozenset(names_of(piece))
    number, free = 1, name
    while free in taken:
        number += 1
        free = f"{name}-{number}"
    return free
