"""Owns drawing one reference line: between points, through points, or level with one across the piece.

Knows nothing of how points are found.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import NO_DIRECTION, EvaluationError
from specc.geometry.crossing import line_crossings
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import contains
from specc.geometry.smooth import smooth_through
from specc.pattern.piece import ReferenceLine

if TYPE_CHECKING:
    from specc.drafting.finder import Finder
    from specc.model.block import LevelDraft, LineDraft

NO_LEVEL = declare(
    "SPC437", "level-outside-piece", Severity.ERROR, "level with `{point}` no line crosses `{piece}`"
)

LEVEL: Final = Point(1.0, 0.0)
NEAR: Final = 0.01  # mm: a point this near to the outline lies on it


def drawn_line(draft: LineDraft, finder: Finder) -> ReferenceLine:
    """The line through its points: straight between two, else smooth. Raises EvaluationError."""
    if not draft.through:
        return ReferenceLine(draft.name, (Path.through(finder.at(draft.start), finder.at(draft.end)),))
    names = (draft.start, *draft.through, draft.end)
    points = [finder.at(name) for name in names]
    for (first, a), (second, b) in pairwise(zip(names, points, strict=True)):
        if a.distance(b) <= NEAR:
            said = NO_DIRECTION.at(draft.origin, start=first, end=second)
            raise EvaluationError(said.help("let neighbours lie apart in every size"))
    curve, *others = smooth_through(points)
    for other in others:
        curve = curve.joined(other)
    return ReferenceLine(draft.name, (curve,))


def level_line(draft: LevelDraft, at: Point, outline: Path, *, piece: str) -> ReferenceLine:
    """The level stretch inside the outline that holds the point; raises EvaluationError without one."""
    across = [crossing.across for crossing in line_crossings(outline, at, LEVEL)]
    left = max((x for x in across if x < -NEAR), default=None)
    right = min((x for x in across if x > NEAR), default=None)
    corners = outline.flattened()
    ends = [0.0, 0.0]
    for side, end in enumerate((left, right)):
        if end is not None and contains(corners, at + LEVEL * (end / 2.0)):
            ends[side] = end
    if ends[1] - ends[0] <= NEAR or not (outline.is_near(at, NEAR) or contains(corners, at)):
        said = NO_LEVEL.at(draft.origin, point=draft.point, piece=piece)
        raise EvaluationError(said.help("let the point lie inside of the piece, or on its outline"))
    return ReferenceLine(draft.name, (Path.through(at + LEVEL * ends[0], at + LEVEL * ends[1]),))
