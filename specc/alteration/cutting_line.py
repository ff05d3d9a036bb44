"""Owns the line along which a piece is split: ends, course, the darts it takes up; knows not the parts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.alteration.refusal import Refusal, missing
from specc.alteration.runs import NEAR
from specc.alteration.slash import CLEAR, stitched_place
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.region import contains
from specc.geometry.smooth import smooth_through
from specc.pattern.lookup import dart_named, edge_named, edges_at, point_named
from specc.pattern.measure import place_on_edge, stitched_at, two_pointed_outline
from specc.pattern.outline import drawn_outline
from specc.pattern.piece import Dart, TwoPointedDart

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.expression import Expression
    from specc.model.reshaping import Split, SplitEnd
    from specc.pattern.piece import Piece

ON: Final = 0.01  # mm; a point this near to the line lies on it


@dataclass(frozen=True, slots=True)
class End:
    """Where the line meets the outline: on part number `part` of an edge, or in the dart after that part.

    `at` is a point of the line: the place on the edge, or the pivot. `stitched` is the place along the
    stitched edge.
    """

    edge: str
    part: int
    along: float
    stitched: float
    at: Point
    dart: Dart | None = None


@dataclass(frozen=True, slots=True)
class Span:
    """The line from one of its points to the next; `dart` is there if they are its top and bottom."""

    path: Path
    dart: TwoPointedDart | None = None


@dataclass(frozen=True, slots=True)
class CuttingLine:
    """The line from `start` to `end`. What of it lies in darts at its ends is not among the spans."""

    name: str
    start: End
    end: End
    spans: tuple[Span, ...]

    @property
    def ends(self) -> tuple[End, End]:
        """Start and end."""
        return self.start, self.end

    def inner_points(self) -> tuple[Point, ...]:
        """The points between two spans."""
        return tuple(span.path.end for span in self.spans[:-1])

    def points(self) -> tuple[Point, ...]:
        """The points that the line was drawn through, in order, pivots at its ends among them."""
        first = (self.start.at,) if self.start.dart else ()
        last = (self.end.at,) if self.end.dart else ()
        return (*first, *self.inner_points(), *last)


def cutting_line(piece: Piece, step: Split, evaluate: Callable[[Expression], float]) -> CuttingLine | Refusal:
    """The line of a split, inside the piece and clear of other darts, or why it cannot be."""
    start, end = (_end(piece, step, ref, evaluate) for ref in (step.start, step.end))
    if isinstance(start, Refusal):
        return start
    if isinstance(end, Refusal):
        return end
    through = _through(piece, step, start)
    if isinstance(through, Refusal):
        return through
    course = _course(piece, start, end, through)
    if course is None:
        facts = (("piece", piece.name), ("line", step.line))
        cure = "let it begin and end in different places"
        return Refusal("split-leaves-piece", facts, step.origin, cure)
    line = CuttingLine(step.line, start, end, _spans(piece, _through_tips(piece, course)))
    return _obstacle(piece, line, step) or line


def _end(  # noqa: PLR0911 - a refusal each
    piece: Piece, step: Split, ref: SplitEnd, evaluate: Callable[[Expression], float]
) -> End | Refusal:
    """One end of the line; a place within NEAR of a corner is that corner."""
    facts: Facts = (("piece", piece.name), ("line", step.line), ("name", ref.part.name))
    dart = dart_named(piece, ref.part.name)
    if isinstance(dart, Dart):
        edge = next(edge for edge in piece.edges if dart.name in edge.darts)
        index = edge.darts.index(dart.name)
        along = edge.parts[index].length()
        return End(edge.name, index, along, stitched_at(edge, index, along), dart.pivot, dart)
    if dart is not None:
        cure = "begin on an edge and run the line through `{name}`"
        return Refusal("split-begins-inside", facts, ref.part.origin, cure)
    found = edge_named(piece, ref.part.name)
    if found is None:
        _, starting = edges_at(piece, ref.part.name)
        if starting is not None:
            return End(starting.name, 0, 0.0, 0.0, starting.parts[0].start)
        if point_named(piece, ref.part.name) is None:
            return missing(piece, ref.part)
        cure = "begin on an edge or at a corner, and run the line through `{name}`"
        return Refusal("split-begins-inside", facts, ref.part.origin, cure)
    stitched = (
        stitched_place(found, ref.place, evaluate)
        if ref.place
        else 0.5 * stitched_at(found, len(found.parts) - 1, found.parts[-1].length())
    )
    place = place_on_edge(found, stitched)
    before, after = place.along, found.parts[place.part].length() - place.along
    last = len(found.parts) - 1
    corner = (before <= NEAR and place.part == 0) or (after <= NEAR and place.part == last)
    if min(before, after) < CLEAR and not corner:
        more = (*facts, ("distance", min(before, after)))
        cure = "put it at the corner or at the dart itself, or further away"
        return Refusal("split-at-end", more, ref.part.origin, cure)
    return End(found.name, place.part, place.along, stitched, place.at)


def _through(piece: Piece, step: Split, start: End) -> tuple[Point, ...] | Refusal:
    """The points named on the way; an edge dart means its pivot, a dart inside its top and bottom."""
    points: list[Point] = []
    for ref in step.through:
        dart = dart_named(piece, ref.name)
        if isinstance(dart, TwoPointedDart):
            here = points[-1] if points else start.at
            points += sorted((dart.top, dart.bottom), key=here.distance)
            continue
        at = dart.pivot if dart is not None else point_named(piece, ref.name)
        if at is None:
            return missing(piece, ref)
        points.append(at)
    return tuple(points)


def _course(piece: Piece, start: End, end: End, through: tuple[Point, ...]) -> tuple[Path, ...] | None:
    """The line from point to point: straight without points between, else smooth; None if it has no length.

    In a dart it comes from the middle of the mouth. At the fold it stands square, so that it runs on
    smoothly.
    """
    points = [start.at]
    for point in (*through, end.at):
        if point.distance(points[-1]) > ON:
            points.append(point)
    if points[-1].distance(end.at) <= ON and len(points) > 1:
        points[-1] = end.at
    if len(points) == 1:
        return None
    if len(points) == 2:
        return (Path.through(*points),)
    before = [_mouth(start.dart)] if start.dart else []
    after = [_mouth(end.dart)] if end.dart else []
    drawn = smooth_through(
        [*before, *points, *after],
        leaving=_square(piece, start, points[1] - points[0]),
        arriving=_square(piece, end, points[-1] - points[-2]),
    )
    return drawn[len(before) : len(drawn) - len(after)]


def _mouth(dart: Dart) -> Point:
    return dart.first.toward(dart.second, 0.5)


def _square(piece: Piece, end: End, along: Point) -> Point | None:
    """The direction square to the fold, nearest to the way of the line, where it ends on the fold."""
    if end.edge != piece.fold or end.dart is not None:
        return None
    fold = edge_named(piece, end.edge)
    assert fold is not None
    square = fold.parts[0].start_direction().left()
    return square if square.dot(along) > 0.0 else -square


def _through_tips(piece: Piece, course: tuple[Path, ...]) -> tuple[Path, ...]:
    """The course cut also where it runs through pivots, or through both ends of a dart inside, unnamed."""
    tips: list[tuple[Point, ...]] = [(dart.pivot,) for dart in piece.darts]
    tips += [(dart.top, dart.bottom) for dart in piece.two_pointed]
    for points in tips:
        if all(min(span.distance_to(point) for span in course) <= ON for point in points):
            for point in points:
                course = tuple(part for span in course for part in _cut_at(span, point))
    return course


def _cut_at(span: Path, point: Point) -> tuple[Path, ...]:
    if span.distance_to(point) > ON or min(span.start.distance(point), span.end.distance(point)) <= ON:
        return (span,)
    before, after = span.split_at(span.length_at(point))
    return before.between_points(before.start, point), after.between_points(point, after.end)


def _spans(piece: Piece, course: tuple[Path, ...]) -> tuple[Span, ...]:
    """The spans with the darts that they run through from end to end; points within one do not count."""
    spans = [Span(path) for path in course]
    for dart in piece.two_pointed:
        outline = two_pointed_outline(dart).flattened()[:-1]
        stops = [spans[0].path.start, *(span.path.end for span in spans)]
        at = [
            next((i for i, stop in enumerate(stops) if stop.distance(tip) <= ON), None)
            for tip in (dart.top, dart.bottom)
        ]
        if at[0] is None or at[1] is None:
            continue
        low, high = sorted((at[0], at[1]))
        if all(contains(outline, stop) for stop in stops[low + 1 : high]):
            spans[low:high] = [Span(Path.through(stops[low], stops[high]), dart)]
    return tuple(spans)


def _obstacle(piece: Piece, line: CuttingLine, step: Split) -> Refusal | None:
    """What the line would run into: a dart that it does not take up, the outline, or itself."""
    paths = [span.path for span in line.spans if span.dart is None]
    taken = {span.dart.name for span in line.spans if span.dart is not None}
    whole = [span.path for span in line.spans]
    origin, facts = step.origin, (("piece", piece.name), ("line", line.name))
    for dart in piece.darts:
        legs = Path.through(dart.first, dart.pivot, dart.second)
        if any(met.at.distance(dart.pivot) > ON for path in paths for met in crossings(path, legs)):
            distance = min(path.distance_to(dart.pivot) for path in whole)
            more = (*facts, ("dart", dart.name), ("distance", distance))
            cure = "run the line through `{dart}`, begin or end there, or swing it out of the way first"
            return Refusal("split-crosses-dart", more, origin, cure)
    for inner in piece.two_pointed:
        outline = two_pointed_outline(inner)
        corners = outline.flattened()[:-1]
        met_inside = any(
            crossings(path, outline) or contains(corners, path.point_at(0.5 * path.length()))
            for path in paths
        )
        if inner.name not in taken and met_inside:
            distance = max(min(path.distance_to(tip) for path in whole) for tip in (inner.top, inner.bottom))
            more = (*facts, ("dart", inner.name), ("distance", distance))
            cure = "run the line through `{dart}`, or release it first"
            return Refusal("split-crosses-dart", more, origin, cure)
    if _leaves(piece, line) or any(
        NEAR < met.along < a.length() - NEAR
        for i, a in enumerate(whole)
        for b in whole[i + 1 :]
        for met in crossings(a, b)
    ):
        return Refusal("split-leaves-piece", facts, origin, "run it through other points")
    return None


def _leaves(piece: Piece, line: CuttingLine) -> bool:
    """Whether the line meets the outline other than at its ends, or runs outside."""
    outline = drawn_outline(piece)
    polygon = outline.flattened()[:-1]
    ends = [end.at for end in line.ends if end.dart is None]
    margin = CLEAR / 10.0
    for span in line.spans:
        met = crossings(span.path, outline)
        if any(min((c.at.distance(end) for end in ends), default=CLEAR) > margin for c in met):
            return True
        if not contains(polygon, span.path.point_at(0.5 * span.path.length())):
            return True
    return False
