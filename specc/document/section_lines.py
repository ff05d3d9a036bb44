"""Owns the lines of a cross-section: plies, needles, threads, loops.

Knows nothing of labels.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.drawing import Bend, Stroke, Trace
from specc.document.line import LineKind
from specc.document.section_paths import THICK, right_ticks, trace, turns
from specc.geometry.point import Point
from specc.making.section import NEAR

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.section_paths import Frame
    from specc.making.section import CutEdge, Overlock, Row, Section, Strand

OUT = 0.45  # how far threads lie outside of what they hold, millimetres of paper
_NEEDLES = 1.5  # between needles beside each other
_BITE = 3.2  # of an overlock whose needle is not measured


def section_strokes(section: Section, frame: Frame) -> tuple[Stroke, ...]:
    """Everything that is cut across and goes through; later lines lie on earlier ones."""
    rows, strands = section.rows, section.strands
    strokes = (
        *(stroke for strand in strands for stroke in _strand_strokes(section, strand, frame)),
        Stroke(LineKind.THIN, tuple(tick for strand in strands for tick in right_ticks(strand, frame))),
        Stroke(LineKind.THREAD, tuple(_loop_lines(section, frame))),
        Stroke(LineKind.NEEDLE, tuple(line for row in rows for line in _needle_lines(section, row, frame))),
        Stroke(LineKind.THREAD, tuple(line for row in rows for line in _thread_lines(section, row, frame))),
    )
    return tuple(stroke for stroke in strokes if stroke.traces)


def _strand_strokes(section: Section, strand: Strand, frame: Frame) -> Iterator[Stroke]:
    """A ply as a band between two lines, closed where it is cut."""
    within = LineKind.TRIM_WITHIN if strand.trim else LineKind.PLY_WITHIN
    yield Stroke(LineKind.PLY, (trace(section, strand, frame),))
    yield Stroke(within, (trace(section, strand, frame, short=0.15),))


def upright(x: float, start: float, end: float) -> Trace:
    """A line down the paper."""
    return Trace(Point(x, start), (Point(x, end),))


def flat(start: float, end: float, y: float) -> Trace:
    """A line across the paper."""
    return Trace(Point(start, y), (Point(end, y),))


def middle_of(section: Section, x: float) -> float:
    """The layer in the middle of the folds at x."""
    found = [
        (t.start + t.end) / 2 for strand in section.strands for t in turns(strand) if abs(t.x - x) < NEAR
    ]
    return sum(found) / len(found) if found else 0.0


def _ends(row: Row, frame: Frame) -> tuple[float, float]:
    """From where to where down the paper the needle goes."""
    start, end = frame.y(row.top) - THICK / 2 - OUT, frame.y(row.bottom) + THICK / 2 + OUT
    return (frame.y(row.top) if row.blind else start), end


def _places(row: Row, frame: Frame) -> Iterator[float]:
    for x in row.places:
        for needle in range(row.needles):
            yield frame.x(x) + (needle - (row.needles - 1) / 2) * _NEEDLES


def _needle_lines(section: Section, row: Row, frame: Frame) -> Iterator[Trace]:
    if row.across:
        y = frame.y(middle_of(section, row.places[0]))
        reach = 2 * (THICK + OUT)
        yield flat(frame.origin - reach, frame.origin + reach, y)
        return
    start, end = _ends(row, frame)
    for x in _places(row, frame):
        yield upright(x, start, end)


def _thread_lines(section: Section, row: Row, frame: Frame) -> Iterator[Trace]:
    """The thread that lies on the cloth at both ends of the needle's way, or across, where it covers."""
    if row.across:
        y = frame.y(middle_of(section, row.places[0]))
        reach = 2 * (THICK + OUT)
        for end in (-reach, reach):
            yield upright(frame.origin + end, y - 0.5, y + 0.5)
        return
    start, end = _ends(row, frame)
    found = list(_places(row, frame))
    if row.covers:
        yield flat(found[0] - 0.5, found[-1] + 0.5, end)
    if row.covers == "both":
        yield flat(found[0] - 0.5, found[-1] + 0.5, start)
    for x in found:
        if row.covers != "both" and not row.blind:
            yield flat(x - 0.5, x + 0.5, start)
        if not row.covers:
            yield flat(x - 0.5, x + 0.5, end)


def _loop_lines(section: Section, frame: Frame) -> Iterator[Trace]:
    for overlock in section.overlocks:
        for edge in overlock.edges:
            yield _loop(overlock, edge, frame)


def _loop(overlock: Overlock, edge: CutEdge, frame: Frame) -> Trace:
    """One loop: from the needle over the plies, round their raw edges, and back below."""
    x = frame.x(edge.x)
    needle = x + edge.inward * (_BITE if overlock.bite is None else overlock.bite * frame.scale)
    out = x - edge.inward * 0.7
    top, bottom = frame.y(edge.top) - THICK / 2 - OUT, frame.y(edge.bottom) + THICK / 2 + OUT
    middle = (top + bottom) / 2
    round_ = Point(out - edge.inward * 0.4, middle)
    return Trace(
        Point(needle, top),
        (
            Point(x, top),
            Bend(Point(out, top), Point(round_.x, (top + middle) / 2), round_),
            Bend(Point(round_.x, (middle + bottom) / 2), Point(out, bottom), Point(x, bottom)),
            Point(needle, bottom),
        ),
        closed=True,
    )
