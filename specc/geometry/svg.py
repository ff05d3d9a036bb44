"""Owns the way from SVG's data of a path to a path: y turned up, arcs as cubics; knows no files, no scale.

Path data are those of SVG 1.1, chapter 8; fontTools reads them. What it would pass over is refused here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from math import cos, isfinite, radians, sin, sqrt, tan, tau
from typing import TYPE_CHECKING, Final

from specc.geometry.fit import arc
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import SAME

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from specc.geometry.segment import Segment

MOST_SEGMENTS: Final = 2_000
STRAIGHT: Final = 1e-9  # as a share of the chord: how far the handles of a straight cubic lie off it

_NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_DATA = re.compile(rf"(?:[MmZzLlHhVvCcSsQqTtAa]|{_NUMBER}|[\s,])*")
_TRANSFORM = re.compile(rf"\s*,?\s*([a-zA-Z]+)\s*\(((?:\s*,?\s*{_NUMBER})*)\s*\)\s*")


@dataclass(frozen=True, slots=True)
class Affine:
    """x' = a x + c y + e, y' = b x + d y + f, as in SVG."""

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float

    def __call__(self, point: Point) -> Point:
        """Where the point goes."""
        return Point(
            self.a * point.x + self.c * point.y + self.e, self.b * point.x + self.d * point.y + self.f
        )

    def after(self, first: Affine) -> Affine:
        """This one done after the first."""
        x, y, o = self(Point(first.a, first.b)), self(Point(first.c, first.d)), self(Point(first.e, first.f))
        return Affine(x.x - self.e, x.y - self.f, y.x - self.e, y.y - self.f, o.x, o.y)


UPWARD: Final = Affine(1.0, 0.0, 0.0, -1.0, 0.0, 0.0)


class UnreadableError(Exception):
    """What is wrong with the data of a path or a transform, in words."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """A path and the stops that were drawn on it: its ends and the points where one command ends."""

    path: Path
    stops: tuple[Point, ...]

    def mapped(self, move: Callable[[Point], Point]) -> Drawn:
        """The same where an affine map takes it."""
        segments = tuple(_moved(segment, move) for segment in self.path.segments)
        return replace(self, path=Path(segments), stops=tuple(move(stop) for stop in self.stops))


def drawn_path(data: str, transforms: Sequence[str]) -> Drawn:
    """The path in the units of the drawing, x to the right and y up; raises UnreadableError."""
    # Imported where it is needed: few garments have drawings.
    from fontTools.svgLib.path import parse_path  # noqa: PLC0415

    if _DATA.fullmatch(data) is None:
        raise UnreadableError("its data hold something that is neither a command nor a number")
    motion = UPWARD
    for written in transforms:
        motion = motion.after(_transform(written))
    pen = _Pen()
    try:
        parse_path(data, pen)
    except (ValueError, IndexError, OverflowError):
        raise UnreadableError("its data break off, or a command lacks numbers") from None
    if pen.lines != 1 or not pen.segments:
        raise UnreadableError(
            "nothing is drawn" if not pen.segments else f"it has {pen.lines} parts, not one"
        )
    if len(pen.segments) > MOST_SEGMENTS:
        raise UnreadableError(f"it has more than {MOST_SEGMENTS:,} parts")
    drawn = Drawn(Path(tuple(pen.segments)), tuple(pen.stops)).mapped(motion)
    if not all(isfinite(value) for segment in drawn.path.segments for value in segment.box()):
        raise UnreadableError("it reaches beyond all bounds")
    return replace(drawn, path=Path(tuple(_straightened(segment) for segment in drawn.path.segments)))


class _Pen:
    """Takes down what fontTools reads."""

    def __init__(self) -> None:
        self.segments: list[Segment] = []
        self.stops: list[Point] = []
        self.lines = 0
        self._at = Point(0.0, 0.0)

    def moveTo(self, to: tuple[float, float]) -> None:  # noqa: N802 the names are fontTools'
        self._at = Point(*to)
        self.stops.append(self._at)
        self.lines += 1

    def lineTo(self, to: tuple[float, float]) -> None:  # noqa: N802
        end = Point(*to)
        if end.distance(self._at) > SAME:
            self._add(Line(self._at, end))

    def curveTo(self, *stops: tuple[float, float]) -> None:  # noqa: N802
        leaving, arriving, end = (Point(*stop) for stop in stops)
        if max(self._at.distance(stop) for stop in (leaving, arriving, end)) > SAME:
            self._add(Cubic(self._at, leaving, arriving, end))

    def qCurveTo(self, *stops: tuple[float, float]) -> None:  # noqa: N802
        control, end = (Point(*stop) for stop in stops)
        # The cubic that is the same curve: two thirds of the way to the control point.
        if max(self._at.distance(stop) for stop in (control, end)) > SAME:
            self._add(Cubic(self._at, self._at.toward(control, 2 / 3), end.toward(control, 2 / 3), end))

    def arcTo(  # noqa: N802, PLR0913, PLR0917
        self,
        across: float,
        upright: float,
        rotation: float,
        large: bool,  # noqa: FBT001
        sweep: bool,  # noqa: FBT001
        to: tuple[float, float],
    ) -> None:
        end = Point(*to)
        if end.distance(self._at) <= SAME:
            return
        if min(across, upright) <= 0.0:
            self.lineTo(to)
            return
        self.segments += elliptic_arc(
            self._at, end, (across, upright), rotation=radians(rotation), large=large, sweep=sweep
        )
        self._at = end
        self.stops.append(end)

    def closePath(self) -> None:  # noqa: N802
        """The line back to the start has been drawn already."""

    def endPath(self) -> None:  # noqa: N802
        """Nothing is left to be drawn."""

    def _add(self, segment: Segment) -> None:
        self.segments.append(segment)
        self._at = segment.end
        self.stops.append(segment.end)


def elliptic_arc(  # noqa: PLR0913 SVG's own parameters
    start: Point, end: Point, radii: tuple[float, float], *, rotation: float, large: bool, sweep: bool
) -> tuple[Segment, ...]:
    """The arc of an ellipse from its ends, as SVG 1.1 defines it (F.6.5, F.6.6).

    It is an arc of a circle with the larger radius, pressed and turned, and no further from the true one.
    """
    across, upright = (radius / max(radii) for radius in radii)
    c, s = cos(rotation), sin(rotation)
    press = Affine(c * across, s * across, -s * upright, c * upright, start.x, start.y)
    # The end as seen from the start, before the circle was pressed.
    step = end - start
    whole = Point((c * step.x + s * step.y) / across, (c * step.y - s * step.x) / upright)
    half = 0.5 * whole.norm()
    radius = max(*radii, half)  # F.6.6: radii that are too small are made just large enough
    side = 1.0 if large != sweep else -1.0
    centre = whole * 0.5 + whole.unit().left() * (side * sqrt(radius * radius - half * half))
    turn = (-centre).angle_to(whole - centre)
    if sweep != (turn > 0.0):
        turn += tau if sweep else -tau
    path = arc(Point(0.0, 0.0), centre, turn)
    moved = Path(tuple(_moved(segment, press) for segment in path.segments))
    return moved.between_points(start, end).segments


def _moved(segment: Segment, move: Callable[[Point], Point]) -> Segment:
    """The segment under an affine map, which takes lines to lines and cubics to cubics."""
    if isinstance(segment, Line):
        return Line(move(segment.start), move(segment.end))
    return Cubic(*(move(p) for p in (segment.start, segment.leaving, segment.arriving, segment.end)))


def _straightened(segment: Segment) -> Segment:
    """A line instead of a cubic that is straight: drawing programs write both."""
    chord = segment.end - segment.start
    if isinstance(segment, Line) or chord.norm() <= SAME:
        return segment
    off = STRAIGHT * chord.dot(chord)
    first, last = segment.leaving - segment.start, segment.arriving - segment.start
    straight = abs(chord.cross(first)) <= off and abs(chord.cross(last)) <= off
    forward = 0.0 <= chord.dot(first) <= chord.dot(last) <= chord.dot(chord)
    return Line(segment.start, segment.end) if straight and forward else segment


def _transform(written: str) -> Affine:
    """The map of a list of transforms (SVG 1.1, 7.6): the last is done first."""
    motion = Affine(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    at = 0
    while at < len(written):
        found = _TRANSFORM.match(written, at)
        if found is None:
            raise UnreadableError(f"its transform `{written[:40]}` cannot be read")
        numbers = [float(number) for number in re.findall(_NUMBER, found[2])]
        motion = motion.after(_single(found[1], numbers))
        at = found.end()
    return motion


def _single(name: str, numbers: list[float]) -> Affine:  # noqa: PLR0911 a transform each
    match name, numbers:
        case "matrix", [a, b, c, d, e, f]:
            return Affine(a, b, c, d, e, f)
        case "translate", [x]:
            return _single("translate", [x, 0.0])
        case "translate", [x, y]:
            return Affine(1.0, 0.0, 0.0, 1.0, x, y)
        case "scale", [x]:
            return _single("scale", [x, x])
        case "scale", [x, y]:
            return Affine(x, 0.0, 0.0, y, 0.0, 0.0)
        case "rotate", [angle]:
            c, s = cos(radians(angle)), sin(radians(angle))
            return Affine(c, s, -s, c, 0.0, 0.0)
        case "rotate", [angle, x, y]:
            there, back = (Affine(1.0, 0.0, 0.0, 1.0, sign * x, sign * y) for sign in (1.0, -1.0))
            return there.after(_single("rotate", [angle])).after(back)
        case "skewX", [angle]:
            return Affine(1.0, 0.0, tan(radians(angle)), 1.0, 0.0, 0.0)
        case "skewY", [angle]:
            return Affine(1.0, tan(radians(angle)), 0.0, 1.0, 0.0, 0.0)
        case _:
            raise UnreadableError(f"its transform `{name}` cannot be read")
