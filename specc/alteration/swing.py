"""Owns the verb `swing`: slash from an edge to a dart's pivot, turn until the dart closes.

Knows no other verb.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.grain import grain_on_fold
from specc.alteration.halves import Halves, closed_up
from specc.alteration.marks import behind
from specc.alteration.opening import Filling, Opening, filled
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
    from specc.model.alteration import Swing, SwingTarget
    from specc.model.expression import Expression
    from specc.pattern.piece import Edge, Piece, TwoPointedDart

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


def apply(
    pieces: tuple[Piece, ...], step: Swing, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with the dart swung: its angle stays at the pivot, stitched lengths of other edges too."""
    piece = found(pieces, step.dart.piece, step.dart.origin)
    if isinstance(piece, Refusal):
        return piece
    dart = dart_named(piece, step.dart.name)
    if dart is None:
        return missing(piece, step.dart)
    shares = _shares(piece, dart, step, evaluate)
    if isinstance(shares, Refusal):
        return shares
    places = [_stitched_place(piece, dart, target, evaluate) for target in step.into]
    swung, left = piece, 1.0
    for index, (target, share) in enumerate(zip(step.into, shares, strict=True)):
        now = dart_named(swung, dart.name)
        assert isinstance(now, Dart), dart.name
        slash = _slash(swung, now, target, places[index], step)
        if isinstance(slash, Refusal):
            return slash
        whole = share >= left * WHOLE
        name = dart.name
        if not (whole and len(step.into) == 1):
            name = free_name(swung, f"{dart.name}-into-{slash.edge.name}")
        length = stitched_length(slash.edge)
        swung = _swung(swung, now, slash, target.form, share=1.0 if whole else share / left, name=name)
        left -= share
        if slash.into is None:
            grown = next(edge for edge in swung.edges if edge.name == slash.edge.name)
            shifted = behind(places[index] or 0.0, stitched_length(grown) - length)
            places = [
                shifted(place) if place is not None and other.part.name == grown.name else place
                for place, other in zip(places, step.into, strict=True)
            ]
    if dart_named(swung, dart.name) is None:
        into = " and ".join(f"`{piece.name}.{target.part.name}`" for target in step.into)
        swung = replace(
            swung, gone=(*swung.gone, Gone(dart.name, f"swung into {into} {line_of(step.origin)}"))
        )
    return replaced(pieces, grain_on_fold(piece, swung))


def _shares(
    piece: Piece, dart: Dart | TwoPointedDart, step: Swing, evaluate: Callable[[Expression], float]
) -> tuple[float, ...] | Refusal:
    """What share of the dart goes into each target, or why none can."""
    facts = (("piece", piece.name), ("dart", dart.name))
    if not isinstance(dart, Dart):
        return Refusal("not-an-edge-dart", facts, step.dart.origin, "release it, or leave it where it is")
    for target in step.into:
        if target.part.piece != piece.name:
            other = (*facts, ("other", f"{target.part.piece}.{target.part.name}"))
            return Refusal("swing-into-other-piece", other, target.part.origin, "name an edge of `{piece}`")
    written = [0.0 if target.share is None else evaluate(target.share) for target in step.into]
    rest = 1.0 - sum(written)
    shares = [
        rest if target.share is None else share for target, share in zip(step.into, written, strict=True)
    ]
    wrong = next((share for share in shares if not 0.0 < share <= 1.0 + SAME), None)
    if wrong is not None or sum(shares) > 1.0 + SAME:
        more = (*facts, ("share", sum(shares) if wrong is None else wrong))
        return Refusal("share-out-of-range", more, step.origin, "give shares up to 100%")
    legs = abs(dart.first.distance(dart.pivot) - dart.second.distance(dart.pivot))
    if legs > LEGS_APART:
        return Refusal("dart-legs-unequal", (*facts, ("distance", legs)), step.dart.origin, "draw equal legs")
    return tuple(shares)


def _slash(  # noqa: PLR0911 - a refusal each
    piece: Piece, dart: Dart, target: SwingTarget, place: float | None, step: Swing
) -> Slash | Refusal:
    """The cut, free of darts and inside the piece, or why there is none."""
    facts = (("piece", piece.name), ("dart", dart.name), ("edge", target.part.name))
    into, edge = dart_named(piece, target.part.name), edge_named(piece, target.part.name)
    if isinstance(into, Dart) and into.name != dart.name:
        apart = into.pivot.distance(dart.pivot)
        if apart > PIVOTS_APART:
            more = (*facts, ("target", into.name), ("distance", apart))
            return Refusal("pivots-apart", more, target.part.origin, "swing it into an edge instead")
        host = next(edge for edge in piece.edges if into.name in edge.darts)
        part = host.darts.index(into.name)
        return Slash(host, part, host.parts[part].length(), into.first.toward(into.second, 0.5), into)
    if edge is None or place is None:
        if into is None:
            return missing(piece, target.part)
        other: Facts = (("piece", piece.name), ("name", target.part.name))
        return Refusal("not-an-edge", other, target.part.origin, "name an edge or another dart")
    if edge.name == piece.fold:
        return Refusal("slash-into-fold", facts, target.part.origin, "swing it into another edge")
    on_edge = place_on_edge(edge, place)
    if not is_clear(edge, on_edge):
        cure = "place it further from the end of the edge, or swing it into the neighbouring edge"
        return Refusal("slash-at-end", facts, step.origin, cure)
    slash = Slash(edge, on_edge.part, on_edge.along, on_edge.at)
    return _obstacle(piece, dart, slash, step) or slash


def _stitched_place(
    piece: Piece, dart: Dart | TwoPointedDart, target: SwingTarget, evaluate: Callable[[Expression], float]
) -> float | None:
    """The stitched length from the edge's start at which the slash meets it; None if there is no edge."""
    edge = edge_named(piece, target.part.name)
    if edge is None or not isinstance(dart, Dart):
        return None
    if target.place is not None:
        return stitched_place(edge, target.place, evaluate)
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


def _swung(  # noqa: PLR0913 - a dart, where it goes, and as what
    piece: Piece, dart: Dart, slash: Slash, form: Form, *, share: float, name: str
) -> Piece:
    """The piece after the turn; what opens as a dart is called `name`."""
    whole, into = share >= WHOLE, slash.into
    bridged = into is None and form is not Form.DART
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
    if into is not None:
        return replace(moved, edges=edges_from(moved, runs))
    if form is Form.DART:
        return _with_dart(moved, runs, replace(dart, name=name, edge=slash.edge.name))
    opening = Opening(
        OPENING,
        stitched_at(slash.edge, slash.part, slash.along),
        dart.pivot,
        (dart.pivot, dart.pivot),
    )
    moved, runs = filled(moved, runs, opening, Filling(form))
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
