"""Owns the way from a cross-section's places and layers to lines on paper.

Knows nothing of rows and labels.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from specc.document.drawing import Bend, Trace
from specc.geometry.point import Point
from specc.making.section import NEAR, ON

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.section import Node, Section, Strand

PITCH = 2.1  # from layer to layer, millimetres of paper
THICK = 1.0  # of a ply, as its lines are drawn
_SQUASHED = 0.8  # how far a fold bulges, over half its height: the same for all, so that folds lie in folds
_AIR = 0.2
_CORNER = 0.7  # radius of a ply that steps down
_ROUND = 0.5523  # handles of a quarter circle as a cubic
_RIGHT_EVERY, _RIGHT_LONG = 2.2, 0.55  # ticks of the right side


@dataclass(frozen=True, slots=True)
class Frame:
    """Where a section lies on paper: its scale, the place of x = 0, the ends, the height of layer `top`.

    `apart` is how far two folds side by side are moved from each other.
    """

    scale: float
    origin: float
    left: float
    right: float
    height: float
    top: float
    apart: float = 0.0

    def x(self, x: float, side: int = 0) -> float:
        """Across the paper; `side` is on which side of a seam laid open it lies, where x does not tell."""
        if abs(x) == ON:
            return self.left if x < 0 else self.right
        away = side or (0 if abs(x) < NEAR else 1 if x > 0 else -1)
        return self.origin + x * self.scale + away * self.apart

    def y(self, layer: float) -> float:
        """Down the paper: the middle of a layer."""
        return self.height + (layer - self.top) * PITCH


@dataclass(frozen=True, slots=True)
class Turn:
    """A strand turned at x from layer to layer: back on itself, or stepping on."""

    x: float
    start: float
    end: float
    going: int
    back: bool

    @property
    def bulge(self) -> float:
        """How far the middle of a fold stands out beyond x, in millimetres of paper."""
        return abs(self.end - self.start) * PITCH / 2 * _SQUASHED if self.back else 0.0


def turns(strand: Strand) -> tuple[Turn, ...]:
    """The turns of a strand, in its order."""
    nodes = strand.nodes
    found = []
    for before, (a, b), after in zip(nodes, list(pairwise(nodes))[1:], nodes[3:], strict=False):
        if a.layer != b.layer:
            going = 1 if a.x > before.x else -1
            found.append(Turn(a.x, a.layer, b.layer, going, (after.x - b.x) * going < 0))
    return tuple(found)


def apart(section: Section) -> float:
    """How far the folds of a seam laid open are moved from its line, so that they lie side by side."""
    if not any(row.across for row in section.rows):
        return 0.0
    bulges = [t.bulge for strand in section.strands for t in turns(strand) if abs(t.x) < NEAR]
    return max(bulges, default=0.0) + THICK / 2 + _AIR / 2


def side_of(strand: Strand, frame: Frame) -> int:
    """On which side of a seam laid open a strand lies."""
    if not frame.apart:
        return 0
    return 1 if sum(1 if node.x > 0 else -1 for node in strand.nodes if node.x) > 0 else -1


def _step_place(section: Section, turn: Turn) -> float:
    """Where a strand steps, from x: beyond the folds there, and beyond steps of which it passes the ends."""
    every = [t for each in section.strands for t in turns(each) if abs(t.x - turn.x) < NEAR]
    folds = [t for t in every if t.back]
    if not folds:
        return 0.0
    out = folds[0].going
    steps = {_from(t, out) for t in every if not t.back}
    own = _from(turn, out)
    nearer = sum(1 for body, sense in steps if sense == own[1] and body * sense < own[0] * sense)
    far = max(t.bulge for t in folds if t.going == out) + THICK + _AIR
    return out * (far + nearer * (THICK + _AIR))


def _from(step: Turn, out: int) -> tuple[float, int]:
    """The layer a step comes from, seen from outside the folds, and whether it goes inward (1) or out."""
    body, other = (step.start, step.end) if step.going == -out else (step.end, step.start)
    return body, 1 if other > body else -1


def trace(section: Section, strand: Strand, frame: Frame, *, short: float = 0.0) -> Trace:
    """The middle line of a strand; `short` is what its cut ends are drawn short by."""
    side = side_of(strand, frame)
    nodes = strand.nodes
    start = Point(_end(nodes[0], nodes[1], frame, side, short), frame.y(nodes[0].layer))
    runs: list[Point | Bend] = []
    for turn in turns(strand):
        runs += _turned(section, turn, frame, side)
    last = Point(_end(nodes[-1], nodes[-2], frame, side, short), frame.y(nodes[-1].layer))
    return Trace(start, (*runs, last))


def _end(end: Node, before: Node, frame: Frame, side: int, short: float) -> float:
    x = frame.x(end.x, side)
    if abs(end.x) == ON:
        return x
    return x - short if end.x > before.x else x + short


def _turned(section: Section, turn: Turn, frame: Frame, side: int) -> Iterator[Point | Bend]:
    x, y, end = frame.x(turn.x, side), frame.y(turn.start), frame.y(turn.end)
    if turn.back:
        yield Point(x, y)
        yield from _fold(x, y, end, turn.bulge * turn.going)
        return
    at = x + _step_place(section, turn)
    down = 1 if end > y else -1
    round_x, round_y = turn.going * _CORNER, down * _CORNER
    yield Point(at - round_x, y)
    yield _quarter(Point(at - round_x, y), Point(at, y), Point(at, y + round_y))
    yield Point(at, end - round_y)
    yield _quarter(Point(at, end - round_y), Point(at, end), Point(at + round_x, end))


def _fold(x: float, y: float, end: float, bulge: float) -> Iterator[Bend]:
    middle = (y + end) / 2
    handle = (middle - y) * _ROUND
    across = bulge * _ROUND
    yield Bend(Point(x + across, y), Point(x + bulge, middle - handle), Point(x + bulge, middle))
    yield Bend(Point(x + bulge, middle + handle), Point(x + across, end), Point(x, end))


def _quarter(start: Point, corner: Point, end: Point) -> Bend:
    return Bend(start + (corner - start) * _ROUND, end + (corner - end) * _ROUND, end)


def right_ticks(strand: Strand, frame: Frame) -> Iterator[Trace]:
    """Short ticks on the right side of a ply, along its flat runs."""
    if strand.right_up is None:
        return
    side = side_of(strand, frame)
    up = strand.right_up
    turned = iter(turns(strand))
    for a, b in pairwise(strand.nodes):
        if a.layer != b.layer:
            up = up != next(turned).back
            continue
        low, high = sorted((frame.x(a.x, side), frame.x(b.x, side)))
        edge = frame.y(a.layer) + (-THICK / 2 if up else THICK / 2)
        tip = edge + (-_RIGHT_LONG if up else _RIGHT_LONG)
        count = int((high - low - 1.6) / _RIGHT_EVERY)
        start = (low + high - count * _RIGHT_EVERY) / 2
        for number in range(max(count, 0) + 1 if high - low > 1.6 else 0):
            x = start + number * _RIGHT_EVERY
            yield Trace(Point(x, edge), (Point(x + 0.3, tip),))
