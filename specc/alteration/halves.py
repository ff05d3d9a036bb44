"""Owns the two parts of a piece between a dart and a slash, one turned about the pivot; knows no openings."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.alteration.runs import NEAR, Run, parted
from specc.geometry.crossing import crossings
from specc.geometry.path import Path
from specc.geometry.region import contains, polygon_area
from specc.geometry.segment import Line
from specc.pattern.outline import moved_dart, moved_two_pointed
from specc.pattern.piece import NamedPoint, ReferenceLine

if TYPE_CHECKING:
    from specc.geometry.point import Point, Rigid
    from specc.pattern.piece import Dart, Piece

ON: Final = 1e-5  # mm; a point this near to a line lies on it


@dataclass(frozen=True, slots=True)
class Halves:
    """A piece cut from a dart's pivot through an edge, as the outline goes on from the dart.

    `runs` begin at the dart's `second`; the run before `cut` ends at the slash and the one at `cut` begins
    there. `slash` is where the cut meets the outline, `into` the dart along which it runs, if any.
    `following` and `preceding` are polygons of the half behind the dart and of the other.
    """

    piece: Piece
    dart: Dart
    runs: tuple[Run, ...]
    cut: int
    slash: Point
    into: Dart | None
    following: tuple[Point, ...]
    preceding: tuple[Point, ...]

    @staticmethod
    def of(  # noqa: PLR0913 - what is cut, and where
        piece: Piece, dart: Dart, runs: tuple[Run, ...], *, cut: int, slash: Point, into: Dart | None
    ) -> Halves:
        """The two halves, with the corners of polygons that stand for them."""
        following, preceding = (
            (dart.pivot, *(point for run in half for point in run.path.flattened()))
            for half in (runs[:cut], runs[cut:])
        )
        return Halves(piece, dart, runs, cut, slash, into, following, preceding)

    def turning(self) -> tuple[bool, float]:
        """Whether the half that follows the dart turns, else the other; and the angle that closes the dart.

        The half with the fold stays; without a fold the one with the grain line, else the larger one.
        """
        pivot = self.dart.pivot
        closing = (self.dart.second - pivot).angle_to(self.dart.first - pivot)
        following = self._keeps(self.runs[: self.cut], self.following)
        preceding = self._keeps(self.runs[self.cut :], self.preceding)
        return (preceding > following, closing if preceding > following else -closing)

    def _keeps(self, runs: tuple[Run, ...], polygon: tuple[Point, ...]) -> tuple[bool, bool, float]:
        """What speaks for a half staying where it is, in order of weight."""
        grain = self.piece.grain
        holds_fold = any(run.edge == self.piece.fold for run in runs)
        holds_grain = grain is not None and contains(polygon, grain.point_at(0.5 * grain.length()))
        return holds_fold, holds_grain, abs(polygon_area(polygon))

    def legs(self) -> tuple[Path, ...]:
        """The lines of the cut: both legs of the dart, then the slash or the other dart's legs."""
        pivot = self.dart.pivot
        ends = [self.dart.first, self.dart.second]
        ends += [self.into.first, self.into.second] if self.into else [self.slash]
        return tuple(Path.through(pivot, end) for end in ends)

    def follows(self, point: Point) -> bool | None:
        """Whether a point lies in the half that follows the dart; None inside a dart that is cut along."""
        first, second, *cuts = self.legs()
        legs = [(second, True), (first, False)]
        if self.into:
            legs += [(cuts[0], True), (cuts[1], False)]
        for leg, follows in legs:
            if leg.distance_to(point) <= ON:
                return follows
        wedges = [self.dart, self.into] if self.into else [self.dart]
        if any(contains((w.first, w.pivot, w.second), point) for w in wedges):
            return None
        if contains(self.following, point):
            return True
        if contains(self.preceding, point):
            return False
        # On the outline itself, or outside the piece.
        nearest = min(range(len(self.runs)), key=lambda index: self.runs[index].path.distance_to(point))
        return nearest < self.cut

    def moved_runs(self, motion: Rigid, *, following: bool) -> tuple[Run, ...]:
        """The runs, those of one half where the motion takes them."""
        return tuple(
            replace(run, path=run.path.transformed(motion)) if (index < self.cut) == following else run
            for index, run in enumerate(self.runs)
        )

    def moved_inside(self, motion: Rigid, *, following: bool, bridged: bool) -> Piece:
        """The piece with all that lies inside one half moved; its edges are still the old ones.

        Reference lines are cut where the slash or a leg crosses them; `bridged` joins them again across the
        slash.
        """

        def moves(point: Point) -> bool:
            return self.follows(point) is following

        piece = self.piece
        grain = piece.grain
        if grain is not None and moves(grain.point_at(0.5 * grain.length())):
            grain = grain.transformed(motion)
        owner = {run.dart: (index < self.cut) == following for index, run in enumerate(self.runs) if run.dart}
        special = {self.dart.name} | ({self.into.name} if self.into else set())
        return replace(
            piece,
            darts=tuple(
                moved_dart(dart, motion) if owner[dart.name] and dart.name not in special else dart
                for dart in piece.darts
            ),
            two_pointed=tuple(
                moved_two_pointed(dart, motion) if moves(dart.top.toward(dart.bottom, 0.5)) else dart
                for dart in piece.two_pointed
            ),
            points=tuple(
                NamedPoint(point.name, motion(point.at)) if moves(point.at) else point
                for point in piece.points
            ),
            lines=tuple(
                ReferenceLine(
                    line.name, self._moved_line(line.parts, motion, following=following, bridged=bridged)
                )
                for line in piece.lines
            ),
            grain=grain,
        )

    def _moved_line(
        self, parts: tuple[Path, ...], motion: Rigid, *, following: bool, bridged: bool
    ) -> tuple[Path, ...]:
        moved: list[Path] = []
        ends: list[Point] = []  # where each moved stretch ended before it was moved
        for part in parts:
            for stretch in parted(part, self._cuts(part)):
                side = self.follows(stretch.point_at(0.5 * stretch.length()))
                if side is None:
                    continue
                path = stretch.transformed(motion) if side is following else stretch
                if moved and self._meets(moved[-1].end, path.start, ends[-1], stretch.start, bridged=bridged):
                    gap = moved[-1].end.distance(path.start)
                    before = moved[-1]
                    if gap > NEAR:
                        before = before.joined(Path((Line(before.end, path.start),)))
                    moved[-1] = before.joined(path.between_points(before.end, path.end))
                else:
                    moved.append(path)
                ends.append(stretch.end)
        return tuple(moved)

    def _meets(self, end: Point, start: Point, old_end: Point, old_start: Point, *, bridged: bool) -> bool:
        """Whether two stretches of a line are one again: they touch, or the slash alone had parted them."""
        if end.distance(start) <= NEAR:
            return True
        return bridged and old_end.distance(old_start) <= NEAR

    def _cuts(self, part: Path) -> list[float]:
        """The lengths at which a line is cut by the slash, the legs and the pivot."""
        cuts = [crossing.along for leg in self.legs() for crossing in crossings(part, leg)]
        if part.distance_to(self.dart.pivot) <= ON:
            cuts.append(part.length_at(self.dart.pivot))
        return cuts


def closed_up(runs: tuple[Run, ...], dart: str) -> tuple[Run, ...]:
    """The runs with the two on either side of a dart that is closed, or gone, made one."""
    kept: list[Run] = []
    for before, after in pairwise((None, *runs)):
        assert after is not None
        if before is not None and before.dart == dart and kept[-1].edge == after.edge:
            last = kept.pop()
            gap = last.path.end.distance(after.path.start)
            path = (
                last.path if gap <= NEAR else last.path.joined(Path((Line(last.path.end, after.path.start),)))
            )
            rest = after.path.between_points(path.end, after.path.end)
            kept.append(Run(last.edge, path.joined(rest), after.dart))
        else:
            kept.append(after)
    return tuple(kept)
