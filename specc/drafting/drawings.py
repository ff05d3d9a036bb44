"""Owns a piece's drawing laid on its paper: to scale, with its origin, its corners found, its lines followed.

Knows nothing of sizes: a drawing is of the size that was traced.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import FURTHEST, EvaluationError
from specc.geometry.along import stretch
from specc.geometry.path import Path
from specc.geometry.region import bounds
from specc.geometry.svg import UnreadableError, drawn_path
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from specc.diagnostics import Diagnostic
    from specc.geometry.point import Point
    from specc.geometry.segment import Segment
    from specc.geometry.svg import Drawn
    from specc.model.tracing import Along, Drawing, DrawnPath
    from specc.source import Span

UNREADABLE = declare(
    "SPC420", "drawn-path-unreadable", Severity.ERROR, "path `{path}` of `{file}` cannot be drawn: {reason}"
)
OFF_PATH = declare("SPC421", "point-off-drawn-path", Severity.ERROR, "`{point}` lies {off} off path `{path}`")
NO_MEETING = declare(
    "SPC422",
    "drawn-paths-do-not-meet",
    Severity.ERROR,
    "paths `{first}` and `{second}` have no one corner between them: {how}",
)
NO_CORNER = declare(
    "SPC424", "no-drawn-corner-there", Severity.ERROR, "the nearest corner of path `{path}` lies {off} off"
)

REACH: Final = 1.0  # mm between a point and a path, or two ends, that are drawn as meeting
SPECK: Final = 0.01  # mm: a shorter run is a slip of the drawing program
NEAR: Final = 20.0  # mm from a place within which its corner is looked for


def laid(drawing: Drawing) -> Mapping[str, Drawn]:
    """The paths in millimetres by their ids, with the lower left corner of the box round them at the origin.

    Raises EvaluationError where one cannot be drawn.
    """
    found = {path.name: _scaled(path, drawing) for path in drawing.paths}
    extremes = [p for drawn in found.values() for run in drawn.path.segments for p in run.extremes()]
    low, high = bounds(extremes)
    for path in drawing.paths:
        if max(high.x - low.x, high.y - low.y) > FURTHEST:
            raise EvaluationError(
                _unreadable(path, drawing, "the drawing is more than 10 m large at this scale")
            )
    return {name: drawn.mapped(lambda point: point - low) for name, drawn in found.items()}


def _scaled(path: DrawnPath, drawing: Drawing) -> Drawn:
    try:
        drawn = drawn_path(path.data, path.transforms).mapped(lambda point: point * drawing.unit)
    except UnreadableError as error:
        raise EvaluationError(_unreadable(path, drawing, str(error))) from None
    segments = _without_specks(drawn.path.segments)
    if not segments:
        raise EvaluationError(_unreadable(path, drawing, "it is a mere point at this scale"))
    return replace(drawn, path=Path(segments))


def _without_specks(segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """The segments without those too short to have a direction; the one before goes on in their place."""
    kept: list[Segment] = []
    begins = segments[0].start
    for segment in segments:
        if segment.length() > SPECK:
            kept.append(segment.between(kept[-1].end if kept else begins, segment.end))
        elif kept:
            kept[-1] = kept[-1].between(kept[-1].start, segment.end)
    return tuple(kept)


def meeting(first: Drawn, second: Drawn, *, names: tuple[str, str], origin: Span) -> Point:
    """The place at which an end of one path meets an end of the other; raises EvaluationError without one."""
    if first.path.closed or second.path.closed:
        closed = names[0] if first.path.closed else names[1]
        said = NO_MEETING.at(
            origin, first=names[0], second=names[1], how=f"`{closed}` has no ends, it is closed"
        )
        raise EvaluationError(
            said.help(f'name its corner by a place near it: `near 12 cm, 40 cm on "{closed}"`')
        )
    pairs = [
        (one.distance(other), one, other)
        for one in (first.path.start, first.path.end)
        for other in (second.path.start, second.path.end)
    ]
    gaps = sorted(pairs, key=lambda pair: pair[0])
    gap, one, other = gaps[0]
    if gap > REACH:
        apart = f"their nearest ends are {_mm(gap)} apart"
        said = NO_MEETING.at(origin, first=names[0], second=names[1], how=apart)
        raise EvaluationError(
            said.help("draw them to the same point, or draw the line that is missing between them")
        )
    if gaps[1][0] <= REACH:
        said = NO_MEETING.at(origin, first=names[0], second=names[1], how="they meet at both ends")
        raise EvaluationError(
            said.help(f'name the corner by a place near it: `near 12 cm, 40 cm on "{names[0]}"`')
        )
    return one.toward(other, 0.5)


def corner_near(drawn: Drawn, place: Point, *, name: str, origin: Span) -> Point:
    """The stop of the path that is nearest to a place; raises EvaluationError when it is far off."""
    found = min(drawn.stops, key=place.distance)
    if found.distance(place) > NEAR:
        said = NO_CORNER.at(origin, path=name, off=_mm(found.distance(place)))
        said = said.note(f"the nearest lies at {_mm(found.x)}, {_mm(found.y)}")
        raise EvaluationError(
            said.help(
                "measure from the lower left corner of the box round all paths of the piece, rightward and up"
            )
        )
    return found


def followed(
    run: Along, drawn: Drawn, start: str, ends: tuple[Point, Point], others: Iterable[Point]
) -> Path:
    """The stretch of the path from the point `start` to the end of the run, which lie at `ends`.

    `others` are the other points of edges. Raises EvaluationError where one of the ends lies off the path.
    """
    for name, at in zip((start, run.to), ends, strict=True):
        off = drawn.path.distance_to(at)
        if off > REACH:
            said = OFF_PATH.at(run.origin, point=name, path=run.path, off=_mm(off))
            raise EvaluationError(said.help("name a point of the path, or the path that comes to the point"))
    on_it = [other for other in others if drawn.path.is_near(other, REACH)]
    return stretch(drawn.path, *ends, on_it)


def _unreadable(path: DrawnPath, drawing: Drawing, reason: str) -> Diagnostic:
    said = UNREADABLE.at(path.origin, path=path.name, file=drawing.file, reason=reason)
    return said.see(path.place, "drawn here").help("draw it as one line, and break a compound path apart")


def _mm(length: float) -> str:
    return format_length(length, "mm", decimals=1)
