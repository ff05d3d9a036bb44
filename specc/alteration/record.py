"""Owns what an alteration changed, found by comparing the pieces before and after; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Final

from specc.pattern.measure import dart_angle, drawn_length, stitched_length
from specc.pattern.outline import area

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.pattern.piece import Piece

SAME_LENGTH: Final = 1e-6  # mm
SAME_ANGLE: Final = 1e-9  # radians
SAME_AREA: Final = 1e-3  # mm2


@dataclass(frozen=True, slots=True)
class EdgeChange:
    """An edge whose length changed, in millimetres; None where the edge is not there."""

    piece: str
    edge: str
    before: float | None
    after: float | None
    drawn_before: float | None
    drawn_after: float | None


@dataclass(frozen=True, slots=True)
class DartState:
    """Where a dart opens, and its angle at the pivot in radians; both None for a dart inside the piece."""

    edge: str | None
    angle: float | None


@dataclass(frozen=True, slots=True)
class DartChange:
    """A dart that appeared, vanished, moved to another edge or changed its angle; None where absent."""

    piece: str
    dart: str
    before: DartState | None
    after: DartState | None


class Way(StrEnum):
    """How cloth is drawn in along an edge."""

    GATHERS = "gathers"
    EASE = "ease"
    PLEAT = "pleat"
    TUCK = "tuck"


@dataclass(frozen=True, slots=True)
class Fullness:
    """What is drawn in along an edge in one way: in how many stretches or folds, and how much, in mm."""

    count: int
    amount: float


@dataclass(frozen=True, slots=True)
class FullnessChange:
    """Gathers, ease or folds that an edge got, lost or has more or less of; None where it has none."""

    piece: str
    edge: str
    way: Way
    before: Fullness | None
    after: Fullness | None


@dataclass(frozen=True, slots=True)
class AreaChange:
    """A piece whose area without dart wedges changed, in mm2; None where the piece is not made."""

    piece: str
    before: float | None
    after: float | None


@dataclass(frozen=True, slots=True)
class Record:
    """What step number `step` (from 0) changed, in the order of the pieces; empty if nothing."""

    step: int
    edges: tuple[EdgeChange, ...]
    darts: tuple[DartChange, ...]
    fullness: tuple[FullnessChange, ...]
    areas: tuple[AreaChange, ...]


def recorded(step: int, before: tuple[Piece, ...], after: tuple[Piece, ...]) -> Record:
    """What differs between the pieces before and after a step."""
    new = {piece.name: piece for piece in after}
    old = {piece.name: piece for piece in before}
    names = list(dict.fromkeys((*old, *new)))
    pairs = [(name, old.get(name), new.get(name)) for name in names if old.get(name) is not new.get(name)]
    return Record(
        step,
        tuple(change for name, a, b in pairs for change in _edges(name, a, b)),
        tuple(change for name, a, b in pairs for change in _darts(name, a, b)),
        tuple(change for name, a, b in pairs for change in _fullness(name, a, b)),
        tuple(change for name, a, b in pairs for change in _areas(name, a, b)),
    )


def _edges(name: str, before: Piece | None, after: Piece | None) -> tuple[EdgeChange, ...]:
    old = {edge.name: edge for edge in before.edges} if before else {}
    new = {edge.name: edge for edge in after.edges} if after else {}
    changes = []
    for edge in dict.fromkeys((*old, *new)):
        a, b = old.get(edge), new.get(edge)
        change = EdgeChange(
            name,
            edge,
            stitched_length(a) if a else None,
            stitched_length(b) if b else None,
            drawn_length(a) if a else None,
            drawn_length(b) if b else None,
        )
        if _differ(change.before, change.after, SAME_LENGTH) or _differ(
            change.drawn_before, change.drawn_after, SAME_LENGTH
        ):
            changes.append(change)
    return tuple(changes)


def _darts(name: str, before: Piece | None, after: Piece | None) -> tuple[DartChange, ...]:
    old, new = _states(before), _states(after)
    changes = []
    for dart in dict.fromkeys((*old, *new)):
        a, b = old.get(dart), new.get(dart)
        if a is None or b is None or a.edge != b.edge or _differ(a.angle, b.angle, SAME_ANGLE):
            changes.append(DartChange(name, dart, a, b))
    return tuple(changes)


def _states(piece: Piece | None) -> dict[str, DartState]:
    if piece is None:
        return {}
    states = {dart.name: DartState(dart.edge, dart_angle(dart)) for dart in piece.darts}
    return states | {dart.name: DartState(None, None) for dart in piece.two_pointed}


def _fullness(name: str, before: Piece | None, after: Piece | None) -> Iterator[FullnessChange]:
    """Of a piece that is not made any more nothing is told: what it had is gone with it."""
    old, new = _drawn_in(before), _drawn_in(after)
    for edge, way in dict.fromkeys((*old, *new)) if after else ():
        a, b = old.get((edge, way)), new.get((edge, way))
        amounts = (a.amount if a else None, b.amount if b else None)
        if (a.count if a else 0) != (b.count if b else 0) or _differ(*amounts, SAME_LENGTH):
            yield FullnessChange(name, edge, way, a, b)


def _drawn_in(piece: Piece | None) -> dict[tuple[str, Way], Fullness]:
    found: dict[tuple[str, Way], Fullness] = {}
    for edge in piece.edges if piece else ():
        gathers = ((Way.EASE if one.eased else Way.GATHERS, one.amount) for one in edge.gathers)
        folds = ((Way(fold.kind.value), fold.amount) for fold in edge.folds)
        for way, amount in (*gathers, *folds):
            so_far = found.get((edge.name, way), Fullness(0, 0.0))
            found[edge.name, way] = Fullness(so_far.count + 1, so_far.amount + amount)
    return found


def _areas(name: str, before: Piece | None, after: Piece | None) -> tuple[AreaChange, ...]:
    a, b = area(before) if before else None, area(after) if after else None
    return (AreaChange(name, a, b),) if _differ(a, b, SAME_AREA) else ()


def _differ(before: float | None, after: float | None, tolerance: float) -> bool:
    if before is None or after is None:
        return before is not after
    return abs(before - after) > tolerance
