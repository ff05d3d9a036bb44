"""Owns finding a point from how it is described; knows nothing of the points and values it starts from."""

from __future__ import annotations

from math import cos, isfinite, sin
from typing import TYPE_CHECKING, Final

from specc.drafting.drawings import corner_near, meeting
from specc.drafting.evaluate import FURTHEST, NO_DIRECTION, TOO_LARGE, EvaluationError
from specc.geometry.point import Point, Rigid
from specc.model.block import At, Going, Moved, On, Turned
from specc.model.tracing import Meeting, Near

if TYPE_CHECKING:
    from specc.drafting.finder import Finder
    from specc.model.block import PointDraft

UPRIGHT: Final = 1e-15
"""What the sine or cosine of a right angle may come out as, for want of an exact pi."""


def heading(direction: float) -> Point:
    """The unit vector of a direction in radians; left, right, up and down are exactly that."""
    across, up = cos(direction), sin(direction)
    return Point(across if abs(across) > UPRIGHT else 0.0, up if abs(up) > UPRIGHT else 0.0)


def position(draft: PointDraft, finder: Finder) -> Point:
    """Where the point lies; raises EvaluationError where that is nowhere, or too far off for any garment."""
    found = _position(draft, finder)
    for across in (found.x, found.y):
        if not isfinite(across) or abs(across) > FURTHEST:
            said = TOO_LARGE.at(draft.origin, what=f"point `{draft.name}`")
            raise EvaluationError(said.help("let it lie within 10 m of the origin; look at the units"))
    return found


def _position(draft: PointDraft, finder: Finder) -> Point:
    match draft.position:
        case At(across=across, up=up):
            return Point(finder.value(across), finder.value(up))
        case Moved() as moved:
            return _moved(draft, moved, finder)
        case Turned(point=point, angle=angle, around=around):
            return Rigid.turning(finder.referred(around), finder.value(angle))(finder.referred(point))
        case On() as on:
            return finder.placed(on, draft.origin)
        case Meeting(first=first, second=second):
            paths = finder.drawn(first), finder.drawn(second)
            return meeting(*paths, names=(first, second), origin=draft.origin)
        case Near(across=across, up=up, path=path):
            place = Point(finder.value(across), finder.value(up))
            return corner_near(finder.drawn(path), place, name=path, origin=draft.origin)


def _moved(draft: PointDraft, moved: Moved, finder: Finder) -> Point:
    here = finder.referred(moved.start)
    for move in moved.moves:
        by = finder.value(move.by)
        if isinstance(move, Going):
            here += heading(finder.value(move.direction)) * by
            continue
        target = finder.referred(move.target)
        if here.distance(target) == 0.0:
            said = NO_DIRECTION.at(draft.origin, start=draft.name, end=move.target.name)
            raise EvaluationError(said.help("go toward a point that lies elsewhere in every size"))
        here += (target - here).unit() * by
    return here
