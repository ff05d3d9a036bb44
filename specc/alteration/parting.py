"""Owns the two parts of a piece that is cut along a line, each with what lies on it; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby
from typing import TYPE_CHECKING, Final

from specc.alteration.cutting_line import ON
from specc.alteration.halves import Halves, closed_up
from specc.alteration.runs import NEAR, Run, parted, regrouped
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.region import contains, signed_area
from specc.geometry.tolerance import SAME
from specc.pattern.outline import drawn_outline
from specc.pattern.piece import Edge, Gathers, ReferenceLine

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.alteration.cutting_line import CuttingLine, End
    from specc.geometry.point import Point
    from specc.pattern.piece import Notch, Piece, TwoPointedDart

TOUCH: Final = 0.1  # mm; a point this near to the outline lies on it
JOINT: Final = "/"  # with a number: stands for a joint of the line among the darts between runs


@dataclass(frozen=True, slots=True)
class Part:
    """One part: its runs in outline order, the line's own first, and a piece with all else that lies on it.

    The line's runs are travelled as the outline goes; between them stand joints, JOINT with their number as
    counted from the line's start. The edges of `inside` are still those of the whole piece, and the line.
    """

    inside: Piece
    line: tuple[Run, ...]
    outline: tuple[Run, ...]
    forward: bool

    def line_paths(self) -> tuple[Path, ...]:
        """The runs of the line from its start to its end."""
        paths = tuple(run.path for run in self.line)
        return paths if self.forward else tuple(path.reversed() for path in reversed(paths))

    def polygon(self) -> tuple[Point, ...]:
        """A polygon that stands for the outline, dart mouths drawn straight across."""
        return tuple(point for run in (*self.line, *self.outline) for point in run.path.flattened())

    def closing(self, dart_name: str, joint: str) -> Part:
        """The part with an edge dart closed whose pivot is a joint of the line, by turning one side of it."""
        dart = next(dart for dart in self.inside.darts if dart.name == dart_name)
        runs = (*self.line, *self.outline)
        names = [run.dart for run in runs]
        begin = names.index(dart.name) + 1
        ring = (*runs[begin:], *runs[:begin])
        cut = (names.index(joint) + 1 - begin) % len(ring)
        halves = Halves.of(self.inside, dart, ring, cut=cut, slash=dart.pivot, into=None)
        following, angle = halves.turning()
        motion = Rigid.turning(dart.pivot, angle)
        moved = halves.moved_inside(motion, following=following, bridged=False)
        turned = halves.moved_runs(motion, following=following)
        turned = turned[len(ring) - begin :] + turned[: len(ring) - begin]
        count = len(self.line)
        return Part(
            replace(moved, darts=tuple(other for other in moved.darts if other.name != dart.name)),
            turned[:count],
            closed_up(turned[count:], dart.name),
            self.forward,
        )


def parts_of(piece: Piece, line: CuttingLine) -> tuple[Part, Part] | str:
    """The two parts, first the one on whose outline the line runs from start to end.

    Where an edge would have stretches on one part that do not hang together, the answer is its name.
    """
    runs, start, end = _ring(piece, line)
    counter = signed_area(drawn_outline(piece)) > 0.0
    parts = []
    for forward, low, high in ((True, end, start), (False, start, end)):
        outline = runs[low:high] if low < high else (*runs[low:], *runs[:high])
        names = [name for name, _ in groupby(run.edge for run in outline)]
        twice = next((name for name in names if names.count(name) > 1), None)
        if twice is not None or not outline:
            return twice or line.start.edge
        # The last run is followed by no dart of its edge when the line begins in that dart.
        outline = (*outline[:-1], replace(outline[-1], dart=None))
        drawn = _line_runs(line, left=forward is counter, forward=forward)
        parts.append(_with_inside(piece, line, drawn, outline, forward=forward))
    return parts[0], parts[1]


def _ring(piece: Piece, line: CuttingLine) -> tuple[tuple[Run, ...], int, int]:
    """The runs of the outline cut at both ends of the line, and which follow its start and its end."""
    runs: list[Run] = []
    following: dict[int, int] = {}
    for edge in piece.edges:
        for index, (part, dart) in enumerate(zip(edge.parts, (*edge.darts, None), strict=True)):
            ends = [i for i, end in enumerate(line.ends) if (end.edge, end.part) == (edge.name, index)]
            stops = sorted((line.ends[i].along, i) for i in ends)
            low = 0.0
            for along, i in stops:
                if along - low > NEAR and part.length() - along > NEAR:
                    runs.append(Run(edge.name, part.between(low, along)))
                    low = along
                following[i] = len(runs) if along - low <= NEAR else len(runs) + 1
            runs.append(Run(edge.name, part.between(low, part.length()), dart))
    return tuple(runs), following[0] % len(runs), following[1] % len(runs)


def _line_runs(line: CuttingLine, *, left: bool, forward: bool) -> tuple[Run, ...]:
    """The line as it bounds one part: with a leg of each dart at its ends and a half of each on its way.

    `left` says that the part lies to the left of the line's course.
    """
    start, end = line.start.dart, line.end.dart
    paths: list[Path] = []
    if start is not None:
        paths.append(Path.through(start.first if forward else start.second, start.pivot))
    for span in line.spans:
        if span.dart is None:
            paths.append(span.path)
            continue
        a, b = span.path.start, span.path.end
        vertex = max(
            (span.dart.first, span.dart.second), key=lambda p: (b - a).cross(p - a) * (1 if left else -1)
        )
        paths += (Path.through(a, vertex), Path.through(vertex, b))
    if end is not None:
        paths.append(Path.through(end.pivot, end.second if forward else end.first))
    joints = [*(f"{JOINT}{number}" for number in range(1, len(paths))), None]
    if forward:
        return tuple(Run(line.name, path, joint) for path, joint in zip(paths, joints, strict=True))
    back = [path.reversed() for path in reversed(paths)]
    return tuple(
        Run(line.name, path, joint) for path, joint in zip(back, [*reversed(joints[:-1]), None], strict=True)
    )


def joints_of(line: CuttingLine) -> tuple[str, ...]:
    """The joints at the points that the line was drawn through, in their order."""
    number = 1 if line.start.dart is not None else 0
    joints = [f"{JOINT}{number}"] if number else []
    for span in line.spans[:-1]:
        number += 2 if span.dart is not None else 1
        joints.append(f"{JOINT}{number}")
    if line.end.dart is not None:
        number += 2 if line.spans[-1].dart is not None else 1
        joints.append(f"{JOINT}{number}")
    return tuple(joints)


def _with_inside(
    piece: Piece, line: CuttingLine, drawn: tuple[Run, ...], outline: tuple[Run, ...], *, forward: bool
) -> Part:
    """The part with what lies on it."""
    first, last = (line.end, line.start) if forward else (line.start, line.end)
    bare = Part(piece, drawn, outline, forward)
    polygon = bare.polygon()
    around = Path.through(*polygon, polygon[0])
    edge = Path(tuple(segment for run in drawn for segment in run.path.segments))
    owned = {run.dart for run in outline}
    taken = {span.dart.name for span in line.spans if span.dart is not None}
    inner = tuple(dart for dart in piece.two_pointed if dart.name not in taken)
    spans = {run.edge: _span(run.edge, outline, first, last) for run in outline}
    lines = [ReferenceLine(each.name, _inside(each.parts, edge, polygon)) for each in piece.lines]
    new = Edge(line.name, f"{line.name}-start", f"{line.name}-end", (edge,))
    inside = replace(
        piece,
        edges=(*(_drawn_in(e, *spans.get(e.name, (0.0, 0.0))) for e in piece.edges), new),
        darts=tuple(dart for dart in piece.darts if dart.name in owned),
        two_pointed=tuple(dart for dart in inner if contains(polygon, _middle(dart))),
        points=tuple(
            point
            for point in piece.points
            if contains(polygon, point.at) or around.distance_to(point.at) <= TOUCH
        ),
        lines=tuple(each for each in lines if each.parts),
        notches=tuple(_notches(piece.notches, spans)),
        grain=_grain(piece, edge, polygon),
        fold=piece.fold if piece.fold in spans else None,
    )
    return Part(inside, drawn, outline, forward)


def _middle(dart: TwoPointedDart) -> Point:
    return dart.top.toward(dart.bottom, 0.5)


def _span(edge: str, outline: tuple[Run, ...], first: End, last: End) -> tuple[float, float]:
    """The stretch of an edge that is on the part, in its old stitched length."""
    low = first.stitched if edge == first.edge and outline[0].edge == edge else 0.0
    high = last.stitched if edge == last.edge and outline[-1].edge == edge else float("inf")
    return low, high


def _drawn_in(edge: Edge, low: float, high: float) -> Edge:
    """The edge with the gathers and folds of one stretch of it."""
    gathers = []
    for g in edge.gathers:
        start, end = max(low, g.start), min(high, g.end)
        if end - start > SAME:
            amount = g.amount * (end - start) / (g.end - g.start)
            gathers.append(Gathers(start - low, end - low, amount, g.eased))
    folds = tuple(replace(fold, at=fold.at - low) for fold in edge.folds if low <= fold.at < high)
    return replace(edge, gathers=tuple(gathers), folds=folds)


def _notches(notches: tuple[Notch, ...], spans: dict[str, tuple[float, float]]) -> Iterable[Notch]:
    for notch in notches:
        low, high = spans.get(notch.edge, (0.0, -1.0))
        if low - SAME <= notch.at <= high + SAME:
            yield replace(notch, at=max(0.0, notch.at - low))


def _inside(parts: tuple[Path, ...], edge: Path, polygon: tuple[Point, ...]) -> tuple[Path, ...]:
    """The stretches of a reference line on this part; what runs along the new edge belongs to both."""
    kept = []
    for part in parts:
        for stretch in parted(part, (crossing.along for crossing in crossings(part, edge))):
            middle = stretch.point_at(0.5 * stretch.length())
            if contains(polygon, middle) or edge.distance_to(middle) <= ON:
                kept.append(stretch)
    return regrouped(kept)


def _grain(piece: Piece, edge: Path, polygon: tuple[Point, ...]) -> Path | None:
    """The stretch of the grain line on this part, if it is half of it at least."""
    if piece.grain is None:
        return None
    kept = _inside((piece.grain,), edge, polygon)
    return next((path for path in kept if path.length() >= 0.5 * piece.grain.length()), None)
