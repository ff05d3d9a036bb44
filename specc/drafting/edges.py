"""Owns drawing one edge from its runs: straight, curved, or a dart.

Knows nothing of how points and values are found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import EvaluationError
from specc.drafting.points import heading
from specc.geometry.fit import QUARTER, cubic_through, curve
from specc.geometry.path import Path
from specc.geometry.segment import Cubic, Line
from specc.model.block import DartRun, Straight
from specc.pattern.piece import Dart, Edge
from specc.units import format_length

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.drafting.finder import Finder
    from specc.geometry.point import Point
    from specc.geometry.segment import Segment
    from specc.model.block import Curve, EdgeDraft

UNEQUAL_LEGS = declare(
    "SPC403", "dart-legs-unequal", Severity.ERROR, "the legs of `{dart}` are {first} and {second} long"
)
NO_LENGTH = declare("SPC404", "run-without-length", Severity.ERROR, "this run of `{edge}` has no length")
MISSED = declare("SPC410", "curve-misses-point", Severity.ERROR, "no such curve passes through `{point}`")
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
            if here.distance(there) <= SHORTEST:
                said = NO_LENGTH.at(run.origin, edge=draft.name)
                raise EvaluationError(
                    said.help(f"`{end}` and `{run.to}` lie on each other: move one of them")
                )
            segments.append(
                Line(here, there) if isinstance(run, Straight) else _curve(run, here, there, finder)
            )
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
            said.help(f"find one end of its mouth by turning the other around `{run.pivot}`")
        )
    short = finder.value(run.short) if run.short else 0.0
    return Dart(run.name, edge, first, second, pivot, short)


def _curve(run: Curve, start: Point, end: Point, finder: Finder) -> Cubic:
    """The cubic run: handles as stated, else as full as stated or as makes it pass through the point."""
    leaving, arriving = (heading(finder.value(bearing.direction)) for bearing in (run.leaving, run.arriving))
    if run.through is not None:
        through = cubic_through(start, leaving, end, arriving, through=finder.referred(run.through))
        if through is None:
            said = MISSED.at(run.origin, point=run.through.name)
            raise EvaluationError(
                said.help("move the point, or change the directions in which the curve leaves and arrives")
            )
        return through
    fullness = QUARTER if run.full is None else finder.value(run.full)
    drawn = curve(start, leaving, end, arriving, fullness=fullness)
    first, last = run.leaving.handle, run.arriving.handle
    return Cubic(
        start,
        drawn.leaving if first is None else start + leaving * finder.value(first),
        drawn.arriving if last is None else end - arriving * finder.value(last),
        end,
    )


def _at_end(run: DartRun, edge: str) -> Diagnostic:
    said = DART_AT_END.at(run.origin, dart=run.name, edge=edge)
    return said.help(
        "let a run of the edge come before the dart and one after it, or let the edge begin elsewhere"
    )
