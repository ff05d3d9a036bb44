"""Owns the verb `swing`: slash from an edge to a dart's pivot, turn until the dart closes.

Knows no other verb.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.halves import Halves, closed_up
from specc.alteration.opening import Opening, filled
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import Run, edges_from, free_name, replaced
from specc.alteration.slash import is_clear, obstacle, stitched_place
from specc.geometry.crossing import line_crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import dart_named, edge_named
from specc.pattern.measure import place_on_edge, stitched_at, stitched_length
from specc.pattern.outline import grain_direction
from specc.pattern.piece import Dart, Gone

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.alteration import Place, Swing
    from specc.model.expression import Expression
    from specc.pattern.piece import Edge, Piece

PIVOTS_APART: Final = 0.5  # mm by which the pivots of two darts that become one may differ
LEGS_APART: Final = 0.5  # mm by which the legs of one dart may differ
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
    if not is_clear(edge, place):
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
    if place is not None:
        return stitched_place(edge, place, evaluate)
    # Below the pivot first, then above it; the nearest place of each.
    met = [
        (crossing.across > 0.0, abs(crossing.across), index, crossing.along)
        for index, part in enumerate(edge.parts)
        for crossing in line_crossings(part, dart.pivot, grain_direction(piece))
    ]
    if not met:
        return 0.5 * stitched_length(edge)
    _, _, index, along = min(met)
    return stitched_at(edge, index, along)


def _obstacle(piece: Piece, dart: Dart, slash: Slash, step: Swing) -> Refusal | None:
    """What the slash would cut into on its way, if anything."""
    facts = (("piece", piece.name), ("dart", dart.name), ("edge", slash.edge.name))
    others = tuple(other for other in piece.darts if other.pivot.distance(dart.pivot) > PIVOTS_APART)
    return obstacle(piece, Path.through(dart.pivot, slash.end), others, facts=facts, origin=step.origin)


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
        name = dart.name if whole else free_name(piece, f"{dart.name}-into-{slash.edge.name}")
        return _with_dart(moved, runs, replace(dart, name=name, edge=slash.edge.name))
    if whole:
        how = f"swung into `{piece.name}.{step.target.name}` {line_of(step.origin)}"
        moved = replace(moved, gone=(*moved.gone, Gone(dart.name, how)))
    if into is not None:
        return replace(moved, edges=edges_from(moved, runs))
    opening = Opening(
        OPENING,
        stitched_at(slash.edge, slash.part, slash.along),
        dart.pivot,
        (dart.pivot, dart.pivot),
    )
    moved, runs = filled(moved, runs, opening, step.form)
    return replace(moved, edges=edges_from(moved, runs))


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
