"""Owns giving edges their meaning, run by run; knows nothing of how a run is drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.block import Arc, Bearing, Curve, DartRun, EdgeDraft, Straight
from specc.model.tracing import Along
from specc.resolve.codes import EMPTY
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.resolve.within import Within

VAGUE = declare("SPC228", "curve-not-determined", Severity.ERROR, "this curve does not say {missing}")
IDLE = declare(
    "SPC229",
    "curve-says-too-much",
    Severity.ERROR,
    "`{word}` says nothing of a curve through points",
)

_LENGTH = (Dimension.LENGTH,)
_ANGLE = (Dimension.ANGLE,)
_SHARE = (Dimension.RATIO, Dimension.NUMBER)
_MISSING = {
    (True, True): "in which directions it runs, nor what it passes",
    (True, False): "in which direction it leaves",
    (False, True): "in which direction it arrives",
}


def resolve_edge(node: tree.Edge, within: Within) -> EdgeDraft:
    """The edge with those of its runs that are sound; faults are reported."""
    within.points(node.start)
    runs = [_run(run, within) for run in node.runs if not isinstance(run, tree.Broken)]
    if not node.runs:
        told = EMPTY.at(node.name.span, owner=f"edge `{node.name.text}`", parts="runs")
        within.say.add(told.help("say how it runs: `line to POINT`, or `curve to POINT, …`"))
    done = tuple(run for run in runs if run is not None)
    return EdgeDraft(node.name.text, node.start.text, done, node.hidden, node.name.span)


def _run(
    node: tree.Straight | tree.Curve | tree.ArcRun | tree.Along | tree.DartRun, within: Within
) -> Straight | Curve | Arc | Along | DartRun | None:
    known = within.points(node.to)
    match node:
        case tree.Straight():
            return Straight(node.to.text, node.span) if known else None
        case tree.Curve():
            return _curve(node, within) if known else None
        case tree.ArcRun():
            through = within.ref(node.through, "point")
            return Arc(node.to.text, through, node.span) if known and through is not None else None
        case tree.Along():
            path = within.drawing.path(node.path)
            return Along(node.to.text, path, node.span) if known and path is not None else None
        case tree.DartRun():
            short = within.value(node.short, "how far a dart stops short", _LENGTH)
            if not within.points(node.pivot) or not known:
                return None
            return DartRun(node.name.text, node.to.text, node.pivot.text, short, node.name.span)


def _curve(node: tree.Curve, within: Within) -> Curve | None:
    leaving, arriving = _bearing(node.leaving, within), _bearing(node.arriving, within)
    full = within.value(node.full, "how full a curve is", _SHARE)
    through = [within.ref(point, "point") for point in node.through]
    found = tuple(point for point in through if point is not None)
    both = node.leaving is not None and node.arriving is not None
    if not both and not node.through:
        told = VAGUE.at(node.span, missing=_MISSING[node.leaving is None, node.arriving is None])
        within.say.add(told.help("say both directions, or points that it passes: `through p, q`"))
        return None
    if node.through:
        _tell_idle(node, within)
    unknown = [
        end for end, known in ((node.leaving, leaving), (node.arriving, arriving)) if end and not known
    ]
    if unknown or len(found) < len(through):
        return None
    return Curve(node.to.text, leaving, arriving, full, found, node.span)


def _tell_idle(node: tree.Curve, within: Within) -> None:
    """Report what cannot be said of a curve that is as full as its points make it."""
    handles = [end.handle for end in (node.leaving, node.arriving) if end and end.handle]
    for word, said in (*(("for", handle) for handle in handles), ("full", node.full)):
        if said is not None:
            told = IDLE.at(said.span, word=word)
            within.say.add(told.help(f"leave out `{word}`, or the points behind `through`"))


def _bearing(node: tree.Bearing | None, within: Within) -> Bearing | None:
    if node is None:
        return None
    direction = within.value(node.direction, "a direction", _ANGLE)
    handle = within.value(node.handle, "how far a direction holds", _LENGTH)
    return None if direction is None else Bearing(direction, handle)
