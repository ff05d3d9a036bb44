"""Owns drawing one edge from its runs: straight, curved, or a dart.

Knows nothing of how points and values are found.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import EvaluationError
from specc.drafting.points import heading
from specc.geometry.fit import QUARTER, arc_through, cubic_through, curve
from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line
from specc.geometry.smooth import smooth_through
from specc.model.block import Arc, DartRun, Straight
from specc.model.tracing import Along
from specc.pattern.piece import Dart, Edge
from specc.units import format_length

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.drafting.finder import Finder
    from specc.geometry.point import Point
    from specc.geometry.segment import Segment
    from specc.model.block import Bearing, Curve, EdgeDraft

UNEQUAL_LEGS = declare(
    "SPC403", "dart-legs-unequal", Severity.ERROR, "the legs of `{dart}` are {first} and {second} long"
)
NO_LENGTH = declare("SPC404", "run-without-length", Severity.ERROR, "this run of `{edge}` has no length")
MISSED = declare("SPC410", "curve-misses-point", Severity.ERROR, "no such curve passes through `{point}`")
SAME_PLACE = declare(
    "SPC418", "points-at-one-place", Severity.ERROR, "two points that this curve passes lie at one place"
)
NO_ARC = declare(
    "SPC423", "no-such-arc", Severity.ERROR, "no arc between these ends passes through `{point}`"
)
DART_AT_END = declare("SPC413", "dart-at-end-of-edge", Severity.ERROR, "`{dart}` lies at the end of `{edge}`")

LEGS: Final = 0.01  # mm by which the legs of a dart may differ
SHORTEST: Final = 0.01  # mm: a shorter run is a slip, and has no direction to be trusted


def drawn_edge(draft: EdgeDraft, finder: Finder) -> tuple[Edge, tuple[Dart, ...]]:
    """The edge with its darts; raises EvaluationError where a run cannot be drawn."""
    parts: list[Path] = []
    darts: list[Dart] = []
    segments: list[Segment] = []
    here, end = finder.at(draft.start), draft.start
    for run in draft.runs:
        there = finder.at(run.to)
        if isinstance(run, DartRun):
            if not segments:
                raise EvaluationError(_at_end(run, draft.name))
            parts.append(Path(tuple(segments)))
            segments = []
            darts.append(_dart(run, here, there, edge=draft.name, finder=finder))
        else:
            if here.distance(there) <= SHORTEST and not isinstance(run, Along):
                said = NO_LENGTH.at(run.origin, edge=draft.name)
                raise EvaluationError(
                    said.help(f"`{end}` and `{run.to}` lie on each other: move one of them")
                )
            if isinstance(run, Straight):
                segments.append(Line(here, there))
            elif isinstance(run, Along):
                segments += finder.along(run, end).segments
            else:
                segments += _curved(run, here, there, finder)
        here, end = there, run.to
    if not segments:
        last = draft.runs[-1] if draft.runs else None
        if isinstance(last, DartRun):
            raise EvaluationError(_at_end(last, draft.name))
        raise EvaluationError(
            NO_LENGTH.at(draft.origin, edge=draft.name).help("give the edge a `line to` or a `curve to`")
        )
    parts.append(Path(tuple(segments)))
    names = tuple(dart.name for dart in darts)
    edge = Edge(draft.name, draft.start, end, tuple(parts), names, out_of_sight=draft.out_of_sight)
    return edge, tuple(darts)


def _dart(run: DartRun, first: Point, second: Point, *, edge: str, finder: Finder) -> Dart:
    pivot = finder.at(run.pivot)
    legs = first.distance(pivot), second.distance(pivot)
    if abs(legs[0] - legs[1]) > LEGS:
        lengths = [format_length(leg, "mm", decimals=1) for leg in legs]
        said = UNEQUAL_LEGS.at(run.origin, dart=run.name, first=lengths[0], second=lengths[1])
        raise EvaluationError(
            said.help(
                f"find one end of its mouth by turning the other around `{run.pivot}`; on paper, measure both"
                " legs again, and grade the mouth and the point of a dart alike"
            )
        )
    short = finder.value(run.short) if run.short else 0.0
    return Dart(run.name, edge, first, second, pivot, short)


def _curved(run: Curve | Arc, start: Point, end: Point, finder: Finder) -> tuple[Segment, ...]:
    """The run that is no straight one."""
    if isinstance(run, Arc):
        return _arc(run, start, end, finder)
    leaving, arriving = (_heading(bearing, finder) for bearing in (run.leaving, run.arriving))
    passed = tuple(finder.referred(ref) for ref in run.through)
    if leaving is not None and arriving is not None and len(passed) <= 1:
        return (_cubic(run, start, end, (leaving, arriving), finder=finder),)
    stops = (start, *passed, end)
    if any(a.distance(b) <= SHORTEST for a, b in pairwise(stops)):
        said = SAME_PLACE.at(run.origin)
        raise EvaluationError(said.help("leave one of them out, or move it"))
    paths = smooth_through(stops, leaving=leaving, arriving=arriving)
    return tuple(segment for path in paths for segment in path.segments)


def _arc(run: Arc, start: Point, end: Point, finder: Finder) -> tuple[Segment, ...]:
    path = arc_through(start, finder.referred(run.through), end)
    if path is None:
        said = NO_ARC.at(run.origin, point=run.through.name)
        raise EvaluationError(said.help("let the point lie between the ends of the arc, off the line"))
    return path.segments


def _cubic(run: Curve, start: Point, end: Point, directions: tuple[Point, Point], *, finder: Finder) -> Cubic:
    """The run as one cubic: handles as stated, else as full as stated or as makes it pass its point."""
    leaving, arriving = directions
    for ref in run.through:
        through = cubic_through(start, leaving, end, arriving, through=finder.referred(ref))
        if through is None:
            said = MISSED.at(run.origin, point=ref.name)
            raise EvaluationError(
                said.help("move the point, or change the directions in which the curve leaves and arrives")
            )
        return through
    fullness = QUARTER if run.full is None else finder.value(run.full)
    drawn = curve(start, leaving, end, arriving, fullness=fullness)
    first, last = (_handle(bearing, finder) for bearing in (run.leaving, run.arriving))
    return Cubic(
        start,
        drawn.leaving if first is None else start + leaving * first,
        drawn.arriving if last is None else end - arriving * last,
        end,
    )


def _heading(bearing: Bearing | None, finder: Finder) -> Point | None:
    return None if bearing is None else heading(finder.value(bearing.direction))


def _handle(bearing: Bearing | None, finder: Finder) -> float | None:
    return None if bearing is None or bearing.handle is None else finder.value(bearing.handle)


def _at_end(run: DartRun, edge: str) -> Diagnostic:
    said = DART_AT_END.at(run.origin, dart=run.name, edge=edge)
    return said.help(
        "let a run of the edge come before the dart and one after it, or let the edge begin elsewhere"
    )
